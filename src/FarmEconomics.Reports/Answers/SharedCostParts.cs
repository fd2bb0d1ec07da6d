using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Shared;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The columns of the table of shared costs.</summary>
public enum SharedCostColumn
{
    /// <summary>Its name.</summary>
    Name,

    /// <summary>What it is divided by.</summary>
    DividedBy,

    /// <summary>Cash, labor and owning.</summary>
    Cost,

    /// <summary>Hours in it.</summary>
    Hours,

    /// <summary>The yearly cost of owning in it.</summary>
    Owning,

    /// <summary>What the crops carry of it.</summary>
    ToCrops,

    /// <summary>Capacity nobody used.</summary>
    NotUsed,
}

/// <summary>The first screen of the page on shared costs.</summary>
internal sealed class SharedCostParts
{
    private const decimal RoomBelow = 0.85m;
    private readonly ReviewedFarm farm;
    private readonly SeasonReview season;
    private readonly Notation notation;
    private readonly List<PoolResult> pools;

    internal SharedCostParts(ReviewedFarm farm)
    {
        this.farm = farm;
        season = farm.Season;
        notation = farm.Notation;
        pools = [.. PoolTables.Busy(season)];
    }

    /// <summary>False when no shared cost holds anything.</summary>
    internal bool Any => Total > 0m;

    private decimal Total => pools.Sum(pool => pool.Total.Amount);

    private decimal Owning => pools.Sum(pool => pool.Ownership.Amount);

    // A farm that lists no equipment has no cost of owning in its figures; that it owns nothing, no record says.
    private string? OwnershipUnknown =>
        season.Known.Ownership ?? (season.Records.Tables.Assets.Count == 0 ? "no equipment or building is on record" : null);

    /// <summary>What no sum of shared cost here holds, because the records don't tell it: ", cash and hours not counted".</summary>
    internal string LeftOut
    {
        get
        {
            (string? Unknown, string Name)[] parts =
            [
                (season.Known.Costs, "cash"),
                (season.Known.LaborCost ?? season.Known.OwnerLabor, "hours"),
                (season.Known.Ownership, "owning"),
            ];
            string[] missing = [.. parts.Where(part => part.Unknown is not null).Select(part => part.Name)];
            return missing.Length == 0 ? "" : $", {Phrase.List(missing)} not counted";
        }
    }

    private decimal ToCrops => pools.Sum(pool => pool.ToCrops.Amount);

    private decimal Unused => pools.Sum(pool => pool.Unused.Amount);

    private decimal NotAssigned => pools.Sum(pool => pool.NotAssigned.Amount);

    /// <summary>The finding.</summary>
    internal HeadlineBlock Headline => new(SharedCostsBlock.Headline, Finding(), Why(), SeasonWords.SureLine(farm));

    /// <summary>What was divided, owning, idle, the crops' part.</summary>
    internal FiguresBlock Figures =>
        new(
            SharedCostsBlock.Figures,
            [
                new(
                    "divided",
                    Money(Total),
                    Total,
                    $"shared: {Cash()}, {Hours()}, {(OwnershipUnknown is null ? "and owning" : "owning not known")}"
                ),
                OwnershipUnknown is { } why
                    ? new("owning", "", null, $"what owning costs isn't known: {why}")
                    : new("owning", Money(Owning), Owning, "a year to own equipment and buildings, used or not"),
                OwnershipUnknown is { } unknown
                    ? new("not-used", "", null, $"what stood idle isn't known: {unknown}")
                    : Known().Count == 0 && Unused == 0m
                    ? new("not-used", "", null, "what stood idle isn't known: pools.csv gives no capacity")
                    : new("not-used", Money(Unused), Unused, "for capacity you didn't use; no crop pays for it"),
                season.Farm.TotalCost.Amount > 0m && season.Known.NoFullNetReturn is null
                    ? new(
                        "of-crops",
                        BlockNumber.Percent(ToCrops / season.Farm.TotalCost.Amount, notation),
                        ToCrops / season.Farm.TotalCost.Amount,
                        $"of the crops' full cost is shared: {Money(ToCrops)}"
                    )
                    : new("of-crops", Money(ToCrops), ToCrops, "of it reached the crops"),
            ]
        );

