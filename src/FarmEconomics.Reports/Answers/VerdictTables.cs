using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>Columns of the tables of verdicts.</summary>
public enum VerdictColumn
{
    /// <summary>The crop.</summary>
    Crop,

    /// <summary>After every cost.</summary>
    LeftOver,

    /// <summary>Cash more or less in a year with what is advised.</summary>
    Cash,

    /// <summary>Own hours more, or less where negative.</summary>
    OwnHours,

    /// <summary>Years below full cost.</summary>
    Years,

    /// <summary>What would change it.</summary>
    Turns,

    /// <summary>Bed-feet more.</summary>
    Length,

    /// <summary>After own hours.</summary>
    AfterHours,
}

/// <summary>The verdicts as tables: crops below full cost or to be changed, crops to grow, crops to keep.</summary>
internal sealed class VerdictTables(ReviewedFarm farm, Verdicts verdicts)
{
    private readonly Notation notation = farm.Notation;

    internal IEnumerable<Block> Blocks()
    {
        ReportTable below = Below();
        if (below.Rows.Count > 0)
        {
            string heading = $"Drop, change, fix or leave: {Phrase.Spelled(below.Rows.Count, "crop")}";
            yield return new TableBlock(DropOrGrowBlock.Below, heading, below)
            {
                Rows = 0,
            };
        }

        List<Verdict> grow = By(Direction.Grow);
        if (grow.Count > 0)
        {
            yield return new TableBlock(DropOrGrowBlock.Grow, $"Grow {Phrase.Spelled(grow.Count, "crop")}", Grow(grow));
        }

        List<Verdict> keep = By(Direction.Keep);
        if (keep.Count > 0)
        {
            yield return new TableBlock(
                DropOrGrowBlock.Keep,
                $"Keep {Phrase.Spelled(keep.Count, "crop")}",
                Without($"Each crop taken alone. Cash: what the farm would have more or less of in a year without it.", [(null, keep)])
            );
        }
    }

    private ReportTable Below()
    {
        List<(Direction? Direction, List<Verdict> Crops)> groups = [];
        foreach (Direction direction in new[] { Direction.DropOrChange, Direction.TooClose, Direction.Fix, Direction.Unknown })
        {
            List<Verdict> crops = By(direction);
            if (crops.Count > 0)
            {
                groups.Add((direction, crops));
            }
        }

        return Without(
            "Each crop taken alone. Cash: what the farm would have more or less of in a year with other crops in its beds where that is "
                + $"advised, else without it.{(By(Direction.DropOrChange).Count > 0 ? notation.Label(" In parentheses: bed-feet.") : "")}",
            groups);
    }

    private ReportTable Without(string title, List<(Direction? Direction, List<Verdict> Crops)> groups)
    {
        ReportTable table = new ReportTable(title, notation)
            .Column("Crop").As(VerdictColumn.Crop)
            .Column("Left over", Look.WholeMoney, unit: $"{verdicts.Season.CropYear}, {notation.Sign}").As(VerdictColumn.LeftOver)
            .HiddenOnPhone().Column("Cash", Look.WholeMoney, unit: $"{notation.Sign} a year").As(VerdictColumn.Cash)
            .AsChange()
            .Column("Own hours", Look.Count, unit: "more or less")
            .As(VerdictColumn.OwnHours)
            .AsChange()
            .Column("Years", unit: $"below {verdicts.Season.Farm.Known.FullCostLabel}")
            .As(VerdictColumn.Years)
            .HiddenOnPhone()
            .Column("What would change it")
            .As(VerdictColumn.Turns)
            .Wrapping();
        foreach ((Direction? direction, List<Verdict> crops) in groups)
        {
            if (direction is { } shown)
            {
                (string name, string words) = VerdictCards.Said(shown, crops);
                table.Group($"{name}: {crops.Count}", words);
            }

            foreach (Verdict verdict in crops)
            {
                ReportCell Known(decimal value) => ReportCell.Known(value, verdict.WhyUnknown);
                table.Row(
                    Name(verdict),
                    ReportCell.Of(verdict.Budget.Line(BudgetLine.NetReturn)),
                    Known(verdict.Advised.Cash.Amount),
                    Known(-verdict.Advised.OwnHours),
                    Years(verdict),
                    verdict.WhyUnknown is null ? Turns(verdict) : ""
                );
            }
        }

        return table;
    }

