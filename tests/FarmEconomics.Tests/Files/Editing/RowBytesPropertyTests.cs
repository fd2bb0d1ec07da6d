using System.Globalization;
using System.Text;
using CsCheck;
using FarmEconomics.Files.Editing;
using Xunit;

namespace FarmEconomics.Tests.Files.Editing;

/// <summary>
/// Random files (separators, quotes, line ends, blank lines, marks, odd letters, short and long rows): a change leaves every other row's bytes alone, is read back as it was
/// meant, and undoing it gives the file's own bytes. 300 files, or as many as FARMECONOMICS_EDITS says.
/// </summary>
public class RowBytesPropertyTests
{
    private static readonly int Files = int.Parse(Environment.GetEnvironmentVariable("FARMECONOMICS_EDITS") ?? "300", CultureInfo.InvariantCulture);

    private static readonly Gen<string> Texts = Gen.OneOf(
        One("", " ", "a", "7.5", "12,50", "x;y", "say \"hi\"", "\"", "5\" pots", " spaced ", "é ü ñ", "日本", "a\tb", "=1+2", "'", "''"),
        Gen.String[Gen.Char["abc ,;\"'é"], 0, 8]);

    private static readonly Gen<(string File, int[] Lines)> Tables =
        from separator in One(',', ';', '\t')
        from end in One("\n", "\r\n")
        from mark in Gen.Bool
        from last in Gen.Bool
        from rows in Gen.Select(Texts.Array[0, 6], Gen.Int[0, 5], Gen.Bool).Array[1, 12]
        select Make(separator, end, mark, last, rows);

    [Fact]
    public void Change_AnyRow_LeavesTheOthersAndIsReadBack() =>
        Gen.Select(Tables, Gen.Int[0, 1000], Gen.Int[0, 3], Texts).Sample((table, pick, column, text) =>
        {
            byte[] before = Encoding.UTF8.GetBytes(table.File);
            RowBytes rows = RowBytes.Of(before)!;
            int[] lines = [.. table.Lines.Where(line => rows.Fields(line) is not null)];
            if (lines.Length == 0)
            {
                return;
            }

            int at = lines[pick % lines.Length];
            string meant = text.Trim();
            if (rows.Fields(at)!.Where((_, i) => i != column).Append(meant).All(field => field.Trim(' ', '\t', '"').Length == 0))
            {
                return;
            }

            byte[] after = rows.Change(at, new Dictionary<string, string> { [$"c{column}"] = meant })!;
            RowBytes changed = RowBytes.Of(after)!;
            IReadOnlyList<string> field = changed.Fields(at)!;
            Assert.Equal(meant, column < field.Count ? field[column] : "");
            foreach (int line in lines.Where(line => line != at))
            {
                Assert.Equal(rows.Fields(line), changed.Fields(line));
            }

            int start = before.AsSpan().CommonPrefixLength(after);
            int tail = CommonTail(before.AsSpan(start), after.AsSpan(start));
            Assert.DoesNotContain((byte)'\n', after.AsSpan(start, after.Length - start - tail).ToArray());
        }, iter: Files);

    [Fact]
    public void Undo_AfterAnyChange_GivesTheSameBytes()
    {
        string folder = TestFolders.MakeBad("sound");
        string place = Path.Combine(folder, "notes.csv");
        Gen.Select(Tables, Gen.Int[0, 1000], Gen.Int[0, 2], Texts).Sample((table, pick, kind, text) =>
        {
            byte[] before = Encoding.UTF8.GetBytes(table.File);
            File.WriteAllBytes(place, before);
            var editor = new RecordsEditor(folder, TimeProvider.System);
            int line = kind == 0 ? 0 : table.Lines[pick % table.Lines.Length];
            if (editor.Row("notes.csv", line) is not { } row)
            {
                return;
            }

            EditOutcome saved = editor.Save(new RowChange("notes.csv", row.Version, line, kind == 2 ? null : new Dictionary<string, string> { ["c1"] = text.Trim() }));
            if (saved.Message.Contains("would be blank", StringComparison.Ordinal)
                || saved.Message.Contains("every field is blank", StringComparison.Ordinal))
            {
                Assert.Equal(before, File.ReadAllBytes(place));
                return;
            }

            Assert.True(saved.Saved, saved.Message);
            Assert.True(editor.Undo("notes.csv").Saved);
            Assert.Equal(before, File.ReadAllBytes(place));
        }, iter: Files, threads: 1);
    }

    private static Gen<T> One<T>(params T[] of) => Gen.Int[0, of.Length - 1].Select(at => of[at]);

    private static int CommonTail(ReadOnlySpan<byte> left, ReadOnlySpan<byte> right)
    {
        int tail = 0;
        while (tail < left.Length && tail < right.Length && left[^(tail + 1)] == right[^(tail + 1)])
        {
            tail++;
        }

        return tail;
    }

    private static (string File, int[] Lines) Make(char separator, string end, bool mark, bool last, (string[] Fields, int Blank, bool Quoted)[] rows)
    {
        var text = new StringBuilder(mark ? "\uFEFF" : "").AppendJoin(separator, "c0", "c1", "c2", "c3");
        int line = 1;
        List<int> lines = [];
        foreach ((string[] fields, int blank, bool quoted) in rows)
        {
            for (int i = 0; i <= (blank == 0 ? 1 : 0); i++)
            {
                text.Append(end);
                line++;
            }

            lines.Add(line);
            string[] written = [.. fields.Select(field => quoted || field.AsSpan().IndexOfAny(separator, '"') >= 0 ? $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : field)];
            text.AppendJoin(separator, written.Length == 0 ? ["z"] : written);
        }

        return (text.Append(last ? end : "").ToString(), [.. lines]);
    }
}
