using System.CommandLine;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Supply;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Water;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>water FOLDER --date D --gallons G</c>: the list of blocks to take to the field when water is short.</summary>
internal static class WaterCommand
{
    private const string What =
        "With weather.csv (rain and temperatures, or et0), blocks.csv (what the soil holds) and watering.csv (what you put on), "
        + "this tells in the morning which blocks to water first, what the others lose, and in November what the limit cost.";

    internal static Command Create()
    {
        Argument<string> folder = CommonOptions.Folder();
        Option<string?> date = OptionRules.Text("--date", "DATE",
            "The day you water, as 2025-07-15 or as your files write dates. Default: the day after the last in weather.csv.");
        Option<int?> days = OptionRules.Whole("--days", "N", 1, 14, "How many days it is to last for, in equal parts. Default: 1.");
        Option<NumberOption?> gallons = OptionRules.Number("--gallons", "G", 0m, 1_000_000_000m,
            "Water there is for those days in all, in gallons; in liters on a farm that measures in meters.");
        Option<NumberOption?> sprinklers = OptionRules.Number("--sprinklers", "N", 0m, 100_000m,
            "How many sprinklers can run at once; with --hours.");
        Option<NumberOption?> hours = OptionRules.Number("--hours", "H", 0m, 1_000m, "How many hours they run over those days in all.");
        Option<string[]> set = CommonOptions.Set();
        Option<bool> skip = CommonOptions.SkipBadRows();
        Command command = new("water", "When water is short: which blocks to water first, how much each, and what the others lose.")
        {
            folder, date, days, gallons, sprinklers, hours, set, skip,
        };
        command.SetAction(parsed =>
        {
            WaterAsked asked = new(parsed.GetValue(date), parsed.GetValue(days) ?? 1, parsed.GetValue(gallons), parsed.GetValue(sprinklers),
                parsed.GetValue(hours));
            return Run(parsed.GetValue(folder)!, asked, parsed.GetValue(set), parsed.GetValue(skip));
        });
        return command;
    }

    private static int Run(string folder, WaterAsked asked, string[]? set, bool skip)
    {
        asked.Check();
        FarmFolder farm = CommonOptions.Open(folder, set, skip, new Terminal());
        if (CommonOptions.ReviewOrProblems(farm, skip) is not { } review)
        {
            return ExitCode.RecordsInError;
        }

        CommonOptions.PrintSkipped(farm, Console.Error);
        FarmWeather weather = FarmWeather.Of(review.Records);
        string? missing = weather.WhyUnknown ?? (review.Records.Tables.Blocks.Count == 0 ? "there is no blocks table" : null);
        if (missing is not null)
        {
            throw new WrongUseException($"Nothing can be said about water: {missing}. {What}");
        }

        DateOnly day = asked.Day(review.Records.Settings) ?? weather.Last!.Value.AddDays(1);
        if (day < weather.First || day > weather.Last!.Value.AddDays(WaterTriage.DaysAfter + 1))
        {
            throw new WrongUseException($"weather.csv tells of {weather.First:yyyy-MM-dd} to {weather.Last:yyyy-MM-dd}; "
                + $"{day:yyyy-MM-dd} is not near enough to say how dry the soil is.");
        }

        WaterAndPower supply = WaterAndPower.Of(SeasonCosts.Of(WaterAndPower.SeasonFor(review, day)));
        Console.Out.WriteLine(WaterList.Of(supply, asked.Hand(day, supply)).ToPlainText());
        Console.Out.WriteLine(TextLines.Of(WaterList.Cautions));
        Console.Out.WriteLine(TextLines.Of(ProofTables.Cautions));
        return ExitCode.Done;
    }
}

/// <summary>What was asked for, as typed.</summary>
internal sealed record WaterAsked(string? Date, int Days, NumberOption? Gallons, NumberOption? Sprinklers, NumberOption? Hours)
{
    internal void Check()
    {
        if (Gallons is not null == (Sprinklers ?? Hours) is not null)
        {
            throw new WrongUseException("Say how much water there is: --gallons G, or --sprinklers N with --hours H.");
        }

        if (Gallons is null && (Sprinklers is null || Hours is null))
        {
            throw new WrongUseException("--sprinklers and --hours go together: how many run, and for how long.");
        }
    }

    internal DateOnly? Day(FarmSettings settings) => Date is null ? null
        : DateText.TryRead(Date, settings.DateFormat, out DateOnly day) ? day
        : throw new WrongUseException($"--date takes a day such as 2025-07-15, not '{Date}'.");

    internal WaterAtHand Hand(DateOnly day, WaterAndPower supply)
    {
        Notation notation = supply.Season.Notation;
        return Gallons is { } gallons
            ? new WaterAtHand(day, Days, (double)gallons.On(notation) * supply.LitersPerUnit, InSprinklerHours: false)
            : new WaterAtHand(day, Days, (double)(Sprinklers!.On(notation) * Hours!.On(notation)), InSprinklerHours: true);
    }
}
