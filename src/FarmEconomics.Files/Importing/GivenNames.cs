using System.Text;
using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Reading;
using FarmEconomics.Records;
using FarmEconomics.Records.Names;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing;

/// <summary>What the grower says names of a source mean.</summary>
internal sealed class GivenNames
{
    private readonly List<string[]> rows = [];

    /// <summary>Those the records don't remember yet: table, alias, name.</summary>
    public IReadOnlyList<string[]> New => rows;

    /// <summary>Names whose rows are left out, with their tables.</summary>
    public List<(string Table, string Alias)> LeftOut { get; } = [];

    public static GivenNames Read(string? path, RecordsReading? records)
    {
        var names = new GivenNames();
        if (path is null)
        {
            return names;
        }

        SourceGrid grid = SourceFile.Read(path, null);
        SourceBlock block = SourceBlock.With(grid, ["table", "alias", "name"])
            ?? throw new ArgumentException($"{Path.GetFileName(path)} has no row with the headings table, alias, name.");
        foreach (SourceCells row in block.Rows)
        {
            string[] given = [row.At(block.Segments[0].Column("table")), row.At(block.Segments[0].Column("alias")),
                row.At(block.Segments[0].Column("name"))];
            bool known = records?.Tables.Aliases.Exists(alias => HeadingKey.Of(alias.Table) == HeadingKey.Of(given[0])
                && alias.Alias.Trim().Equals(given[1], StringComparison.OrdinalIgnoreCase)) ?? false;
            if (ImportWords.Is(given[2], GivenName.LeftOut))
            {
                names.LeftOut.Add((HeadingKey.Of(given[0]), given[1].Trim()));
            }
            else if (given[2].Length > 0 && !known)
            {
                names.rows.Add(given);
            }
        }

        return names;
    }

    public string Csv()
    {
        var csv = new StringBuilder("table,alias,name\n");
        rows.ForEach(row => ImportCsv.Line(csv, row));
        return csv.ToString();
    }

    /// <summary>Adds them to the aliases of the records.</summary>
    public void AddTo(RecordTables tables, List<Problem> problems)
    {
        if (rows.Count > 0)
        {
            tables.Present.Add("aliases");
            new TableReader(new FarmSettings(), tables, problems, null).Read(new TextInput(Csv(), [.. Enumerable.Range(1, rows.Count + 1)],
                "names", "aliases"), tables.Aliases.Table);
        }
    }
}

/// <summary>Names of a source that the records don't know, gathered from its problems.</summary>
internal static class UnknownName
{
    public static IReadOnlyList<ImportedName> Of(IEnumerable<Problem> problems) =>
    [
        .. problems.Where(problem => problem is { Severity: Severity.Error, Offending: not null }
            && AliasProposal.TableOf(problem.Code) is not null)
            .GroupBy(problem => (Table: AliasProposal.TableOf(problem.Code)!, Name: problem.Offending!.Trim().ToUpperInvariant()))
            .Select(group => new ImportedName(group.Key.Table, group.First().Offending!.Trim(),
                group.Select(problem => problem.Nearest).Distinct(StringComparer.OrdinalIgnoreCase).Count() == 1 ? group.First().Nearest
                    ?? "" : "",
                group.Sum(problem => 1 + problem.Further)))
            .OrderByDescending(name => name.Rows).ThenBy(name => name.Table, StringComparer.Ordinal)
                .ThenBy(name => name.Alias, StringComparer.OrdinalIgnoreCase),
    ];
}
