using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records.Reading;

namespace FarmEconomics.Files.Importing.Drafts;

/// <summary>Which day comes first where both readings of a date make sense.</summary>
public enum DatesWritten
{
    /// <summary>Not said.</summary>
    Unknown,

    /// <summary>6/3 is June 3.</summary>
    MonthFirst,

    /// <summary>6/3 is 6 March.</summary>
    DayFirst,
}

/// <summary>Drafts how a source writes its days; of two readings none is guessed.</summary>
internal static class DraftDates
{
    private const int MonthsOfYear = 12;

    /// <summary>The row of the mapping.</summary>
    /// <param name="source">The heading.</param>
    /// <param name="values">The texts.</param>
    /// <param name="farmForm">The form the farm writes dates in, as farm.csv says it; null: ISO 8601.</param>
    /// <param name="said">What somebody said of the order.</param>
    /// <param name="year">The year the file's title or name tells, for days that say none.</param>
    public static DraftRow Row(string source, IReadOnlyList<string> values, string? farmForm, DatesWritten said, int? year = null)
    {
        // Of forms that read all days alike the farm's own is kept: the next file may hold days that tell them apart.
        List<string> all = [.. DateForms.Of([.. values], out int read, year).OrderBy(form => !IsLikely(form, farmForm, said))];
        List<string> forms = [.. all.Where((form, at) => !all.Take(at).Any(before => values.All(text => Same(text, before, form))))];
        string first = values.FirstOrDefault(text => forms.Count > 0 && DateForms.TryRead(text, forms[0], out _)) ?? "";
        if (forms.Count == 0)
        {
            return new DraftRow("date", source) { Note = NoDay(values.Count > 0 ? values[0] : "") };
        }

        if (DateForms.RunOverNewYear(values, forms[0]))
        {
            return new DraftRow("date", source) { Note = OverNewYear(year) };
        }

        string odd = read < values.Count
            ? $"; {values.Count - read} of {values.Count} are no days, "
                + $"such as \"{values.First(text => !DateForms.TryRead(text, forms[0], out _))}\": those rows are held back" : "";
        odd += DateForms.BringsTheYear(forms[0]) ? "; the year is the one in the file's title or name" : "";
        string turned = Turned(values);
        bool isTold = said != DatesWritten.Unknown || farmForm is not null;
        string? chosen = forms.Count == 1 || (isTold && IsLikely(forms[0], farmForm, said)) ? forms[0] : null;
        return chosen is null ? Asked(source, values, forms, odd) : new DraftRow("date", source)
        {
            Format = chosen == DateForms.Iso ? null : chosen,
            Note = (odd.Length + turned.Length > 0 ? "? " : "")
            + $"{first} is {DateForms.Example(first, chosen)}{turned}{odd}"
        };
    }

    private static DraftRow Asked(string source, IReadOnlyList<string> values, List<string> forms, string odd)
    {
        // A day that both forms read shows best what is asked.
        string shown = values.FirstOrDefault(text => forms.Take(2).All(form => DateForms.TryRead(text, form, out _))
            && !Same(text, forms[0], forms[1])) ?? values.First(text => DateForms.TryRead(text, forms[0], out _));
        return new DraftRow("date", source)
        {
            Format = string.Join(" or ", forms.Take(2)),
            Readings = [.. forms.Take(2).Select(form => $"{shown} is {DateForms.Example(shown, form)}")],
            Note = $"? {shown} is {DateForms.Example(shown, forms[0])} or {DateForms.Example(shown, forms[1])}: "
                + $"keep the form that is right{odd}",
        };
    }

    private static string OverNewYear(int? year) =>
        $"? these days run over New Year, so {year} is the year of some alone: write each with its year, such as 1/11/{year + 1}";

    // Days with points between are written day first (common practice, no source).
    private static bool IsLikely(string form, string? farmForm, DatesWritten said) =>
        said != DatesWritten.Unknown ? form[0] == (said == DatesWritten.MonthFirst ? 'M' : 'D')
        : farmForm is null ? form.StartsWith("D.", StringComparison.Ordinal)
        : farmForm == (DateForms.BringsTheYear(form) ? DateText.FormOf(form).Format?.Replace(' ', '/') : DateText.NormalizeFormat(form));

    private static string NoDay(string shown) => $"? no day can be read here: \"{shown}\""
        + (DateForms.LacksAYear(shown) ? "; it has no year: put the year into the file's name, such as picks-2025, and begin again "
            + "(where the days run over New Year, write each with its year)" : "");

    // A spreadsheet that reads 03/06 as March 6 leaves 13/06 a text: then the days it took for dates have day and month changed about.
    private static string Turned(IReadOnlyList<string> values)
    {
        string[] dates = [.. values.Where(text => DateForms.TryRead(text, DateForms.Iso, out _))];
        string[] texts = [.. values.Except(dates).Where(text => DateForms.TryRead(text, "D/M/YYYY", out _)
            || DateForms.TryRead(text, "M/D/YYYY", out _))];
        return texts.Length == 0 || dates.Length == 0 || texts.Any(text => !IsOneWay(text))
            || dates.Any(text => DateForms.TryRead(text, DateForms.Iso, out DateOnly day) && day.Day > MonthsOfYear) ? ""
            : $"; a spreadsheet made dates of some, such as {dates[0]}, and left texts such as {texts[0]}: "
                + "day and month of the dates may be changed about, look at them there";
    }

    private static bool IsOneWay(string text) =>
        !DateForms.TryRead(text, "D/M/YYYY", out _) || !DateForms.TryRead(text, "M/D/YYYY", out _);

    private static bool Same(string text, string left, string right) =>
        DateForms.TryRead(text, left, out DateOnly one) == DateForms.TryRead(text, right, out DateOnly other) && one == other;
}
