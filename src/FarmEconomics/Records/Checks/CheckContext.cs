namespace FarmEconomics.Records.Checks;

/// <summary>What the checks work on: the tables, the names known, and where to report.</summary>
internal sealed class CheckContext
{
    private readonly Dictionary<string, HashSet<string>>? _skipped;
    private NameIndex? _structures;
    private string[]? _users;
    private readonly Dictionary<string, CropFacts> _crops = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, PlantingFacts> _plantings = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, ChannelRow> _channels = new(StringComparer.OrdinalIgnoreCase);

    public CheckContext(RecordTables tables, FarmSettings settings, Dictionary<string, HashSet<string>>? skipped)
    {
        Tables = tables;
        Settings = settings;
        _skipped = skipped;
        Years = new YearsCovered(tables);
        CropNames = Index(ProblemCodes.UnknownCrop, "crop", "crops", tables.Crops.Select(row => row.Crop));
        BedNames = Index(ProblemCodes.UnknownBed, "bed", "beds", tables.Beds.Select(row => row.Bed));
        PlantingNames = Index(ProblemCodes.UnknownPlanting, "planting", "plantings", tables.Plantings.Select(row => row.Planting));
        ChannelNames = Index(ProblemCodes.UnknownChannel, "channel", "channels", tables.Channels.Select(row => row.Channel));
        WorkerNames = Index(ProblemCodes.UnknownWorker, "worker", "workers", tables.Workers.Select(row => row.Worker));
        TaskNames = Index(ProblemCodes.UnknownTask, "task", "tasks", tables.Tasks.Concat(Defaults.Tasks).Select(row => row.Task), shipped: true);
        CategoryNames = Index(ProblemCodes.UnknownCategory, "category", "categories", tables.Categories.Concat(Defaults.Categories).Select(row => row.Category), shipped: true);
        IEnumerable<string> channelPools = tables.Channels.Select(row => DefaultPools.ChannelPoolName(row.Channel.Trim()));
        PoolNames = Index(ProblemCodes.UnknownPool, "pool", "pools", tables.Pools.Concat(Defaults.Pools).Select(row => row.Pool).Concat(channelPools), shipped: true);
        AssetNames = Index(ProblemCodes.UnknownAsset, "asset", "assets", tables.Assets.Select(row => row.Asset));
        AddFacts();
    }

    public RecordTables Tables { get; }

    public FarmSettings Settings { get; }

    /// <summary>How the farm writes its numbers: in messages, and in its files, where the place of what is wrong is looked for.</summary>
    public Notation Notation => Settings.Notation;

    public YearsCovered Years { get; }

    public NameIndex CropNames { get; }

    public NameIndex BedNames { get; }

    public NameIndex PlantingNames { get; }

    public NameIndex ChannelNames { get; }

    public NameIndex WorkerNames { get; }

    public NameIndex TaskNames { get; }

    public NameIndex CategoryNames { get; }

    public NameIndex PoolNames { get; }

    public NameIndex AssetNames { get; }

    public ProblemLog Problems { get; } = new();

    /// <summary>Who may use a pool: another pool, a crop, a planting or the household.</summary>
    public IReadOnlyCollection<string> UserNames => _users ??= [.. PoolNames.Names, .. CropNames.Names, .. PlantingNames.Names, SharedCostChecks.Household];

    public NameSearch Search { get; } = new();

    /// <summary>The structures beds lie in.</summary>
    public NameIndex StructureNames => _structures ??= SharedCostChecks.StructureNames(this);

    public CropFacts? Crop(string? name) => name is null ? null : _crops.GetValueOrDefault(name.Trim());

    public PlantingFacts? Planting(string? name) => name is null ? null : _plantings.GetValueOrDefault(name.Trim());

    public ChannelRow? Channel(string? name) => name is null ? null : _channels.GetValueOrDefault(name.Trim());

    /// <summary>True when rows of the table were left out by the reader.</summary>
    public bool HasRowsInError(string table) => Tables.NamesInError.ContainsKey(table) || Tables.Unreadable.Contains(table);

