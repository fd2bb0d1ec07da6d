using FarmEconomics.Records.Storage;
using FarmEconomics.Units;

namespace FarmEconomics.Records;

/// <summary>
/// A farm's records with every name resolved: the door to everything else. Built from tables that passed the records check;
/// rows dated after the closing date are counted and left out.
/// </summary>
public sealed class FarmRecords
{
    private readonly Dictionary<string, Crop> cropsByName = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, Bed> bedsByName = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, Planting> plantingsByName = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, Channel> channelsByName = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, Pool> poolsByName = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, TaskRow> tasksByName = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, CategoryRow> categoriesByName = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, List<(DateOnly From, WorkerKind Kind, decimal? Wage)>> workersByName =
        new(StringComparer.OrdinalIgnoreCase);
    private readonly Pool[] channelPools;
    private readonly int[] cropAt;
    private readonly int[] plantingAt;
    private readonly int[] channelAt;

    private FarmRecords(RecordTables tables, FarmSettings settings)
    {
        tables.Seal();
        Tables = tables;
        Settings = settings;
        AsOf = settings.AsOf ?? LastDate(tables);
        LinkCrops();
        LinkBeds();
        LinkPlantings();
        LinkChannels();
        channelPools = new Pool[Channels.Count];
        LinkPools();
        LinkWork();
        cropAt = PlacesOf(cropsByName, crop => crop.Index);
        plantingAt = PlacesOf(plantingsByName, planting => planting.Index);
        channelAt = PlacesOf(channelsByName, channel => channel.Index);
        Harvests = Until(tables.Harvests, HarvestRow.DateColumn);
        Sales = Until(tables.Sales, SaleRow.DateColumn);
        Income = Until(tables.Income, IncomeRow.DateColumn);
        Labor = Until(tables.Labor, LaborRow.DateColumn);
        Expenses = Until(tables.Expenses, ExpenseRow.DateColumn);
    }

    /// <summary>The tables as read.</summary>
    public RecordTables Tables { get; }

    /// <summary>The settings.</summary>
    public FarmSettings Settings { get; }

    /// <summary>The closing date: the setting, else the last date in the records.</summary>
    public DateOnly AsOf { get; }

    /// <summary>
    /// The last day yearly costs are charged up to: the closing date where it is set, else the end of the last crop year in the records.
    /// A season's last row rarely falls on its last day.
    /// </summary>
    public DateOnly CostsUntil => Settings.AsOf ?? Settings.EndOf(Settings.WindowOf(AsOf)).AddDays(-1);

    /// <summary>Crops in file order.</summary>
    public List<Crop> Crops { get; } = [];

    /// <summary>Plantings by first row in the file.</summary>
    public List<Planting> Plantings { get; } = [];

    /// <summary>Channels in file order.</summary>
    public List<Channel> Channels { get; } = [];

    /// <summary>All pools: built-in, the table's, one per channel.</summary>
    public List<Pool> Pools { get; } = [];

    /// <summary>Harvests up to the closing date.</summary>
    public Rows<HarvestRow> Harvests { get; }

    /// <summary>Sales and other leavings up to the closing date.</summary>
    public Rows<SaleRow> Sales { get; }

    /// <summary>Income up to the closing date.</summary>
    public Rows<IncomeRow> Income { get; }

    /// <summary>Labor up to the closing date.</summary>
    public Rows<LaborRow> Labor { get; }

    /// <summary>Expenses up to the closing date.</summary>
    public Rows<ExpenseRow> Expenses { get; }

    /// <summary>How many rows of each table are dated after the closing date and not read into any result.</summary>
    public Dictionary<string, int> RowsAfterAsOf { get; } = [];

    /// <summary>True when a table was found.</summary>
    /// <param name="table">The table's name.</param>
    /// <returns>True when there.</returns>
    public bool Has(string table) => Tables.Present.Contains(table);

    /// <summary>Resolves the names of checked tables.</summary>
    /// <param name="tables">Tables without rows in error.</param>
    /// <param name="settings">The settings.</param>
    /// <returns>The linked records.</returns>
    /// <exception cref="KeyNotFoundException">A name isn't known; the records check reports it first.</exception>
    public static FarmRecords Link(RecordTables tables, FarmSettings settings)
    {
        ArgumentNullException.ThrowIfNull(tables);
        ArgumentNullException.ThrowIfNull(settings);
        return new FarmRecords(tables, settings);
    }

    /// <summary>Lines of establishment by planting and crop year that a copy of the records holds as they were reviewed; empty in a farm's
    /// own records.</summary>
    internal IReadOnlyDictionary<(string Planting, int CropYear), (Money Amount, string? Missing)> HeldEstablishment
    { get; private init; } = new Dictionary<(string, int), (Money, string?)>();

    /// <summary>Links a copy of records that holds lines of establishment as they were reviewed.</summary>
    internal static FarmRecords Link(
        RecordTables tables,
        FarmSettings settings,
        IReadOnlyDictionary<(string Planting, int CropYear), (Money Amount, string? Missing)> held
    ) => new(tables, settings) { HeldEstablishment = held };

