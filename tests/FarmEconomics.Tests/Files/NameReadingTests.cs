using System.Diagnostics;
using System.Text;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Storage;
using Xunit;

namespace FarmEconomics.Tests.Files;

/// <summary>Names as files hold them: composed or not, too long, with marks nobody sees, and many that nobody knows.</summary>
public class NameReadingTests
{
    private const string Composed = "R\u00FCbe";
    private const string Decomposed = "Ru\u0308be";

    [Fact]
    public void Open_NamesThatDifferByUnicodeFormOnly_AreOneName()
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "crops.csv"), $"crop,unit\nlettuce,head\nkale,bunch\n{Decomposed},{Decomposed} bund\n");
        File.WriteAllText(Path.Combine(folder, "plantings.csv"), File.ReadAllText(Path.Combine(folder, "plantings.csv")).TrimEnd() + $"\nR1,{Composed.ToUpperInvariant()},A1,10,2025-06-05,2025-09-01,\n");
        File.WriteAllText(Path.Combine(folder, "aliases.csv"), $"table,alias,name\ncrops,{Decomposed}n,{Composed}\n");
        File.WriteAllText(Path.Combine(folder, "sales.csv"), $"date,crop,channel,quantity,amount,unit\n2025-05-10,lettuce,market,40,60.00,\n2025-08-10,{Composed}n,market,5,9.00,{Composed} bund\n");

        Assert.DoesNotContain(FarmFolder.Open(folder).Problems, problem => problem.Severity == Severity.Error);
        File.AppendAllText(Path.Combine(folder, "crops.csv"), $"{Composed},bund\n");
        Assert.Equal("E227", Assert.Single(FarmFolder.Open(folder).Problems, problem => problem.Severity == Severity.Error).Code);
    }

    // Typed twice, or pasted with the space that doesn't break: one crop to whoever looks at it.
    [Theory]
    [InlineData("Salad  mix")]
    [InlineData("Salad\u00A0mix")]
    [InlineData("\u00A0Salad \u00A0 mix ")]
    public void Read_NamesThatDifferBySpacesOnly_AreOneName(string name)
    {
        RecordsReading reading = RecordsFolder.Read(TestFolders.Make(
            ("crops.csv", $"crop,unit\nSalad mix,lb\n{name},lb\n")));

        Assert.Equal(["E227"], reading.Problems.Concat(RecordChecks.Run(reading.Tables, reading.FarmSettings))
            .Where(problem => problem.Source.File == "crops.csv" && problem.Severity == Severity.Error).Select(problem => problem.Code));
        Assert.All(reading.Tables.Crops, crop => Assert.Equal("Salad mix", crop.Crop));
    }

    [Fact]
    public void Locate_NameInAnotherForm_ShowsTheRowAsWritten()
    {
        string folder = TestFolders.MakeBad("sound");
        File.AppendAllText(Path.Combine(folder, "sales.csv"), $"2025-05-11,{Decomposed},market,40,60.00\n");

        Assert.Contains(Decomposed, FarmFolder.Open(folder).Problems.Single(problem => problem.Code == "E201").Row!, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("kale\u200B", "E125")]
    [InlineData("ka\tle", "E125")]
    [InlineData("\"ka\nle\"", "E125")]
    [InlineData("ka\u001B[31mle", "E125")]
    [InlineData("ka\u202Ele", "E125")]
    [InlineData("ka\u0085le", "E125")]
    [InlineData("ka\0le", "E104")]
    [InlineData("\u0646\u0645\u06CC\u200C\u062F\u0627\u0646\u0645", null)]
    [InlineData("Jalape\u00F1o", null)]
    public void Read_NameWithMarksNobodySees_IsAnErrorOfItsRow(string name, string? code)
    {
        RecordsReading reading = RecordsFolder.Read(TestFolders.Make(("crops.csv", $"crop,unit\n{name},lb\n")));

        Assert.Equal(code is null ? [] : [code], reading.Problems.Where(problem => problem.Source.Line > 0).Select(problem => problem.Code));
    }

    [Theory]
    [InlineData(100, 0)]
    [InlineData(101, 1)]
    [InlineData(900_000, 1)]
    public void Read_LongName_IsRefusedInAShortMessage(int length, int errors)
    {
        RecordsReading reading = RecordsFolder.Read(TestFolders.Make(("crops.csv", $"crop,unit\n{new string('k', length)},lb\n")));

        Problem[] told = [.. reading.Problems.Where(problem => problem.Code == "E124")];
        Assert.Equal(errors, told.Length);
        Assert.All(told, problem => Assert.InRange(problem.Message.Length + problem.Offending!.Length, 1, 700));
    }

    [Fact]
    public void Open_HundredThousandUnknownNames_IsTimeAndMemoryBound()
    {
        string folder = TestFolders.MakeBad("sound");
        var crops = new StringBuilder("crop,unit\nlettuce,head\nkale,bunch\n");
        var sales = new StringBuilder("date,crop,channel,quantity,amount\n");
        string end = new('x', 60);
        for (int i = 0; i < 100_000; i++)
        {
            crops.Append($"crop {i} of {end},lb\n");
            sales.Append($"2025-05-10,corp {i} of {end},market,4,6.00\n");
        }

        File.WriteAllText(Path.Combine(folder, "crops.csv"), crops.ToString());
        File.WriteAllText(Path.Combine(folder, "sales.csv"), sales.ToString());
        Stopwatch watch = Stopwatch.StartNew();
        FarmFolder farm = FarmFolder.Open(folder);

        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 60);
        Assert.Equal(100_000, farm.Problems.Where(problem => problem.Code == "E201").Sum(problem => 1 + problem.Further));
        Assert.InRange(farm.Problems.Count, 1, 60_000);
    }

    [Fact]
    public void Run_CropThatIsUnknownWithAnUnknownUnitInEveryRow_LooksEachUpOnce()
    {
        var tables = new RecordTables { Present = { "crops", "units", "sales" } };
        tables.Add<CropRow>(new RowValues { ["crop"] = "kale", ["unit"] = "bunch", Source = new SourceLine("crops.csv", 2) });
        for (int i = 0; i < 3_000; i++)
        {
            tables.Add<UnitRow>(new RowValues { ["crop"] = "kale", ["unit"] = $"crate number {i}", ["base_units"] = 2m, Source = new SourceLine("units.csv", i + 2) });
            tables.Add<SaleRow>(new RowValues { ["crop"] = "kale", ["unit"] = $"crate mumber {i}", ["channel"] = "market", ["date"] = new DateOnly(2025, 5, 1), ["quantity"] = 1m, Source = new SourceLine("sales.csv", i + 2) });
        }

        Stopwatch watch = Stopwatch.StartNew();
        IReadOnlyList<Problem> problems = RecordChecks.Run(tables, new FarmSettings());

        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 30);
        Assert.Equal(3_000, problems.Count(problem => problem.Code == "E209"));
    }
}
