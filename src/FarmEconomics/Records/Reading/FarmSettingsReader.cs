using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Reading;

/// <summary>Makes the farm's settings from the rows of <c>farm</c>, or from name and value.</summary>
public static class FarmSettingsReader
{
    // The usual width of a permanent bed in metric farms (common practice, no source).
    private const decimal MetricBedWidth = 75m;

    private static readonly ColumnSchema PercentColumn = new("percent", ColumnType.Percent, "") { Range = new NumberRange(0m, 100m) };
    private static readonly ColumnSchema BuyInColumn = new("percent", ColumnType.Percent, "") { Range = new NumberRange(0m, 1_000m) };
    private static readonly ColumnSchema PriceChangeColumn = new("percent", ColumnType.Percent, "") { Range = new NumberRange(-50m, 200m) };
    private static readonly ColumnSchema LandColumn = new("land", ColumnType.Money, "") { Range = NumberRanges.AmountFromZero };
    private static readonly ColumnSchema AreaColumn = new("area", ColumnType.Number, "") { Range = new NumberRange(0.0001m, 1_000_000m) };
    private static readonly ColumnSchema WageColumn = new("wage", ColumnType.Price, "") { Range = new NumberRange(0m, 1_000_000m) };
    private static readonly ColumnSchema WidthColumn = new("width", ColumnType.Number, "") { Range = new NumberRange(1m, 1_000m) };

