using System.Globalization;
using DuckDB.NET.Data;
using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

/// <summary>The tables over all farms, read back by a database that shares no code with what wrote them.</summary>
public sealed class SummaryTablesTests : IAsyncLifetime
{
    private readonly Scratch scratch = new();
    private readonly DuckDBConnection database = new("DataSource=:memory:");

    private string Summary => Path.Combine(scratch.File("out"), "summary");

    public async ValueTask InitializeAsync()
    {
        _ = await Program.RunAsync("review-all", ManyFarms.In(scratch), "--out", scratch.File("out"));
        await database.OpenAsync(TestContext.Current.CancellationToken);
    }

    public async ValueTask DisposeAsync()
    {
        await database.DisposeAsync();
        scratch.Dispose();
    }

    [Fact]
    public void Parquet_Columns_AreTyped()
    {
        Dictionary<string, string> types = Rows($"DESCRIBE SELECT * FROM '{Summary}/crops.parquet'").ToDictionary(row => row[0]!, row => row[1]!);

        Assert.Equal("VARCHAR", types["farm"]);
        Assert.Equal("INTEGER", types["crop_year"]);
        Assert.Equal("DECIMAL(18,2)", types["net_return"]);
        Assert.Equal("DECIMAL(18,4)", types["gross_margin_per_labor_hour"]);
        Assert.Equal(File.ReadLines(Path.Combine(Summary, "crops.csv")).First().Split(','), types.Keys);
    }

    [Theory]
    [InlineData("farms")]
    [InlineData("crops")]
    public void Parquet_EveryCell_IsThatOfTheCsv(string table)
    {
        List<string?[]> typed = Rows($"SELECT * FROM '{Summary}/{table}.parquet'");
        List<string?[]> text = Rows($"SELECT * FROM read_csv('{Summary}/{table}.csv', all_varchar = true, header = true)");

        Assert.Equal(text.Count, typed.Count);
        Assert.True(typed.Count > 5);
        for (int i = 0; i < text.Count; i++)
        {
            // In CSV a text that starts like a formula has an apostrophe in front, for spreadsheets; here none is needed.
            Assert.Equal(text[i].Select(cell => cell is ['\'', '=', ..] ? cell[1..] : cell), typed[i]);
        }
    }

    [Fact]
    public void Parquet_NotAvailable_IsNullAndNeverZero()
    {
        string?[] known = Rows($"SELECT count(*), count(output), count(net_return) FROM '{Summary}/crops.parquet' WHERE farm <> 'demo'").Single();
        Assert.Equal(["8", "8", "0"], known);
        Assert.Equal([null, "failed"], Rows($"SELECT output, status FROM '{Summary}/farms.parquet' WHERE farm = 'bad'").Single());
    }

    [Fact]
    public void Parquet_SumOfTheCrops_IsTheFarm()
    {
        string?[] sums = Rows($"""
            SELECT sum(c.output), any_value(f.output), sum(c.net_return), any_value(f.net_return), any_value(f.checks_failed), count(DISTINCT c.crop_year)
            FROM '{Summary}/crops.parquet' c JOIN '{Summary}/farms.parquet' f USING (farm) WHERE farm = 'demo' AND c.reviewed = 'yes'
            """).Single();

        Assert.Equal(sums[1], sums[0]);
        Assert.Equal(sums[3], sums[2]);
        Assert.Equal(["0", "1"], sums[4..]);
        Assert.Equal("3", Rows($"SELECT count(DISTINCT crop_year) FROM '{Summary}/crops.parquet' WHERE farm = 'demo'").Single()[0]);
        Assert.Equal(["m", "EUR", "=Metre"], Rows($"SELECT length_unit, currency, farm_name FROM '{Summary}/farms.parquet' WHERE farm = 'metric'").Single());
    }

    [Fact]
    public async Task Documentation_QueriesOfTheDatabase_RunAsTheyStand()
    {
        string text = await File.ReadAllTextAsync(Path.Combine(Repository.Root, "docs", "many-farms.md"), TestContext.Current.CancellationToken);
        string[] queries = text.Split("DuckDB:\n")[1].Split("Spark:\n")[0].Replace("results/summary", Summary, StringComparison.Ordinal).Trim().Split(';', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(2, queries.Length);

        // Ten farms with a crop are asked for; here there is one.
        Assert.Empty(Rows(queries[0]));
        List<string?[]> crops = Rows(queries[0].Replace(">= 10", ">= 1", StringComparison.Ordinal));
        Assert.Equal(41, crops.Count(crop => crop[2] is not null));
        Assert.Equal(["bad"], Rows(queries[1]).Select(row => row[0]));
    }

    private List<string?[]> Rows(string query)
    {
        using DuckDBCommand command = database.CreateCommand();
        command.CommandText = query;
        using DuckDBDataReader reader = command.ExecuteReader();
        List<string?[]> rows = [];
        while (reader.Read())
        {
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(i => reader.IsDBNull(i) ? null : Convert.ToString(reader.GetValue(i), CultureInfo.InvariantCulture))]);
        }

        return rows;
    }
}