    public void Report(string code, IRecordRow row, string? column, string message, string? offending = null, string? nearest = null, string? hint = null)
    {
        Problem problem = ProblemOf(code, row, column, message, offending, nearest);
        Problems.Add(hint is null ? problem : problem with { Hint = hint });
    }

    public static Problem ProblemOf(string code, IRecordRow row, string? column, string message, string? offending = null, string? nearest = null) =>
        ProblemCatalog.Make(code, row.Source, column, message, offending, nearest) with { Money = RowMoney.Of(row) };

    public bool InYears(IRecordRow row, string column, DateOnly? date)
    {
        if (date is null || Years.Holds(date.Value.Year))
        {
            return true;
        }

        ReportYear(row, column, $"{date:yyyy-MM-dd}");
        return false;
    }

    public void InYears(IRecordRow row, string column, int? year)
    {
        if (year is { } given && !Years.Holds(given))
        {
            ReportYear(row, column, $"{given}");
        }
    }

    public bool InOrder(string code, IRecordRow row, string column, DateOnly? later, string earlierColumn, DateOnly? earlier, bool sameDayFits)
    {
        if (later is null || earlier is null || later > earlier || (sameDayFits && later == earlier))
        {
            return true;
        }

        Report(code, row, column, $"{column} {later:yyyy-MM-dd} is {(later == earlier ? "the same day as" : "before")} {earlierColumn} {earlier:yyyy-MM-dd}.", $"{later:yyyy-MM-dd}");
        return false;
    }

    public void Unit(IRecordRow row, CropFacts? crop, string? unit)
    {
        if (crop is not null && !string.IsNullOrWhiteSpace(unit) && !crop.Units.Contains(unit.Trim()) && !HasRowsInError("units"))
        {
            Report(ProblemCodes.NoConversion, row, "unit", $"{crop.Row.Crop} is counted in {crop.Row.Unit}, and units.csv has no \"{unit}\" for it.", unit,
                Search.Find(unit, crop.Units));
        }
    }

    private void ReportYear(IRecordRow row, string column, string given)
    {
        string covered = Years.First == Years.Last ? $"{Years.First}, the year" : $"{Years.First} to {Years.Last}, the years";
        Report(ProblemCodes.DateOutside, row, column, $"{column} {given} is more than a year away from {covered} the plantings, harvests and sales cover.", given);
    }

    private NameIndex Index(string code, string what, string table, IEnumerable<string> names, bool shipped = false)
    {
        bool checkable = shipped ? !Tables.Unreadable.Contains(table) : Tables.Present.Contains(table) && !Tables.Unreadable.Contains(table);
        string where = shipped ? $"in {table}.csv or shipped with the program" : $"in {table}.csv";
        var index = new NameIndex(code, what, where, checkable, _skipped?.GetValueOrDefault(table));
        index.AddRange(names);
        index.AddRange(Tables.NamesInError.GetValueOrDefault(table) ?? []);
        return index;
    }

    private void AddFacts()
    {
        foreach (CropRow row in Tables.Crops)
        {
            _crops.TryAdd(row.Crop.Trim(), new CropFacts(row));
        }

        foreach (UnitRow row in Tables.Units)
        {
            Crop(row.Crop)?.Units.Add(row.Unit.Trim());
        }

        foreach (ChannelRow row in Tables.Channels)
        {
            _channels.TryAdd(row.Channel.Trim(), row);
        }

        foreach (PlantingRow row in Tables.Plantings)
        {
            if (!_plantings.TryAdd(row.Planting.Trim(), new PlantingFacts(row)) && Planting(row.Planting) is { } planting)
            {
                planting.FirstInBed = row.InBed < planting.FirstInBed ? row.InBed : planting.FirstInBed;
                planting.CropYear ??= row.CropYear;
            }

            if (Crop(row.Crop) is { } crop && !(row.InBed >= crop.FirstInBed))
            {
                crop.FirstInBed = row.InBed;
            }
        }

        foreach (HarvestRow row in Tables.Harvests)
        {
            if (Planting(row.Planting) is { } planting && !(row.Date <= planting.LastHarvest))
            {
                planting.LastHarvest = row.Date;
            }
        }
    }
}
