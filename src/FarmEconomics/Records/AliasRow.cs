using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>aliases</c>.</summary>
    public Rows<AliasRow> Aliases => Of<AliasRow>();
}

/// <summary>A row of <c>aliases</c>: another way a name is written.</summary>
public readonly record struct AliasRow(RecordTable Home, int Index) : IRecordRow<AliasRow>
{
    private static readonly TableDeclaration Declared = new("aliases", 500,
        "another way a name is written; it is read as the name wherever a row refers to it")
    {
        IsAid = true,
        Without = "Without aliases.csv every name must be written as its own table has it.",
        Checks = () => AliasChecks.OfAliases,
    };

    internal static readonly TextColumn TableColumn = Declared.Text(
        new("table", ColumnType.Text,
            "The table the name stands in: crops, units, beds, plantings, channels, workers, tasks, categories, pools, structures "
            + "(as beds has them) or assets.")
        { Required = true });
    internal static readonly TextColumn AliasColumn = Declared.Text(
        new("alias", ColumnType.Text, "The name as it is also written.") { Required = true, NamesSomething = true });
    internal static readonly TextColumn NameColumn = Declared.Text(
        new("name", ColumnType.Text, "The name it stands for; the alias itself says that it is a name of its own, however much "
            + "it reads like another.")
        { Required = true, NamesSomething = true, MaxLength = 100 });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<AliasRow>();

    /// <summary>The table the name stands in.</summary>
    public string Table => TableColumn.Of(Home, Index);

    /// <summary>The name as it is also written.</summary>
    public string Alias => AliasColumn.Of(Home, Index);

    /// <summary>The name it stands for.</summary>
    public string Name => NameColumn.Of(Home, Index);

    /// <inheritdoc/>
    public static AliasRow At(RecordTable table, int index) => new(table, index);
}
