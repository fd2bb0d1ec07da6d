using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Water;

namespace FarmEconomics.Reports.Supply;

/// <summary>The list to take to the field: which blocks get how much, which wait, and what that loses.</summary>
public sealed class WaterList
{
    /// <summary>What must be said once wherever water or power is told.</summary>
    public const string Cautions = "Water rights, wells and wiring follow your local codes and licensed trades.";

    // Under half a unit of the currency a block is not worth a walk.
    private const double Little = 0.5;
    private const int MostCrops = 3;

    private readonly WaterAndPower supply;
    private readonly WaterAtHand hand;
    private readonly WaterTriage triage;
    private readonly Notation notation;

    private WaterList(WaterAndPower supply, WaterAtHand hand)
    {
        this.supply = supply;
        this.hand = hand;
        triage = supply.Triage(hand);
        notation = supply.Season.Notation;
    }

    /// <summary>Makes the list.</summary>
    /// <param name="supply">The farm's water.</param>
    /// <param name="hand">What there is to water with.</param>
    /// <returns>The list.</returns>
    public static WaterList Of(WaterAndPower supply, WaterAtHand hand)
    {
        ArgumentNullException.ThrowIfNull(supply);
        ArgumentNullException.ThrowIfNull(hand);
        return new WaterList(supply, hand);
    }

    /// <summary>The answer in a sentence or two.</summary>
    public string Answer
    {
        get
        {
            string at = hand.Days == 1 ? Looks.LongDay(hand.From)
                : $"{Looks.LongDay(hand.From)} to {Looks.LongDay(hand.From.AddDays(hand.Days - 1))}";
            string until = Looks.LongDay(Until);
            if (triage.Unwatered < Little)
            {
                return $"{at}: nothing loses by going dry until {until}.";
            }

            int first = Watered.Count();
            if (first == 0)
            {
                return $"{at}: what there is saves next to nothing. By {until} the beds lose {Money(triage.Lost)}.";
            }

            // Whole sets can't be put on as the same depth everywhere, which might lose less than any list that keeps to them.
            string evenly = triage.Lines.Any(line => line.Sets is not null) ? ""
                : $"the same depth everywhere would lose {Money(triage.LostEvenly)}, ";
            return $"{at}: water {notation.Count(first, "block")}, in this order. By {until} that loses {Money(triage.Lost)}; "
                + $"{evenly}no water at all {Money(triage.Unwatered)}.";
        }
    }

    /// <summary>The blocks that get water.</summary>
    /// <returns>A table.</returns>
    public ReportTable First()
    {
        bool sets = triage.Lines.Any(line => line.Sets is not null);
        ReportTable table = new ReportTable("Water these, from the top down", notation).InOrder().Column("Block").Column("Stands there")
            .Column(Heading, hand.InSprinklerHours ? Look.Quantity : Look.Count).Column("Saves", Look.WholeMoney)
            .Column("By each", Look.Rate, per: hand.InSprinklerHours ? "sprinkler-hour" : notation.Label("1,000 gallons"))
            .Column("Still loses", Look.WholeMoney);
        if (sets)
        {
            table.Column("Whole sets", Look.Count);
        }

        foreach (TriageLine line in Watered)
        {
            List<ReportCell> cells = [line.Block.Name, CropsOf(line.Block), Units(line.Amount), (decimal)line.Saved,
                (decimal)line.SavedPerUnit * (hand.InSprinklerHours ? 1m : 1000m * (decimal)supply.LitersPerUnit), (decimal)line.Lost];
            if (sets)
            {
                cells.Add(line.Sets is { } count ? count : (ReportCell)"");
            }

            table.Row(cells);
        }

        return table;
    }

    /// <summary>The blocks that wait although they lose by it.</summary>
    /// <returns>A table; without rows where none does.</returns>
    public ReportTable Waiting()
    {
        ReportTable table = new ReportTable("Leave these", notation).InOrder().Column("Block").Column("Stands there")
            .Column("Loses", Look.WholeMoney)
            .Column("Would take", hand.InSprinklerHours ? Look.Quantity : Look.Count, Heading.ToLowerInvariant());
        foreach (TriageLine line in triage.Lines.Except(Watered).Where(line => line.Unwatered >= Little)
            .OrderByDescending(line => line.Unwatered))
        {
            table.Row(line.Block.Name, CropsOf(line.Block), (decimal)line.Unwatered, line.Wanted > 0 ? Units(line.Wanted)
                : (ReportCell)"no water helps by then");
        }

        return table;
    }

    /// <summary>What else must be known: what more would save, who loses nothing, what was taken as it is.</summary>
    public IEnumerable<string> Notes()
    {
        if (triage.Unwatered >= Little)
        {
            yield return Corner();
        }

        string fine = string.Join(", ", triage.Lines.Except(Watered).Where(line => line.Unwatered < Little)
            .Select(line => line.Block.Name));
        if (fine.Length > 0)
        {
            yield return $"Next to nothing lost by {Looks.LongDay(Until)} without water: {fine}.";
        }

        if (triage.Gap >= Little && triage.Lines.Any(line => line.Sets is not null))
        {
            yield return $"Could sets be divided, at most {Money(triage.Gap)} more would be saved.";
        }

        if (SprinklersMissing() is { } more)
        {
            yield return more;
        }

        foreach (IGrouping<string, (SowingWater Sowing, string Why)> why in triage.NotRanked.GroupBy(one => one.Why))
        {
            yield return $"Not ranked, {why.Key}: {Names(why.Select(one => Named(one.Sowing)))}.";
        }

        foreach (string taken in Taken())
        {
            yield return taken;
        }
    }

