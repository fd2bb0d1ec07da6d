using System.Globalization;
using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using Xunit;

namespace FarmEconomics.Tests.Files;

/// <summary>The same farm measured in meters: every amount to the same cent, every rate per length by the factor of the unit.</summary>
public class MetricResultsTests
{
    private static readonly string[] Lengths = ["bed_feet", "bed_foot_weeks", "bed_feet_limit"];

    [Fact]
    public void Results_OfTheSameFarmInMeters_DifferByTheUnitAlone()
    {
        string demo = Path.Combine(TestFolders.Repository, "demo-data");
        Dictionary<string, List<string[]>> feet = Tables(MetricFarm.WriteInFeet(demo, TestFolders.Make())), meters = Tables(MetricFarm.Write(demo, TestFolders.Make()));

        Assert.Equal(feet.Keys.Order(), meters.Keys.Order());
        int converted = 0;
        foreach (string table in feet.Keys)
        {
            string[] headings = feet[table][0];
            Assert.Equal(headings.Select(heading => heading.Replace("bed_foot", "bed_meter").Replace("bed_feet", "bed_meters").Replace("gallon", "liter")), meters[table][0]);
            Assert.Equal(feet[table].Count, meters[table].Count);
            for (int row = 1; row < feet[table].Count; row++)
            {
                if (table == "water_worth.csv" && feet[table][row][1] == "water")
                {
                    continue; // a round step in each unit: 100 gallons, 400 liters
                }

                for (int at = 0; at < headings.Length; at++)
                {
                    (string foot, string meter) = (feet[table][row][at], meters[table][row][at]);
                    bool length = Lengths.Contains(headings[at]), rate = headings[at].Contains("per_bed_foot", StringComparison.Ordinal);
                    if ((length || rate) && foot.Length > 0)
                    {
                        // What is printed has four decimals; half of the last one, in the unit compared, is all that may lie between.
                        decimal expected = Number(foot) * (length ? MetricFarm.MetersPerFoot : 1m / MetricFarm.MetersPerFoot);
                        Assert.InRange(Number(meter), expected - 0.00022m, expected + 0.00022m);
                        converted++;
                    }
                    else if (foot.Length > 0 && VolumeFactor(headings, feet[table][row], at) is { } factor)
                    {
                        decimal expected = Number(foot) * factor;
                        Assert.InRange(Number(meter), expected - 0.006m - Math.Abs(expected * 1e-6m), expected + 0.006m + Math.Abs(expected * 1e-6m));
                        converted++;
                    }
                    else
                    {
                        Assert.Equal(foot switch { "lb" => "kg", "gallon" => "liter", _ => foot }, meter);
                    }
                }
            }
        }

        Assert.True(converted > 500);
    }

    // What counts gallons, or money by them; null: a figure that is the same in both.
    private static decimal? VolumeFactor(string[] headings, string[] row, int at)
    {
        bool water = row.Contains("water") && (headings[at] is "in_use" or "limit" or "used_while_short" or "contribution_per_unit");
        return !water && !headings[at].Contains("gallons", StringComparison.Ordinal) ? null
            : headings[at].Contains("per", StringComparison.Ordinal) ? 1m / MetricFarm.LitersPerGallon : MetricFarm.LitersPerGallon;
    }

    private static decimal Number(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);

    private static Dictionary<string, List<string[]>> Tables(string records)
    {
        FarmFolder farm = FarmFolder.Open(records);
        Assert.True(farm.Review is not null, string.Join("\n", farm.Problems.Where(problem => problem.Severity == FarmEconomics.Records.Severity.Error).Take(5)));
        string folder = TestFolders.Make();
        ResultTables.Write(farm.Review.Season(2025), [], folder);
        return Directory.EnumerateFiles(folder, "*.csv").ToDictionary(path => Path.GetFileName(path)!, path => PlainCsv.Read(File.ReadAllText(path)));
    }
}
