using System.Diagnostics;
using FarmEconomics.Files.Start;
using FarmEconomics.Records.Schema;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Docs;

/// <summary>
/// datapackage.json beside the schema it comes from, and judged by somebody else: the reference implementation of the standard for
/// JavaScript (packages datapackage 1.1.10 and tableschema 1.12.6, MIT), which brings the published profiles along.
/// </summary>
public class DataPackageTests
{
    private const string Script = """
        const { Package, validate } = require('datapackage');
        (async () => {
          const descriptor = require(process.argv[2] + '/datapackage.json');
          const { valid, errors } = await validate(descriptor);
          if (!valid) { console.log(errors.map(String).join('\n')); process.exit(1); }
          const pack = await Package.load(descriptor, { basePath: process.argv[2] });
          let rows = 0;
          for (const resource of pack.resources) { rows += (await resource.read({ relations: false })).length; }
          console.log(pack.resources.length + ' tables, ' + rows + ' rows');
        })().catch(fault => { console.log(String(fault), (fault.errors || []).map(String).join('\n')); process.exit(1); });
        """;

    [Fact]
    public void DataPackage_Generated_IsWhatTheRepositoryHolds()
    {
        string path = Path.Combine(TestFolders.Repository, "docs", "datapackage.json");
        string text = DataPackage.Write(RecordSchema.Tables);
        if (TestFolders.Rewrite)
        {
            File.WriteAllText(path, text);
        }

        Assert.Equal(File.ReadAllText(path), text);
    }

    [Fact]
    public void DataPackage_JudgedByTheReferenceImplementation_IsValidAndSoIsTheDemoFarm()
    {
        bool required = Environment.GetEnvironmentVariable("FARMECONOMICS_REQUIRE_NPM") == "1";
        Assert.SkipUnless(required, "Installs the npm package datapackage; runs with FARMECONOMICS_REQUIRE_NPM=1.");
        string tools = TestFolders.Make(("check.js", Script));
        (int installed, string log) = Run("npm", tools, "install", "--no-audit", "--no-fund", "--ignore-scripts", "datapackage@1.1.10", "tableschema@1.12.6");
        Assert.True(installed == 0, log);

        // The tables of the demo farm, with every column the schema has, since the first edition of the standard asks for all of them.
        string folder = TestFolders.Make();
        TableSchema[] tables = [.. RecordSchema.Tables.Where(table => File.Exists(Demo(table)))];
        foreach (TableSchema table in tables)
        {
            File.WriteAllText(Path.Combine(folder, $"{table.Name}.csv"), WithEveryColumn(table));
        }

        File.WriteAllText(Path.Combine(folder, "datapackage.json"), DataPackage.Write(tables));
        (int code, string said) = Run("node", tools, "check.js", folder);

        Assert.True(code == 0, said);
        Assert.StartsWith($"{tables.Length} tables, ", said, StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(folder, "crops.csv"), File.ReadAllText(Path.Combine(folder, "crops.csv")).Replace("\"amaranth\",\"2\"", "\"amaranth\",\"two\"", StringComparison.Ordinal));
        Assert.NotEqual(0, Run("node", tools, "check.js", folder).Code);
    }

    private static string Demo(TableSchema table) => Path.Combine(TestFolders.Repository, "demo-data", $"{table.Name}.csv");

    private static string WithEveryColumn(TableSchema table)
    {
        using CsvHelper.CsvReader reader = CsvHelper.CsvReader.FromFile(Demo(table));
        reader.ReadHeader();
        string[] headings = reader.Headers.ToArray();
        List<string> lines = [string.Join(',', table.Columns.Select(column => column.Name))];
        while (reader.Read())
        {
            lines.Add(string.Join(',', table.Columns.Select(column => Array.IndexOf(headings, column.Name) is >= 0 and var at ? $"\"{reader.GetString(at).Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : "")));
        }

        return string.Join('\n', lines) + "\n";
    }

    private static (int Code, string Output) Run(string program, string folder, params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output + errors.Result);
    }
}
