using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Shared;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Words;

/// <summary>Shared costs in sentences.</summary>
public static class SharedSentences
{
    /// <summary>Below the figure of running and ownership cost.</summary>
    public static Prose Kinds(SeasonReview season)
    {
        if (season.Known.Ownership is { } why)
        {
            return new Prose($"What owning costs isn't known ({why}).");
        }

        PoolResult? largest = season.Pools.MaxBy(pool => pool.Ownership.Amount);
        decimal owning = season.Pools.Sum(pool => pool.Ownership.Amount);
        return new Prose(
            largest is null || owning <= 0m
                ? "No equipment or buildings are in the records (no assets.csv, or nothing in service)."
                : $"Owning equipment and buildings costs {season.Notation.InWords(owning, Look.WholeMoney)} a year, used or not; "
                    + $"the largest part is {Phrase.Bold(largest.Pool.Name)}, "
                    + $"{season.Notation.InWords(largest.Ownership.Amount, Look.WholeMoney)}."
        );
    }

    /// <summary>Below the table of capacities.</summary>
    public static Prose Idle(SeasonReview season)
    {
        decimal Used(PoolResult pool) => pool.Users.Total / season.Network.Capacity[pool.Pool.Index]!.Value;
        List<PoolResult> known = season.Pools.Where(pool => season.Network.Capacity[pool.Pool.Index] is > 0m).OrderBy(Used).ToList();
        if (known.Count == 0)
        {
            return new Prose("No capacity is given in pools.csv, so what stood idle isn't known.");
        }

        string cost = season.Known.Ownership is { } why ? $"what capacity not used cost isn't known ({why})"
            : $"all capacity not used cost {season.Notation.InWords(known.Sum(pool => pool.Unused.Amount), Look.WholeMoney)}";
        return new Prose($"{Phrase.Bold(known[0].Pool.Name)} was used {(known.Count == 1 ? "to" : "least,")} "
            + $"{Phrase.Percent(Used(known[0]))} of what it can give; {cost}.");
    }

    /// <summary>Below the power figure.</summary>
    public static Prose Power(SeasonReview season)
    {
        List<(DateOnly Month, decimal Used, Dictionary<string, decimal> ByUser)> months = SharedPlots.Power(season);
        decimal used = months.Sum(month => month.Used);
        if (used <= 0m)
        {
            return new Prose("Power by month isn't known (no loads).");
        }

        (DateOnly most, decimal drawn, _) = months.MaxBy(month => month.Used);
        return new Prose($"The loads drew {season.Notation.Number(used, Look.Count)} kWh in the year, most in {most:MMMM}: "
            + $"{season.Notation.Number(drawn, Look.Count)} kWh.");
    }

    /// <summary>Below a comparison of methods or bases.</summary>
    public static Prose Choice(SeasonReview season, ReportTable table)
    {
        List<(string Name, decimal Spread)> rows = table
            .Rows.Where(row => row[^1].Number is not null)
            .Select(row => ((string)row[0].Value!, row[^1].Number!.Value))
            .ToList();
        if (rows.Count == 0)
        {
            return new Prose($"The comparison can't be made ({season.Known.Costs ?? season.Known.LaborCost ?? season.Farm.Known.Value}).");
        }

        List<string> flips = Turns(table).ConvertAll(Phrase.Bold);
        int close = rows.Count(row => row.Spread < 25m);
        string most = $"by {season.Notation.InWords(rows[0].Spread, Look.WholeMoney)}";
        string moves = rows[0].Spread < 0.5m ? "No crop moves. "
            : rows.Count == 1 ? $"{Phrase.Bold(rows[0].Name)} moves {most}. "
            : $"{Phrase.Bold(rows[0].Name)} moves most, {most}; {close} of {season.Notation.Count(rows.Count, "crop")} "
                + $"{(close == 1 ? "moves" : "move")} by less than {season.Notation.InWords(25m, Look.WholeMoney)}. ";
        return new Prose(
            moves
                + (
                    flips.Count == 0
                        ? "Every crop pays its way, or doesn't, whichever way is chosen."
                        : $"Whether {Phrase.List(flips)} {(flips.Count == 1 ? "pays its" : "pay their")} way depends on it."
                )
        );
    }

