using FarmEconomics.Records.Names;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Checks;

/// <summary>Checks of aliases: each stands for one known name and hides none.</summary>
internal static class AliasChecks
{
    public static IEnumerable<RecordCheck> OfAliases =>
    [
        NamesOnce.Of<AliasRow>("alias", row => $"the alias {row.Alias.Trim()} in {row.Table.Trim()}"),
        new RowChecks<AliasRow>(("table, alias and name make sense", Check)),
    ];

    private static void Check(CheckContext context, AliasRow row)
    {
        string table = HeadingKey.Of(row.Table);
        NameIndex? names = context.FindNames(table);
        if (names is null)
        {
            if (!NameAliases.Tables.Contains(table))
            {
                context.Report(
                    ProblemCodes.AliasOfNothing,
                    row,
                    "table",
                    $"Names of \"{row.Table}\" have no aliases; allowed: {string.Join(", ", NameAliases.Tables)}.",
                    row.Table,
                    NearestName.Find(row.Table, NameAliases.Tables)
                );
            }

            return;
        }

        if (
            names.Check(context, row, "name", row.Name)
            && names.Checkable
            && names.Contains(row.Alias)
            && !row.Alias.Trim().Equals(row.Name.Trim(), StringComparison.OrdinalIgnoreCase)
        )
        {
            context.Report(
                ProblemCodes.AliasHidesName,
                row,
                "alias",
                $"\"{row.Alias}\" is itself a name in {table}, and would be read as \"{row.Name}\".",
                row.Alias
            );
        }
    }
}