    /// <summary>All settings, in documented order.</summary>
    public static IReadOnlyList<SettingSpec> Settings { get; } =
    [
        new("farm_name", "a name of at most 100 letters", FarmSettings.Unnamed, "The farm's name, for headings.", (s, v) =>
            v.Length <= 100 ? s with { FarmName = v } : null
        ),
        new("currency", "three letters (ISO 4217), such as USD", "USD", "The currency of all money.", (s, v) =>
            v.Length == 3 && v.All(char.IsAsciiLetter) ? s with { Currency = v.ToUpperInvariant() } : null
        ),
        new(
            "crop_year_start",
            "a month and day MM-DD, such as 01-01 (not 02-29)",
            "01-01",
            "The day a crop year starts.",
            ApplyCropYearStart
        ),
        new(
            "owner_wage",
            "a number from 0 to 1,000,000 with at most 4 decimals",
            "none: with unpaid hours, labor and net return are blank",
            "What one unpaid hour of the owner is worth.",
            (s, v) => Number(s, v, WageColumn) is { } wage ? s with { OwnerWage = wage } : null
        ),
        new(
            "unpaid_hours",
            OneOf<UnpaidHours>(),
            "as-logged",
            "With none, a season without logged hours took none unpaid: its labor is what the books paid, or 0, not unknown.",
            (s, v) => Words.TryParse(v, out UnpaidHours word) ? s with { UnpaidHours = word } : null
        ),
        new(
            "payroll_burden_percent",
            "a percentage of 0 to 100",
            "0",
            "The employer's cost on top of wages, where the books carry neither wages nor such cost.",
            (s, v) => Number(s, v, PercentColumn) is { } percent ? s with { PayrollBurdenPercent = percent } : null
        ),
        new(
            "interest_percent",
            "a percentage of 0 to 100",
            "none: with assets, infrastructure and net return are blank",
            "The yearly cost of capital.",
            (s, v) => Number(s, v, PercentColumn) is { } percent ? s with { InterestPercent = percent } : null
        ),
        new(
            "land_value",
            "an amount from 0 to 10,000,000,000",
            "none: no charge for your own land",
            "What your own land is worth; land_value x interest_percent is a cost of the year. Rent you pay is in the books.",
            (s, v) => Number(s, v, LandColumn) is { } value ? s with { LandValue = value } : null
        ),
        new(
            "land_rent",
            "an amount from 0 to 10,000,000,000",
            "none: by land_value",
            "What your own land would cost to rent a year, instead of land_value x interest_percent.",
            (s, v) => Number(s, v, LandColumn) is { } rent ? s with { LandRent = rent } : null
        ),
        new(
            "land_area",
            "a number from 0.0001 to 1,000,000",
            "none: land_value and land_rent are for all of your land",
            "How much land you own, where land_value and land_rent are written for one unit of its area instead of for all of it.",
            (s, v) => Number(s, v, AreaColumn) is { } area ? s with { LandArea = area } : null
        ),
        new(
            "length_unit",
            OneOf<LengthUnit>(),
            "ft",
            "The unit of all lengths: with m, beds have length_m and width_cm, plantings bed_meters, and results are per bed-meter.",
            (s, v) =>
                Words.TryParse(v, out LengthUnit word)
                    ? s with
                    {
                        LengthUnit = word,
                        StandardBedWidthIn = word == LengthUnit.M ? MetricBedWidth : s.StandardBedWidthIn,
                    }
                    : null
        ),
        new(
            "standard_bed_width_in",
            "a number of inches from 1 to 1,000 (farms with length_unit ft)",
            "30",
            "The bed width that one bed-foot stands for, in inches.",
            (s, v) => s.LengthUnit == LengthUnit.Ft && Number(s, v, WidthColumn) is { } width ? s with { StandardBedWidthIn = width } : null
        ),
        new(
            "standard_bed_width_cm",
            "a number of centimeters from 1 to 1,000 (farms with length_unit m)",
            "75",
            "The bed width that one bed-meter stands for, in centimeters.",
            (s, v) => s.LengthUnit == LengthUnit.M && Number(s, v, WidthColumn) is { } width ? s with { StandardBedWidthIn = width } : null
        ),
        new("closing_stock", OneOf<ClosingStock>(), "count", "Whether produce on hand at the closing date counts as output.", (s, v) =>
            Words.TryParse(v, out ClosingStock word) ? s with { ClosingStock = word } : null
        ),
        new("ownership_method", OneOf<OwnershipMethod>(), "capital-recovery", "How the cost of equipment and buildings is spread "
            + "over the years.", (s, v) =>
            Words.TryParse(v, out OwnershipMethod word) ? s with { OwnershipMethod = word } : null
        ),
        new("idle_capacity", OneOf<IdleCapacity>(), "separate", "What happens to the ownership cost of capacity nobody used.", (s, v) =>
            Words.TryParse(v, out IdleCapacity word) ? s with { IdleCapacity = word } : null
        ),
        new(
            "hired_hours_can_be_cut",
            "yes or no",
            "yes",
            "Whether hired hours that a change frees need not be paid. Asked by decisions only.",
            (s, v) => YesNoText.TryRead(v, out bool yes) ? s with { HiredHoursCanBeCut = yes } : null
        ),
        new(
            "buy_in_percent",
            "a percentage of 0 to 1,000",
            "100",
            "What produce bought in to fill boxes costs, in percent of list price. Asked by decisions only.",
            (s, v) => Number(s, v, BuyInColumn) is { } percent ? s with { BuyInPercent = percent } : null
        ),
        new(
            "price_change_percent",
            "a percentage of -50 to 200",
            "sales by your own list prices, other costs in the money of their year",
            "How much prices and costs rose in a year, to bring past seasons to the level of the reviewed one. Asked by decisions only.",
            (s, v) => Number(s, v, PriceChangeColumn) is { } percent ? s with { PriceChangePercent = percent } : null
        ),
        new(
            "as_of",
            "a date",
            "the last day of any harvest, sale, income, labor or expense, or on which a planting went into its bed",
            "The closing date of the review.",
            (s, v) =>
                DateText.TryRead(v, s.DateFormat, out DateOnly date) && ColumnSchema.HoldsYear(date.Year) ? s with { AsOf = date } : null
        ),
        new(
            "date_format",
            "the letters d, m and y with separators, such as MM/DD/YYYY",
            "ISO 8601 only",
            "Another format of dates in all files, besides 2025-06-30.",
            (s, v) => DateText.NormalizeFormat(v) is { } format ? s with { DateFormat = format } : null
        ),
        new("decimal_mark", "`.` or `,`", ".", "The decimal mark of numbers in all files.", (s, v) =>
            v is "." or "," ? s with { DecimalMark = v[0] } : null
        ),
        .. SupplySettings.All,
    ];

    /// <summary>The settings a farm can use: the bed width has one name in inches and one in centimeters.</summary>
    /// <param name="unit">The farm's unit of length.</param>
    /// <returns>The settings, in documented order.</returns>
    public static IEnumerable<SettingSpec> For(LengthUnit unit) =>
        Settings.Where(setting => setting.Name != (unit == LengthUnit.M ? "standard_bed_width_in" : "standard_bed_width_cm"));

