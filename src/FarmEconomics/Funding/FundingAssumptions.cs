using System.Globalization;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;

namespace FarmEconomics.Funding;

/// <summary>An assumption of a write-up, as it is printed.</summary>
/// <param name="Name">The name it is set by.</param>
/// <param name="Title">What it is called on a page.</param>
/// <param name="Value">Its value as text; null: not given.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Meaning">What it means.</param>
public sealed record Assumption(string Name, string Title, string? Value, string Unit, string Meaning);

/// <summary>
/// Everything a write-up assumes beside the records, typed; set in code, or by name from text; printed whole. What isn't given and has no
/// default leaves the figures that need it not available.
/// </summary>
public sealed record FundingAssumptions
{
    private static readonly IReadOnlyList<AssumptionEntry> Entries =
    [
        .. NextSeasonAssumptions.Entries,
        .. DebtAssumptions.Entries,
        .. ProjectAssumptions.Entries,
        .. SavingAssumptions.Entries,
        .. LoanAssumptions.Entries,
        .. GrantAssumptions.Entries,
        .. TaxAssumptions.Entries,
    ];

    /// <summary>Nothing given: all defaults.</summary>
    public static FundingAssumptions None { get; } = new();

    /// <summary>Next season against last season.</summary>
    public NextSeasonAssumptions NextSeason { get; init; } = new();

    /// <summary>Cash, coverage, the line of credit, replacement.</summary>
    public DebtAssumptions Debt { get; init; } = new();

    /// <summary>When a project is paid and how long it serves.</summary>
    public ProjectAssumptions Project { get; init; } = new();

    /// <summary>What a project gains and costs a year.</summary>
    public SavingAssumptions Saving { get; init; } = new();

    /// <summary>A loan asked for.</summary>
    public LoanAssumptions NewLoan { get; init; } = new();

    /// <summary>What a funder's program says.</summary>
    public GrantAssumptions Grant { get; init; } = new();

    /// <summary>Taxes, and which depreciation classes count.</summary>
    public TaxAssumptions Tax { get; init; } = new();

    /// <summary>Depreciation classes: recovery years by asset name.</summary>
    public IReadOnlyDictionary<string, int> Classes { get; init; } = new Dictionary<string, int>();

    /// <summary>All assumptions with the values that hold, for print.</summary>
    /// <param name="as">How the farm writes, and its unit for the path between beds.</param>
    /// <returns>The assumptions, in documented order.</returns>
    public IReadOnlyList<Assumption> All(Notation @as)
    {
        ArgumentNullException.ThrowIfNull(@as);
        return
        [
            .. Entries.Select(entry =>
                entry.Name == NextSeasonAssumptions.PathName
                    ? PathOf(entry, @as)
                    : new Assumption(
                        entry.Name,
                        entry.Title,
                        entry is NumberEntry ? entry.TextOf(this)?.Replace('.', @as.DecimalMark) : entry.TextOf(this),
                        entry.Unit,
                        entry.MeaningIn(@as)
                    )
            ),
        ];
    }

    /// <summary>Takes assumptions by name.</summary>
    /// <param name="values">Names and values, decimals with a point or the farm's decimal mark.</param>
    /// <param name="classes">Depreciation classes: recovery years by asset name.</param>
    /// <param name="notation">How the farm writes; null: with a decimal point.</param>
    /// <returns>The assumptions.</returns>
    /// <exception cref="ArgumentException">An unknown name, or a value that can't be.</exception>
    public static FundingAssumptions Of(
        IEnumerable<KeyValuePair<string, string>> values,
        IReadOnlyDictionary<string, int>? classes = null,
        Notation? notation = null
    )
    {
        ArgumentNullException.ThrowIfNull(values);
        Notation @as = notation ?? Notation.Default;
        FundingAssumptions taken = None with { Classes = classes ?? None.Classes };
        Dictionary<string, string> given = new(StringComparer.OrdinalIgnoreCase);
        foreach ((string name, string value) in values)
        {
            Once(given, name.Trim(), value.Trim());
            AssumptionEntry? entry = Entries.FirstOrDefault(item => item.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase));
            if (entry is null)
            {
                string? nearest = NearestName.Find(name, Entries.Select(item => item.Name));
                throw new ArgumentException(
                    $"There is no assumption \"{name}\"{(nearest is null ? "." : $"; did you mean {nearest}?")}",
                    nameof(values)
                );
            }

            taken = entry.Take(taken, value.Trim(), @as);
        }

