using Xunit;

namespace FarmEconomics.Tests.Docs;

public class LicensesDocumentTests
{
    /// <summary>Licenses under which anybody may use, change and pass on what is shipped, words of the SPDX list.</summary>
    private static readonly string[] Free = ["MIT", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "MS-PL OR Apache-2.0"];

    [Fact]
    public void ShippedPackages_AllowUseChangeAndPassingOn() =>
        Assert.DoesNotContain(LicensesDocument.Packages, package => package.IsShipped && !Free.Contains(package.License));

    [Fact]
    public void OtherPackages_AreReadToo() =>
        Assert.DoesNotContain(LicensesDocument.Packages, package => package.License == "not read yet");
}
