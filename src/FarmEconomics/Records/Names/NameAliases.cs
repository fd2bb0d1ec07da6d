using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Names;

/// <summary>
/// Puts the farm's own name in place of each alias, wherever a row refers to it, before anything is compared. The rows a name is
/// defined in keep what is written there.
/// </summary>
public static class NameAliases
{
    /// <summary>The tables whose names can have aliases.</summary>
    public static IReadOnlyList<string> Tables { get; } = ["crops", "units", "beds", "plantings", "channels", "workers", "tasks", "categories", "pools", "structures", "assets"];

    /// <summary>Replaces aliases in all rows of the tables.</summary>
    /// <param name="tables">The tables as read; rows are changed in place.</param>
    public static void Apply(RecordTables tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        if (tables.Aliases.Count == 0)
        {
            return;
        }

        Dictionary<string, Dictionary<string, string>> names = Tables.ToDictionary(table => table, _ => new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase));
        foreach (AliasRow row in tables.Aliases)
        {
            if (names.TryGetValue(HeadingKey.Of(row.Table), out Dictionary<string, string>? ofTable))
            {
                ofTable.TryAdd(row.Alias.Trim(), row.Name.Trim());
            }
        }

        Produce(tables, names);
        Work(tables, names);
        Shared(tables, names);
    }

    private static void Produce(RecordTables tables, Dictionary<string, Dictionary<string, string>> names)
    {
        foreach (CropRow row in tables.Crops)
        {
            row.Unit = Must(names["units"], row.Unit);
            row.Store = row.Store is null ? null : string.Join(';', row.Store.Split(';').Select(store => Must(names["pools"], store)));
        }

        foreach (UnitRow row in tables.Units)
        {
            row.Crop = Must(names["crops"], row.Crop);
        }

        foreach (PlantingRow row in tables.Plantings)
        {
            row.Crop = Must(names["crops"], row.Crop);
            row.Bed = Must(names["beds"], row.Bed);
        }

        foreach (HarvestRow row in tables.Harvests)
        {
            row.Crop = May(names["crops"], row.Crop);
            row.Planting = May(names["plantings"], row.Planting);
            row.Unit = May(names["units"], row.Unit);
        }

        foreach (SaleRow row in tables.Sales)
        {
            row.Crop = Must(names["crops"], row.Crop);
            row.Channel = Must(names["channels"], row.Channel);
            row.Unit = May(names["units"], row.Unit);
            row.Planting = May(names["plantings"], row.Planting);
        }

        foreach (ChannelRow row in tables.Channels)
        {
            row.ValuesFrom = May(names["channels"], row.ValuesFrom);
        }

        foreach (PriceRow row in tables.Prices)
        {
            row.Crop = Must(names["crops"], row.Crop);
            row.Unit = May(names["units"], row.Unit);
            row.Channel = May(names["channels"], row.Channel);
        }

        foreach (IncomeRow row in tables.Income)
        {
            row.Channel = Must(names["channels"], row.Channel);
        }
    }

    private static void Work(RecordTables tables, Dictionary<string, Dictionary<string, string>> names)
    {
        foreach (LaborRow row in tables.Labor)
        {
            row.Worker = Must(names["workers"], row.Worker);
            row.Task = Must(names["tasks"], row.Task);
            row.Crop = May(names["crops"], row.Crop);
            row.Planting = May(names["plantings"], row.Planting);
            row.Channel = May(names["channels"], row.Channel);
            row.Pool = May(names["pools"], row.Pool);
        }

        foreach (TaskRow row in tables.Tasks)
        {
            row.Pool = May(names["pools"], row.Pool);
        }

        foreach (LaborStandardRow row in tables.LaborStandards)
        {
            row.Crop = Must(names["crops"], row.Crop);
        }

        foreach (InputRateRow row in tables.InputRates)
        {
            row.Pool = Must(names["pools"], row.Pool);
            row.Crop = Must(names["crops"], row.Crop);
        }
    }

    private static void Shared(RecordTables tables, Dictionary<string, Dictionary<string, string>> names)
    {
        foreach (ExpenseRow row in tables.Expenses)
        {
            row.Category = Must(names["categories"], row.Category);
            row.Crop = May(names["crops"], row.Crop);
            row.Planting = May(names["plantings"], row.Planting);
            row.Channel = May(names["channels"], row.Channel);
            row.Pool = May(names["pools"], row.Pool);
        }

        foreach (CategoryRow row in tables.Categories)
        {
            row.Pool = May(names["pools"], row.Pool);
        }

        foreach (UseRow row in tables.Use)
        {
            row.Pool = Must(names["pools"], row.Pool);
            row.User = User(names, row.User);
        }

        foreach (LoadRow row in tables.Loads)
        {
            row.Pool = Must(names["pools"], row.Pool);
            row.User = User(names, row.User);
        }

        foreach (PoolRow row in tables.Pools)
        {
            row.Structure = May(names["structures"], row.Structure);
        }

        foreach (LoanRow row in tables.Loans)
        {
            row.Asset = May(names["assets"], row.Asset);
        }

        foreach (AssetRow row in tables.Assets)
        {
            row.Pool = Must(names["pools"], row.Pool);
        }
    }

    // A user is a pool, a crop or a planting; the same order as elsewhere.
    private static string User(Dictionary<string, Dictionary<string, string>> names, string user) =>
        new[] { "pools", "crops", "plantings" }.Select(table => names[table].GetValueOrDefault(user.Trim())).FirstOrDefault(name => name is not null) ?? user;

    private static string Must(Dictionary<string, string> names, string name) => names.Count == 0 ? name : names.GetValueOrDefault(name.Trim(), name);

    private static string? May(Dictionary<string, string> names, string? name) => name is null || names.Count == 0 ? name : names.GetValueOrDefault(name.Trim(), name);
}
