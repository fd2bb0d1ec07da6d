using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using FarmEconomics.Files;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Tests.Files;

namespace FarmEconomics.Tests.Answers;

/// <summary>Farms that reports are made of: the demo farm, and small ones written for a test.</summary>
internal static class AnswerFarms
{
    private static readonly Lazy<ReviewedFarm> Opened = new(() => ReviewedFarm.Of(FarmFolder.Open(Path.Combine(TestFolders.Repository, "demo-data"))));

    internal static ReviewedFarm Demo => Opened.Value;

    /// <summary>Crops sold at one stall, each 10 units at 2: the same hours and costs, so the same full cost.</summary>
    internal static ReviewedFarm WithCrops(int count, decimal costs = 100m) =>
        WithPrices(costs, [.. Enumerable.Repeat<decimal?>(2m, count)]);

    /// <summary>Crops sold at one stall, 10 units each at a price, or at one no record tells: the same hours and costs.</summary>
    internal static ReviewedFarm WithPrices(decimal costs, params decimal?[] prices)
    {
        StringBuilder crops = new("crop,unit\n"), plantings = new("planting,crop,bed,bed_feet,in_bed,out_of_bed\n");
        StringBuilder harvests = new("date,planting,quantity\n"), sales = new("date,crop,channel,quantity,unit_price\n");
        for (int i = 1; i <= prices.Length; i++)
        {
            string name = string.Create(CultureInfo.InvariantCulture, $"Crop with a name {i}");
            crops.Append(name).Append(",bunch\n");
            plantings.Append('P').Append(i).Append(',').Append(name).Append(",B").Append(i).Append(",50,2025-05-01,2025-08-01\n");
            harvests.Append("2025-07-01,P").Append(i).Append(",10\n");
            sales.Append(CultureInfo.InvariantCulture, $"2025-07-02,{name},Stall,10,{prices[i - 1]}\n");
        }

        string beds = "bed,length_ft\n" + string.Concat(Enumerable.Range(1, prices.Length).Select(i => $"B{i},50\n"));
        return Of(
            ("crops.csv", $"{crops}"), ("beds.csv", beds), ("plantings.csv", $"{plantings}"), ("harvests.csv", $"{harvests}"),
            ("channels.csv", "channel,kind,fee_percent\nStall,market,5\n"), ("sales.csv", $"{sales}"),
            ("expenses.csv", string.Create(CultureInfo.InvariantCulture, $"date,amount,category\n2025-06-01,{costs},supplies\n")),
            ("categories.csv", "category,class,statement_line\nsupplies,operating,materials\n"),
            ("labor.csv", "date,worker,hours,task\n2025-06-01,Ann,10,weed\n"), ("workers.csv", "worker,kind,wage\nAnn,owner,20\n"),
            ("tasks.csv", "task,stage\nweed,grow\n"),
            ("farm.csv", "setting,value\nfarm_name,Small\nas_of,2025-12-31\ninterest_percent,5\n"));
    }

    /// <summary>The demo farm with one of its tables changed.</summary>
    internal static ReviewedFarm DemoWith(string file, Func<string, string> change) =>
        Of([.. Directory.GetFiles(Path.Combine(TestFolders.Repository, "demo-data"), "*.csv")
            .Select(path => (Name: Path.GetFileName(path), Text: File.ReadAllText(path)))
            .Select(one => one.Name == file ? (one.Name, change(one.Text)) : one)]);

    internal static ReviewedFarm Of(params (string Name, string Text)[] files) => ReviewedFarm.Of(FarmFolder.Open(TestFolders.Make(files)));

    internal static JsonNode Json(IReadOnlyList<Block> blocks, string key) => BlockJson.Of(blocks)[key] ?? throw new ArgumentException($"no block {key}", nameof(key));
}
