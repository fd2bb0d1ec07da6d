using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Shared;

/// <summary>Who used a measured pool, and what the crops' net return would be had costs been shared out otherwise.</summary>
public static class SharedTables
{
    /// <summary>Pools divided by measured use (power, heat) that held anything.</summary>
    public static IReadOnlyList<PoolResult> Measured(SeasonReview season) =>
        season.Pools.Where(pool => pool.Pool.Basis.Kind == BasisKind.Measured && pool.Users.Total > 0m).ToList();

    /// <summary>The pool the electrical loads draw on; empty when there are none.</summary>
    public static string PowerPool(SeasonReview season) =>
        Measured(season).FirstOrDefault(pool => Unit(season, pool) == "kWh")?.Pool.Name ?? "";

    /// <summary>
    /// The largest other pool divided by measured use: on most farms the one that gives heat; empty when there is none.
    /// </summary>
    public static string HeatPool(SeasonReview season) =>
        Measured(season).Where(pool => Unit(season, pool) != "kWh").MaxBy(pool => pool.Total.Amount)?.Pool.Name ?? "";

    /// <summary>The store that held the most crate-days; empty when there is none.</summary>
    public static string Store(SeasonReview season) =>
        season.Pools.Where(pool => pool.Pool.Basis.Kind == BasisKind.CrateDays).MaxBy(pool => pool.Users.OfEnterprise.Sum())?.Pool.Name
        ?? "";

    /// <summary>
    /// Who drew on a measured pool, and the part of its running cost that went with it, what it took from other pools included.
    /// </summary>
    public static ReportTable UsersOf(SeasonReview season, string pool)
    {
        if (pool.Trim().Length == 0)
        {
            return new ReportTable("Who used it", season.Notation).Note("nothing of that kind is divided by measured use.");
        }

        PoolResult result = Find(season, pool);
        PoolUsers users = result.Users;
        ReportTable table = new ReportTable($"Who used {result.Pool.Name} in {season.CropYear}", season.Notation)
            .Column("User")
            .Column("Used", Look.Quantity, Unit(season, result))
            .Column("Share", Look.Percent)
            .Column("Cost that went with it", Look.WholeMoney);
        List<(string Name, decimal Weight)> rows = Users(season, result);
        if (rows.Count == 0)
        {
            return table.Note($"no use is on record for {season.CropYear}.");
        }

        Money[] parts = LargestRemainder.Split(
            result.CostOfUse,
            rows.ConvertAll(row => row.Weight)
        );
        for (int i = 0; i < rows.Count; i++)
        {
            table.Row(rows[i].Name, rows[i].Weight, rows[i].Weight / users.Total, parts[i]);
        }

        return table.Total("All users", users.Total, 1m, Money.Sum(parts))
            .Note("Cost: cash, labor, owning and what it took from other shared costs, less the owning of capacity not used.");
    }

    /// <summary>Net return of each crop by the three ways of resolving pools that serve each other, widest apart first.</summary>
    public static ReportTable Methods(FarmReview review, int cropYear) =>
        Compare(
            review.Season(cropYear),
            $"Left over in {cropYear}, by how costs that serve each other are worked out",
            [
                ("reciprocal", review.Season(cropYear, SharingMethod.Reciprocal)),
                ("step-down", review.Season(cropYear, SharingMethod.StepDown)),
                ("direct", review.Season(cropYear, SharingMethod.Direct)),
            ]
        );

    /// <summary>
    /// Net return of each crop with one pool divided by other bases, widest apart first; by bed time, labor hours and sales value when
    /// none is named.
    /// </summary>
    public static ReportTable Bases(SeasonReview season, string pool, params IReadOnlyList<string> bases)
    {
        PoolResult result = Find(season, pool);
        string now = result.Pool.Basis.ToString();
        bases = bases.Count > 0 ? bases : UsualBases;
        return Compare(
            season,
            $"Left over in {season.CropYear} with {result.Pool.Name} ({season.Notation.InWords(result.Total.Amount, Look.WholeMoney)}) "
                + $"divided another way",
            [
                ($"{season.Settings.LengthUnit.Label(now)}, as it is", season),
                .. bases
                    .Where(basis => !string.Equals(basis, now, StringComparison.OrdinalIgnoreCase))
                    .Select(basis =>
                        (
                            season.Settings.LengthUnit.Label(basis),
                            BasisChange.Of(season, pool, basis).Season(season.CropYear, season.Settings.SharingMethod)
                        )
                    ),
            ]
        );
    }

    private static readonly string[] UsualBases = ["bed-foot-days", "labor-hours", "sales-value"];

    internal static PoolResult Find(SeasonReview season, string pool) =>
        season.Pools.FirstOrDefault(each => string.Equals(each.Pool.Name, pool.Trim(), StringComparison.OrdinalIgnoreCase))
        ?? throw new ArgumentException(
            $"There is no pool '{pool}'. Pools that hold anything: "
                + $"{string.Join(", ", Season.PoolTables.Busy(season).Select(each => each.Pool.Name))}.",
            nameof(pool));

    internal static List<(string Name, decimal Weight)> Users(SeasonReview season, PoolResult result)
    {
        List<(string Name, decimal Weight)> rows = season
            .Pools.Select(pool => (pool.Pool.Name, result.Users.OfPool[pool.Pool.Index]))
            .ToList();
        rows.AddRange(
            season
                .Network.Enterprises.Select((enterprise, i) => (enterprise.Crop.Name, result.Users.OfEnterprise[i]))
                .GroupBy(row => row.Name)
                .Select(group => (group.Key, group.Sum(row => row.Item2)))
        );
        rows.Add(("household", result.Users.Household));
        rows.Add(("not assigned", result.Users.NotAssigned));
        return rows.Where(row => row.Weight > 0m).OrderByDescending(row => row.Weight).ToList();
    }

    internal static string Unit(SeasonReview season, PoolResult result) =>
        season.Records.Tables.Loads.Exists(load => season.Records.FindPool(load.Pool) == result.Pool) ? "kWh" : "as measured";

    private static ReportTable Compare(SeasonReview season, string title, IReadOnlyList<(string Name, SeasonReview Season)> ways)
    {
        string? reason = season.Known.Costs ?? season.Known.LaborCost;
        ReportTable table = new ReportTable(title, season.Notation).Opens().Column("Crop");
        foreach ((string name, SeasonReview _) in ways)
        {
            table.Column(name, Look.WholeMoney);
        }

        table.Column("Widest difference", Look.WholeMoney);
        List<(string Name, Money[] Net)> rows = season
            .Crops.Select((crop, i) => (Crop: crop, i))
            .Where(pair => pair.Crop.Known.Value is null)
            .Select(pair => (pair.Crop.Name, ways.Select(way => way.Season.Crops[pair.i].NetReturn).ToArray()))
            .ToList();
        foreach (
            (string name, Money[] net) in rows.OrderByDescending(row => Spread(row.Net)).ThenBy(row => row.Name, StringComparer.Ordinal)
        )
        {
            table.Row([name, .. net.Select(value => ReportCell.Known(value, reason)), ReportCell.Known(Spread(net), reason)]);
        }

        int flips = rows.Count(row => row.Net.Any(net => net.Amount < 0m) && row.Net.Any(net => net.Amount >= 0m));
        return table.Note(reason is not null
            ? null
            : $"{Phrase.Sentence(season.Notation.Count(flips, "crop changes", "crops change"))} from gain to loss or back with the "
                + $"choice. The {season.Known.NetReturnLabel} is shown.");
    }

    private static decimal Spread(Money[] net) => net.Max(value => value.Amount) - net.Min(value => value.Amount);
}
