namespace FarmEconomics.Records;

/// <summary>A line of part II of Schedule F.</summary>
/// <param name="Number">Its number, a label that changes with the form's year.</param>
/// <param name="Name">Its name.</param>
/// <param name="OnTopOfWages">True where a cost of labor is no wages: benefits, workers' compensation, pensions and payroll taxes.</param>
/// <param name="IsInterest">True where it holds interest.</param>
public sealed record TaxLine(string Number, string Name, bool OnTopOfWages = false, bool IsInterest = false);

/// <summary>
/// Lines of part II of Schedule F (Form 1040), farm expenses, as the form of tax year 2025 numbers them. Sources: the Iowa State University
/// Center for Agricultural Law and Taxation's outline of Schedule F (lines 10 to 32); the split of 21, 24 and 32 into letters is from
/// memory. Labels for a tax preparer, who uses the form of the year.
/// </summary>
public static class TaxLines
{
    /// <summary>The tax year whose form numbers the lines.</summary>
    public const int FormYear = 2025;

    /// <summary>The line of depreciation.</summary>
    public static readonly TaxLine Depreciation = new("14", "Depreciation and section 179 expense");

    /// <summary>Line 30: electricity, water, telephone.</summary>
    public static readonly TaxLine Utilities = new("30", "Utilities");

    /// <summary>The line of what fits no other.</summary>
    public static readonly TaxLine Other = new("32a-32f", "Other expenses (specify)");

    /// <summary>All lines, in the form's order.</summary>
    public static IReadOnlyList<TaxLine> All { get; } =
    [
        new("10", "Car and truck expenses"),
        new("11", "Chemicals"),
        new("12", "Conservation expenses"),
        new("13", "Custom hire (machine work)"),
        Depreciation,
        new("15", "Employee benefit programs", OnTopOfWages: true),
        new("16", "Feed"),
        new("17", "Fertilizers and lime"),
        new("18", "Freight and trucking"),
        new("19", "Gasoline, fuel, and oil"),
        new("20", "Insurance (other than health)", OnTopOfWages: true),
        new("21a", "Interest: mortgage (paid to banks, etc.)", IsInterest: true),
        new("21b", "Interest: other", IsInterest: true),
        new("22", "Labor hired (less employment credits)"),
        new("23", "Pension and profit-sharing plans", OnTopOfWages: true),
        new("24a", "Rent or lease: vehicles, machinery, equipment"),
        new("24b", "Rent or lease: other (land, animals, etc.)"),
        new("25", "Repairs and maintenance"),
        new("26", "Seeds and plants"),
        new("27", "Storage and warehousing"),
        new("28", "Supplies"),
        new("29", "Taxes", OnTopOfWages: true),
        Utilities,
        new("31", "Veterinary, breeding, and medicine"),
        Other,
    ];

    /// <summary>
    /// Finds the line a grower's label means: its number, its name, or the beginning of its name, without regard to case and punctuation.
    /// </summary>
    /// <param name="label">The label in the categories table.</param>
    /// <returns>The line; null when the label is blank or means none.</returns>
    public static TaxLine? Find(string? label)
    {
        string key = Key(label ?? "");
        return key.Length == 0 ? null
            : All.FirstOrDefault(line => Key(line.Number) == key)
                ?? All.FirstOrDefault(line => Key(line.Name) == key)
                ?? (key.Length < 4 ? null : All.FirstOrDefault(line => Key(line.Name).StartsWith(key, StringComparison.Ordinal)));
    }

    private static string Key(string text) => string.Concat(text.Where(char.IsAsciiLetterOrDigit)).ToLowerInvariant();
}