    /// <summary>Crops that pay their way when cost is divided one way and don't when it is divided another.</summary>
    internal static List<string> Turns(ReportTable table) =>
        [
            .. table
                .Rows.Where(row =>
                    row.Skip(1).SkipLast(1).Any(cell => cell.Number < 0m) && row.Skip(1).SkipLast(1).Any(cell => cell.Number >= 0m)
                )
                .Select(row => (string)row[0].Value!),
        ];

    /// <summary>Below the store figure: what a crate-day cost.</summary>
    public static Prose Store(SeasonReview season, string pool)
    {
        if (pool.Trim().Length == 0)
        {
            return new Prose("Nothing is divided by crate-days.");
        }

        PoolResult result = SharedTables.Find(season, pool);
        decimal days = result.Users.OfEnterprise.Sum();
        decimal all = result.Users.Total;
        string others = all > days ? $" and {season.Notation.Number(all - days, Look.Quantity)} of other users" : "";
        return new Prose(all <= 0m ? $"Nothing was held in {Phrase.Bold(result.Pool.Name)}."
            : $"{Phrase.Bold(result.Pool.Name)} held {season.Notation.Number(days, Look.Quantity)} crate-days of produce{others}; "
                + $"with what other shared costs gave it, a crate-day cost "
                + $"{season.Notation.InWords(result.CostOfUse.Amount / all, Look.Rate)}.");
    }

    /// <summary>Below the users of a measured pool: what one unit of use cost.</summary>
    public static Prose Users(SeasonReview season, string pool)
    {
        if (pool.Trim().Length == 0)
        {
            return new Prose("Nothing of that kind is divided by measured use.");
        }

        PoolResult result = SharedTables.Find(season, pool);
        List<(string Name, decimal Weight)> users = SharedTables.Users(season, result);
        if (users.Count == 0)
        {
            return new Prose($"No use of {Phrase.Bold(result.Pool.Name)} is on record for {season.CropYear}.");
        }

        string unit = SharedTables.Unit(season, result) == "kWh" ? "kWh" : "unit of use";
        return new Prose($"{Phrase.Bold(Phrase.Sentence(users[0].Name))} took most, "
            + $"{season.Notation.Number(users[0].Weight, Look.Quantity)} of {season.Notation.Number(result.Users.Total, Look.Quantity)}. "
            + $"With {season.Notation.Number(result.Hours, Look.Hours)} hours of work and what other shared costs gave it, "
            + $"a {unit} cost {season.Notation.InWords(result.CostOfUse.Amount / result.Users.Total, Look.Rate)}.");
    }

    /// <summary>Below the flow picture.</summary>
    public static Prose Flow(SeasonReview season)
    {
        List<PoolResult> givers = season
            .Pools.Where(pool => pool.PassedToPools.Amount > 0m)
            .OrderByDescending(pool => pool.PassedToPools.Amount)
            .ToList();
        List<string> passed = givers.ConvertAll(pool =>
            $"{Phrase.Bold(pool.Pool.Name)} passed {season.Notation.InWords(pool.PassedToPools.Amount, Look.WholeMoney)} on");
        string circle = Circle(season) ? ". Some also serve each other; that is worked out exactly" : "";
        return new Prose(givers.Count == 0
            ? "No shared cost serves another."
            : $"Some serve others: {Phrase.List(passed)}{circle}.");
    }

    private static bool Circle(SeasonReview season)
    {
        SharedCosts shares = season.Network.Running;
        int count = season.Pools.Count;
        return Enumerable
            .Range(0, count)
            .Any(i => Enumerable.Range(0, count).Any(j => i != j && shares.PassedTo(i, j) > 0m && shares.PassedTo(j, i) > 0m));
    }
}
