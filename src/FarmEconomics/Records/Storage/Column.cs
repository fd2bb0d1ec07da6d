using System.Globalization;
using System.Numerics;
using System.Text;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Storage;

/// <summary>A declared column: what it holds, how its text is read and written, and its values in a table.</summary>
internal abstract class Column(ColumnSchema schema, int at)
{
    /// <summary>Longer texts are no numbers and no days, whatever signs and separators they hold.</summary>
    protected const int LongestNumber = 120;

    public ColumnSchema Schema { get; } = schema;

    /// <summary>Its place among the columns of its table.</summary>
    public int At { get; } = at;

    public abstract Cells NewCells();

    /// <summary>Reads a field into a row.</summary>
    /// <param name="field">The field, trimmed, in UTF-8; not blank.</param>
    /// <param name="format">How the farm writes.</param>
    /// <param name="table">The table.</param>
    /// <param name="row">The row.</param>
    /// <returns>False when something is wrong with it, or needs a closer look.</returns>
    public abstract bool TryRead(ReadOnlySpan<byte> field, FieldFormat format, RecordTable table, int row);

    /// <summary>The value of a row; null for a blank.</summary>
    public abstract object? Get(RecordTable table, int row);

    public abstract void Set(RecordTable table, int row, object? value);

    /// <summary>The value of a row as a file has it, with decimal points.</summary>
    public string Text(RecordTable table, int row) => Get(table, row) switch
    {
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        bool yes => yes ? "yes" : "no",
        string text => text,
        null => "",
        var value => TextOf(value),
    };

    /// <summary>Mixes the values of some rows into their hashes; names that differ only in case are the same.</summary>
    public virtual void Mix(RecordTable table, int first, Span<ulong> hashes)
    {
        Cells cells = table.CellsOf(this);
        for (int i = 0; i < hashes.Length; i++)
        {
            hashes[i] = Mix(hashes[i], cells.Raw(first + i));
        }
    }

    /// <summary>True when two rows hold the same value.</summary>
    public virtual bool Same(RecordTable table, int left, int right) => table.CellsOf(this).Raw(left) == table.CellsOf(this).Raw(right);

    protected virtual string TextOf(object value) => ((IFormattable)value).ToString(null, CultureInfo.InvariantCulture);

    protected static ulong Mix(ulong hash, long value) => (BitOperations.RotateLeft(hash, 5) ^ (ulong)value) * 0x9E3779B97F4A7C15;

    /// <summary>A field as characters; empty when it is too long to be what is looked for.</summary>
    protected static ReadOnlySpan<char> Chars(ReadOnlySpan<byte> field, Span<char> place) =>
        field.Length <= LongestNumber ? place[..Encoding.UTF8.GetChars(field, place)] : default;
}

/// <summary>A name, a text or a basis.</summary>
internal sealed class TextColumn(ColumnSchema schema, int at) : Column(schema, at)
{
    /// <summary>The text of a row, empty for a blank.</summary>
    public string Of(RecordTable table, int row) => Maybe(table, row) ?? "";

    public string? Maybe(RecordTable table, int row) => table.Names[Id(table, row)];

    /// <summary>The number of the text in the pool; 0 for a blank.</summary>
    public int Id(RecordTable table, int row) => Cells(table)[row];

    public TextCells Cells(RecordTable table) => (TextCells)table.CellsOf(this);

    public override Cells NewCells() => new TextCells();

    public override bool TryRead(ReadOnlySpan<byte> field, FieldFormat format, RecordTable table, int row)
    {
        int id = format.Texts[At].Of(field);
        Cells(table)[row] = Math.Max(id, 0);
        return id > 0;
    }

    public override void Mix(RecordTable table, int first, Span<ulong> hashes)
    {
        TextCells cells = Cells(table);
        for (int i = 0; i < hashes.Length; i++)
        {
            hashes[i] = Mix(hashes[i], table.Names.Folded(cells[first + i]));
        }
    }

    public override bool Same(RecordTable table, int left, int right) =>
        table.Names.Folded(Id(table, left)) == table.Names.Folded(Id(table, right));

    public override object? Get(RecordTable table, int row) => Maybe(table, row);

    public override void Set(RecordTable table, int row, object? value) =>
        Cells(table)[row] = value is null ? 0 : table.Names.Of((string)value);
}

/// <summary>A day.</summary>
internal sealed class DayColumn(ColumnSchema schema, int at) : Column(schema, at)
{
    public DateOnly Of(RecordTable table, int row) => Maybe(table, row) ?? default;

