using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records.Reading;

namespace FarmEconomics.Files.Importing.Drafts;

/// <summary>Time sheets: who worked, how long, at what.</summary>
internal sealed partial class DraftMaker
{
    private const int FewestWeeks = 3;

    // Why somebody has no hours that day. Common practice, no source; another word, such as "half day", holds its cell back.
    private static readonly string[] AwayWords = ["absent", "away", "off", "day off", "sick", "ill", "vacation", "holiday", "leave", "pto",
        "closed", "rain", "rained out", "x"];

    private static readonly string[] OvertimeWords = ["overtime hours", "overtime", "ot hours", "ot", "daily ot", "weekly ot",
        "double time", "double time hours"];

    // One total per week is a period, no day of forty hours.
    private bool Week()
    {
        SourceColumn? end = columns.Of(ColumnRole.PeriodEnd);
        SourceColumn? start = columns.Of(ColumnRole.Date);
        if ((end ?? start) is not { } column)
        {
            return false;
        }

        if (columns.WeekDaysAcross)
        {
            string format = end is null ? ImportWords.Weekday : $"{ImportWords.LessDays}6;{ImportWords.Weekday}";
            rows.Add(WeekRow(column, "date", format, "the day of that week the heading names"));
            return true;
        }

        if (end is not null)
        {
            rows.Add(
                start is null
                    ? WeekRow(end, "date", $"{ImportWords.LessDays}6", "the week ends then, and began six days before")
                    : WeekRow(start, "date", null, "the first day")
            );
            rows.Add(WeekRow(end, "through", null, "the last day"));
            return true;
        }

        if (HeadingWords.BeginsAWeek(column.Heading))
        {
            rows.Add(WeekRow(column, "date", null, "the week begins then"));
            rows.Add(WeekRow(column, "through", $"{ImportWords.PlusDays}6", "six days later, when it ends"));
            return true;
        }

        return false;
    }

    private DraftRow WeekRow(SourceColumn of, string name, string? word, string note)
    {
        // A file keeps to one form: what the one column leaves open, the other may tell.
        SourceColumn? end = columns.Of(ColumnRole.PeriodEnd);
        SourceColumn? other = of == end ? columns.Of(ColumnRole.Date) : end;
        IReadOnlyList<string> days = [.. of.Values, .. other?.Values ?? []];
        DraftRow row = OfOneWeekday(OfDays(of.Heading, days), of.Values);
        return row with { Column = name, Format = Joined(row.Format, word), Note = $"{row.Note}; {note}" };
    }

    // Weeks begin, and end, on one day of the week: of two readings only one has several of them do so.
    private static DraftRow OfOneWeekday(DraftRow row, IReadOnlyList<string> values)
    {
        int[] fit = [.. row.Forms.Index().Where(form => IsOneWeekday(form.Item)).Select(form => form.Index)];
        return fit is [var at] && values.Distinct().Count() >= FewestWeeks
            ? row with { Format = row.Forms[at], Readings = [], Note = $"{row.Readings[at]}; all on one day of the week" } : row;

        bool IsOneWeekday(string form) => values
            .Select(text => DateForms.TryRead(text, form, out DateOnly day) ? day.DayOfWeek : (DayOfWeek?)null).Distinct().Count() == 1;
    }

    // Nobody works thirty hours in a day: totals of several days, whose days only the grower knows.
    private void Total(SourceColumn hours)
    {
        bool more = hours.Values.Any(text => CellKinds.Read(text, hours.Mark(FarmMark)) > HoursOfDay);
        if (more && columns.Of(ColumnRole.Date) is { } day && !rows.Exists(row => row.Column == "through"))
        {
            DraftRow date = OfDays(day);
            rows.Add(date with
            {
                Column = "through",
                Format = Joined(date.Format, $"{ImportWords.PlusDays}6 or {ImportWords.PlusDays}0"),
                Readings = [$"they are those of a week that begins on {day.First}", $"they were all worked on {day.First}"],
                Note = $"? {hours.Values.First(text => CellKinds.Read(text, hours.Mark(FarmMark)) > HoursOfDay)} hours are more "
                    + "than a day has",
            });
        }
    }

    private void Worker()
    {
        SourceColumn? worker = columns.Of(ColumnRole.Worker) ?? columns.All
            .FirstOrDefault(column => column.IsText && column.Role is null or ColumnRole.Payee);
        rows.Add(worker is not null ? OfNames("worker", worker)
            : IsWide && !columns.DaysAcross && !columns.WeekDaysAcross
                ? new DraftRow("worker", ImportWords.Heading)
                {
                    Note = $"the {columns.Spread.Count} headings, such as {columns.Spread[0].Heading}",
                }
            : new DraftRow("worker", null) { Constant = "?", Note = "? who worked? A name of workers.csv" }
        );
    }

