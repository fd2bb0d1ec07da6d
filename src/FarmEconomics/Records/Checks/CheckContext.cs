using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Checks;

/// <summary>What the checks work on: the tables, the names known, and where to report.</summary>
internal sealed class CheckContext
{
    private readonly Dictionary<string, HashSet<string>>? skippedNames;
    private readonly Dictionary<string, NameIndex> indexes = [];
    private NameIndex? structureNames;
    private string[]? userNames;
    private readonly CropFacts?[] cropFacts;
    private readonly PlantingFacts?[] plantingFacts;
    private readonly Dictionary<string, ChannelRow> channelRows = new(StringComparer.OrdinalIgnoreCase);

    public CheckContext(RecordTables tables, FarmSettings settings, Dictionary<string, HashSet<string>>? skipped)
    {
        Tables = tables;
        Settings = settings;
        skippedNames = skipped;
        Years = new YearsCovered(tables);
        foreach (RecordTable table in tables.All.Where(table => table.Schema.UnknownName is not null))
        {
            indexes.Add(table.Schema.Name, Index(table));
        }

        cropFacts = new CropFacts?[tables.Names.Count];
        plantingFacts = new PlantingFacts?[tables.Names.Count];
        AddFacts();
    }

    public RecordTables Tables { get; }

    public FarmSettings Settings { get; }

    /// <summary>How the farm writes its numbers: in messages, and in its files, where the place of what is wrong is looked for.</summary>
    public Notation Notation => Settings.Notation;

    public YearsCovered Years { get; }

    public NameIndex CropNames => Names("crops");

    public NameIndex BedNames => Names("beds");

    public NameIndex PlantingNames => Names("plantings");

    public NameIndex PoolNames => Names("pools");

    public ProblemLog Problems { get; } = new();

    /// <summary>Who may use a pool: another pool, a crop, a planting or the household.</summary>
    public IReadOnlyCollection<string> UserNames =>
        userNames ??= [.. PoolNames.Names, .. CropNames.Names, .. PlantingNames.Names, SharedCostChecks.Household];

    public NameSearch Search { get; } = new();

    /// <summary>The structures beds lie in.</summary>
    public NameIndex StructureNames => structureNames ??= SharedCostChecks.StructureNames(this);

    /// <summary>The known names of a table that others refer to.</summary>
    public NameIndex Names(string table) => indexes[table];

    /// <summary>The same, for a kind of names that may be of no table, or of one no other refers to.</summary>
    public NameIndex? FindNames(string kind) => kind == "structures" ? StructureNames : indexes.GetValueOrDefault(kind);

    public CropFacts? Crop(string? name) => name is null ? null : cropFacts[Tables.Names.Find(name)];

    /// <summary>A crop by the number of its name.</summary>
    public CropFacts? Crop(int name) => cropFacts[Tables.Names.Folded(name)];

    public PlantingFacts? Planting(string? name) => name is null ? null : plantingFacts[Tables.Names.Find(name)];

    /// <summary>A planting by the number of its name.</summary>
    public PlantingFacts? Planting(int name) => plantingFacts[Tables.Names.Folded(name)];

    public ChannelRow? Channel(string name) => channelRows.TryGetValue(name.Trim(), out ChannelRow row) ? row : null;

    /// <summary>True when rows of the table were left out by the reader.</summary>
    public bool HasRowsInError(string table) => Tables.NamesInError.ContainsKey(table) || Tables.Unreadable.Contains(table);

    public void Report(
        string code,
        IRecordRow row,
        string? column,
        string message,
        string? offending = null,
        string? nearest = null,
        string? hint = null
    )
    {
        Problem problem = ProblemOf(code, row, column, message, offending, nearest);
        Problems.Add(hint is null ? problem : problem with { Hint = hint });
    }

    public static Problem ProblemOf(
        string code,
        IRecordRow row,
        string? column,
        string message,
        string? offending = null,
        string? nearest = null
    ) => ProblemCatalog.Make(code, row.Source, column, message, offending, nearest) with { Money = RowMoney.Of(row) };

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

