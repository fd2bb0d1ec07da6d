using System.Text;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Names;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing;

/// <summary>What one unknown name means, as the grower says it.</summary>
/// <param name="Table">The table the name stands in.</param>
/// <param name="Alias">The name as written in the rows.</param>
/// <param name="Name">What it means; blank: not said.</param>
public sealed record GivenName(string Table, string Alias, string Name)
{
    /// <summary>
    /// In the place of a name, while a file is brought in: the rows of such names are left out, now and in the next file like it.
    /// </summary>
    public const string LeftOut = "(left out)";
}

/// <summary>
/// Every unknown name of the records as one list to fill in, and the list confirmed at once: a file of aliases of its own, no file that is
/// there changed.
/// </summary>
public static class NameList
{
    /// <summary>
    /// The list as a file to look through: blank where nobody can guess, how many rows have the name, and the first of them.
    /// </summary>
    /// <param name="names">The names.</param>
    /// <returns>CSV with a heading row.</returns>
    public static string Text(IEnumerable<AliasProposal> names)
    {
        ArgumentNullException.ThrowIfNull(names);
        var csv = new StringBuilder("table,alias,name,rows,first\n");
        foreach (AliasProposal name in names)
        {
            ImportCsv.Line(csv, [name.Table, name.Alias, name.Name, $"{name.Rows}", name.First.ToString()]);
        }

        return csv.ToString();
    }

    /// <summary>Reads a list.</summary>
    /// <param name="path">A file with the columns table, alias and name; further ones are passed over.</param>
    /// <returns>Its rows, those without a name left out.</returns>
    /// <exception cref="IOException">It can't be read.</exception>
    /// <exception cref="ArgumentException">It lacks a column.</exception>
    public static IReadOnlyList<GivenName> Read(string path) =>
        RecordsImport.Reading(new ImportRequest(path), () => GivenNames.Read(path, null).New
            .Select(row => new GivenName(row[0], row[1], row[2])).ToList());

    /// <summary>What is wrong with a list, name by name.</summary>
    /// <param name="names">The names.</param>
    /// <param name="records">The records.</param>
    /// <returns>The names that can't be taken, each with why; none when all can.</returns>
    public static IReadOnlyList<(GivenName Name, string Why)> Faults(IEnumerable<GivenName> names, RecordsReading records)
    {
        ArgumentNullException.ThrowIfNull(names);
        ArgumentNullException.ThrowIfNull(records);
        var known = new KnownNames(records.Tables, records.FarmSettings);
        return
        [
            .. names
                .Where(name => name.Name.Trim().Length > 0)
                .Select(name => (name, Why: Fault(name, known)))
                .Where(pair => pair.Why.Length > 0),
        ];
    }

    /// <summary>True for a name the records give a meaning already.</summary>
    /// <param name="name">The name.</param>
    /// <param name="records">The records.</param>
    /// <returns>Whether there is an alias of it.</returns>
    public static bool IsKnown(GivenName name, RecordsReading records)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(records);
        return records.Tables.Aliases.Exists(row => HeadingKey.Of(row.Table) == HeadingKey.Of(name.Table)
            && row.Alias.Trim().Equals(name.Alias.Trim(), StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>Adds the names to the records: a file <c>aliases.names.csv</c>, or the next number of it.</summary>
    /// <param name="folder">The records folder.</param>
    /// <param name="names">The names; those not said are left out.</param>
    /// <returns>The file's name.</returns>
    /// <exception cref="IOException">It can't be written.</exception>
    /// <exception cref="ArgumentException">There is nothing to add.</exception>
    public static string Confirm(string folder, IEnumerable<GivenName> names)
    {
        ArgumentNullException.ThrowIfNull(names);
        GivenName[] said = [.. names.Where(name => name.Name.Trim().Length > 0)];
        if (said.Length == 0)
        {
            throw new ArgumentException("No name is given.");
        }

        var csv = new StringBuilder("table,alias,name\n");
        Array.ForEach(said, name => ImportCsv.Line(csv, [name.Table, name.Alias, name.Name.Trim()]));
        string file = ImportCsv.Free(folder, "aliases.names");
        ImportPlan.WriteNew(folder, file, csv.ToString());
        return file;
    }

    private static string Fault(GivenName name, KnownNames known)
    {
        if (NameAliases.Tables.FirstOrDefault(table => HeadingKey.Of(table) == HeadingKey.Of(name.Table)) is not { } table)
        {
            return $"there is no table {name.Table} that names stand in";
        }

        IReadOnlyList<string> names = known.Of(table);
        return names.Contains(name.Name.Trim(), StringComparer.OrdinalIgnoreCase) ? ""
            : $"{table} has no \"{name.Name.Trim()}\"{(NearestName.Find(name.Name, names) is { } near ? $"; did you mean {near}?" : "")}";
    }
}
