using FarmEconomics.Records;

namespace FarmEconomics.Files;

/// <summary>How many rows of a file were read. Blank rows are no rows.</summary>
/// <param name="Table">The table.</param>
/// <param name="File">The file's name.</param>
/// <param name="RowsInFile">Rows with anything in them, without the heading row.</param>
/// <param name="RowsRead">Rows that are in the table now.</param>
/// <param name="RowsInError">Rows left out because a field can't be read; with <see cref="RowsPassedOver"/> always the rest.</param>
public sealed record FileCount(string Table, string File, int RowsInFile, int RowsRead, int RowsInError)
{
    /// <summary>Rows that are no records (titles above the headings, totals, remarks under the table), each named by a warning.</summary>
    public int RowsPassedOver { get; init; }
}

/// <summary>How far the reading is.</summary>
/// <param name="File">The file being read.</param>
/// <param name="Rows">Rows read of it so far.</param>
/// <param name="Notation">How the farm writes.</param>
public sealed record ReadingProgress(string File, int Rows, Notation Notation);

/// <summary>A table that isn't in the folder.</summary>
/// <param name="Table">The table.</param>
/// <param name="Consequence">What can't be said without it.</param>
/// <param name="ComesNext">Whether it sharpens a first season's answers most.</param>
public sealed record MissingTable(string Table, string Consequence, bool ComesNext);

/// <summary>A records folder as read: what could be read, what could not, and how much of each.</summary>
/// <param name="Tables">The rows that could be read.</param>
/// <param name="FarmSettings">The settings of <c>farm</c> with those given from outside in place of them.</param>
/// <param name="Problems">Everything that could not be read, by file and line; the checks between tables are not in it.</param>
/// <param name="Files">The files read, with their counts.</param>
/// <param name="MissingTables">The tables that aren't there, each with what can't be said without it.</param>
public sealed record RecordsReading(
    RecordTables Tables,
    FarmSettings FarmSettings,
    IReadOnlyList<Problem> Problems,
    IReadOnlyList<FileCount> Files,
    IReadOnlyList<MissingTable> MissingTables)
{
    /// <summary>The files or sheets, for finding the place of a problem.</summary>
    internal IReadOnlyList<Inputs.TableInput> Inputs { get; init; } = [];
}