    /// <summary>A crop by name.</summary>
    /// <param name="name">The name, in any case.</param>
    /// <returns>The crop.</returns>
    /// <exception cref="KeyNotFoundException">No crop of that name.</exception>
    public Crop Crop(string name) => cropsByName[name.Trim()];

    /// <summary>A crop by name, if there is one.</summary>
    /// <param name="name">The name, in any case.</param>
    /// <returns>The crop or null.</returns>
    public Crop? FindCrop(string name) => cropsByName.GetValueOrDefault(name.Trim());

    /// <summary>A pool by name, if there is one.</summary>
    /// <param name="name">The name, in any case.</param>
    /// <returns>The pool or null.</returns>
    public Pool? FindPool(string name) => poolsByName.GetValueOrDefault(name.Trim());

    /// <summary>
    /// The place of a crop among <see cref="Crops"/> by the number of its name in the tables; -1 for a blank or an unknown name.
    /// </summary>
    internal int CropAt(int name) => cropAt[name];

    /// <summary>
    /// The place of a planting among <see cref="Plantings"/> by the number of its name in the tables; -1 for a blank or an unknown name.
    /// </summary>
    internal int PlantingAt(int name) => plantingAt[name];

    /// <summary>
    /// The place of a channel among <see cref="Channels"/> by the number of its name in the tables; -1 for a blank or an unknown name.
    /// </summary>
    internal int ChannelAt(int name) => channelAt[name];

    internal Planting? FindPlanting(string name) => plantingsByName.GetValueOrDefault(name.Trim());

    internal Channel Channel(string name) => channelsByName[name.Trim()];

    internal Pool Pool(string name) => poolsByName[name.Trim()];

    internal Pool PoolOf(Channel channel) => channelPools[channel.Index];

    internal TaskRow Task(string name) => tasksByName[name.Trim()];

    internal CategoryRow Category(string name) => categoriesByName[name.Trim()];

    internal Pool WorkPool(Stage stage) => Pool(DefaultPools.WorkPoolOf(stage));

    /// <summary>Kind and wage of a worker on a day; without a workers table everyone is hired at an unknown wage.</summary>
    internal (WorkerKind Kind, decimal? Wage) WorkerOn(string name, DateOnly day)
    {
        if (!workersByName.TryGetValue(name.Trim(), out List<(DateOnly From, WorkerKind Kind, decimal? Wage)>? rows))
        {
            return (WorkerKind.Hired, null);
        }

        int best = -1;
        for (int i = 0; i < rows.Count; i++)
        {
            best = rows[i].From <= day && (best < 0 || rows[i].From >= rows[best].From) ? i : best;
        }

        return best >= 0 ? (rows[best].Kind, rows[best].Wage) : (rows[0].Kind, null);
    }

    private static DateOnly LastDate(RecordTables tables) => DateOnly.FromDayNumber(new[]
    {
        Last(HarvestRow.DateColumn.Cells(tables.Harvests.Table)),
        Last(SaleRow.DateColumn.Cells(tables.Sales.Table)),
        Last(IncomeRow.DateColumn.Cells(tables.Income.Table)),
        Last(LaborRow.DateColumn.Cells(tables.Labor.Table)),
        Last(ExpenseRow.DateColumn.Cells(tables.Expenses.Table)),
        Last(PlantingRow.InBedColumn.Cells(tables.Plantings.Table)),
    }.Max());

    // The end of what is stored is blank, and a blank is the least of all.
    private static int Last(DayCells days)
    {
        int last = 1;
        foreach (int day in days.Stored)
        {
            last = Math.Max(last, day);
        }

        return last - 1;
    }

    private int[] PlacesOf<T>(Dictionary<string, T> byName, Func<T, int> place)
    {
        int[] places = new int[Tables.Names.Count];
        places[0] = -1;
        for (int name = 1; name < places.Length; name++)
        {
            places[name] = byName.TryGetValue(Tables.Names[name]!.Trim(), out T? one) ? place(one) : -1;
        }

        return places;
    }

    private Rows<T> Until<T>(Rows<T> rows, DayColumn date)
        where T : struct, IRecordRow<T>
    {
        Rows<T> kept = rows.Until(date, AsOf);
        if (kept.Count < rows.Count)
        {
            RowsAfterAsOf[T.Schema.Name] = rows.Count - kept.Count;
        }

        return kept;
    }

    private void LinkCrops()
    {
        foreach (CropRow row in Tables.Crops)
        {
            Crop crop = new(Crops.Count, row)
            {
                Stores = (row.Store ?? "").Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries),
            };
            Crops.Add(crop);
            cropsByName[crop.Name] = crop;
        }

