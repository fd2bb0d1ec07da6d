using System.Globalization;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Funding;

/// <summary>An assumption of a write-up, as it is printed.</summary>
/// <param name="Name">The name it is set by.</param>
/// <param name="Value">Its value as text; null: not given.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Meaning">What it means.</param>
public sealed record Assumption(string Name, string? Value, string Unit, string Meaning);

/// <summary>
/// Everything a write-up assumes beside the records: set by name, printed whole. What isn't given and has no default leaves the figures that need it
/// not available.
/// </summary>
public sealed class FundingAssumptions
{
    private const string PathName = "path_width";
    private const decimal Largest = 1_000_000_000m;
    private const decimal LargestFactor = 1000m;
    private const int MostDecimals = 6;

    private static readonly (string Name, string? Default, string Unit, string Meaning)[] Known =
    [
        ("area_factor", "1", "x", "area of next season against last season's, every crop"),
        ("yield_factor", "1", "x", "yield per length of bed against last season's"),
        ("price_factor", "1", "x", "prices against last season's"),
        ("wage_factor", "1", "x", "value of an hour, hired and unpaid, against last season's"),
        ("cost_factor", "1", "x", "all other costs against last season's"),
        (PathName, null, "in", "path between two beds; with the standard bed width it says how many bed-feet an acre holds (18 in is common practice, no source)"),
        ("minimum_cash", "0", "currency", "cash that should never be undercut"),
        ("off_farm_income", "0", "currency a year", "income from outside the farm that helps to carry debt"),
        ("coverage_ratio", "1.1", "ratio", "the term-debt coverage that must be kept (1.1 is the lower bound of the middle range on a common scorecard, from memory)"),
        ("project_month", "3", "month of the year", "calendar month of the next season in which the project is paid and the money for it comes"),
        ("project_life_years", "15", "years", "years the project serves, a whole number from 1 to 40"),
        ("project_salvage", "0", "currency", "what it fetches at the end"),
        ("project_pool", null, "pool", "the pool the project replaces or improves; not given: the one whose name stands in the project's"),
        ("discount_percent", null, "% a year", "cost of capital for the project; not given: interest_percent of the farm"),
        ("hours_saved", null, "hours a year", "hours of work the project saves"),
        ("hour_value", null, "currency an hour", "value of a saved hour; not given: owner_wage of the farm"),
        ("losses_saved_percent", null, "%", "part of the produce lost in the store that would be sold"),
        ("ice_saved_percent", null, "%", "part of what was paid for ice that falls away"),
        ("power_saved_kwh", null, "kWh a year", "electricity saved; below 0: more is used"),
        ("power_price", null, "currency a kWh", "value of a kWh; not given: what a kWh of the power pool cost last season"),
        ("other_saving", null, "currency a year", "any other yearly gain"),
        ("other_cost", null, "currency a year", "any other yearly cost of the project"),
        ("new_loan", null, "currency", "a loan asked for"),
        ("new_loan_percent", null, "% a year", "its interest"),
        ("new_loan_years", null, "years", "how long it runs"),
        ("new_loan_payments", "12", "payments a year", "how often it is paid"),
        ("new_loan_repayment", "level-payment", "word", "how it is paid back: level-payment, level-principal or interest-only"),
        ("indirect_percent", null, "%", "indirect rate on the base below (up to 15 % without a negotiated rate: 2 CFR 200.414(f), awards from 2024-10-01)"),
        ("indirect_classes", "personnel, fringe-benefits, travel, supplies, contractual, other", "classes", "object classes in the indirect base (equipment and construction stay out of modified total direct costs; large subawards too, which the records don't tell)"),
        ("indirect_funder_percent", "100", "%", "part of the indirect charges asked of the funder"),
        ("match_percent", null, "%", "match the funder asks for, in percent of the base below"),
        ("match_base", "total", "word", "what match_percent is of: total (the whole project) or award (the funder's money)"),
        ("in_kind_hours", "0", "hours", "unpaid hours given to the project beyond the rows of the funding table, valued at hour_value, as match"),
        ("cash_items", "cash, checking, savings, bank", "words", "balance-sheet items that are money"),
        ("loan_items", "note, notes, loan, loans, mortgage, line of credit, credit line, due within a year, due later", "words", "liabilities that are borrowed money"),
        ("supply_items", "seed, mix, boxes, supplies, fuel, fertilizer, feed, prepaid expense", "words", "current assets that are inputs not used yet: their change is a cost, not a return"),
        ("paid_ahead_items", "paid ahead, prepaid share, deposit, deferred", "words", "current liabilities that are customers' money for later produce: their change is a return"),
        ("beside_assets_items", "land", "words", "longer-term items of the balance sheet that the assets table doesn't hold"),
    ];

