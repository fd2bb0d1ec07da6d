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
    private readonly Dictionary<string, List<WorkerRow>> workersByName = new(StringComparer.OrdinalIgnoreCase);
    private readonly Pool[] channelPools;

    private FarmRecords(RecordTables tables, FarmSettings settings)
    {
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
        Harvests = Until(tables.Harvests, row => row.Date, "harvests");
        Sales = Until(tables.Sales, row => row.Date, "sales");
        Income = Until(tables.Income, row => row.Date, "income");
        Labor = Until(tables.Labor, row => row.Date, "labor");
        Expenses = Until(tables.Expenses, row => row.Date, "expenses");
    }

    /// <summary>The tables as read.</summary>
    public RecordTables Tables { get; }

    /// <summary>The settings.</summary>
    public FarmSettings Settings { get; }

    /// <summary>The closing date: the setting, else the last date in the records.</summary>
    public DateOnly AsOf { get; }

    /// <summary>
    /// The last day yearly costs are charged up to: the closing date where it is set, else the end of the last crop year in the records. A season's
    /// last row rarely falls on its last day.
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
    public IReadOnlyList<HarvestRow> Harvests { get; }

    /// <summary>Sales and other leavings up to the closing date.</summary>
    public IReadOnlyList<SaleRow> Sales { get; }

    /// <summary>Income up to the closing date.</summary>
    public IReadOnlyList<IncomeRow> Income { get; }

    /// <summary>Labor up to the closing date.</summary>
    public IReadOnlyList<LaborRow> Labor { get; }

    /// <summary>Expenses up to the closing date.</summary>
    public IReadOnlyList<ExpenseRow> Expenses { get; }

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
        if (!workersByName.TryGetValue(name.Trim(), out List<WorkerRow>? rows))
        {
            return (WorkerKind.Hired, null);
        }

        WorkerRow? best = null;
        foreach (WorkerRow row in rows)
        {
            if ((row.From is null || row.From <= day) && (best is null || (row.From ?? DateOnly.MinValue) >= (best.From ?? DateOnly.MinValue)))
            {
                best = row;
            }
        }

        return best is null ? (rows[0].Kind, null) : (best.Kind, best.Wage);
    }

    private static DateOnly LastDate(RecordTables tables)
    {
        DateOnly last = DateOnly.MinValue;
        foreach (DateOnly date in tables.Harvests.Select(row => row.Date)
            .Concat(tables.Sales.Select(row => row.Date))
            .Concat(tables.Income.Select(row => row.Date))
            .Concat(tables.Labor.Select(row => row.Date))
            .Concat(tables.Expenses.Select(row => row.Date))
            .Concat(tables.Plantings.Select(row => row.InBed)))
        {
            last = date > last ? date : last;
        }

        return last;
    }

    private List<T> Until<T>(List<T> rows, Func<T, DateOnly> dateOf, string table)
    {
        List<T> kept = rows.FindAll(row => dateOf(row) <= AsOf);
        if (kept.Count < rows.Count)
        {
            RowsAfterAsOf[table] = rows.Count - kept.Count;
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
        IEnumerable<string?> names = Tables.Sales.Select(row => (string?)row.Channel)
            .Concat(Tables.Income.Select(row => row.Channel))
            .Concat(Tables.Labor.Select(row => row.Channel))
            .Concat(Tables.Expenses.Select(row => row.Channel))
            .Concat(Tables.Prices.Select(row => row.Channel));
        foreach (string name in names.OfType<string>())
        {
            if (!channelsByName.ContainsKey(name.Trim()))
            {
                ChannelKind kind = Enum.GetValues<ChannelKind>()
                    .Where(candidate => name.Contains(candidate.ToString(), StringComparison.OrdinalIgnoreCase))
                    .DefaultIfEmpty(ChannelKind.Market)
                    .First();
                AddChannel(new ChannelRow { Channel = name, Kind = kind, Source = new SourceLine("implied", 0) }, implied: true);
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
            bool replaced = own.Remove(row.Pool, out PoolRow? mine);
            AddPool(new Pool(Pools.Count, mine ?? row) { Fallback = replaced ? null : DefaultPools.FallbackOf(row.Pool) });
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
            PoolRow row = new()
            {
                Pool = DefaultPools.ChannelPoolName(channel.Name),
                Basis = "sales-value",
                StatementLine = StatementLine.Selling,
                VariesWith = CostDriver.Trips,
                Source = channel.Row.Source,
            };
            Pool pool = new(Pools.Count, row) { Channel = channel };
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
            if (!workersByName.TryGetValue(row.Worker.Trim(), out List<WorkerRow>? rows))
            {
                workersByName[row.Worker.Trim()] = rows = [];
            }

            rows.Add(row);
        }
    }
}
