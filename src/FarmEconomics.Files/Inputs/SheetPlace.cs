using FarmEconomics.Files.Workbooks;

namespace FarmEconomics.Files.Inputs;

/// <summary>How a place in a workbook is written: <c>records.xlsx!sales</c>, row, and the letters of the column.</summary>
internal static class SheetPlace
{
    private const string Extension = ".xlsx";

    /// <summary>True for a path that is read as a workbook: it ends in .xlsx and is no folder.</summary>
    public static bool IsWorkbook(string path) => path.EndsWith(Extension, StringComparison.OrdinalIgnoreCase) && !Directory.Exists(path);

    public static string Name(string path, string sheet) => $"{Path.GetFileName(path)}!{sheet}";

    public static bool IsSheet(string file) => file.Contains(Extension + "!", StringComparison.OrdinalIgnoreCase);

    /// <summary>1 is A, 27 is AA.</summary>
    public static string Letters(int column) => WorkbookSheet.Column(column - 1);

    /// <summary>The column of a cell reference such as <c>AB12</c>, from 1; 0 when it is none.</summary>
    public static int ColumnOf(ReadOnlySpan<char> reference)
    {
        int column = 0;
        foreach (char c in reference)
        {
            if (!char.IsAsciiLetterUpper(c))
            {
                break;
            }

            column = (column * 26) + (c - 'A' + 1);
            if (column > 1 << 20)
            {
                return 0;
            }
        }

        return column;
    }

    /// <summary>The row of a cell reference such as <c>AB12</c>; 0 when it is none.</summary>
    public static int RowOf(ReadOnlySpan<char> reference) =>
        int.TryParse(reference.TrimStart("ABCDEFGHIJKLMNOPQRSTUVWXYZ$"), out int row) ? row : 0;
}
