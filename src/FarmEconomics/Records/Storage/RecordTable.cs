using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Storage;

/// <summary>
/// The rows of one table, stored by columns. Rows are added while the records are read; once they are sealed nothing in it changes, and
/// it is safe to use from several threads.
/// </summary>
public sealed class RecordTable
{
    private readonly Cells[] cells;
    private readonly Cells<int> lines;
    private readonly List<FileRows> files;
    private object? rows;

    internal RecordTable(TableSchema schema, NamePool names)
        : this(schema, names, Array.ConvertAll(schema.Stored, column => column.NewCells()), new TextCells(), [])
    {
    }

    private RecordTable(TableSchema schema, NamePool names, Cells[] cells, Cells<int> lines, List<FileRows> files)
    {
        Schema = schema;
        Names = names;
        this.cells = cells;
        this.lines = lines;
        this.files = files;
    }

    /// <summary>What the table holds.</summary>
    public TableSchema Schema { get; }

    /// <summary>How many rows it has.</summary>
    public int Count { get; private set; }

    /// <summary>True once nothing in it can change any more.</summary>
    public bool IsSealed { get; private set; }

    /// <summary>The texts its names are numbered in.</summary>
    internal NamePool Names { get; }

    /// <summary>A row as a value that can be told from others by its type.</summary>
    /// <param name="index">The row, from 0.</param>
    /// <returns>The row.</returns>
    public IRecordRow this[int index] => Schema.RowOf(this, index);

    /// <summary>The file and line of a row.</summary>
    /// <param name="index">The row, from 0.</param>
    /// <returns>Its place.</returns>
    public SourceLine Source(int index)
    {
        int file = files.Count - 1;
        while (file > 0 && files[file].FirstRow > index)
        {
            file--;
        }

        return file < 0
            ? default
            : new SourceLine(
                files[file].File,
                files[file].FirstLine is > 0 and int first ? first + index - files[file].FirstRow : lines[index]
            );
    }

    internal Cells CellsOf(Column column) => cells[column.At];

    internal Rows<T> Rows<T>()
        where T : struct, IRecordRow<T> => (Rows<T>)(rows ??= new Rows<T>(this));

    internal void Seal() => IsSealed = true;

    /// <summary>Adds a row of blanks.</summary>
    internal int Add(SourceLine source)
    {
        Open();
        StartFile(source.File ?? "");
        lines[Count] = source.Line;
        return Count++;
    }

    /// <summary>Rows from here on are of a file.</summary>
    internal void StartFile(string file)
    {
        if (files.Count == 0 || files[^1].File != file)
        {
            files.Add(new FileRows(Count, file, 0));
        }
    }

    /// <summary>Rows from the first on of the file read last stand one below the other: their lines needn't be kept.</summary>
    /// <param name="line">The line of its first row.</param>
    internal void SetFirstLine(int line) => files[^1] = files[^1] with { FirstLine = line };

    /// <summary>Takes rows back from the end, and what stands in them.</summary>
    internal void CutTo(int count)
    {
        Open();
        foreach (Cells column in cells)
        {
            column.Clear(count, Count - count);
        }

        files.RemoveAll(file => file.FirstRow > count);
        Count = count;
    }

    /// <summary>Makes room for rows that are written into at once, each with its line; those left over are cut away afterwards.</summary>
    internal void Reserve(int rows, IEnumerable<Column> filled)
    {
        Open();
        foreach (Column column in filled)
        {
            CellsOf(column).Resize(Count + rows);
        }

        Count += rows;
    }

    /// <summary>Moves rows to the front, over rows nothing was written to.</summary>
    internal void Move(int from, int to, int count)
    {
        lines.Move(from, to, count);
        foreach (Cells column in cells)
        {
            column.Move(from, to, count);
        }
    }

    /// <summary>The rows that are meant, in their order; this table when it is all of them.</summary>
    internal RecordTable Where(Func<int, bool> isMeant)
    {
        RecordTable picked = Copy();
        for (int row = 0; row < Count; row++)
        {
            picked.lines[row] = Source(row).Line;
        }

        picked.files.Clear();
        int kept = 0;
        for (int row = 0; row < Count; row++)
        {
            int first = row;
            while (row < Count && isMeant(row))
            {
                string file = Source(row).File;
                if (picked.files.Count == 0 || picked.files[^1].File != file)
                {
                    picked.files.Add(new FileRows(kept + row - first, file, 0));
                }

                row++;
            }

            picked.Move(first, kept, row - first);
            kept += row - first;
        }

        if (kept == Count)
        {
            return this;
        }

        picked.CutTo(kept);
        return picked;
    }

    /// <summary>The same rows once more, to be added to.</summary>
    internal RecordTable Copy() =>
        new(Schema, Names, Array.ConvertAll(cells, column => column.Copy()), (Cells<int>)lines.Copy(), [.. files]) { Count = Count };

    /// <summary>The table with some cells changed; only their columns are copied.</summary>
    internal RecordTable With(IEnumerable<CellChange> changes)
    {
        var changed = new RecordTable(Schema, Names, [.. cells], lines, files) { Count = Count };
        foreach (IGrouping<Column, CellChange> column in changes.GroupBy(change => change.Column))
        {
            changed.cells[column.Key.At] = cells[column.Key.At].Copy();
            foreach (CellChange change in column)
            {
                column.Key.Set(changed, change.Row, change.Value);
            }
        }

        changed.Seal();
        return changed;
    }

    /// <summary>Rows of one file.</summary>
    /// <param name="FirstRow">The first of them.</param>
    /// <param name="File">The file.</param>
    /// <param name="FirstLine">Its line where the others stand one below the other; 0 where each row's line is kept.</param>
    private readonly record struct FileRows(int FirstRow, string File, int FirstLine);

    private void Open()
    {
        if (IsSealed)
        {
            throw new InvalidOperationException($"The rows of {Schema.Name} are read, and can't be added to any more.");
        }
    }
}

/// <summary>A cell that holds another value in a what-if.</summary>
internal readonly record struct CellChange(Column Column, int Row, object? Value);