    private void Hours()
    {
        SourceColumn? hours = columns.Of(ColumnRole.Hours);
        string? pause = columns.Of(ColumnRole.Break) is { Values.Count: > 0 } rest ? ImportWords.Less + rest.Heading : null;
        if (IsWide)
        {
            AddWideHours();
        }
        else if (hours is { Values.Count: > 0 } && !hours.Values.All(text => ClockText.Minutes(text) is not null
            && CellKinds.Read(text, '.') is null && !HoursText.TryRead(text, '.', out _)))
        {
            AddHours(hours);
        }

        else if (columns.Of(ColumnRole.ClockIn) is { } start && columns.Of(ColumnRole.ClockOut) is { } end)
        {
            rows.Add(new DraftRow("hours", start.Heading)
            {
                Format = Joined(ImportWords.Until + end.Heading, pause),
                Note = $"from {start.First} to {end.First}{(pause is null ? "" : ", less the break")}"
                    + PastNoon(block.Rows.Select(row => row.At(start.At) + " to " + row.At(end.At))),
            });
        }
        else if (columns.Of(ColumnRole.GrossHours) is { } gross)
        {
            rows.Add(new DraftRow("hours", gross.Heading) { Format = pause, Note = "? gross hours: is a break still in them?" });
        }
        else
        {
            rows.Add(new DraftRow("hours", null) { Constant = "?", Note = "? no column of hours is seen" });
        }
    }

    private void AddWideHours()
    {
        string[] spread = [.. columns.Spread.SelectMany(column => column.Values)];
        bool punches = Array.Exists(spread, ClockText.IsPunches);
        rows.Add(new DraftRow("hours", ImportWords.Cell)
        {
            Format = punches ? ImportWords.Punches : DayParts(spread),
            Note = punches ? "times in and out by turns" + PastNoon(spread) : "blank cells are nothing",
        });
        Nothing(ImportWords.Cell, spread,
            text => QuantityText.IsNothing(text) || AwayWords.Contains(HeadingWords.Plain(text)), "no hours that day");
    }

    private static string PastNoon(IEnumerable<string> spans) =>
        spans.FirstOrDefault(ClockText.PassesNoon) is { } span ? $"; {span} runs into the afternoon" : "";

    private void AddHours(SourceColumn hours)
    {
        if (hours.Values.FirstOrDefault(ClockText.AreTimes) is { } spans)
        {
            rows.Add(new DraftRow("hours", hours.Heading)
            {
                Format = Joined(ImportWords.Punches, Comma(hours)),
                Note = $"times in and out, such as {spans}" + PastNoon(hours.Values),
            });
            return;
        }

        string? parts = DayParts(hours.Values);
        string? minutes = parts is null && AreMinutes(hours.Values) ? $"{ImportWords.HoursMinutes} or hours" : null;
        string shown = hours.Values.FirstOrDefault(text => IsPlainNumber(text) && CellKinds.Read(text, '.') % 1m != 0m) ?? hours.First;
        string meaning = parts is not null ? "that part of a day, as spreadsheets keep times" : "hours and minutes";
        rows.Add(new DraftRow("hours", hours.Heading)
        {
            Format = Joined([parts, minutes, Comma(hours), .. Overtime(hours)]),
            Readings = [$"{shown} is {meaning}", $"{shown} is that many hours"],
            Note = parts is null && minutes is null
                ? $"such as {hours.Values[0]}{(columns.Has(ColumnRole.ClockIn) ? "; start and end are not needed" : "")}"
                : $"? {shown} is that many hours, or {meaning}",
        });
        Total(hours);
    }

    // Regular hours are all hours only together with what was worked beyond them.
    private string[] Overtime(SourceColumn hours) => !HeadingWords.Plain(hours.Heading).StartsWith("regular", StringComparison.Ordinal)
        ? []
        : [.. columns.All.Where(column => column.HasMeasure && OvertimeWords.Contains(HeadingWords.Plain(column.Heading)))
            .Select(column => ImportWords.Plus + column.Heading)];

    // Below one, and some with three decimals or more: hours are noted in quarters, parts of a day look so, be it among times.
    private static string? DayParts(IEnumerable<string> values)
    {
        decimal?[] numbers = [.. values.Where(IsPlainNumber).Select(text => CellKinds.Read(text, '.'))];
        return numbers.Length > 0 && numbers.All(number => number is >= 0m and < 1m) && numbers.Any(number => number * 100m % 1m != 0m)
            && numbers.Max() * HoursOfDay >= 1m
            ? $"{ImportWords.DayPart} or hours" : null;
    }

    // 7.30, 8.15, 6.45: whoever writes hours in decimals has halves and quarters, whoever writes minutes behind a point has these.
    private static bool AreMinutes(IEnumerable<string> values)
    {
        decimal[] parts = [.. values.Where(IsPlainNumber).Select(text => (CellKinds.Read(text, '.') ?? 0m) % 1m * 100m)
            .Where(part => part != 0m).Distinct()];
        return parts.Length > 1 && parts.All(part => part is 15m or 30m or 45m);
    }

    private static bool IsPlainNumber(string text) => !HoursText.TryRead(text, '.', out _) && CellKinds.Read(text, '.') is not null;

    private void Task() => rows.Add(columns.Of(ColumnRole.Task) is { Values.Count: > 0 } task
        ? new DraftRow("task", task.Heading) { Note = Distinct(task) }
        : new DraftRow("task", null)
        {
            Constant = "?",
            Note = "? what was done? One task for all rows, such as harvest, grow, pack, sell or overhead"
        });
}