    /// <summary>Every shared cost: how much, divided by what, owned, and where it went.</summary>
    internal TableBlock Costs()
    {
        ReportTable table = new ReportTable(
            $"Cost is cash, hours and owning together{LeftOut}, {notation.Sign} in {season.CropYear}. "
                + $"The household's part and cost without a user are in the details.",
            notation
        )
            .Column("Shared cost").As(SharedCostColumn.Name).Wrapping()
            .Column("Divided by").As(SharedCostColumn.DividedBy).HiddenOnPhone()
            .Column("Cost", Look.WholeMoney).As(SharedCostColumn.Cost).WithBar()
            .Column("Hours", Look.Count).As(SharedCostColumn.Hours).HiddenOnPhone()
            .Column("Owning", Look.WholeMoney).As(SharedCostColumn.Owning).HiddenOnPhone()
            .Column("To crops", Look.WholeMoney).As(SharedCostColumn.ToCrops)
            .Column("Not used", Look.WholeMoney).As(SharedCostColumn.NotUsed);
        ReportCell Owned(PoolResult? pool, decimal value) =>
            ReportCell.Known(value, pool?.OwnershipKnown ?? season.Known.Ownership is null ? null : season.Known.Ownership);
        foreach (PoolResult pool in pools)
        {
            table.Row(
                Name(pool),
                Counts(pool.Users.BasisUsed),
                Owned(pool, pool.Total.Amount),
                ReportCell.Known(pool.Hours, season.Known.Hours),
                Owned(pool, pool.Ownership.Amount),
                Owned(pool, pool.ToCrops.Amount),
                Owned(pool, pool.Unused.Amount)
            );
        }

        table.Total(
            "All",
            "",
            Owned(null, Total),
            ReportCell.Known(pools.Sum(pool => pool.Hours), season.Known.Hours),
            Owned(null, Owning),
            Owned(null, ToCrops),
            Owned(null, Unused)
        );
        return new TableBlock(SharedCostsBlock.Costs, CostsHeading(), table) { Rows = 0 };
    }

    private static string Counts(Basis basis) => basis.Stage is { } stage
        ? $"{basis.Kind.Counts} of {Plots.SeasonPlots.StageName(stage).ToLowerInvariant()}"
        : basis.Kind.Counts;

    /// <summary>Who used power and heat: two small charts; none where nothing is measured.</summary>
    internal IEnumerable<Block> Users(string power, string heat)
    {
        List<Block> charts = [];
        foreach ((SharedCostsBlock key, string pool) in new[] { (SharedCostsBlock.Heat, heat), (SharedCostsBlock.Power, power) })
        {
            if (pool.Length > 0 && UsersOf(key, pool) is { } chart)
            {
                charts.Add(chart);
            }
        }

        return charts.Count == 2 ? [new PairBlock(SharedCostsBlock.Users, charts)] : charts;
    }

    /// <summary>What to do about it.</summary>
    internal ProseBlock ToDo(ReportTable ways)
    {
        List<string> lines = [.. OfUse(), .. OfRecords()];
        List<string> turns = SharedSentences.Turns(ways);
        if (turns.Count > 0)
        {
            List<string> names = [.. turns.Take(4).Select(name => PageTarget.Link(name, PageTarget.Crop(farm.Slugs[name])))];
            if (turns.Count > names.Count)
            {
                names.Add($"{turns.Count - names.Count} more");
            }

            lines.Add($"There is no one right way to divide shared cost. "
                + $"Whether {Phrase.List(names)} paid every cost depends on it: don't decide on that alone.");
        }

        string said = lines.Count == 0 ? "Nothing stands out." : string.Join("\n", lines.Select(line => "- " + line));
        return new ProseBlock(SharedCostsBlock.ToDo, "What to do", new Prose(said));
    }

    private IEnumerable<string> OfUse()
    {
        foreach ((PoolResult pool, decimal used) in Known().Where(known => known.Used < RoomBelow).Take(2))
        {
            yield return $"{Phrase.Bold(Name(pool))}: {Phrase.Percent(used)} used."
                + (pool.Unused.Amount > 0m ? $" The rest costs {Money(pool.Unused.Amount)} a year either way." : "");
        }

        foreach ((PoolResult pool, decimal used) in Known().Where(known => known.Used >= RoomBelow).Take(2))
        {
            yield return $"{Phrase.Bold(Name(pool))}: {Phrase.Percent(used)} used, "
                + (used > 1m ? "more than pools.csv says it can give: look at its capacity." : "nearly full.");
        }
    }

    private IEnumerable<string> OfRecords()
    {
        PoolResult? most = pools.Where(pool => pool.Hours > 0m && pool.Pool.Channel is null).MaxBy(pool => pool.Hours);
        if (most is not null && season.Known.Hours is null)
        {
            yield return $"{Phrase.Bold(Name(most))}: {notation.Number(most.Hours, Look.Count)} of "
                + $"{notation.Number(pools.Sum(pool => pool.Hours), Look.Count)} shared hours. Log them by crop where you can.";
        }

        if (NotAssigned > 0m)
        {
            yield return $"{Money(NotAssigned)} found no user{season.Known.OwnershipLeftOut}. "
                + "No crop pays for it: write down who used it, in use.csv or loads.csv.";
        }
    }

