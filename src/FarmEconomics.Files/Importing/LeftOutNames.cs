using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing;

/// <summary>
/// Names of a source that are nothing of the farm's, such as a tote bag among what a register sold: the rows that have them are left out,
/// and told; the mapping remembers it.
/// </summary>
internal sealed class LeftOutNames(GivenNames given, ChosenMapping chosen, Notation notation)
{
    private readonly Dictionary<string, (int Rows, decimal Amount)> told = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<(string Source, string Text)> texts = [];

    /// <summary>All that was said of names.</summary>
    public GivenNames Given => given;

    /// <summary>What the mapping remembers: the columns of <c>imports</c>, a row for each text that stood in a source column.</summary>
    public IReadOnlyList<string[]> Rules =>
    [
        .. texts.Select(left => (string[])[.. ImportRow.Schema.Columns.Select(column => column.Name switch
        {
            "import" => chosen.Rows[0].Import,
            "table" => chosen.Schema.Name,
            "source_column" => left.Source,
            "when" => left.Text,
            "note" => "no name of the farm's: left out",
            _ => "",
        })]),
    ];

    /// <summary>True for a row that has one of the names; it is counted.</summary>
    public bool Holds(ImportUnit unit, ImportMapping mapping, IReadOnlyList<string> fields)
    {
        if (given.LeftOut.Count == 0)
        {
            return false;
        }

        foreach ((int at, string column) in mapping.Columns.Index())
        {
            string table = HeadingKey.Of(chosen.Schema.Find(column)?.RefersTo ?? "");
            string name = fields[at].Trim();
            if (table.Length > 0
                && given.LeftOut.Exists(left => left.Table == table && left.Alias.Equals(name, StringComparison.OrdinalIgnoreCase)))
            {
                Count(unit, mapping, fields, (column, name));
                return true;
            }
        }

        return false;
    }

    /// <summary>What was left out, in one sentence; none without such rows.</summary>
    public IEnumerable<string> Told() => told.Count == 0 ? []
        : [$"Left out, as you said: {string.Join(", ", told.Select(name => $"{name.Key} ({Counted(name.Value)})"))}."];

    private string Counted((int Rows, decimal Amount) of) => notation.Text($"{of.Rows:N0} {(of.Rows == 1 ? "row" : "rows")}")
        + (of.Amount == 0m ? "" : notation.Text($", amount {of.Amount:#,0.00}"));

    private void Count(ImportUnit unit, ImportMapping mapping, IReadOnlyList<string> fields, (string Column, string Name) of)
    {
        (int rows, decimal amount) = told.GetValueOrDefault(of.Name);
        int money = mapping.Columns.ToList().IndexOf("amount");
        told[of.Name] = (rows + 1, amount + (money < 0 ? 0m : CellKinds.Read(fields[money], notation.DecimalMark) ?? 0m));

        // A ditto mark, or a blank that means the same as above, would leave out every other row that has one.
        if (mapping.SourceOf(of.Column) is { } source && unit.Text(source).Trim() is var text && text.Any(char.IsLetter))
        {
            texts.Add((source, text));
        }
    }
}
