using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records.Reading;

namespace FarmEconomics.Files.Importing.Drafts;

/// <summary>Time sheets: who worked, how long, at what.</summary>
internal sealed partial class DraftMaker
{
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
        DraftRow row = DraftDates.Row(of.Heading, [.. of.Values, .. other?.Values ?? []], Records?.FarmSettings.DateFormat, Dates);
        return row with { Column = name, Format = Joined(row.Format, word), Note = $"{row.Note}; {note}" };
    }

    // Nobody works thirty hours in a day: totals of several days, whose days only the grower knows.
    private void Total(SourceColumn hours)
    {
        bool more = hours.Values.Any(text => CellKinds.Read(text, hours.Mark(FarmMark)) > HoursOfDay);
        if (more && columns.Of(ColumnRole.Date) is { } day && !rows.Exists(row => row.Column == "through"))
        {
            DraftRow date = DraftDates.Row(day.Heading, day.Values, Records?.FarmSettings.DateFormat, Dates);
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
        rows.Add(worker is not null ? new DraftRow("worker", worker.Heading) { Format = Ditto(worker), Note = Distinct(worker) }
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
        bool punches = columns.Spread.Any(column => column.Values.Any(ClockText.IsPunches));
        rows.Add(new DraftRow("hours", ImportWords.Cell)
        {
            Format = punches ? ImportWords.Punches : DayParts(columns.Spread.SelectMany(column => column.Values)),
            Note = punches ? "times in and out by turns" : "blank cells are nothing",
        });
        string[] words = [.. columns.Spread.SelectMany(column => column.Values).Where(text => !text.Any(char.IsAsciiDigit))
            .Distinct(StringComparer.OrdinalIgnoreCase).Take(6)];
        rows.AddRange(words.Select(word => new DraftRow(null, ImportWords.Cell) { When = word, Note = "no hours that day" }));
    }

    private void AddHours(SourceColumn hours)
    {
        string? parts = DayParts(hours.Values);
        rows.Add(new DraftRow("hours", hours.Heading)
        {
            Format = Joined(parts, Comma(hours)),
            Readings = [$"{hours.Values[0]} is that part of a day, as spreadsheets keep times", $"{hours.Values[0]} is that many hours"],
            Note = parts is null
                ? $"such as {hours.Values[0]}{(columns.Has(ColumnRole.ClockIn) ? "; start and end are not needed" : "")}"
                : $"? {hours.Values[0]} is that many hours, or that part of a day, as spreadsheets keep times",
        });
        Total(hours);
    }

    private void Task() => rows.Add(columns.Of(ColumnRole.Task) is { Values.Count: > 0 } task
        ? new DraftRow("task", task.Heading) { Note = Distinct(task) }
        : new DraftRow("task", null)
        {
            Constant = "?",
            Note = "? what was done? One task for all rows, such as harvest, grow, pack, sell or overhead"
        });
}