    private PlotBlock? UsersOf(SharedCostsBlock key, string pool)
    {
        PoolResult result = SharedTables.Find(season, pool);
        ReportTable table = SharedTables.UsersOf(season, pool);
        if (table.Rows.Count == 0)
        {
            return null;
        }

        List<(string Name, decimal Part, decimal Cost)> users =
        [
            .. table.Rows.Select(row => ((string)row[0].Value!, row[2].Number ?? 0m, row[3].Number ?? 0m)),
        ];
        decimal lost = result.Users.NotAssigned, most = table.Rows[0][1].Number ?? 0m;
        string heading = lost >= most ? $"{Phrase.Percent(users[0].Part)} of the {result.Pool.Name} has no user on record"
            : users.Count == 1 ? $"{Phrase.Sentence(users[0].Name)} alone used the {result.Pool.Name}"
            : $"{Phrase.Sentence(users[0].Name)} used the {result.Pool.Name} most: {Phrase.Percent(users[0].Part)}";
        return new PlotBlock(
            key,
            heading,
            $"Cost that went with the use, {notation.Sign} in {season.CropYear}.",
            new Chart(table)
            {
                Bars = new BarList(
                    $"Who used {result.Pool.Name}",
                    [
                        .. users.Select(user => new Bar(
                            Phrase.Sentence(user.Name),
                            user.Cost,
                            Money(user.Cost),
                            $"{user.Name}: {BlockNumber.Percent(user.Part, notation)} of the use, {Money(user.Cost)}"
                        )),
                    ]
                )
                {
                    IsHalf = true,
                },
            }
        );
    }

    private string Finding() => !Any ? $"No shared cost is on record for {season.CropYear}"
        : LeftOut.Length > 0 || Owning <= 0m ? $"Shared costs came to {Money(Total)}{LeftOut}"
        : $"Owning equipment and buildings cost {Money(Owning)}, used or not: "
            + $"{BlockNumber.Percent(Owning / Total, notation)} of all shared cost";

    private Prose? Why()
    {
        if (!Any)
        {
            return season.Known.Costs is { } why ? new Prose($"{Phrase.Sentence(Prose.Text(why))}.") : null;
        }

        decimal household = pools.Sum(pool => pool.ToHousehold.Amount);
        string crops = $"The crops carry **{Money(ToCrops)}** of {Money(Total)} in shared "
            + $"cost{LeftOut}{(household > 0m ? $", your household {Money(household)}" : "")}.";
        List<PoolResult> idle = [.. pools.Where(pool => pool.Unused.Amount > 0m).OrderByDescending(pool => pool.Unused.Amount)];
        string unused = OwnershipUnknown is { } reason ? $" What owning costs isn't known: {Prose.Text(reason)}."
            : idle.Count == 0 ? " Nothing is known to have stood idle."
            : $" **{Money(Unused)}** paid for capacity you didn't use, {Most(idle)} {Prose.Text(idle[0].Pool.Name)}; "
                + "no crop pays for that.";
        return new Prose(crops + unused);
    }

    private static string Most(List<PoolResult> idle) => idle.Count == 1 ? "all of it"
        : idle[0].Unused.Amount * 2m > idle.Sum(pool => pool.Unused.Amount) ? "most of it"
        : "above all";

    private string Cash() => season.Known.Costs is { } why ? $"cash not known ({why})"
        : $"{Money(pools.Sum(pool => pool.Cash.Amount))} cash";

    private string Hours() => season.Known.Hours is { } why
        ? $"hours of work not known ({why})"
        : $"{notation.Number(pools.Sum(pool => pool.Hours), Look.Count)} hours of work";

    private string CostsHeading()
    {
        return pools.Count < 3
            ? "The shared costs"
            : $"{Name(pools[0])} and {Small(pools[1])} make "
                + $"{BlockNumber.Percent((pools[0].Total.Amount + pools[1].Total.Amount) / Total, notation)} of it";
    }

    // A channel's own cost is named after what is done there.
    private static string Small(PoolResult pool) => pool.Pool.Channel is { } channel ? $"selling at {channel.Name}" : pool.Pool.Name;

    private static string Name(PoolResult pool) => Phrase.Sentence(Small(pool));

    private List<(PoolResult Pool, decimal Used)> Known() =>
        [
            .. season
                .Pools.Where(pool => season.Network.Capacity[pool.Pool.Index] is > 0m && pool.OwnershipKnown)
                .Select(pool => (Pool: pool, Used: pool.Users.Total / season.Network.Capacity[pool.Pool.Index]!.Value))
                .OrderByDescending(known => known.Pool.Unused.Amount),
        ];

    private string Money(decimal amount) => BlockNumber.Of(amount, Look.WholeMoney, notation);
}