    public bool InOrder(
        string code,
        IRecordRow row,
        string column,
        DateOnly? later,
        string earlierColumn,
        DateOnly? earlier,
        bool sameDayFits
    )
    {
        if (later is null || earlier is null || later > earlier || (sameDayFits && later == earlier))
        {
            return true;
        }

        Report(
            code,
            row,
            column,
            $"{column} {later:yyyy-MM-dd} is {(later == earlier ? "the same day as" : "before")} {earlierColumn} {earlier:yyyy-MM-dd}.",
            $"{later:yyyy-MM-dd}"
        );
        return false;
    }

    /// <summary>True for a blank and for a unit of the crop, by their numbers.</summary>
    public bool HasUnit(CropFacts? crop, int unit) => unit == 0 || crop?.UnitNames.Contains(Tables.Names.Folded(unit)) != false;

    public void Unit(IRecordRow row, CropFacts? crop, string? unit)
    {
        if (crop is not null && !string.IsNullOrWhiteSpace(unit) && !crop.Units.Contains(unit.Trim()) && !HasRowsInError("units"))
        {
            Report(
                ProblemCodes.NoConversion,
                row,
                "unit",
                $"{crop.Row.Crop} is counted in {crop.Row.Unit}, and units.csv has no \"{unit}\" for it.",
                unit,
                // Half a pound is near a pound in letters alone.
                unit.Any(char.IsNumber) ? null : Search.Find(unit, crop.Units)
            );
        }
    }

    private void ReportYear(IRecordRow row, string column, string given)
    {
        string covered = Years.First == Years.Last ? $"{Years.First}, the year" : $"{Years.First} to {Years.Last}, the years";
        Report(
            ProblemCodes.DateOutside,
            row,
            column,
            $"{column} {given} is far from {covered} of the plantings, harvests and sales: is the year right?",
            given
        );
    }

    private NameIndex Index(RecordTable table)
    {
        TableSchema schema = table.Schema;
        bool readable = !Tables.Unreadable.Contains(schema.Name);
        bool shipped = schema.Shipped is not null;
        string where = shipped ? $"in {schema.Name}.csv or shipped with the program" : $"in {schema.Name}.csv";
        var index = new NameIndex(
            schema.UnknownName!,
            schema.Columns[0].Name,
            where,
            readable && (shipped || Tables.Present.Contains(schema.Name)),
            skippedNames?.GetValueOrDefault(schema.Name)
        );
        var names = (TextColumn)schema.Stored[0];
        index.AddRange(Enumerable.Range(0, table.Count).Select(row => names.Maybe(table, row)));
        index.AddRange(schema.Shipped?.Invoke(Tables) ?? []);
        index.AddRange(Tables.NamesInError.GetValueOrDefault(schema.Name) ?? []);
        index.Number(Tables.Names);
        return index;
    }

    private void AddFacts()
    {
        AddCropFacts();
        AddPlantingFacts();
        foreach (ChannelRow row in Tables.Channels)
        {
            channelRows.TryAdd(row.Channel.Trim(), row);
        }
    }

    private void AddCropFacts()
    {
        foreach (CropRow row in Tables.Crops)
        {
            cropFacts[Tables.Names.Find(row.Crop)] ??= new CropFacts(row);
        }

        foreach (UnitRow row in Tables.Units)
        {
            Crop(row.Crop)?.Units.Add(row.Unit.Trim());
        }

        foreach (CropFacts crop in cropFacts.OfType<CropFacts>())
        {
            crop.UnitNames.AddRange(crop.Units.Select(Tables.Names.Find).Where(unit => unit > 0));
        }
    }

    private void AddPlantingFacts()
    {
        foreach (PlantingRow row in Tables.Plantings)
        {
            ref PlantingFacts? planting = ref plantingFacts[Tables.Names.Find(row.Planting)];
            planting ??= new PlantingFacts(row);
            planting.FirstInBed = row.InBed < planting.FirstInBed ? row.InBed : planting.FirstInBed;
            planting.CropYear ??= row.CropYear;
            if (Crop(row.Crop) is { } crop && !(row.InBed >= crop.FirstInBed))
            {
                crop.FirstInBed = row.InBed;
            }
        }

        foreach (HarvestRow row in Tables.Harvests)
        {
            if (Planting(row.PlantingName) is { } planting && !(row.Date <= planting.LastHarvest))
            {
                planting.LastHarvest = row.Date;
            }
        }
    }
}
