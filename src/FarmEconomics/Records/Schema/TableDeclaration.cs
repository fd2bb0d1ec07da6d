using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Schema;

/// <summary>Declares a table, column by column, where its row is declared; all else that knows tables follows from it.</summary>
/// <param name="name">The table's name: the file is <c>name.csv</c>.</param>
/// <param name="place">Its place among the tables in the documents.</param>
/// <param name="oneRowIs">What one row stands for.</param>
internal sealed class TableDeclaration(string name, int place, string oneRowIs)
{
    private readonly List<Column> columns = [];
    private TableSchema? schema;

    /// <summary>True when no review is possible without it.</summary>
    public bool Required { get; init; }

    /// <summary>True for a table that helps to read the others and holds nothing of the farm itself.</summary>
    public bool IsAid { get; init; }

    /// <summary>One sentence on what can't be said without the table.</summary>
    public string? Without { get; init; }

    /// <summary>True for a table that sharpens a first season's answers most.</summary>
    public bool ComesNext { get; init; }

    /// <summary>Columns of which each row must fill at least one.</summary>
    public IReadOnlyList<string> OneOf { get; init; } = [];

    /// <summary>Columns of names of which each row may fill at most one.</summary>
    public IReadOnlyList<string> AtMostOneOf { get; init; } = [];

    /// <summary>
    /// The code of a problem with a name that should stand in the table's first column; null where no other table refers to it.
    /// </summary>
    public string? UnknownName { get; init; }

    /// <summary>Names that are known without standing in the table.</summary>
    public Func<RecordTables, IEnumerable<string>>? Shipped { get; init; }

    /// <summary>True when every name of the first column stands once.</summary>
    public bool NamesOnce { get; init; }

    /// <summary>True when two rows that say the same in every column are held to be one entered twice.</summary>
    public bool RowsOnce { get; init; }

    /// <summary>The column of the money a row is worth.</summary>
    public string? Money { get; init; }

    /// <summary>The column of the day a row belongs to.</summary>
    public string? Day { get; init; }

    /// <summary>What is checked besides what the declaration says, in the order in which it is.</summary>
    public Func<IEnumerable<RecordCheck>> Checks { get; init; } = () => [];

    public TextColumn Text(ColumnSchema column) => Add(new TextColumn(column, columns.Count));

    /// <summary>A column that may name a row of another table.</summary>
    public TextColumn Ref(string column, string table, string about) => Text(new(column, ColumnType.Name, about) { RefersTo = table });

    /// <summary>A column that must name a row of another table.</summary>
    public TextColumn MustRef(string column, string table, string about) =>
        Text(new(column, ColumnType.Name, about) { RefersTo = table, Required = true });

    public DayColumn Date(ColumnSchema column) => Add(new DayColumn(column, columns.Count));

    public NumberColumn Number(ColumnSchema column) => Add(new NumberColumn(column, columns.Count));

    public YearColumn Year(ColumnSchema column) => Add(new YearColumn(column, columns.Count));

    public YesNoColumn YesNo(ColumnSchema column) => Add(new YesNoColumn(column, columns.Count));

    public ChoiceColumn<T> Choice<T>(ColumnSchema column)
        where T : struct, Enum => Add(new ChoiceColumn<T>(column with { Allowed = Words.All<T>() }, columns.Count));

    /// <summary>The table, once all columns are declared.</summary>
    public TableSchema SchemaOf<T>()
        where T : struct, IRecordRow<T> => schema ??= new TableSchema(name, oneRowIs, columns.ConvertAll(column => column.Schema))
        {
            Place = place,
            Required = Required,
            IsAid = IsAid,
            Without = Without,
            ComesNext = ComesNext,
            OneOf = OneOf,
            AtMostOneOf = AtMostOneOf,
            UnknownName = UnknownName,
            Shipped = Shipped,
            NamesOnce = NamesOnce,
            RowsOnce = RowsOnce,
            Money = Money,
            Day = Day,
            Checks = new(() => [.. Checks()]),
            Stored = [.. columns],
            RowOf = static (table, index) => T.At(table, index),
        };

    private T Add<T>(T column)
        where T : Column
    {
        columns.Add(column);
        return column;
    }
}