    public DateOnly? Maybe(RecordTable table, int row) =>
        Cells(table).DayNumber(row) is >= 0 and var day ? DateOnly.FromDayNumber(day) : null;

    public DayCells Cells(RecordTable table) => (DayCells)table.CellsOf(this);

    public override Cells NewCells() => new DayCells();

    public override bool TryRead(ReadOnlySpan<byte> field, FieldFormat format, RecordTable table, int row)
    {
        int day = format.Texts[At].Of(field);
        Cells(table)[row] = Math.Max(day, 0);
        return day > 0 && ColumnSchema.HoldsDay(DateOnly.FromDayNumber(day - 1));
    }

    /// <summary>Reads a day met for the first time: many rows are of one.</summary>
    /// <returns>The day number and 1; -1 for no day.</returns>
    public static int Meet(ReadOnlySpan<byte> field, string? dateFormat) =>
        DateText.TryRead(Chars(field, stackalloc char[Math.Min(field.Length, LongestNumber)]), dateFormat, out DateOnly day)
            ? day.DayNumber + 1
            : -1;

    public override object? Get(RecordTable table, int row) => Maybe(table, row);

    public override void Set(RecordTable table, int row, object? value) =>
        Cells(table)[row] = value is null ? 0 : ((DateOnly)value).DayNumber + 1;
}

/// <summary>A crop year.</summary>
internal sealed class YearColumn(ColumnSchema schema, int at) : Column(schema, at)
{
    public int? Maybe(RecordTable table, int row) => Cells(table)[row] is not 0 and var year ? year : null;

    public YearCells Cells(RecordTable table) => (YearCells)table.CellsOf(this);

    public override Cells NewCells() => new YearCells();

    public override bool TryRead(ReadOnlySpan<byte> field, FieldFormat format, RecordTable table, int row)
    {
        bool read = field.Length == 4 & short.TryParse(field, NumberStyles.None, null, out short year) && ColumnSchema.HoldsYear(year);
        Cells(table)[row] = read ? year : (short)0;
        return read;
    }

    public override object? Get(RecordTable table, int row) => Maybe(table, row);

    public override void Set(RecordTable table, int row, object? value) => Cells(table)[row] = (short)((int?)value ?? 0);
}

/// <summary>Yes or no.</summary>
internal sealed class YesNoColumn(ColumnSchema schema, int at) : Column(schema, at)
{
    public bool? Maybe(RecordTable table, int row) => Cells(table)[row] is not 0 and var code ? code == 2 : null;

    public CodeCells Cells(RecordTable table) => (CodeCells)table.CellsOf(this);

    public override Cells NewCells() => new CodeCells();

    public override bool TryRead(ReadOnlySpan<byte> field, FieldFormat format, RecordTable table, int row)
    {
        bool read = YesNoText.TryRead(Encoding.UTF8.GetString(field), out bool value);
        Set(table, row, read ? value : null);
        return read;
    }

    public override object? Get(RecordTable table, int row) => Maybe(table, row);

    public override void Set(RecordTable table, int row, object? value) =>
        Cells(table)[row] = (byte)((bool?)value switch { null => 0, false => 1, true => 2 });
}

/// <summary>A word of a fixed list.</summary>
internal sealed class ChoiceColumn<T>(ColumnSchema schema, int at) : Column(schema, at)
    where T : struct, Enum
{
    public T Of(RecordTable table, int row) => Maybe(table, row) ?? default;

    public T? Maybe(RecordTable table, int row) => Cells(table)[row] is not 0 and var code ? Words.At<T>(code - 1) : null;

    public CodeCells Cells(RecordTable table) => (CodeCells)table.CellsOf(this);

    public override Cells NewCells() => new CodeCells();

    public override bool TryRead(ReadOnlySpan<byte> field, FieldFormat format, RecordTable table, int row)
    {
        string text = Encoding.UTF8.GetString(field);
        bool read = Words.TryParse(typeof(T) == typeof(RatePer) ? format.LengthUnit.Documented(text) : text, out T value);
        Set(table, row, read ? value : null);
        return read;
    }

    public override object? Get(RecordTable table, int row) => Maybe(table, row);

    public override void Set(RecordTable table, int row, object? value) =>
        Cells(table)[row] = value is null ? (byte)0 : (byte)(Words.PlaceOf((T)value) + 1);

    protected override string TextOf(object value) => Words.Of((T)value);
}
