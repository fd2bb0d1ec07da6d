using System.Reflection;
using System.Text.RegularExpressions;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.House;
using Xunit;

namespace FarmEconomics.Tests.Records;

/// <summary>Nobody lists the tables by hand, so none can be left out.</summary>
public class TableListTests
{
    private static readonly TableSchema[] Tables = [.. RecordSchema.Tables];

    [Fact]
    public void Tables_EveryRowTypeOfTheProgram_IsATableWithADoor()
    {
        Type[] rows = [.. typeof(SaleRow).Assembly.GetTypes().Where(type => type.IsValueType && typeof(IRecordRow).IsAssignableFrom(type))];
        PropertyInfo[] doors = [.. typeof(RecordTables).GetProperties().Where(door => door.PropertyType.IsGenericType && door.PropertyType.GetGenericTypeDefinition() == typeof(Rows<>))];

        Assert.Equal(rows.Length, Tables.Length);
        Assert.Equal(rows.Select(row => row.Name).Order(), doors.Select(door => door.PropertyType.GetGenericArguments()[0].Name).Order());
        Assert.All(doors, door => Assert.Equal(HeadingKey.Of(door.Name), HeadingKey.Of(SchemaOf(door).Name)));
        Assert.Equal(Tables.Length, Tables.Select(table => table.Place).Distinct().Count());
    }

    [Fact]
    public void RowsInError_OfEveryTable_AreLeftOutAndTheOthersStay()
    {
        RecordTables tables = TwoRowsOfEach();
        Problem[] problems = [.. Tables.Select(table => ProblemCatalog.Make(ProblemCodes.BlankValue, new SourceLine($"{table.Name}.csv", 2), null, "blank"))];

        // Rows that are sound but refer to none are left out in their turn, so only the first step is looked at here.
        RecordTables left = tables.With(table => table.Where(row => problems.All(problem => problem.Source != table.Source(row))));
        SkipResult all = tables.Without(problems, new FarmSettings());

        Assert.All(Tables, table => Assert.Equal(1, left.Of(table).Count));
        Assert.All(Tables, table => Assert.DoesNotContain(all.Tables.Of(table).Count == 0 ? [] : new[] { all.Tables.Of(table).Source(0).Line }, line => line == 2));
        Assert.All(Tables, table => Assert.Contains(all.Skipped, row => row.Source == new SourceLine($"{table.Name}.csv", 2)));
    }

    [Fact]
    public void Copies_OfEveryTable_HoldItsRows()
    {
        RecordTables tables = TwoRowsOfEach();
        Assert.All(Tables, table => Assert.Equal(2, tables.Copy().Of(table).Count));
        Assert.All(Tables, table => Assert.Equal(2, tables.With(same => same).Of(table).Count));
    }

    [Fact]
    public void Linked_Records_TakeNoMoreRows()
    {
        RecordTables tables = TwoRowsOfEach();
        tables.Seal();
        Assert.All(Tables, table => Assert.Throws<InvalidOperationException>(() => tables.Of(table).Add(default)));
    }

    [Theory]
    [InlineData("\"({0})\"", 8)]
    [InlineData("[tT]ables\\.({0})\\b", 16)] // where names are resolved, many tables are used; a list by hand names them all
    public void Sources_NoFile_NamesMostTables(string pattern, int most)
    {
        string names = pattern.StartsWith('"')
            ? string.Join('|', Tables.Select(table => table.Name))
            : string.Join('|', typeof(RecordTables).GetProperties().Where(door => door.PropertyType.IsGenericType && door.PropertyType.GetGenericTypeDefinition() == typeof(Rows<>)).Select(door => door.Name));
        Regex name = new(string.Format(System.Globalization.CultureInfo.InvariantCulture, pattern, names));
        string[] projects = ["src/FarmEconomics", "src/FarmEconomics.Files", "src/FarmEconomics.Reports", "src/FarmEconomics.Page", "src/FarmEconomics.Cli"];
        Assert.All(projects.SelectMany(Repository.Sources), file =>
            Assert.InRange(name.Matches(File.ReadAllText(file)).Select(match => match.Groups[1].Value).Distinct().Count(), 0, most));
    }

    private static TableSchema SchemaOf(PropertyInfo door) =>
        (TableSchema)door.PropertyType.GetGenericArguments()[0].GetProperty(nameof(SaleRow.Schema))!.GetValue(null)!;

    private static RecordTables TwoRowsOfEach()
    {
        RecordTables tables = new();
        foreach (TableSchema table in Tables)
        {
            tables.Of(table).Add(new SourceLine($"{table.Name}.csv", 2));
            tables.Of(table).Add(new SourceLine($"{table.Name}.csv", 3));
        }

        return tables;
    }
}
