using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Names;

/// <summary>A name that is not known and the known one it is likely to mean: a row for <c>aliases</c>, once the grower agrees.</summary>
/// <param name="Table">The table the name should stand in.</param>
/// <param name="Alias">The name as written.</param>
/// <param name="Name">The known name it is likely to mean; blank when none is near, or several are.</param>
/// <param name="Rows">How many rows write it so.</param>
/// <param name="First">The first of them.</param>
public sealed record AliasProposal(string Table, string Alias, string Name, int Rows, SourceLine First)
{
    // A user of a pool may stand in several tables; where nothing is near, a pool is as likely as any.
    private const string AnyUser = "pools";

    private static readonly Dictionary<string, string> TableOfCode = new([
        .. RecordSchema
            .Tables.Where(table => table.UnknownName is not null)
            .Select(table => new KeyValuePair<string, string>(table.UnknownName!, table.Name)),
        new(ProblemCodes.UnknownStructure, "structures"),
        new(ProblemCodes.NoConversion, "units"),
    ]);

    /// <summary>
    /// Every unknown name among the problems, with what it is likely to mean. Nothing is changed; what nobody can guess is left blank for
    /// the grower.
    /// </summary>
    /// <param name="problems">The problems of a check.</param>
    /// <param name="tables">The records, which tell whether a user of a pool is a pool, a crop or a planting.</param>
    /// <returns>One row per table and name, most rows first.</returns>
    public static IReadOnlyList<AliasProposal> All(IEnumerable<Problem> problems, RecordTables tables)
    {
        ArgumentNullException.ThrowIfNull(problems);
        ArgumentNullException.ThrowIfNull(tables);
        return
        [
            .. problems.Where(problem => problem.Offending is not null && IsOfName(problem.Code))
                .GroupBy(problem => (Table: TableOf(problem, tables), Alias: problem.Offending!.Trim().ToLowerInvariant()))
                .Select(group => new AliasProposal(
                    group.Key.Table ?? AnyUser,
                    group.First().Offending!.Trim(),
                    group.Key.Table is null ? "" : Guess(group),
                    group.Sum(problem => 1 + problem.Further),
                    group.First().Source
                ))
                .OrderByDescending(name => name.Rows)
                .ThenBy(name => name.Table, StringComparer.Ordinal)
                .ThenBy(name => name.Alias, StringComparer.Ordinal),
        ];
    }

    /// <summary>
    /// What the unknown names among the problems are likely to mean: those of <see cref="All"/> that are near a known one.
    /// </summary>
    /// <param name="problems">The problems of a check.</param>
    /// <param name="tables">The records, which tell whether a user of a pool is a pool, a crop or a planting.</param>
    /// <returns>One proposal per table and name, most rows first.</returns>
    public static IReadOnlyList<AliasProposal> Of(IEnumerable<Problem> problems, RecordTables tables) =>
        [.. All(problems, tables).Where(name => name.Name.Length > 0)];

    // A unit may be near one thing for one crop and near another for the next: then nothing is proposed.
    private static string Guess(IEnumerable<Problem> problems)
    {
        string[] near =
        [
            .. problems.Select(problem => problem.Nearest?.Trim()).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase),
        ];
        return near.Length == 1 ? near[0] : "";
    }

    /// <summary>True for the faults that are a name nobody knows: two names are two faults.</summary>
    internal static bool IsOfName(string code) => code == ProblemCodes.UnknownUser || TableOfCode.ContainsKey(code);

    /// <summary>The table the names of a fault stand in; null for users of pools, which may stand in several.</summary>
    internal static string? TableOf(string code) => TableOfCode.GetValueOrDefault(code);

    private static string? TableOf(Problem problem, RecordTables tables) =>
        problem.Code == ProblemCodes.UnknownUser
            ? problem.Nearest is { } near
                ? TableOfUser(near, tables)
                : null
            : TableOfCode.GetValueOrDefault(problem.Code);

    // In the order in which users are looked up. The household has no table: whoever means it writes it.
    private static string? TableOfUser(string name, RecordTables tables) => UseRow.UserColumn.Schema.Names.FirstOrDefault(table =>
    {
        RecordTable users = tables.Of(RecordSchema.Find(table)!);
        var names = (TextColumn)users.Schema.Stored[0];
        return Enumerable.Range(0, users.Count).Select(row => names.Of(users, row)).Concat(users.Schema.Shipped?.Invoke(tables) ?? [])
            .Any(known => known.Trim().Equals(name.Trim(), StringComparison.OrdinalIgnoreCase));
    });
}
