using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Shared;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Words;

/// <summary>Shared costs in sentences.</summary>
public static class SharedSentences
{
    /// <summary>The answer first: how much, where to, what stood idle.</summary>
    public static Prose Answer(SeasonReview season)
    {
        Notation notation = season.Notation;
        List<PoolResult> pools = PoolTables.Busy(season).ToList();
        decimal total = pools.Sum(pool => pool.Total.Amount);
        if (total == 0m)
        {
            return new Prose($"No pool held any cost in {season.CropYear}{(season.Known.Costs is { } why ? $": {why}" : "")}.");
        }

        decimal crops = pools.Sum(pool => pool.ToCrops.Amount);
        decimal lost = pools.Sum(pool => pool.NotAssigned.Amount);
        List<PoolResult> idle = pools.Where(pool => pool.Unused.Amount > 0m).OrderByDescending(pool => pool.Unused.Amount).ToList();
        string text = $"In **{season.CropYear}** the {notation.Count(pools.Count, "pool")} of shared cost held **{Money(total)}**: {Money(pools.Sum(pool => pool.Cash.Amount))} cash, {Money(pools.Sum(pool => pool.Labor.Amount))} labor"
            + (season.Known.Ownership is { } reason ? $" (ownership cost is not available: {reason})" : $" and {Money(pools.Sum(pool => pool.Ownership.Amount))} a year for what lasts")
            + $". The crops carry {Money(crops)} of it, {Phrase.Percent(season.Farm.TotalCost.Amount > 0m ? crops / season.Farm.TotalCost.Amount : 0m)} of all their cost; the household {Money(pools.Sum(pool => pool.ToHousehold.Amount))}. ";
        text += idle.Count == 0 ? "No capacity is known to have stood idle." : $"Capacity nobody used cost {Money(idle.Sum(pool => pool.Unused.Amount))}, most of all {Phrase.List(idle.Take(2).Select(pool => $"{Phrase.Bold(pool.Pool.Name)} ({Money(pool.Unused.Amount)})").ToList())}; it is charged to no crop.";
        text += lost == 0m ? " Nothing was left without a user." : $" {Money(lost)} found no user and is charged to no crop.";
        return new Prose(text);

        string Money(decimal amount) => notation.InWords(amount, Look.WholeMoney);
    }

    /// <summary>Below the figure of running and ownership cost.</summary>
    public static Prose Kinds(SeasonReview season)
    {
        if (season.Known.Ownership is { } why)
        {
            return new Prose($"Ownership cost is not available ({why}).");
        }

        PoolResult? largest = season.Pools.MaxBy(pool => pool.Ownership.Amount);
        decimal owning = season.Pools.Sum(pool => pool.Ownership.Amount);
        return new Prose(largest is null || owning <= 0m ? "Nothing that lasts is in the records (no assets.csv, or nothing in service)."
            : $"What lasts costs {season.Notation.InWords(owning, Look.WholeMoney)} a year, used or not; the largest part is {Phrase.Bold(largest.Pool.Name)}, {season.Notation.InWords(largest.Ownership.Amount, Look.WholeMoney)}.");
    }

    /// <summary>Below the table of capacities.</summary>
    public static Prose Idle(SeasonReview season)
    {
        decimal Used(PoolResult pool) => pool.Users.Total / season.Network.Capacity[pool.Pool.Index]!.Value;
        List<PoolResult> known = season.Pools.Where(pool => season.Network.Capacity[pool.Pool.Index] is > 0m).OrderBy(Used).ToList();
        return new Prose(known.Count == 0 ? "No pool has a capacity in pools.csv, so what stood idle is not available."
            : $"{Phrase.Bold(known[0].Pool.Name)} was used least, {Phrase.Percent(Used(known[0]))} of what it can give; the unused part cost {season.Notation.InWords(known.Sum(pool => pool.Unused.Amount), Look.WholeMoney)} over all pools with a capacity.");
    }

    /// <summary>Below the power figure.</summary>
    public static Prose Power(SeasonReview season)
    {
        List<(DateOnly Month, decimal Used, Dictionary<string, decimal> ByUser)> months = SharedPlots.Power(season);
        decimal used = months.Sum(month => month.Used);
        if (used <= 0m)
        {
            return new Prose("Power by month is not available (no loads).");
        }

        (DateOnly most, decimal drawn, _) = months.MaxBy(month => month.Used);
        return new Prose($"The loads drew {season.Notation.Number(used, Look.Count)} kWh in the year, most in {most:MMMM}: {season.Notation.Number(drawn, Look.Count)} kWh.");
    }

