using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using FarmEconomics.Files;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Tests.House;
using Xunit;

namespace FarmEconomics.WholeWay.Tests.Demo;

/// <summary>
/// No figure of the demo farm's pages moves unnoticed: <c>DemoFigures.txt</c> holds a mark of every block's numbers, words left out. A rule
/// that is changed on purpose changes lines of it, in the same commit; <c>FARM_REWRITE=1</c> writes it anew. That the figures are right
/// rests on other tests: these only say that they are still the same.
/// </summary>
public partial class DemoFiguresTests
{
    private const int Digits = 7;

    public static TheoryData<ReportId> Pages => [.. ReportCatalog.All.Select(report => report.Id)];

    private static string ListFile => Path.Combine(Repository.Root, "tests", "FarmEconomics.WholeWay.Tests", "Demo", "DemoFigures.txt");

    [Theory]
    [MemberData(nameof(Pages))]
    public void Figures_OfAPage_AreStillTheSame(ReportId page)
    {
        string[] marks = [.. MarksOf(ReportCatalog.Get(page))];
        if (Environment.GetEnvironmentVariable("FARM_REWRITE") == "1")
        {
            Rewrite(page, marks);
        }

        Assert.Equal(File.ReadAllLines(ListFile).Where(line => IsOf(page, line)), marks.Order(StringComparer.Ordinal));
    }

    private static IEnumerable<string> MarksOf(IReport report)
    {
        ReviewedFarm farm = ReviewedFarm.Of(FarmFolder.Open(Path.Combine(Repository.Root, "demo-data")));
        CancellationToken cancellation = TestContext.Current.CancellationToken;
        if (ReportCatalog.PerCrop.Contains(report))
        {
            // A line a crop: two thousand blocks would be a list nobody reads.
            return farm.Season.Crops.Select(crop => MarkOf(report, farm.Slugs[crop.Name], Made(new() { ["crop"] = crop.Name })));
        }

        return Made([]).Select(block => MarkOf(report, block.Key.Name, [block]));

        IEnumerable<Block> Made(Dictionary<string, object> asked) => BlockJson.Flat(report.Make(farm, asked, cancellation));
    }

    /// <summary>Their numbers to seven digits, in their order: the last bits of a logarithm differ from processor to processor.</summary>
    private static string MarkOf(IReport report, string what, IEnumerable<Block> blocks)
    {
        string[] numbers =
        [
            .. blocks.SelectMany(block => Number().Matches(BlockJson.Of(block).ToJsonString())).Select(number =>
                double.Parse(number.Value, CultureInfo.InvariantCulture).ToString($"G{Digits}", CultureInfo.InvariantCulture)),
        ];
        string hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join(' ', numbers))))[..16];
        return string.Create(CultureInfo.InvariantCulture, $"{report.Id} {what} {numbers.Length} {hash}");
    }

    private static void Rewrite(ReportId page, string[] marks)
    {
        string[] others = File.Exists(ListFile) ? [.. File.ReadAllLines(ListFile).Where(line => !IsOf(page, line))] : [];
        File.WriteAllText(ListFile, string.Concat(others.Concat(marks).Order(StringComparer.Ordinal).Select(line => line + "\n")));
    }

    private static bool IsOf(ReportId page, string line) => line.StartsWith($"{page} ", StringComparison.Ordinal);

    [GeneratedRegex(@"-?\d+(\.\d+)?")]
    private static partial Regex Number();
}
