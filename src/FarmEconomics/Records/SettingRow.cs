using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>farm</c>.</summary>
    public Rows<SettingRow> Farm => Of<SettingRow>();
}

/// <summary>A row of <c>farm</c>: one setting.</summary>
public readonly record struct SettingRow(RecordTable Home, int Index) : IRecordRow<SettingRow>
{
    private static readonly TableDeclaration Declared = new("farm", 100, "one setting of the farm")
    {
        Without = "Without farm.csv every setting keeps its default; with no owner wage and no interest rate, what holds unpaid labor or "
            + "the cost of owning is blank.",
    };

    internal static readonly TextColumn SettingColumn = Declared.Text(
        new("setting", ColumnType.Text, "The setting's name, from the list of settings.") { Required = true });
    internal static readonly TextColumn ValueColumn = Declared.Text(new("value", ColumnType.Text, "Its value.") { Required = true });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<SettingRow>();

    /// <summary>The setting's name.</summary>
    public string Setting => SettingColumn.Of(Home, Index);

    /// <summary>Its value as written.</summary>
    public string Value => ValueColumn.Of(Home, Index);

    /// <inheritdoc/>
    public static SettingRow At(RecordTable table, int index) => new(table, index);
}