    /// <summary>The list as text.</summary>
    /// <returns>Lines for a terminal or a sheet of paper.</returns>
    public string ToPlainText()
    {
        List<string> parts = [Answer, ""];
        parts.AddRange(new[] { First(), Waiting() }.Where(table => table.Rows.Count > 0).Select(table => table.ToPlainText()));
        parts.AddRange(Notes());
        return string.Join('\n', parts);
    }

    private DateOnly Until => hand.From.AddDays(hand.Days + WaterTriage.DaysAfter - 1);

    private IEnumerable<TriageLine> Watered => triage.Lines.Where(line => line.Amount > 0 && line.Saved >= Little);

    private string CropsOf(WaterBlock block)
    {
        string[] crops = [.. supply.Farm.Sowings.Where(sowing => sowing.Block.Name == block.Name && sowing.Span.Holds(hand.From))
            .GroupBy(sowing => sowing.Planting.Crop).OrderByDescending(crop => crop.Sum(sowing => sowing.AreaM2))
                .Select(crop => crop.Key.Name)];
        return crops.Length <= MostCrops ? string.Join(", ", crops)
            : notation.Text($"{string.Join(", ", crops.Take(MostCrops - 1))} and {crops.Length - MostCrops + 1} more");
    }

    private string Heading => hand.InSprinklerHours ? "Sprinkler-hours" : notation.Label("Gallons");

    private decimal Units(double amount) => (decimal)(hand.InSprinklerHours ? amount : amount / supply.LitersPerUnit);

    private string Corner()
    {
        double step = hand.InSprinklerHours ? 1 : supply.LimitStep * supply.LitersPerUnit;
        double now = triage.SavedWith(hand.Amount);
        double more = triage.SavedWith(hand.Amount + step) - now;
        double less = now - triage.SavedWith(hand.Amount - step);
        string unit = hand.InSprinklerHours ? "One sprinkler-hour" : notation.Text($"{supply.LimitStep} gallons");
        double left = hand.Amount - triage.Lines.Sum(line => line.Amount);
        if (more < Little && left > step)
        {
            return notation.Text($"{Units(left):#,0} {Heading.ToLowerInvariant()} are left over: more water saves nothing by then.");
        }

        string fewer = hand.Amount < step ? "" : $"; {(hand.InSprinklerHours ? "one" : "as much")} less would cost {Money(less)}";
        return $"{unit} more would save {Money(more)}{fewer}.";
    }

    // Gallons were asked for; the sprinklers they take are looked at beside them.
    private string? SprinklersMissing()
    {
        double takes = hand.InSprinklerHours
            ? 0
            : triage
                .Lines.Where(line => line.Block.SprinklerLiters is not null)
                .Sum(line => line.Amount / line.Block.SprinklerLiters!.Value);
        double? there = Enumerable
            .Range(0, hand.Days)
            .Sum(day => supply.LimitOn(hand.From.AddDays(day)).SprinklerHours ?? double.PositiveInfinity);
        return takes > there
            ? notation.Text(
                $"That takes {(decimal)takes:#,0} sprinkler-hours; by limits.csv there are {(decimal)there.Value:#,0}. "
                    + $"Ask with --sprinklers and --hours instead."
            )
            : null;
    }

    private string Named(SowingWater sowing) =>
        IsWithoutSprinklers(sowing.Block) ? sowing.Block.Name : $"{sowing.Planting.Name} in {sowing.Block.Name}";

    private bool IsWithoutSprinklers(WaterBlock block) => hand.InSprinklerHours && block.SprinklerLiters is null;

    private IEnumerable<string> Taken()
    {
        FarmWeather weather = supply.Farm.Weather;
        if (weather.Last < Until)
        {
            yield return supply.Season.Settings.Site.Climate is null
                ? $"Weather after {Looks.LongDay(weather.Last!.Value)} is taken as the mean of the last seven days known, without rain."
                : $"Weather after {Looks.LongDay(weather.Last!.Value)} is taken as farm.csv says of the month, without rain.";
        }

        string assumed = Names(triage.Lines.SelectMany(line =>
            supply.Farm.Sowings.Where(sowing => sowing.Block.Name == line.Block.Name && sowing.Span.Holds(hand.From)))
            .Where(sowing => sowing.Crop.IsResponseAssumed).Select(sowing => sowing.Planting.Crop.Name));
        if (assumed.Length > 0)
        {
            yield return $"No table tells how {assumed} answer to drought: taken to lose as much of the yield as of the water.";
        }

        string unknown = Names(supply.Farm.Log.Unknown.Where(week => week.Monday <= hand.From && week.Monday.AddDays(28) > hand.From)
            .Select(week => $"{week.Block.Name}, week of {Looks.LongDay(week.Monday)}"));
        if (unknown.Length > 0)
        {
            yield return $"No watering is written for these weeks, so they are taken as watered full: {unknown}.";
        }

        if (!supply.Farm.Log.IsThere)
        {
            yield return "There is no watering table: what you put on is not known, and the soil is taken to have had rain alone.";
        }
    }

    private static string Names(IEnumerable<string> names) => string.Join("; ", names.Distinct().Order(StringComparer.Ordinal));

    private string Money(double money) => notation.InWords((decimal)money, Look.WholeMoney);
}
