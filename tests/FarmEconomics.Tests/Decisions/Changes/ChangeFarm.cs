using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;

namespace FarmEconomics.Tests.Decisions.Changes;

/// <summary>
/// A farm of three crops on 100 ft each, May 1 to August 9, whose changes are worked out on paper.
/// <para>Beets: 300 at the stall less 30, 30 eaten, 30 lb in boxes for 90; seed 30, 5 h of picking, 15 of insurance of their own.</para>
/// <para>Kale: 200 at the stall less 20, 20 lb in the first boxes for 40 and 35 in the second for 70; seed 40, 6 h of picking.</para>
/// <para>Leeks: 160 at the shop, no fee; seed 10, 2 h of picking.</para>
/// <para>
/// An own hour counts 20. Members paid 200 for two weeks, less 2%: 88.20 for beets and 107.80 for kale by list value. Trips: the stall's
/// place 60 (by sales 36 and 24), the shop's 30. Fixed: rent 300 (100 each), a cooler of 100 a year for 400 ft (25 each, 25 unused).
/// </para>
/// <para>Net return: beets 300 + 30 + 88.20 - 30 - 30 - 100 - 15 - 36 - 125 = 82.20; kale 200 + 107.80 - 20 - 40 - 120 - 24 - 125 =
/// -21.20; leeks 160 - 10 - 40 - 30 - 125 = -45.</para>
/// </summary>
internal static class ChangeFarm
{
    internal static ChangeJudge Judge(FarmBuilder farm) => new(SeasonCosts.Of(farm.Season(2025)));

    internal static FarmBuilder Build() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 0m, BuyInPercent = 80m })
            .AsOf("2025-12-31")
            .Bed("One")
            .Bed("Two")
            .Bed("Three")
            .Bed("Four", 40m)
            .Channel("stall", ChannelKind.Market, fee: 10m)
            .Channel("shop", ChannelKind.Wholesale)
            .Channel("boxes", ChannelKind.Share, fee: 2m, valuesFrom: "stall")
            .Channel("table", ChannelKind.Household)
            .Worker("me", WorkerKind.Owner)
            .Income("2025-03-01", "boxes", 200m)
            .Pool("cooler", "bed-feet", capacity: 400m)
            .Asset("compressor", "cooler", "2025-01-01", 1000m, 10m)
            .Spend("2025-03-01", 300m, "rent")
            .Spend("2025-07-02", 60m, "market fees", channel: "stall")
            .Spend("2025-07-02", 30m, "market fees", channel: "shop")
            .Crop("Beets")
            .Price("Beets", 3m)
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-08-09")
            .Pick("2025-07-01", "B", 140m)
            .Sell("2025-07-02", "Beets", "stall", 100m, price: 3m)
            .Sell("2025-07-02", "Beets", "boxes", 30m)
            .Sell("2025-07-02", "Beets", "table", 10m)
            .Spend("2025-04-01", 30m, "seed", crop: "Beets")
            .Spend("2025-04-01", 15m, "insurance", crop: "Beets")
            .Work("2025-07-01", "me", 5m, "harvest", crop: "Beets")
            .Crop("Kale")
            .Price("Kale", 2m)
            .Planting("K", "Kale", "Two", 100m, "2025-05-01", "2025-08-09")
            .Pick("2025-07-01", "K", 155m)
            .Sell("2025-07-02", "Kale", "stall", 100m, price: 2m)
            .Sell("2025-07-02", "Kale", "boxes", 20m)
            .Sell("2025-07-09", "Kale", "boxes", 35m)
            .Spend("2025-04-01", 40m, "seed", crop: "Kale")
            .Work("2025-07-01", "me", 6m, "harvest", crop: "Kale")
            .Crop("Leeks")
            .Price("Leeks", 2m)
            .Planting("L", "Leeks", "Three", 100m, "2025-05-01", "2025-08-09")
            .Pick("2025-07-01", "L", 80m)
            .Sell("2025-07-02", "Leeks", "shop", 80m, price: 2m)
            .Spend("2025-04-01", 10m, "seed", crop: "Leeks")
            .Work("2025-07-01", "me", 2m, "harvest", crop: "Leeks");

    internal static List<(string Name, decimal Amount)> Lines(this IEnumerable<PartialBudgetLine> lines) =>
        [.. lines.Select(line => (line.Name, line.Amount.Amount))];

    /// <summary>Cost that moves, a line a pool; "" for fixed cost that names the crop.</summary>
    internal static string[] Moves(this ChangeAnswer answer) =>
    [
        .. answer
            .Moved.Select(one =>
                $"{one.Pool?.Name}: " + string.Join(", ", one.Moves.Select(move => $"{move.To} {move.Change.Amount:0.00}"))
            )
            .Order(StringComparer.Ordinal),
    ];

    internal static List<(string, decimal, decimal)> Nets(this ChangeAnswer answer) =>
        [.. answer.Crops.Select(crop => (crop.Crop, crop.Before.Amount, crop.After.Amount))];

    internal static List<(string, decimal)> Amounts(this IEnumerable<(string, Money Change)> lines) =>
        [.. lines.Select(line => (line.Item1, line.Change.Amount))];
}
