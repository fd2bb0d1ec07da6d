using System.Globalization;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Units;
using FarmEconomics.Water;
using FarmEconomics.Water.Power;

namespace FarmEconomics.Reports.Answers;

/// <summary>The sentences and figures of the page on water and power.</summary>
internal sealed class WaterWords(WaterAndPower supply)
{
    private const double Least = 0.5;

    private const double FarOff = 4;

    // Fewer hours of a generator than these may be a test run or a dark morning.
    private const double ManyHours = 5;

    private readonly Notation notation = supply.Season.Notation;
    private readonly WaterSeason? water = supply.Water;
    private readonly PowerSeason power = supply.Power;

    /// <summary>The day of the season that lost most at the limit, or as watered; null where none lost anything.</summary>
    internal DateOnly? WorstDay => water?.WorstDay;

    internal string Headline
    {
        get
        {
            if (water is null)
            {
                return power.WhyUnknown is null ? PowerHeading : "What is written about water and power is not enough to tell what it cost";
            }

            if (!water.WorthIsKnown)
            {
                return "What drought cost is not known";
            }

            string lost = water.LostAsWatered is { } asWatered ? $"; as you watered, drought cost {Money(asWatered)}"
                : water.LostAtLimit is { } atLimit ? $" and cost {Money(atLimit)}" : "";
            return water.DaysShort > 0 ? $"Water ran short on {notation.Count(water.DaysShort, "day")}{Months(water)}{lost}"
                : water.HasLimit
                ? $"The limit {(water.Weeks.Any(IsOver) ? "cost nothing" : "kept no water back")}"
                    + $"{(water.LostAsWatered is { } anyway ? $"; as you watered, drought cost {Money(anyway)}" : "")}"
                : water.LostAsWatered is { } only ? $"Drought cost {Money(only)} as you watered"
                : $"The beds needed up to {Volume(Peak)} a week";
        }
    }

    internal Prose Why
    {
        get
        {
            if (water is null)
            {
                return new Prose($"Water: {supply.WhyNoWater}. {(power.WhyUnknown is { } why ? $"Power: {why}." : "")}");
            }

            double? weekly = water.Weeks.Max(week => week.Limit);
            string need = weekly is { } limit ? $"The beds needed up to {Volume(Peak)} a week; the limit gives {Volume(limit)}."
                : water.HasLimit ? $"The beds needed up to {Volume(Peak)} a week; the sprinklers and the hours they run are the limit."
                : $"The beds needed up to {Volume(Peak)} a week; no row of limits.csv says how much water there is a day.";
            string saved = water is { LostAsWatered: { } put, LostAtLimit: { } best } && put - best > Least
                ? $" Watered in the order of the daily list, the same limit would have lost {Money(best)}: {Money(put - best)} less."
                : supply.WhyNoWorth is { } unknown ? $" What more yield would have added isn't known: {Prose.Text(unknown)}."
                : supply.Crops.Any(crop => crop.Use.Worth == YieldWorth.Pays) ? ""
                : " More yield of any crop would have added nothing: picking and selling it takes all that it brings.";
            string early = water.WeatherEndsBeforePicking is { } last
                ? $" The weather is written to {Looks.LongDay(last)}, with most of a sowing still to be picked: "
                    + "nothing is told of the days after."
                : "";
            int over = water.Weeks.Count(week => week.Put > week.Limit);
            string beyond = over == 0 ? ""
                : $" In {notation.Count(over, "week")} you put on more than limits.csv says there is: is the limit right?";
            return new Prose(need + saved + beyond + early);
        }
    }

    internal string? HowSure
    {
        get
        {
            if (water is null)
            {
                return null;
            }

            int unknown = supply.Farm.Log.Unknown.Count(week => supply.Season.Settings.WindowOf(week.Monday) == supply.Season.CropYear);
            List<string> full = [];
            if (unknown > 0)
            {
                full.Add($"{notation.Count(unknown, "week")} of a block without a note");
            }

            if (water.DaysWithoutWeather is > 0 and int days)
            {
                full.Add($"{notation.Count(days, "day")} without weather");
            }

            string log = !water.HasLog ? "no watering is written" : unknown == 0 ? "watering is written for every week" : "";
            bool one = unknown + water.DaysWithoutWeather == 1;
            string taken = full.Count == 0 ? "" : $"{Phrase.List(full)} {(one ? "counts" : "count")} as watered full";
            return $"Crop need from published tables and {Phrase.List([.. Sources().DefaultIfEmpty("your weather")])}; "
                + $"{string.Join("; ", new[] { log, taken }.Where(words => words.Length > 0))}.";
        }
    }