        taken.Validate(@as);
        return taken;
    }

    /// <summary>Takes assumptions and classes as text, several with a semicolon between them.</summary>
    /// <param name="values"><c>hours_saved=60; losses_saved_percent=40</c>.</param>
    /// <param name="classes"><c>Pack shed=20; Truck=5</c>.</param>
    /// <param name="notation">How the farm writes; null: with a decimal point.</param>
    /// <returns>The assumptions.</returns>
    /// <exception cref="ArgumentException">An unknown name, a value that can't be, or a part without an equals sign.</exception>
    public static FundingAssumptions Parse(string values, string classes = "", Notation? notation = null)
    {
        Dictionary<string, int> years = new(StringComparer.OrdinalIgnoreCase);
        Dictionary<string, string> given = new(StringComparer.OrdinalIgnoreCase);
        foreach ((string name, string text) in Pairs(classes))
        {
            Once(given, name, text);
            years[name] = int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
                ? number
                : throw new ArgumentException($"The class of {name} must be a number of years, not \"{text}\".", nameof(classes));
        }

        return Of(Pairs(values), years, notation);
    }

    /// <summary>Holds every value against its range.</summary>
    /// <param name="notation">How the farm writes.</param>
    /// <exception cref="ArgumentException">A value that can't be.</exception>
    internal void Validate(Notation notation)
    {
        foreach (AssumptionEntry entry in Entries)
        {
            entry.Validate(this, notation);
        }

        NewLoan.Validate();
        Project.Validate();
        Grant.Validate();
    }

    /// <summary>Refuses what is assumed of a project where none is asked for: it would count nowhere.</summary>
    /// <param name="project">The project; null: none.</param>
    /// <exception cref="ArgumentException">Something is assumed of a project, and there is none.</exception>
    internal void RequireProject(string? project)
    {
        if (project is null && OfAProject.FirstOrDefault(entry => entry.TextOf(this) != entry.TextOf(None)) is { } lost)
        {
            throw new ArgumentException(
                $"{lost.Name} is of a project, and none is asked for: name one of the funding table, or leave {lost.Name} out.", lost.Name);
        }
    }

    // The month a project is paid in is also that of a loan without one.
    private static IEnumerable<AssumptionEntry> OfAProject =>
    [
        .. ProjectAssumptions.Entries.Where(entry => entry.Name != ProjectAssumptions.MonthName),
        .. SavingAssumptions.Entries,
        .. GrantAssumptions.Entries,
    ];

    private static void Once(Dictionary<string, string> given, string name, string value)
    {
        if (!given.TryAdd(name, value) && given[name] != value)
        {
            throw new ArgumentException($"{name} is given twice, as {given[name]} and as {value}: give it once.", name);
        }
    }

    private static IEnumerable<KeyValuePair<string, string>> Pairs(string text) =>
        text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(pair =>
            {
                int equals = pair.LastIndexOf('=');
                return equals > 0
                    ? KeyValuePair.Create(pair[..equals].Trim(), pair[(equals + 1)..].Trim())
                    : throw new ArgumentException(
                        $"'{pair}' has no value: write name=value, several with a semicolon between them.",
                        nameof(text)
                    );
            });

    private Assumption PathOf(AssumptionEntry entry, Notation @as) => new(
        entry.Name,
        entry.Title,
        @as.Text($"{NextSeason.PathWidthIn(@as.LengthUnit)}"),
        @as.LengthUnit.WidthShort(),
        entry.MeaningIn(@as));
}
