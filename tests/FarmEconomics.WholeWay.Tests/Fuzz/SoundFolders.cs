using System.Globalization;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Files;
using FarmEconomics.Tests.Generators;

namespace FarmEconomics.WholeWay.Tests.Fuzz;

/// <summary>Small folders to be damaged: a cutting of the demo farm, and random farms written as a grower would write them.</summary>
internal static class SoundFolders
{
    private const int MostRows = 35;
    private static readonly string[] KeptCrops = ["Garlic", "Salad mix", "Carrots", "Asparagus"];

    private static readonly Lazy<List<RecordSheet>> Cutting = new(CutDemo);

    /// <summary>The demo farm with four crops and few rows of each table, and with the tables it does without.</summary>
    internal static List<RecordSheet> Demo() => Cutting.Value.ConvertAll(sheet => sheet.Copy());

    /// <summary>The random farm of a seed, with the tables for a lender from the demo farm half of the time.</summary>
    internal static List<RecordSheet> Random(int seed)
    {
        RandomFarm farm = new((uint)seed, distinctDays: false);
        List<RecordSheet> sheets = [Settings(farm.Farm.Settings)];
        foreach (TableSchema schema in RecordSchema.Tables.Where(schema => schema.Name != "farm"
            && (schema.Required || farm.Farm.Tables.Present.Contains(schema.Name))))
        {
            RecordTable table = farm.Farm.Tables.Of(schema);
            sheets.Add(new(schema.Name, [.. schema.Columns.Select(column => column.Name)],
                [.. Enumerable.Range(0, table.Count).Select(row => schema.Stored.Select(column => column.Text(table, row)).ToList())]));
        }

        string[] lenders = seed % 2 == 0 ? ["balances", "funding", "limits", "totals"] : [];
        return [.. sheets, .. Demo().Where(sheet => lenders.Contains(sheet.Table) && !sheets.Exists(own => own.Table == sheet.Table))];
    }

    private static string Text(object? value) => value switch
    {
        null => "",
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        bool yes => yes ? "yes" : "no",
        RatePer per => Words.Of(per),
        Enum word => string.Concat(word.ToString().Select((c, i) => (i > 0 && char.IsUpper(c) ? "-" : "") + char.ToLowerInvariant(c))),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => (string)value,
    };

    private static RecordSheet Settings(FarmSettings settings)
    {
        List<List<string>> rows =
        [
            ["crop_year_start", $"{settings.CropYearStartMonth:00}-{settings.CropYearStartDay:00}"],
            ["payroll_burden_percent", Text(settings.PayrollBurdenPercent)],
            ["closing_stock", Text(settings.ClosingStock)], ["ownership_method", Text(settings.OwnershipMethod)],
            ["idle_capacity", Text(settings.IdleCapacity)],
        ];
        (string Name, object? Value)[] perhaps = [("owner_wage", settings.OwnerWage), ("interest_percent", settings.InterestPercent),
            ("as_of", settings.AsOf)];
        rows.AddRange(perhaps.Where(one => one.Value is not null).Select(one => new List<string> { one.Name, Text(one.Value) }));
        return new("farm", ["setting", "value"], rows);
    }

    private static List<RecordSheet> CutDemo()
    {
        string demo = Path.Combine(TestFolders.Repository, "demo-data");
        List<RecordSheet> all = [.. RecordSchema.Tables.Select(table => Path.Combine(demo, $"{table.Name}.csv")).Where(File.Exists)
            .Select(RecordSheet.Read)];
        HashSet<string> gone = [.. Sheet(all, "crops").Rows.Select(row => row[0]).Except(KeptCrops)];
        foreach (string first in new[] { "crops", "plantings" })
        {
            RecordSheet sheet = Sheet(all, first);
            HashSet<string> before = [.. sheet.Rows.Select(row => row[0])];
            Cut(sheet, gone);
            gone.UnionWith(before.Except(sheet.Rows.Select(row => row[0])));
        }

        // Beds that are planted, and one of every structure that pools name.
        HashSet<string> beds = [.. Sheet(all, "plantings").Rows.Select(row => row[2])];
        HashSet<string> structures = [];
        Sheet(all, "beds").Rows.RemoveAll(row => !structures.Add(row[4]) && !beds.Contains(row[0]));
        HashSet<string> kept = [.. Sheet(all, "beds").Rows.Select(row => row[0])];
        Sheet(all, "plan").Rows.RemoveAll(row => !kept.Contains(row[3]));
        foreach (RecordSheet sheet in all)
        {
            Cut(sheet, gone);
        }

        all.Add(new("aliases", ["table", "alias", "name"], [["crops", "Gralic", "Garlic"], ["workers", "M.", "Maren"]]));
        return all;
    }

    private static RecordSheet Sheet(List<RecordSheet> sheets, string table) => sheets.Find(sheet => sheet.Table == table)!;

    // Rows that name nothing that is gone, spread over the table where there are too many.
    private static void Cut(RecordSheet sheet, HashSet<string> gone)
    {
        sheet.Rows.RemoveAll(row => row.Exists(gone.Contains));
        int step = Math.Max(1, (sheet.Rows.Count + MostRows - 1) / MostRows);
        List<List<string>> kept = [.. sheet.Rows.Where((_, i) => i % step == 0)];
        sheet.Rows.Clear();
        sheet.Rows.AddRange(kept);
    }
}