    internal FiguresBlock Figures
    {
        get
        {
            List<KeyFigure> figures = [];
            if (water is not null)
            {
                figures.Add(new KeyFigure("days-short", notation.Number(water.DaysShort, Look.Count), (decimal)water.DaysShort,
                    water.HasLimit ? "days on which the limit cost something" : "no limit is written"));
                figures.Add(Of("lost", water.LostAtLimit, "of harvest lost at the limit, less what it would have cost to pick and sell"));
                if (water.WorthIsKnown && (supply.SavedByMore.IsAvailable || !water.HasLimit))
                {
                    figures.Add(
                        Of(
                            "saved-by-more",
                            (double?)supply.SavedByMore.Value,
                            notation.Text(
                                $"a season, from {supply.LimitStep} gallons a day more; as much less would cost {Worth(supply.LostByLess)}"
                            )
                        )
                    );
                }
            }

            if (power.WhyUnknown is null)
            {
                figures.Add(
                    new KeyFigure(
                        "power-days-short",
                        notation.Number(power.DaysShort, Look.Count),
                        (decimal)power.DaysShort,
                        "days sun and battery fell short"
                    )
                );
            }

            return new FiguresBlock(WaterBlock.Figures, figures);
        }
    }

    internal string WorthHeading
    {
        get
        {
            WaterWorth best = supply.WorthOfMore.MaxBy(one => one.Saved.Value)!;
            return best.Saved.Value is { } saved && saved >= (decimal)Least
                ? $"{Phrase.Sentence(Supply.SupplyTables.StepWords(best, notation))}{(best.Step == WaterStep.Water ? "" : ",")} would "
                    + $"have saved {Money((double)saved)}"
                : "More would have saved nothing";
        }
    }

    internal string WeeksHeading =>
        !HasWeeklyLimit ? "What the beds needed, week by week"
            : water!.Weeks.Any(IsOver)
                ? $"{Phrase.Sentence(notation.Count(water.Weeks.Count(IsOver), "week"))} went over the limit"
            : "No week went over the limit";

    internal string WeeksCaption =>
        notation.Text($"Gallons needed a week, {supply.Season.CropYear}.{(HasWeeklyLimit ? " Rust: above the limit." : "")}")
            + (water!.HasLimit ? " d: days short." : "");

    internal BarList WeekBars => new($"Water needed by week of {supply.Season.CropYear}",
        [.. water!.Weeks.Where(week => week.Needed > supply.LitersPerUnit).Select(week => new Bar(
            Looks.ShortDay(week.Monday), Units(week.Needed),
            $"{Number(week.Needed)}{(week.DaysShort > 0 ? $" · {week.DaysShort} d" : "")}",
            $"Week of {Looks.ShortDay(week.Monday)}: {Volume(week.Needed)} "
                + $"needed{(week.LostAtLimit > Least ? $", {Money(week.LostAtLimit.Value)} lost at the limit" : "")}")
        {
            IsLoss = IsOver(week),
        })])
    {
        // A limit far off, as of a pond, would leave no bar to be seen.
        Mark = water.Weeks.Max(week => week.Limit) is { } limit && limit <= FarOff * Peak ? Units(limit) : null,
        MarkText = water.Weeks.Max(week => week.Limit) is { } most ? $"limit {Number(most)}" : "",
    };

    internal string PowerHeading => !power.IsWritten ? "No panels and no battery are written down"
        : power.WhyUnknown is not null ? "Whether power was short is not known"
        : power.DaysShort == 0 ? "Power was not short"
        : $"Sun and battery fell short on {notation.Count(power.DaysShort, "day")}{DarkestMonth(power)}";

