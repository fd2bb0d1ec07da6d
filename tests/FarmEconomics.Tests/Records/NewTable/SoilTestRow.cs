using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Tests.Records.NewTable;

/// <summary>A row of <c>soil_tests</c>, a table the program doesn't have: what declaring one takes.</summary>
/// <param name="Home">The table it stands in.</param>
/// <param name="Index">Its place in the table, from 0.</param>
internal readonly record struct SoilTestRow(RecordTable Home, int Index) : IRecordRow<SoilTestRow>
{
    private static readonly TableDeclaration Declared = new("soil_tests", 600, "a soil test of a bed")
    {
        RowsOnce = true,
        Day = "date",
        Money = "fee",
        Checks = () => SoilTestChecks.OfSoilTests,
        Without = "Without soil_tests.csv nothing is known of the soil.",
    };

    internal static readonly DayColumn DateColumn = Declared.Date(new("date", ColumnType.Date, "The day.") { Required = true });
    internal static readonly TextColumn BedColumn = Declared.Text(
        new("bed", ColumnType.Name, "The bed.") { Required = true, RefersTo = "beds" });
    internal static readonly NumberColumn PhColumn = Declared.Number(
        new("ph", ColumnType.Number, "The pH.") { Required = true, Range = new NumberRange(0m, 14m), Unit = "pH" });
    internal static readonly NumberColumn FeeColumn = Declared.Number(
        new("fee", ColumnType.Money, "What the test cost.") { Range = new NumberRange(0m, 1_000m), Unit = "currency" });

    public static TableSchema Schema => Declared.SchemaOf<SoilTestRow>();

    public DateOnly Date => DateColumn.Of(Home, Index);

    public string Bed => BedColumn.Of(Home, Index);

    public decimal Ph => PhColumn.Of(Home, Index);

    public decimal? Fee => FeeColumn.Maybe(Home, Index);

    public static SoilTestRow At(RecordTable table, int index) => new(table, index);
}