    /// <summary>Below a comparison of methods or bases.</summary>
    public static Prose Choice(SeasonReview season, ReportTable table)
    {
        List<(string Name, decimal Spread)> rows = table.Rows.Where(row => row[^1].Number is not null).Select(row => ((string)row[0].Value!, row[^1].Number!.Value)).ToList();
        if (rows.Count == 0)
        {
            return new Prose($"The comparison is not available ({season.Known.Costs ?? season.Known.LaborCost}).");
        }

        List<string> flips = table.Rows.Where(row => row.Skip(1).SkipLast(1).Any(cell => cell.Number < 0m) && row.Skip(1).SkipLast(1).Any(cell => cell.Number >= 0m)).Select(row => Phrase.Bold((string)row[0].Value!)).ToList();
        int close = rows.Count(row => row.Spread < 25m);
        return new Prose($"{Phrase.Bold(rows[0].Name)} moves most, by {season.Notation.InWords(rows[0].Spread, Look.WholeMoney)}; {close} of {season.Notation.Count(rows.Count, "crop")} move by less than {season.Notation.InWords(25m, Look.WholeMoney)}. "
            + (flips.Count == 0 ? "No crop changes from gain to loss with the choice." : $"The choice decides between gain and loss for {Phrase.List(flips)}."));
    }

    /// <summary>Below the store figure: what a crate-day cost.</summary>
    public static Prose Store(SeasonReview season, string pool)
    {
        if (pool.Trim().Length == 0)
        {
            return new Prose("No pool is shared out by crate-days.");
        }

        PoolResult result = SharedTables.Find(season, pool);
        decimal days = result.Users.OfEnterprise.Sum();
        decimal all = result.Users.Total;
        string others = all > days ? $" and {season.Notation.Number(all - days, Look.Quantity)} of other users" : "";
        return new Prose(all <= 0m ? $"Nothing was held in {Phrase.Bold(result.Pool.Name)}."
            : $"{Phrase.Bold(result.Pool.Name)} held {season.Notation.Number(days, Look.Quantity)} crate-days of produce{others}; with what other pools gave it, a crate-day cost {season.Notation.InWords(CostOfUse(season, result) / all, Look.Rate)}.");
    }

    /// <summary>Below the users of a measured pool: what one unit of use cost.</summary>
    public static Prose Users(SeasonReview season, string pool)
    {
        if (pool.Trim().Length == 0)
        {
            return new Prose("No such pool is shared out by measured use.");
        }

        PoolResult result = SharedTables.Find(season, pool);
        List<(string Name, decimal Weight)> users = SharedTables.Users(season, result);
        if (users.Count == 0)
        {
            return new Prose($"No use of {Phrase.Bold(result.Pool.Name)} is written down for {season.CropYear}.");
        }

        string unit = SharedTables.Unit(season, result) == "kWh" ? "kWh" : "unit of use";
        return new Prose($"{Phrase.Bold(users[0].Name)} took most, {season.Notation.Number(users[0].Weight, Look.Quantity)} of {season.Notation.Number(result.Users.Total, Look.Quantity)}. With {season.Notation.Number(result.Hours, Look.Hours)} hours of work and what other pools gave it, a {unit} cost {season.Notation.InWords(CostOfUse(season, result) / result.Users.Total, Look.Rate)}.");
    }

    /// <summary>Below the flow picture.</summary>
    public static Prose Flow(SeasonReview season)
    {
        List<PoolResult> givers = season.Pools.Where(pool => pool.PassedToPools.Amount > 0m).OrderByDescending(pool => pool.PassedToPools.Amount).ToList();
        return new Prose(givers.Count == 0 ? "No pool serves another."
            : $"{Phrase.Sentence(season.Notation.Count(givers.Count, "pool serves", "pools serve"))} other pools: {Phrase.List(givers.ConvertAll(pool => $"{Phrase.Bold(pool.Pool.Name)} passed {season.Notation.InWords(pool.PassedToPools.Amount, Look.WholeMoney)} on"))}"
                + $"{(Circle(season) ? "; some of it in a circle, which is solved exactly" : "")}.");
    }

    /// <summary>What a pool held and was given, less its own cost of capacity nobody used.</summary>
    private static decimal CostOfUse(SeasonReview season, PoolResult result) =>
        (result.Total + result.ReceivedFromPools).Amount - (result.Ownership.Amount * (1m - season.Network.UsedFactor[result.Pool.Index]));

    private static bool Circle(SeasonReview season)
    {
        SharedCosts shares = season.Network.Running;
        int count = season.Pools.Count;
        return Enumerable.Range(0, count).Any(i => Enumerable.Range(0, count).Any(j => i != j && shares.PassedTo(i, j) > 0m && shares.PassedTo(j, i) > 0m));
    }
}