    internal Prose Power
    {
        get
        {
            if (power.WhyUnknown is { } why)
            {
                return new Prose(power.IsWritten ? $"{Phrase.Sentence(why)}."
                    : "What power cost, and whom it served, is on the page of shared costs. "
                        + "With panels and battery in farm.csv this tells when it was short.");
            }

            string marginal = power.MarginalPerKwh.Value is { } worth
                ? $"A kilowatt-hour saved was worth {BlockNumber.Of(worth, Look.Rate, notation)} on average over the year."
                : "What a missing kilowatt-hour costs is not written (generator_cost_per_kwh in farm.csv).";
            if (power.DaysShort == 0)
            {
                return new Prose($"A kilowatt-hour saved saves nothing while panels and battery suffice. {Best()}{Logged(0)}");
            }

            string missing = power.GeneratorHours is { } hours
                ? $"That left {Kwh(power.Days.Sum(day => day.Generated))} to the generator: {Hours(hours)}.{Logged(hours)} "
                : $"{Kwh(power.Missing)} were missing. ";
            return new Prose($"{missing}{marginal} {Best()}");
        }
    }

    // What the log says of the generator is told next to what the balance would ask of it, never in its place.
    private string Logged(double workedOut)
    {
        if (power.GeneratorHoursLogged is not { } logged)
        {
            return "";
        }

        string more = logged > (2 * workedOut) + ManyHours
            ? ", far more than that: a load may be missing from loads.csv, or the battery holds less than farm.csv says" : "";
        return $" By your log it ran {Hours(logged)}{more}.";
    }

    private string Hours(double hours) => $"{notation.Number((decimal)hours, hours < 10 ? Look.Quantity : Look.Count)} hours";

    private IEnumerable<string> Sources()
    {
        HashSet<EtSource> sources = [.. supply.Farm.Weather.SourcesIn(water!.First, water.Days).Select(source => source.Source)];
        if (sources.Overlaps([EtSource.Station, EtSource.PenmanMonteith]))
        {
            yield return "your station";
        }

        if (sources.Contains(EtSource.Hargreaves))
        {
            yield return "your temperatures";
        }

        if (sources.Contains(EtSource.Climate))
        {
            yield return "the months of farm.csv";
        }
    }

    internal Prose ToDo
    {
        get
        {
            List<string> lines = [];
            if (water is { DaysShort: > 0 } && supply.SavedByMore.Value is { } more)
            {
                lines.Add(notation.Text($"- Print the list each dry morning. "
                    + $"A tank that adds {supply.LimitStep} gallons a day would save {Money((double)more)} in a season like this one."));
            }

            if (water is { DaysShort: 0, LostAsWatered: { } put } && put - (water.LostAtLimit ?? 0) > Least)
            {
                lines.Add($"- Print the list on dry mornings: watering by it would have saved {Money(put - (water.LostAtLimit ?? 0))}.");
            }

            if (water is { HasLog: false })
            {
                lines.Add("- Write down what you put on (watering.csv): without it nobody knows what the drought cost.");
            }

            if (supply.WhyNoWater is { } why)
            {
                lines.Add($"- Water: {why}. {Supply.SupplyTables.WhatItWouldTell}");
            }

            if (power is { WhyUnknown: null, DaysShort: > 0, Shed.Count: > 1 })
            {
                lines.Add($"- When power is short, let “{Prose.Text(power.Shed[0].Load.Row.Load)}” give way first and "
                    + $"“{Prose.Text(power.Shed[^1].Load.Row.Load)}” last.");
            }

            return new Prose(lines.Count > 0 ? string.Join('\n', lines)
                : supply.WhyNoWorth is { } unknown ? $"Nothing can be said yet: {Prose.Text(unknown)}."
                : power.WhyUnknown is null ? "Nothing: neither held you back." : "Nothing: water didn't hold you back.");
        }
    }