    /// <summary>Sets one setting.</summary>
    /// <param name="settings">The settings so far.</param>
    /// <param name="name">The setting's name, compared as headings are.</param>
    /// <param name="value">Its value as written.</param>
    /// <param name="problem">What is wrong with it, or null.</param>
    /// <param name="source">Where it is written; the <c>--set</c> option if left out.</param>
    /// <returns>The settings with the new value, or unchanged when there is a problem.</returns>
    public static FarmSettings Apply(FarmSettings settings, string name, string value, out Problem? problem, SourceLine? source = null)
    {
        ArgumentNullException.ThrowIfNull(settings);
        SourceLine place = source ?? new SourceLine("--set", 0);
        SettingSpec? spec = Find(name);
        if (spec is null)
        {
            // What to try of a price or yield is no setting: whatif has another option for it.
            string other = source is null && name.Trim().Contains(' ')
                ? " Prices, wages, hours and yields are tried with whatif and --change."
                : "";
            problem = ProblemCatalog.Make(ProblemCodes.UnknownSetting, place, "setting", $"There is no setting \"{name}\".{other}", name,
                NearestName.Find(name, Settings.Select(setting => setting.Name)));
            return settings;
        }

        FarmSettings? changed = spec.Apply(settings, value.Trim());
        problem = changed is null
            ? ProblemCatalog.Make(ProblemCodes.BadSetting, place, "value", $"{spec.Name} must be {spec.Expected}, not \"{value}\".", value)
            : null;
        return changed ?? settings;
    }

    /// <summary>Reads the rows of <c>farm</c>; the formats of dates and numbers count first, wherever they stand.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="overrides">Settings that go before those of the rows.</param>
    /// <param name="problems">Receives what is wrong.</param>
    /// <returns>The settings.</returns>
    public static FarmSettings Read(
        IEnumerable<SettingRow> rows,
        IEnumerable<KeyValuePair<string, string>> overrides,
        ICollection<Problem> problems
    )
    {
        var settings = new FarmSettings();
        var seen = new Dictionary<string, SourceLine>();
        var entries = new List<Entry>();
        foreach (SettingRow row in rows)
        {
            string key = HeadingKey.Of(row.Setting);
            if (Find(row.Setting) is not null && !seen.TryAdd(key, row.Source))
            {
                problems.Add(ProblemCatalog.Make(ProblemCodes.SettingTwice, row.Source, "setting",
                    $"The setting {row.Setting} stands in line {seen[key].Line} already.", row.Setting));
                continue;
            }

            entries.Add(new Entry(row.Setting, row.Value, row.Source));
        }

        entries.AddRange(overrides.Select(pair => new Entry(pair.Key, pair.Value, null)));
        foreach (Entry entry in entries.Where(entry => IsFormat(entry.Name)).Concat(entries.Where(entry => !IsFormat(entry.Name))))
        {
            settings = Apply(settings, entry.Name, entry.Value, out Problem? problem, entry.Source);
            if (problem is not null)
            {
                problems.Add(problem);
            }
        }

        return settings;
    }

    // A class: lists of it are compiled ahead of time, which those of a tuple are not.
    private sealed record Entry(string Name, string Value, SourceLine? Source);

    private static bool IsFormat(string name) => HeadingKey.Of(name) is "dateformat" or "decimalmark" or "lengthunit";

    private static SettingSpec? Find(string name)
    {
        string key = HeadingKey.Of(name);
        return Settings.FirstOrDefault(setting => HeadingKey.Of(setting.Name) == key);
    }

    private static string OneOf<T>()
        where T : struct, Enum => string.Join(" or ", Words.All<T>());

    internal static decimal? Number(FarmSettings settings, string text, ColumnSchema column) =>
        text.Length > 0
        && NumberText.Read(text, column, settings.DecimalMark, out decimal value) == NumberFault.None
        && column.Range!.Holds(value)
            ? value
            : null;

    private static FarmSettings? ApplyCropYearStart(FarmSettings settings, string text) =>
        text.Length == 5 && DateText.TryRead($"2001-{text}", null, out DateOnly day)
            ? settings with { CropYearStartMonth = day.Month, CropYearStartDay = day.Day }
            : null;
}
