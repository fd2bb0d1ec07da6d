using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Drafts;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>What a person is told of files without rows, without headings or without text. The files are made up.</summary>
public class NoRowsTests
{
    [Theory]
    [InlineData("date,crop,quantity,unit,amount\n", "date, crop, quantity, unit, amount")]
    [InlineData("Market book\n\nDate,Item,Qty,Sales\n", "Date, Item, Qty, Sales")]
    [InlineData("Date,Item,Qty,Sales\nDate,Item,Qty,Sales\n", "Date, Item, Qty, Sales")]
    public void Draft_OfHeadingsAlone_SaysThatNoRowStandsBelowThem(string text, string headings)
    {
        foreach (string? table in new[] { null, "sales" })
        {
            IOException told = Assert.ThrowsAny<IOException>(
                () => ImportDraft.Of(new ImportRequest(Drafted.Source("book.csv", text)) { Table = table }));

            Assert.Equal($"book.csv holds headings ({headings}) and no row below them.", told.Message);
        }
    }

    [Fact]
    public void Draft_OfAPicture_SaysThatItHoldsNoText()
    {
        string source = Path.Combine(TestFolders.Make(), "notes.jpg");
        // The first bytes of a JPEG file (JFIF 1.02).
        File.WriteAllBytes(source, [0xFF, 0xD8, 0xFF, 0xE0, 0x00, 0x10, .. "JFIF"u8, 0x00, 0x01, 0x02, 0x0A]);

        IOException told = Assert.ThrowsAny<IOException>(() => ImportDraft.Of(new ImportRequest(source)));

        Assert.StartsWith("notes.jpg is no table: it holds no text.", told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Draft_OfOneRow_CountsOneRow() =>
        Assert.EndsWith(
            "; 1 row.",
            ImportDraft.Of(new ImportRequest(Drafted.Source("book.csv", "Date,Item,Qty,Sales\n2025-06-03,Kale,3,9.00\n"))).Sees,
            StringComparison.Ordinal);

    [Fact]
    public void WhatToDo_WithNothingToLookAt_SaysNothing()
    {
        ImportDraft sure =
            ImportDraft.Of(new ImportRequest(Drafted.Source("picked.csv", "date,crop,quantity,unit\n2025-06-03,Kale,3,bunch\n")));
        ImportDraft asks = ImportDraft.Of(new ImportRequest(Drafted.Source("sold.csv", "Date,Item,Qty,Sales\n2025-06-03,Kale,3,9.00\n")));

        Assert.Empty(sure.WhatToDo("picked.map.csv"));
        string todo = Assert.Single(asks.WhatToDo("sold.map.csv"));
        Assert.StartsWith("1 of them only you know: open sold.map.csv", todo, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatToDo_WithoutHeadings_SaysHowAColumnIsTheAnswer()
    {
        string text = "6/17/2025,Carrots,10,lb,30\n6/18/2025,Carrots,5,lb,15\n";

        ArgumentException untold = Assert.ThrowsAny<ArgumentException>(
            () => ImportDraft.Of(new ImportRequest(Drafted.Source("sold.csv", text))));
        string said = string.Join('\n',
            ImportDraft.Of(new ImportRequest(Drafted.Source("sold.csv", text)) { Table = "sales" }).WhatToDo("m.csv"));

        Assert.Equal("The file has no headings that tell what it holds; say what its rows are.", untold.Message);
        Assert.Contains("put the column's heading under source_column", said, StringComparison.Ordinal);
        Assert.Contains("quantity", said, StringComparison.Ordinal);
    }

    // farm.csv tells how the farm's own files write days; of another program's file the mapping does.
    [Fact]
    public void Plan_DayAndNumberNobodyCanRead_AreFixedInTheFileOrTheMapping()
    {
        ImportPlan plan = Drafted.PlanText(
            "sold.csv",
            "Date,Item,Qty,Sales\n6/17/2025,Kale,3,9.00\n13/14/2025,Kale,3,9.00\n6/18/2025,Kale,four,12.00\n6/19/2025,Kale,4,12.00\n",
            null,
            "channel=market");

        Assert.Equal(
            ["E111 Write digits there. Where the file writes 3,5 for three and a half: decimal-comma under format in the mapping.",
                "E114 Write the day as 2025-06-30, or in the form the mapping reads, M/D/YYYY."],
            plan.Problems.Select(problem => $"{problem.Code} {problem.Hint}").Order(StringComparer.Ordinal)
        );
    }
}