        foreach (UnitRow row in Tables.Units)
        {
            Crop(row.Crop).Units[row.Unit.Trim()] = row.BaseUnits;
        }
    }

    private void LinkBeds()
    {
        foreach (BedRow row in Tables.Beds)
        {
            bedsByName[row.Bed.Trim()] = new Bed(row, Settings.StandardBedWidthIn);
        }
    }

    private void LinkPlantings()
    {
        foreach (PlantingRow row in Tables.Plantings)
        {
            if (row.InBed > AsOf)
            {
                RowsAfterAsOf["plantings"] = RowsAfterAsOf.GetValueOrDefault("plantings") + 1;
                continue;
            }

            string name = row.Planting.Trim();
            if (!plantingsByName.TryGetValue(name, out Planting? planting))
            {
                planting = new Planting(Plantings.Count, name, Crop(row.Crop));
                Plantings.Add(planting);
                plantingsByName[name] = planting;
            }

            planting.BedList.Add(new BedPlanting(planting, row, bedsByName[row.Bed.Trim()]));
        }
    }

    private void LinkChannels()
    {
        foreach (ChannelRow row in Tables.Channels)
        {
            AddChannel(row, implied: false);
        }

        if (Has("channels"))
        {
            return;
        }

        // Every name a row may give, whatever its table: what passes the checks must be known here.
        IEnumerable<string> names = Named(Tables.Sales.Table, SaleRow.ChannelColumn)
            .Concat(Named(Tables.Income.Table, IncomeRow.ChannelColumn))
            .Concat(Named(Tables.Labor.Table, LaborRow.ChannelColumn))
            .Concat(Named(Tables.Expenses.Table, ExpenseRow.ChannelColumn))
            .Concat(Named(Tables.Prices.Table, PriceRow.ChannelColumn));
        foreach (string name in names)
        {
            if (!channelsByName.ContainsKey(name.Trim()))
            {
                ChannelKind kind = Enum.GetValues<ChannelKind>()
                    .Where(candidate => name.Contains(candidate.ToString(), StringComparison.OrdinalIgnoreCase))
                    .DefaultIfEmpty(ChannelKind.Market)
                    .First();
                RowValues row = new() { ["channel"] = name, ["kind"] = kind, Source = new SourceLine("implied", 0) };
                AddChannel(row.Row<ChannelRow>(), implied: true);
            }
        }
    }

    // Each name once, by its first row.
    private static IEnumerable<string> Named(RecordTable table, TextColumn column)
    {
        bool[] seen = new bool[table.Names.Count];
        for (int row = 0; row < table.Count; row++)
        {
            int id = column.Id(table, row);
            if (id > 0 && !seen[id])
            {
                seen[id] = true;
                yield return table.Names[id]!;
            }
        }
    }

    private void AddChannel(ChannelRow row, bool implied)
    {
        Channel channel = new(Channels.Count, row, implied);
        Channels.Add(channel);
        channelsByName[channel.Name] = channel;
    }

    private void LinkPools()
    {
        Dictionary<string, PoolRow> own = new(StringComparer.OrdinalIgnoreCase);
        foreach (PoolRow row in Tables.Pools)
        {
            own[row.Pool.Trim()] = row;
        }

        foreach (PoolRow row in Defaults.Pools)
        {
            bool replaced = own.Remove(row.Pool, out PoolRow mine);
            AddPool(new Pool(Pools.Count, replaced ? mine : row) { Fallback = replaced ? null : DefaultPools.FallbackOf(row.Pool) });
        }

        foreach (PoolRow row in Tables.Pools)
        {
            if (own.ContainsKey(row.Pool.Trim()))
            {
                AddPool(new Pool(Pools.Count, row));
            }
        }

        foreach (Channel channel in Channels)
        {
            RowValues row = new()
            {
                ["pool"] = DefaultPools.ChannelPoolName(channel.Name),
                ["basis"] = "sales-value",
                ["statement_line"] = StatementLine.Selling,
                ["varies_with"] = CostDriver.Trips,
                Source = channel.Row.Source,
            };
            Pool pool = new(Pools.Count, row.Row<PoolRow>()) { Channel = channel };
            AddPool(pool);
            channelPools[channel.Index] = pool;
        }
    }

    private void AddPool(Pool pool)
    {
        Pools.Add(pool);
        poolsByName[pool.Name] = pool;
    }

    private void LinkWork()
    {
        foreach (TaskRow row in Defaults.Tasks.Concat(Tables.Tasks))
        {
            tasksByName[row.Task.Trim()] = row;
        }

        foreach (CategoryRow row in Defaults.Categories.Concat(Tables.Categories))
        {
            categoriesByName[row.Category.Trim()] = row;
        }

        foreach (WorkerRow row in Tables.Workers)
        {
            if (!workersByName.TryGetValue(row.Worker.Trim(), out List<(DateOnly From, WorkerKind Kind, decimal? Wage)>? rows))
            {
                workersByName[row.Worker.Trim()] = rows = [];
            }

            rows.Add((row.From ?? DateOnly.MinValue, row.Kind, row.Wage));
        }
    }
}
