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
    /// <summary>The row of the mapping.</summary>
    /// <param name="source">The heading.</param>
    /// <param name="values">The texts.</param>
    /// <param name="farmForm">The form the farm writes dates in, as farm.csv says it; null: ISO 8601.</param>
    /// <param name="said">What somebody said of the order.</param>
    public static DraftRow Row(string source, IReadOnlyList<string> values, string? farmForm, DatesWritten said)
    {
        IReadOnlyList<string> all = DateForms.Of([.. values], out int read);
        List<string> forms = [.. all.Where((form, at) => !all.Take(at).Any(before => values.All(text => Same(text, before, form))))];
        string first = values.FirstOrDefault(text => forms.Count > 0 && DateForms.TryRead(text, forms[0], out _)) ?? "";
        if (forms.Count == 0)
        {
            return new DraftRow("date", source) { Note = $"? no day can be read here: \"{(values.Count > 0 ? values[0] : "")}\"" };
        }

        string odd = read < values.Count
            ? $"; {values.Count - read} of {values.Count} are no days, "
                + $"such as \"{values.First(text => !DateForms.TryRead(text, forms[0], out _))}\": those rows are held back" : "";
        string? chosen = forms.Count == 1 ? forms[0]
            : said != DatesWritten.Unknown ? forms.Find(form => form.StartsWith('M') == (said == DatesWritten.MonthFirst))
            : forms.Find(form => DateText.NormalizeFormat(form) == farmForm);
        if (chosen is null)
        {
            // A day that both forms read shows best what is asked.
            first = values.FirstOrDefault(text => forms.Take(2).All(form => DateForms.TryRead(text, form, out _))
                && !Same(text, forms[0], forms[1])) ?? first;
            return new DraftRow("date", source)
            {
                Format = string.Join(" or ", forms.Take(2)),
                Readings = [.. forms.Take(2).Select(form => $"{first} is {DateForms.Example(first, form)}")],
                Note = $"? {first} is {DateForms.Example(first, forms[0])} or {DateForms.Example(first, forms[1])}: "
                    + $"keep the form that is right{odd}",
            };
        }

        return new DraftRow("date", source)
        {
            Format = chosen == DateForms.Iso ? null : chosen,
            Note = (odd.Length > 0 ? "? " : "")
            + $"{first} is {DateForms.Example(first, chosen)}{odd}"
        };
    }

    private static bool Same(string text, string left, string right) =>
        DateForms.TryRead(text, left, out DateOnly one) == DateForms.TryRead(text, right, out DateOnly other) && one == other;
}