    private ReportTable Grow(List<Verdict> crops)
    {
        LengthUnit length = farm.Settings.LengthUnit;
        const string InOthersBeds = "What a crop brings in the beds of others stands with those.";
        bool anyAlone = crops.Exists(verdict => verdict.More is not null);
        ReportTable table = new ReportTable(
            anyAlone ? "At today's price up to the most each channel took in a week, then at a lower one. " + InOthersBeds : InOthersBeds,
            notation
        )
            .Column("Crop").As(VerdictColumn.Crop)
            .Column("More length", Look.Count, unit: length.Label("bed-feet")).As(VerdictColumn.Length);
        if (anyAlone)
        {
            table = table.Column("Cash", Look.WholeMoney, unit: $"{notation.Sign} a year").As(VerdictColumn.Cash).AsChange()
                .Column("Own hours", Look.Count, unit: "more").As(VerdictColumn.OwnHours)
                .Column("After own hours", Look.WholeMoney).As(VerdictColumn.AfterHours).AsChange().HiddenOnPhone();
        }

        table = table.Column(anyAlone ? "Where, and when it stops paying" : "Where").As(VerdictColumn.Turns).Wrapping();
        IEnumerable<Verdict> ordered = crops
            .OrderBy(verdict => verdict.More is null)
            .ThenByDescending(verdict => verdict.More?.Means.Net.Amount ?? verdict.InPlaceOf.Sum(place => place.BedFeet));
        foreach (Verdict verdict in ordered)
        {
            table.Row(verdict.More is { } more
                ? [Name(verdict), more.BedFeet, more.Means.Cash, -more.Means.OwnHours, more.Means.Net, Stops(more)]
                : [
                    Name(verdict),
                    verdict.InPlaceOf.Sum(place => place.BedFeet),
                    .. anyAlone ? new ReportCell[] { "", "", "" } : [],
                    $"in the beds of {Phrase.List([.. verdict.InPlaceOf.Select(place => place.Crop)])}"
                ]);
        }

        return table.Note(
            crops.Exists(verdict => verdict.More is { } more && !more.StopsAtElasticity.IsAvailable)
                ? "Blank: it pays at any price drop looked at."
                : null
        );
    }

    private string Stops(GrowthTried more) => more.StopsAtElasticity.Value is { } turns
        ? notation.Text($"stops when selling 1% more takes a price {1m / Math.Max(turns, 0.01m):0.#}% lower")
        : "";

    private string Turns(Verdict verdict)
    {
        if (verdict.BetterMix is { } mix)
        {
            IEnumerable<string> crops = mix.Crops.Select(one => $"{one.Crop} ({notation.Number(one.BedFeet, Look.Count)})");
            string hours = verdict.BeyondLimit.Count > 0
                ? $"; {notation.Count(verdict.BeyondLimit.Count, "week")} short of hours"
                : "";
            return $"grow {Phrase.List([.. crops])} there{hours}";
        }

        if (verdict.TurnsAtWage.Value is { } wage)
        {
            return $"pays while your own hours count for less than {BlockNumber.Of(wage, Look.Money, notation)}";
        }

        if (verdict.LosesPaidHoursOnly)
        {
            return "pays unless its hired hours, paid all the same, earn their wage elsewhere";
        }

        bool up =
            verdict.Direction is Direction.DropOrChange or Direction.Fix
            || (verdict.Direction == Direction.TooClose && verdict.Mean.Amount < 0m);
        string unit = verdict.Budget.Crop?.Unit ?? "unit";
        string? price =
            verdict.Needs.Price.Value is { } money && (money > 0m) == up
                ? $"{BlockNumber.Of(Math.Abs(money), Look.Rate, notation)} {(up ? "more" : "less")} {UnitWords.Per(unit)}"
                : null;
        string? yield =
            verdict.Needs.Yield.Value is { } part && (part > 0m) == up && Math.Abs(part) < 10m
                ? $"{BlockNumber.Percent(Math.Abs(part), notation)} {(up ? "more" : "less")} yield"
                : null;
        string ways = string.Join(", or ", new[] { price, yield }.OfType<string>());
        return ways.Length == 0 ? "no price or yield alone" : up ? $"needs {ways}" : $"turns at {ways}";
    }

    private ReportCell Name(Verdict verdict) => ((ReportCell)verdict.Budget.Name).To(PageTarget.Crop(farm.Slugs[verdict.Budget.Name]));

    private static string Years(Verdict verdict) => (verdict.Outcome.YearsLost, verdict.Outcome.Years.Count) switch
    {
        (_, 0) => "",
        (0, _) => "none",
        (var lost, var all) when lost == all => all == 1 ? "the one" : $"all {all}",
        (var lost, var all) => $"{lost} of {all}",
    };

    private List<Verdict> By(Direction direction) =>
        [.. verdicts.Crops.Where(verdict => verdict.Direction == direction).OrderByDescending(verdict => verdict.Budget.NetReturn.Amount)];
}