    private readonly Dictionary<string, string> given = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Nothing given: all defaults.</summary>
    public static FundingAssumptions None { get; } = new([], new Dictionary<string, int>(), Notation.Default);

    private readonly Notation notation;

    private FundingAssumptions(IEnumerable<KeyValuePair<string, string>> values, IReadOnlyDictionary<string, int> classes, Notation notation)
    {
        Classes = classes;
        this.notation = notation;
        foreach ((string name, string value) in values)
        {
            (string Name, string? Default, string Unit, string Meaning) known = Known.FirstOrDefault(item => item.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase));
            if (known.Name is null)
            {
                string? nearest = NearestName.Find(name, Known.Select(item => item.Name));
                throw new ArgumentException($"There is no assumption \"{name}\"{(nearest is null ? "." : $"; did you mean {nearest}?")}", nameof(values));
            }

            if (IsNumber(known.Unit) && !IsUsable(value))
            {
                throw new ArgumentException(
                    notation.Text($"{known.Name} must be a number ({known.Unit}) between -{Largest:#,0} and {Largest:#,0} with at most {MostDecimals} decimals and no marks between thousands, not \"{value}\"."), nameof(values));
            }

            given[known.Name] = value.Trim();
        }

        Validate();
    }

    /// <summary>Depreciation classes: recovery years by asset name.</summary>
    public IReadOnlyDictionary<string, int> Classes { get; }

    /// <summary>All assumptions with the values that hold, for print.</summary>
    /// <param name="as">How the farm writes, and its unit for the path between beds.</param>
    /// <returns>The assumptions, in documented order.</returns>
    public IReadOnlyList<Assumption> All(Notation @as) => [.. Known.Select(item => item.Name != PathName
        ? new Assumption(item.Name, IsNumber(item.Unit) ? TextOf(item.Name)?.Replace('.', @as.DecimalMark) : TextOf(item.Name), item.Unit, item.Meaning.Replace("(1.1 ", @as.Text($"({1.1m} "), StringComparison.Ordinal))
        : new Assumption(item.Name, @as.Text($"{PathWidth(@as.LengthUnit)}"), @as.LengthUnit.WidthShort(),
            @as.Label(item.Meaning).Replace("18 in ", @as.LengthUnit == LengthUnit.M ? "45 cm " : "18 in ", StringComparison.Ordinal)))];

    /// <summary>Takes assumptions by name.</summary>
    /// <param name="values">Names and values, decimals with a point or the farm's decimal mark.</param>
    /// <param name="classes">Depreciation classes: recovery years by asset name.</param>
    /// <param name="notation">How the farm writes; null: with a decimal point.</param>
    /// <returns>The assumptions.</returns>
    /// <exception cref="ArgumentException">An unknown name, or a value that can't be.</exception>
    public static FundingAssumptions Of(IEnumerable<KeyValuePair<string, string>> values, IReadOnlyDictionary<string, int>? classes = null, Notation? notation = null)
    {
        ArgumentNullException.ThrowIfNull(values);
        return new FundingAssumptions(values, classes ?? new Dictionary<string, int>(), notation ?? Notation.Default);
    }

    /// <summary>Takes assumptions and classes as text, several with a semicolon between them.</summary>
    /// <param name="values"><c>hours_saved=60; losses_saved_percent=40</c>.</param>
    /// <param name="classes"><c>Solar panels and mounts=5; Truck=5</c>.</param>
    /// <param name="notation">How the farm writes; null: with a decimal point.</param>
    /// <returns>The assumptions.</returns>
    /// <exception cref="ArgumentException">An unknown name, a value that can't be, or a part without an equals sign.</exception>
    public static FundingAssumptions Parse(string values, string classes = "", Notation? notation = null)
    {
        Dictionary<string, int> years = new(StringComparer.OrdinalIgnoreCase);
        foreach ((string name, string text) in Pairs(classes))
        {
            years[name] = int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
                ? number
                : throw new ArgumentException($"The class of {name} must be a number of years, not \"{text}\".", nameof(classes));
        }

        return Of(Pairs(values), years, notation);
    }

    /// <summary>An assumption as a number.</summary>
    /// <param name="name">Its name.</param>
    /// <returns>The number; null when not given.</returns>
    public decimal? Number(string name) => TextOf(name) is { } text ? TypedNumber.Read(text, notation.DecimalMark) : null;

    /// <summary>The width of the paths.</summary>
    /// <param name="unit">The farm's unit of lengths.</param>
    /// <returns>Inches, or centimeters on a farm that measures in meters; 0 or more.</returns>
    public decimal PathWidth(LengthUnit unit) => Number(PathName) ?? (unit == LengthUnit.M ? 45m : 18m);

    /// <summary>An assumption as text.</summary>
    /// <param name="name">Its name.</param>
    /// <returns>The text; null when not given.</returns>
    /// <exception cref="KeyNotFoundException">No assumption of that name.</exception>
    public string? TextOf(string name)
    {
        int at = Array.FindIndex(Known, item => item.Name == name);
        return at < 0 ? throw new KeyNotFoundException($"There is no assumption {name}.") : given.GetValueOrDefault(name) ?? Known[at].Default;
    }

    /// <summary>Whether an item of the balance sheet is of a kind, by the words of an assumption: whole words, or their beginning.</summary>
    /// <param name="assumption">The assumption that lists the words.</param>
    /// <param name="item">The item.</param>
    /// <returns>True when one of the words stands in it.</returns>
    internal bool Names(string assumption, string item) => (TextOf(assumption) ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
        .Any(word => $" {Plain(item)} ".Contains($" {Plain(word)} ", StringComparison.Ordinal));

    private static string Plain(string text) => string.Join(' ', new string([.. text.ToLowerInvariant().Select(c => char.IsLetterOrDigit(c) ? c : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries));

    private static IEnumerable<KeyValuePair<string, string>> Pairs(string text) =>
        text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(pair =>
        {
            int equals = pair.LastIndexOf('=');
            return equals > 0
                ? KeyValuePair.Create(pair[..equals].Trim(), pair[(equals + 1)..].Trim())
                : throw new ArgumentException($"'{pair}' has no value: write name=value, several with a semicolon between them.", nameof(text));
        });

    private bool IsUsable(string value) => TypedNumber.Read(value, notation.DecimalMark) is { } number && Math.Abs(number) <= Largest && decimal.Round(number, MostDecimals) == number;

    private static bool IsNumber(string unit) => unit is not ("words" or "word" or "classes" or "pool");

    private void Validate()
    {
        foreach (string factor in new[] { "area_factor", "yield_factor", "price_factor", "wage_factor", "cost_factor", "coverage_ratio" })
        {
            Range(factor, 0m, LargestFactor);
        }

        foreach (string amount in new[] { PathName, "minimum_cash", "hour_value", "project_salvage", "in_kind_hours", "new_loan" })
        {
            Range(amount, 0m, Largest);
        }

        foreach (string percent in new[] { "losses_saved_percent", "ice_saved_percent", "indirect_percent", "indirect_funder_percent", "new_loan_percent", "discount_percent" })
        {
            Range(percent, 0m, 100m);
        }

        Range("match_percent", 0m, Word("match_base", "total", "award") == "total" ? 99.99m : 1000m);
        Whole("project_month", 1, 12);
        Whole("project_life_years", 1, 40);
        Whole("new_loan_payments", 1, 365);
        Range("new_loan_years", 0.01m, 100m);
        if (Number("new_loan_years") * Number("new_loan_payments") is { } payments && payments != decimal.Floor(payments))
        {
            throw new ArgumentException("new_loan_years times new_loan_payments must be a whole number of payments.", "values");
        }

        if (!Words.TryParse(TextOf("new_loan_repayment")!, out Repayment _))
        {
            throw new ArgumentException($"new_loan_repayment must be one of {string.Join(", ", Words.All<Repayment>())}.", "values");
        }

        _ = IndirectClasses();
    }

    /// <summary>The object classes in the indirect base.</summary>
    internal IReadOnlyList<ObjectClass> IndirectClasses() => [.. TextOf("indirect_classes")!.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
        .Select(word => Words.TryParse(word, out ObjectClass value) ? value
            : throw new ArgumentException($"indirect_classes: there is no object class \"{word}\"; classes: {string.Join(", ", Words.All<ObjectClass>())}.", nameof(word)))];

    private string Word(string name, params string[] allowed) => allowed.Contains(TextOf(name), StringComparer.OrdinalIgnoreCase)
        ? TextOf(name)!.ToLowerInvariant()
        : throw new ArgumentException($"{name} must be one of {string.Join(", ", allowed)}, not \"{TextOf(name)}\".", nameof(name));

    private void Range(string name, decimal least, decimal most)
    {
        if (Number(name) is { } value && (value < least || value > most))
        {
            throw new ArgumentException(notation.Text($"{name} can't be {value}; it must be from {least} to {most}."), name);
        }
    }

    private void Whole(string name, int least, int most)
    {
        if (Number(name) is { } value && (value < least || value > most || value != decimal.Floor(value)))
        {
            throw new ArgumentException(notation.Text($"{name} must be a whole number from {least} to {most}, not {value}."), name);
        }
    }
}
