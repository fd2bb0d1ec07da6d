using CsCheck;
using FarmEconomics.Files;
using FarmEconomics.Records;
using Xunit;

namespace FarmEconomics.Tests.Files;

/// <summary>Whatever happens to the text of a file, every row of it is either read or reported.</summary>
public class RowCountTests
{
    private static readonly string[] Sound =
    [
        "date,crop,channel,quantity,unit,unit_price,amount,planting",
        "2025-05-10,lettuce,market,40,head,1.50,60.00,L1",
        "2025-05-11,\"kale, red\",shares,12,bunch,,30.00,",
        "2025-05-12,beet,stand,3.5,lb,2.25,,B1",
        "2025-05-13,lettuce,household,2,,,,",
    ];

    private static readonly string[] Nasty =
        ["", " ", "x", "-1", "1e9", "12.345", "(3.00)", "€ 5", "2025-02-30", "\"", "\"\"", "a\"b", "\uFEFF", "\u00A0", "99999999999999999999", ";", ",,,,,,,,,"];

    // Fields and letters that tell apart readers that guess; line breaks only inside quotes, so that rows can be counted by lines.
    private static readonly Gen<string> Junk = Gen.OneOf(
        Gen.Int[0, Nasty.Length - 1].Select(i => Nasty[i]),
        Gen.String[Gen.Char.AlphaNumeric, 0, 8],
        Gen.String[0, 6].Select(text => text.ReplaceLineEndings(" ").Replace('\u000B', ' ').Replace('\u000C', ' ')));

    [Fact]
    public void Read_CorruptedCells_ReadRowsPlusRowsInErrorAreTheRowsOfTheFile() =>
        Gen.Select(Gen.Int[0, 7], Gen.Int[1, 4], Junk).Array[0, 6].Sample(
            changes =>
            {
                string[][] cells = [.. Sound.Select(line => line.Replace("\"kale, red\"", "kale", StringComparison.Ordinal).Split(','))];
                foreach ((int column, int row, string text) in changes)
                {
                    cells[row][column] = $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
                }

                AssertEveryRowCounted(string.Join('\n', cells.Select(row => string.Join(',', row))), expectedRows: cells.Skip(1).Count(row => row.Any(HasText)));
            },
            iter: 400,
            threads: 1);

    [Fact]
    public void Read_CorruptedText_ReadRowsPlusRowsInErrorAreTheRowsOfTheFile() =>
        Gen.Select(Gen.Int[0, 200], Gen.Int[0, 3], Junk).Array[1, 4].Sample(
            changes =>
            {
                string body = string.Join('\n', Sound.Skip(1));
                foreach ((int at, int length, string text) in changes)
                {
                    int start = at % body.Length;
                    body = body.Remove(start, Math.Min(length, body.Length - start)).Insert(start, text);
                }

                AssertEveryRowCounted(Sound[0] + "\n" + body, expectedRows: null);
            },
            iter: 400,
            threads: 1);

    private static bool HasText(string cell) => cell.Trim('"').Trim(' ', '\t').Length > 0;

    private static void AssertEveryRowCounted(string text, int? expectedRows)
    {
        string folder = TestFolders.Make(("sales.csv", text));
        try
        {
            RecordsReading reading = RecordsFolder.Read(folder);
            FileCount count = Assert.Single(reading.Files);
            int reported = reading.Problems.Where(problem => problem.Source.File == "sales.csv" && problem.Severity == Severity.Error).Select(problem => problem.Source.Line).Distinct().Count();

            Assert.Equal(expectedRows ?? CountRecords(text), count.RowsInFile);
            Assert.Equal(count.RowsInFile, reading.Tables.Sales.Count + reported);
            Assert.Equal((count.RowsRead, count.RowsInError), (reading.Tables.Sales.Count, reported));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // RFC 4180 by the letter: a quote opens a field only at its start (blanks before it are passed over), a doubled one inside stays.
    private static int CountRecords(string text)
    {
        int records = 0;
        bool quoted = false, atStart = true, content = false;
        for (int i = 0; i <= text.Length; i++)
        {
            char c = i < text.Length ? text[i] : '\n';
            if (quoted && i < text.Length)
            {
                content |= c is not (' ' or '\t' or '"');
                if (c == '"' && i + 1 < text.Length && text[i + 1] == '"')
                {
                    content = true;
                    i++;
                }
                else if (c == '"')
                {
                    quoted = false;
                }
            }
            else if (c is '\n' or '\r')
            {
                records += content ? 1 : 0;
                (quoted, atStart, content) = (false, true, false);
            }
            else if (c == '"' && atStart)
            {
                (quoted, atStart) = (true, false);
            }
            else if (c == ',')
            {
                atStart = true;
            }
            else if (c is not (' ' or '\t'))
            {
                (atStart, content) = (false, true);
            }
        }

        // The heading row is a record as well.
        return records - 1;
    }
}
