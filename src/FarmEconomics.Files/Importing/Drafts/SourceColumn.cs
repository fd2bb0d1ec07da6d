using FarmEconomics.Files.Importing.Sources;

namespace FarmEconomics.Files.Importing.Drafts;

/// <summary>A column of a source, looked at by its heading and its values.</summary>
internal sealed class SourceColumn
{
    private const int MostLookedAt = 5000;

    private char? mark;

    public SourceColumn(SourceBlock block, int at)
    {
        At = at;
        Heading = block.Segments[0].Headings[at];
        Values = [.. block.Segments.SelectMany((part, first) => part.Rows.Select(row => row.At(first == 0 ? at : part.Column(Heading))))
            .Take(MostLookedAt).Where(text => text.Length > 0)];
        Kinds = KindsOf(Values);
        Role = HeadingWords.IsTotal(Heading) ? ColumnRole.Total : HeadingWords.RoleOf(Heading);
    }

    private SourceColumn(string label, string[] values, ColumnRole? role)
    {
        At = -1;
        Heading = $"{ImportWords.Above} {label}".TrimEnd();
        Values = values;
        Kinds = KindsOf(values);
        Role = role;
    }

    /// <summary>What stands above the headings, as columns: each that is known by its word, and what stands alone above each of several
    /// parts.</summary>
    public static IEnumerable<SourceColumn> Above(SourceBlock block)
    {
        foreach (string label in block.Segments.SelectMany(part => part.Above).Select(text => text.Label)
            .Distinct(StringComparer.OrdinalIgnoreCase))
        {
            LeadText?[] texts = [.. block.Segments.Select(part => part.LeadOf(label))];
            string[] values = [.. texts.OfType<LeadText>().Select(text => text.Text)];
            bool tells = label.Length > 0 ? LeadText.Tells(label)
                : values.Length == texts.Length && texts.Distinct().Count() == texts.Length && texts.Length > 1;
            if (tells)
            {
                yield return new SourceColumn(label, values, HeadingWords.RoleOf(label));
            }
        }
    }

    /// <summary>Its place, from 0; -1 for what stands above the headings.</summary>
    public int At { get; }

    public string Heading { get; }

    public IReadOnlyList<string> Values { get; }

    /// <summary>The first value; blank without any.</summary>
    public string First => Values.Count > 0 ? Values[0] : "";

    public IReadOnlyDictionary<CellKind, int> Kinds { get; }

    public ColumnRole? Role { get; set; }

    /// <summary>True when most values are numbers, quantities or times.</summary>
    public bool IsMeasure => Share(CellKind.Number, CellKind.Money, CellKind.Quantity, CellKind.Time) >= 0.6m;

    /// <summary>The same of a column of a wide table, where "none" stands for a blank.</summary>
    public bool IsSpread => IsMeasure || Values.All(text => QuantityText.IsNothing(text) || CellKinds.Of(text)
        is CellKind.Number or CellKind.Money or CellKind.Quantity or CellKind.Time);

    public bool IsTime => Share(CellKind.Time) >= 0.6m;

    /// <summary>True for numbers written in cents, or with a currency's sign.</summary>
    public bool IsInCents => Has(CellKind.Money) || (IsNumber && Values.All(text => text.Length > 3 && text[^3] is '.' or ','));

    /// <summary>True when some are.</summary>
    public bool HasMeasure => Share(CellKind.Number, CellKind.Money, CellKind.Quantity, CellKind.Time) > 0m;

    public bool IsNumber => Share(CellKind.Number, CellKind.Money) >= 0.6m;

    public bool IsDay => Share(CellKind.Day) >= 0.6m
        || (Values.Count > 0 && Values.All(text => text.Length == 8 && text.All(char.IsAsciiDigit) && text[..2] is "19" or "20"));

    public bool IsText => Share(CellKind.Text) >= 0.5m;

    public bool Has(CellKind kind) => Kinds.ContainsKey(kind);

    /// <summary>The decimal mark most of its numbers need.</summary>
    public char Mark(char farm) => (mark ??= MarkOfMost()) is char told and not ' ' ? told : farm == ',' ? ',' : '.';

    // A space: its numbers may have either.
    private char MarkOfMost()
    {
        (decimal? Comma, decimal? Point)[] read = [.. Values.Select(text => (CellKinds.Read(text, ','), CellKinds.Read(text, '.')))];
        int comma = read.Count(value => value is { Comma: not null, Point: null });
        int point = read.Count(value => value is { Comma: null, Point: not null });
        bool either = Array.Exists(read, value => value is { Comma: { } one, Point: { } other } && one != other);
        return comma > point ? ',' : comma < point || !either ? '.' : ' ';
    }

    private decimal Share(params CellKind[] kinds) => Values.Count == 0 ? 0m : kinds
        .Sum(kind => Kinds.GetValueOrDefault(kind)) / (decimal)Values.Count;

    private static Dictionary<CellKind, int> KindsOf(IReadOnlyList<string> values) =>
        values.GroupBy(CellKinds.Of).ToDictionary(group => group.Key, group => group.Count());
}
