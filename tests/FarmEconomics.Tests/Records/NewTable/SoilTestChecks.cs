using FarmEconomics.Records.Checks;

namespace FarmEconomics.Tests.Records.NewTable;

/// <summary>What is checked of a soil test besides what its columns say.</summary>
internal static class SoilTestChecks
{
    public static IEnumerable<RecordCheck> OfSoilTests =>
    [
        new RowChecks<SoilTestRow>(("date is in a year of the records", (context, row) => context.InYears(row, "date", row.Date))),
    ];
}
