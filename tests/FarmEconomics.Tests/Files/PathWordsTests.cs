using FarmEconomics.Files;
using Xunit;

namespace FarmEconomics.Tests.Files;

public class PathWordsTests
{
    [Theory]
    [InlineData("records = \"/farms/ann/farm\";", "/farms/ann/farm", "records = \"farm\";")]
    [InlineData("/farms/ann/farm/sales.csv:3: no", "/farms/ann/farm/", "farm/sales.csv:3: no")]
    [InlineData("no file '/farms/ann/the &amp; farm'.", "/farms/ann/the & farm", "no file 'the & farm'.")]
    [InlineData("x = \"/farms/a\\\"b/farm\";", "/farms/a\"b/farm", "x = \"farm\";")]
    [InlineData("there/d </d> /data /d-x /d", "/d", "there/d </d> /data /d-x d")]
    [InlineData("/mnt/farms/ann/farm", "/farms/ann/farm", "/mnt/farms/ann/farm")]
    [InlineData("cost $1 at /f/$1", "/f/$1", "cost $1 at $1")]
    public void Hidden_TextWithAPath_HoldsTheNameAlone(string text, string path, string expected)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "paths with slashes");
        Assert.Equal(expected, PathWords.Hidden(text, path));
    }
}
