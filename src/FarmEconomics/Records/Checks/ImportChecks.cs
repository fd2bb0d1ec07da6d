namespace FarmEconomics.Records.Checks;

/// <summary>Checks of remembered mappings.</summary>
internal static class ImportChecks
{
    public static IEnumerable<RecordCheck> OfImports =>
    [
        new RowChecks<ImportRow>(("table, column and source make sense", (context, row) =>
        {
            if (ImportRules.Fault(row) is { } problem)
            {
                context.Problems.Add(problem);
            }
        })),
    ];
}
