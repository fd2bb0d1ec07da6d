using System.Text;
using FarmEconomics.Files;
using FarmEconomics.Files.Reading;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using Xunit;

namespace FarmEconomics.Tests.Files;

/// <summary>A large file without quotes is read by several threads; one quote, and it is read in order. Nothing else may differ.</summary>
public class SlicedReadingTests
{
    private const int Rows = 150_000;

    [Theory]
    [InlineData("\n", false)]
    [InlineData("\r\n", false)]
    [InlineData("\n", true)]
    public void Read_LargeFile_IsTheSameInSlicesAndInOrder(string lineEnd, bool blankLines)
    {
        string text = Sales(lineEnd, blankLines);
        Assert.True(text.Length > 3 * FileSlices.Least);

        RecordsReading sliced = Read(text);
        RecordsReading inOrder = Read(Quoted(text));

        Assert.Equal(Rows, sliced.Tables.Sales.Count);
        Assert.Equal(Cells(inOrder), Cells(sliced));
        Assert.Equal(inOrder.Problems.Select(problem => problem.Message), sliced.Problems.Select(problem => problem.Message));
        Assert.Equal(inOrder.Files.Select(file => file.ToString()), sliced.Files.Select(file => file.ToString()));
    }

    [Theory]
    [InlineData("2025-13-01,Kale,Market,2,lb,3.50")]
    [InlineData("2025-05-01,Kale,Market,two,lb,3.50")]
    [InlineData("2025-05-01,,Market,2,lb,3.50")]
    [InlineData("2025-05-01,Kale,Market,2,lb,3.50,left over")]
    [InlineData("Total,,,300000,,")]
    public void Read_LargeFileWithARowInError_TellsTheSame(string bad)
    {
        string[] lines = Sales("\n", blankLines: false).Split('\n');
        lines[Rows / 2] = bad;
        string text = string.Join('\n', lines);

        RecordsReading reading = Read(text);
        RecordsReading inOrder = Read(Quoted(text));

        Assert.Equal(Cells(inOrder), Cells(reading));
        Assert.Contains(reading.Problems, problem => problem.Source == new SourceLine("sales.csv", (Rows / 2) + 1));
        Assert.Equal(inOrder.Problems.Select(problem => (problem.Source, problem.Message)), reading.Problems.Select(problem => (problem.Source, problem.Message)));
    }

    [Fact]
    public void Cut_QuoteOrLoneCarriageReturnAnywhere_IsNotCut()
    {
        string text = Sales("\n", blankLines: false);

        Assert.NotNull(Cut(text));
        Assert.Null(Cut(Quoted(text)));
        Assert.Null(Cut(text[..^10] + "\r" + text[^9..]));
    }

    [Fact]
    public void Cut_Slices_HoldEveryByteAfterTheHeadingOnce()
    {
        string text = Sales("\r\n", blankLines: true);
        List<FileSlice> slices = Cut(text)!;

        Assert.True(slices.Count > 1);
        Assert.Equal(text.IndexOf('\n', StringComparison.Ordinal) + 1, slices[0].Start);
        Assert.Equal(Encoding.UTF8.GetByteCount(text), slices[^1].Start + slices[^1].Length);
        Assert.All(slices.Zip(slices.Skip(1)), pair => Assert.Equal(
            (pair.First.Start + pair.First.Length, pair.First.LinesBefore + pair.First.Lines), (pair.Second.Start, pair.Second.LinesBefore)));
    }

    private static List<FileSlice>? Cut(string text)
    {
        using var file = new SharedFile(Path.Combine(TestFolders.Make(("sales.csv", text)), "sales.csv"));
        return FileSlices.Cut(file, 1);
    }

    private static RecordsReading Read(string sales) => RecordsFolder.Read(TestFolders.Make(("sales.csv", sales)));

    private static string Quoted(string text) => text.Replace("date,crop,", "date,\"crop\",", StringComparison.Ordinal);

    private static IEnumerable<string> Cells(RecordsReading reading)
    {
        RecordTable table = reading.Tables.Sales.Table;
        return Enumerable.Range(0, table.Count)
            .Select(row => $"{table.Source(row)} {string.Join('|', table.Schema.Stored.Select(column => column.Text(table, row)))}");
    }

    private static string Sales(string lineEnd, bool blankLines)
    {
        var text = new StringBuilder("date,crop,channel,quantity,unit,amount" + lineEnd);
        var random = new Random(7);
        for (int i = 0; i < Rows; i++)
        {
            text.Append($"2025-{1 + (i * 12 / Rows):00}-{1 + random.Next(28):00},Café {random.Next(40):00},Market,{random.Next(1, 999)}.{random.Next(99):00},lb,{(random.Next(5) == 0 ? "" : $"-{random.Next(999)}.50")}")
                .Append(lineEnd);
            text.Append(blankLines && random.Next(9) == 0 ? lineEnd : "").Append(blankLines && random.Next(9) == 0 ? $",,,{lineEnd}" : "");
        }

        return text.ToString();
    }
}