    internal Prose Method => new(
        "Need: reference evapotranspiration of grass times each crop's coefficient over its own dates, less rain; "
            + "no rain reaches beds under cover. "
        + "Loss: how far a crop falls short of its water, times how its yield answers to that, times what was still to be picked, "
        + "less what goes with it. "
        + "A week without a note between two others counts as watered full, and no loss is told for it. "
        + "The list looks at the days of watering and the six after. The harvest counts as it was, so a dry season reads a little low. "
        + $"Power: whole days; panels serve the load, then the battery, then the generator.{ByMonth()}{Assumed()}{ByStage()}");

    private double Peak => water!.Weeks.Count == 0 ? 0 : water.Weeks.Max(week => week.Needed);

    // Sprinklers and the hours they run are a limit that no week's gallons tell.
    private bool HasWeeklyLimit => water!.Weeks.Any(week => week.Limit is not null);

    private static bool IsOver(WaterWeek week) => week.Needed > week.Limit;

    private string Best()
    {
        double? battery = power.SavedWith(1, 0);
        double? panels = power.SavedWith(0, 1);
        return $"One kWh more of battery would have saved {(battery is { } kwh ? Kwh(kwh) : "an unknown amount")} over the year, "
            + $"one kW more of panels {(panels is { } kw ? Kwh(kw) : "an unknown amount")}.";
    }

    // The same sun every day is the kindest weather a battery can have.
    private string ByMonth()
    {
        int unread = power.Days.Count - power.DaysLogged;
        return unread <= 0
            ? ""
            : $" On {notation.Count(unread, "day")} without a reading in power_made.csv the panels count as making their month's yield, "
                + "the same each day: dark days in a row, when power is short, can't show there.";
    }

    private string Assumed()
    {
        string[] crops = [.. supply.Crops.Where(crop => CropWater.Of(crop.Use.Crop).IsResponseAssumed).Select(crop => crop.Use.Crop.Name)];
        return crops.Length == 0
            ? ""
            : $" No table tells how {Prose.Text(Phrase.List(crops))} answer to drought: "
                + $"they are taken to lose as much of the yield as of the water.";
    }

    private string ByStage()
    {
        string[] crops = [.. supply.Crops.Where(crop => CropWater.Of(crop.Use.Crop).ByStage.IsSet).Select(crop => crop.Use.Crop.Name)];
        return crops.Length == 0 ? "" : $" {Prose.Text(Phrase.List(crops))}: loss by stage of growth, as crops.csv has it.";
    }

    // Of two months equally short none is above all.
    private static string DarkestMonth(PowerSeason power)
    {
        PowerMonth most = power.Months.MaxBy(month => month.DaysShort)!;
        if (power.Months.Count(month => month.DaysShort == most.DaysShort) > 1)
        {
            return "";
        }

        string part =
            most.DaysShort == power.DaysShort
                ? power.DaysShort == 1
                    ? ""
                    : "all of them "
                : most.DaysShort * 2 > power.DaysShort
                    ? "most of them "
                    : "above all ";
        return $", {part}in {most.Month.ToString("MMMM", CultureInfo.InvariantCulture)}";
    }

    private static string Months(WaterSeason water)
    {
        string[] months =
        [
            .. water.ShortDays.Select(day => day.ToString("MMMM", CultureInfo.InvariantCulture)).Distinct(),
        ];
        return $" of {(months.Length > 2 ? $"{months[0]} to {months[^1]}" : Phrase.List(months))}";
    }

    private KeyFigure Of(string name, double? value, string words) =>
        value is { } known
            ? new KeyFigure(name, Money(known), decimal.Round((decimal)known, 2), words)
            : new KeyFigure(name, "", null, "no limit of water is written in limits.csv");

    private string Worth(Result money) => money.Value is { } known ? Money((double)known) : "an unknown amount";

    private decimal Units(double liters) => (decimal)(liters / supply.LitersPerUnit);

    private string Number(double liters) => notation.Number(Units(liters), Look.Count);

    private string Volume(double liters) => $"{Number(liters)} {notation.Label("gallons")}";

    private string Kwh(double kwh) => $"{notation.Number((decimal)kwh, kwh < 100 ? Look.Quantity : Look.Count)} kWh";

    private string Money(double money) => BlockNumber.Of((decimal)money, Look.WholeMoney, notation);
}
