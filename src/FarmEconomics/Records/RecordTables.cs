using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

/// <summary>
/// The tables of a records folder as read: rows in file order, not yet checked against each other. Each table's rows are found under its
/// name (<see cref="Sales"/>, ...). A table that isn't there has no rows and is not in <see cref="Present"/>.
/// </summary>
public sealed partial class RecordTables
{
    private readonly Dictionary<TableSchema, RecordTable> tables;
    private readonly NamePool names;
    private readonly Dictionary<TableSchema, RecordTable> inError = [];

    /// <summary>No rows yet.</summary>
    public RecordTables()
        : this(RecordSchema.Tables)
    {
    }

    internal RecordTables(IReadOnlyList<TableSchema> schemas)
    {
        names = new NamePool();
        tables = schemas.ToDictionary(schema => schema, schema => new RecordTable(schema, names));
    }

    private RecordTables(RecordTables from, Func<RecordTable, RecordTable> change, bool rowsInError)
    {
        names = from.names;
        tables = from.tables.ToDictionary(table => table.Key, table => change(table.Value));
        inError = rowsInError ? from.inError : [];
    }

    /// <summary>Names of the tables that were found (<c>crops</c>, <c>sales</c>, ...), lower case.</summary>
    public HashSet<string> Present { get; init; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>
    /// Tables that are there but could not be read as a whole (a required column is missing): names that refer to them can't be
    /// checked and aren't reported as unknown. Subset of <see cref="Present"/>.
    /// </summary>
    public HashSet<string> Unreadable { get; init; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>
    /// Names that stand in rows left out because of an error, by table: such a name is known, so that one bad row is reported once
    /// and not again in every row that refers to it. Emptied when rows in error are skipped.
    /// </summary>
    public Dictionary<string, HashSet<string>> NamesInError { get; init; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>
    /// The names that stand in rows left out because of an error, all else blank: they are checked as those of other rows, so that one run
    /// tells all that is wrong with a row. Of no other use.
    /// </summary>
    internal RecordTable? InErrorOf(TableSchema schema) => inError.GetValueOrDefault(schema);

    /// <summary>All of them.</summary>
    internal IEnumerable<RecordTable> InError => inError.Values;

    /// <summary>Remembers the names of a row that is about to be left out.</summary>
    internal void RememberInError(RecordTable table, int row)
    {
        if (!inError.TryGetValue(table.Schema, out RecordTable? apart))
        {
            inError.Add(table.Schema, apart = new RecordTable(table.Schema, names));
        }

        int at = apart.Add(table.Source(row));
        foreach (TextColumn column in table.Schema.Stored.OfType<TextColumn>())
        {
            column.Cells(apart)[at] = column.Id(table, row);
        }
    }

    /// <summary>All tables, in documented order.</summary>
    public IEnumerable<RecordTable> All => tables.Values;

    /// <summary>The rows of a table.</summary>
    /// <typeparam name="T">The type of its rows.</typeparam>
    /// <returns>The rows.</returns>
    public Rows<T> Of<T>()
        where T : struct, IRecordRow<T> => tables[T.Schema].Rows<T>();

    /// <summary>A table by its schema.</summary>
    /// <param name="schema">The schema.</param>
    /// <returns>The table.</returns>
    public RecordTable Of(TableSchema schema) => tables[schema];

    /// <summary>Adds a row; its table is there from now on.</summary>
    /// <typeparam name="T">The type of row.</typeparam>
    /// <param name="row">Its values.</param>
    /// <returns>The row.</returns>
    /// <exception cref="InvalidOperationException">The records are read already, and sealed.</exception>
    public T Add<T>(RowValues row)
        where T : struct, IRecordRow<T>
    {
        ArgumentNullException.ThrowIfNull(row);
        Present.Add(T.Schema.Name);
        RecordTable table = tables[T.Schema];
        return T.At(table, row.AddTo(table));
    }

    /// <summary>The name all tables number as one; 0 where no row holds it.</summary>
    internal NamePool Names => names;

    /// <summary>From here on nothing changes.</summary>
    internal void Seal()
    {
        foreach (RecordTable table in tables.Values.Concat(inError.Values))
        {
            table.Seal();
        }
    }

    /// <summary>The same rows once more, to be added to.</summary>
    internal RecordTables Copy() => With(table => table.Copy());

    /// <summary>The records with other tables in place of some; every table is asked, so none is left behind.</summary>
    internal RecordTables With(Func<RecordTable, RecordTable> change, bool rowsInError = true) => new(this, change, rowsInError)
    {
        Present = Present,
        Unreadable = Unreadable,
        NamesInError = rowsInError ? NamesInError : new(StringComparer.OrdinalIgnoreCase),
    };
}
