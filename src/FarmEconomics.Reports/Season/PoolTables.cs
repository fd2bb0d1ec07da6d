using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Season;

/// <summary>The tables of shared costs: what each pool held, where it went, and what a crop was charged.</summary>
public static class PoolTables
{
    /// <summary>The pools that held anything, largest first.</summary>
    public static ReportTable Pools(SeasonReview season)
    {
        List<PoolResult> busy = Busy(season).ToList();
        return new ReportTable($"Shared costs of {season.CropYear} and where they went", season.Notation)
            .Note("Cash, labor and owning add up to the last four columns, to the cent. "
                + "What reached a crop by way of another shared cost stands where it was spent.")
            .Of<PoolResult>()
            .Column("Shared cost", pool => pool.Pool.Name)
            .Column("Divided by", pool => season.Settings.LengthUnit.Label(pool.Users.BasisUsed.ToString()))
            .Column("Cash", Look.WholeMoney, pool => ReportCell.Known(pool.Cash, season.Known.Costs))
            .Column("Labor", Look.WholeMoney, pool => ReportCell.Known(pool.Labor, season.Known.LaborCost))
            .Column("Owning", Look.WholeMoney, pool => Owned(pool, pool.Ownership))
            .Column("Hours", Look.Hours, pool => ReportCell.Known(pool.Hours, season.Known.Hours))
            .Column("To crops", Look.WholeMoney, pool => Owned(pool, pool.ToCrops))
            .Column("To household", Look.WholeMoney, pool => Owned(pool, pool.ToHousehold))
            .Column("Not used", Look.WholeMoney, pool => Owned(pool, pool.Unused))
            .Column("No user", Look.WholeMoney, pool => Owned(pool, pool.NotAssigned))
            .Rows(busy)
            .Total(
                "All",
                "",
                ReportCell.Known(Sum(busy, pool => pool.Cash), season.Known.Costs),
                ReportCell.Known(Sum(busy, pool => pool.Labor), season.Known.LaborCost),
                AllOwned(pool => pool.Ownership),
                ReportCell.Known(busy.Sum(pool => pool.Hours), season.Known.Hours),
                AllOwned(pool => pool.ToCrops),
                AllOwned(pool => pool.ToHousehold),
                AllOwned(pool => pool.Unused),
                AllOwned(pool => pool.NotAssigned));

        ReportCell Owned(PoolResult pool, Money amount) => ReportCell.Known(amount, OwnershipReason(season, pool));

        ReportCell AllOwned(Func<PoolResult, Money> part) => ReportCell.Known(Sum(busy, part), season.Known.Ownership);
    }

    /// <summary>What each pool charged a crop, largest first; sums to the crop's shared cost.</summary>
    public static ReportTable ChargesOf(SeasonReview season, string crop)
    {
        ReportTable table = new ReportTable($"{crop}: its part of each shared cost in {season.CropYear}", season.Notation)
            .Column("Shared cost").Column("Divided by").Column("Its part", Look.Money).Column("of that cost", Look.Percent);
        Crop? charged = season.FindBudget(crop)?.Crop;
        List<(PoolResult Pool, Money Amount)> charges = season.Pools.Select(pool => (pool, Money.Sum(pool.Charges
                .Where(charge => charge.Enterprise is { } enterprise && enterprise.Crop == charged)
                .Select(charge => charge.Amount))))
            .Where(pair => pair.Item2 != Money.Zero).OrderByDescending(pair => pair.Item2.Amount).ToList();
        foreach ((PoolResult pool, Money amount) in charges)
        {
            table.Row(
                pool.Pool.Name,
                season.Settings.LengthUnit.Label(pool.Users.BasisUsed.ToString()),
                amount,
                Result.Of(amount.Amount, pool.Total.Amount, "the pool's cost is 0")
            );
        }

        return table.Total("All", "", Money.Sum(charges.Select(pair => pair.Amount)), "");
    }

    /// <summary>Pools with a capacity: how much of it was used, and what the rest cost.</summary>
    public static ReportTable Capacity(SeasonReview season)
    {
        ReportTable table = new ReportTable($"What stood idle in {season.CropYear}", season.Notation)
            .Column("Shared cost")
            .Column("Capacity", Look.Quantity)
            .Column("Used", Look.Quantity)
            .Column("of capacity", Look.Percent)
            .Column("Counted in")
            .Column("Owning", Look.WholeMoney)
            .Column("not used", Look.WholeMoney);
        foreach (PoolResult pool in season.Pools.Where(pool => season.Network.Capacity[pool.Pool.Index] is > 0m))
        {
            decimal capacity = season.Network.Capacity[pool.Pool.Index]!.Value;
            table.Row(
                pool.Pool.Name,
                capacity,
                pool.Users.Total,
                pool.Users.Total / capacity,
                season.Settings.LengthUnit.Label(pool.Users.BasisUsed.Kind.Unit),
                ReportCell.Known(pool.Ownership, OwnershipReason(season, pool)),
                ReportCell.Known(pool.Unused, OwnershipReason(season, pool))
            );
        }

        return table.Note("Not used includes what stood idle in those it serves. No crop pays for it unless idle_capacity says spread.");
    }

    internal static IEnumerable<PoolResult> Busy(SeasonReview season) =>
        season
            .Pools.Where(pool => pool.Total != Money.Zero || pool.Hours != 0m)
            .OrderByDescending(pool => pool.Total.Amount)
            .ThenBy(pool => pool.Pool.Index);

    private static string? OwnershipReason(SeasonReview season, PoolResult pool) => pool.OwnershipKnown ? null : season.Known.Ownership;

    private static Money Sum(List<PoolResult> pools, Func<PoolResult, Money> part) => Money.Sum(pools.Select(part));
}
