using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>A line of the budget narrative: an amount and the row behind it.</summary>
/// <param name="Class">The object class; null: indirect charges.</param>
/// <param name="Item">What is paid.</param>
/// <param name="WorkedOut">How the amount comes about.</param>
/// <param name="Funder">Asked of the funder.</param>
/// <param name="Match">What the funder doesn't give; <see cref="MatchFrom"/> says who does.</param>
/// <param name="InKind">True for work and goods given, not paid.</param>
/// <param name="Source">The row, or null for what assumptions add.</param>
public sealed record GrantLine(
    ObjectClass? Class,
    string Item,
    string WorkedOut,
    decimal Funder,
    decimal Match,
    bool InKind,
    SourceLine? Source
)
{
    /// <summary>Funder and match.</summary>
    public decimal Total => Funder + Match;

    /// <summary>Who gives the match.</summary>
    public MatchSource MatchFrom { get; init; }

    /// <summary>Year of the project in which it is spent, from 1.</summary>
    public int Year { get; init; } = 1;

    /// <summary>Parts of it by quarter of that year, four weights; what is spent at once has one that isn't 0.</summary>
    public IReadOnlyList<decimal> QuarterWeights { get; init; } = [1m, 0m, 0m, 0m];
}

/// <summary>
/// A project's budget by object class of SF-424A (OMB 4040-0006, Section B, lines 6a to 6k), funder and match side by side. A row's funder
/// part is its amount x funder_percent (blank: all of it, or nothing of what is given in kind), rounded to the cent; the match is the rest.
/// Indirect charges = rate x the base classes (2 CFR 200.414(f): up to 15 % of modified total direct costs without a negotiated rate).
/// </summary>
public sealed class GrantBudget
{
    /// <summary>From this cost of one piece on it is equipment: 2 CFR 200.1, awards from 2024-10-01; in US dollars.</summary>
    public const decimal FederalEquipmentLevel = 10_000m;

    private const decimal DeMinimisPercent = 15m;
    private const int Quarters = 4;

    private GrantBudget(string project, List<GrantLine> lines, FundingAssumptions assumptions)
    {
        Project = project;
        Lines = lines;
        MatchPercent = assumptions.Grant.MatchPercent;
        MatchOfAward = assumptions.Grant.MatchBase == MatchBase.Award;
        IndirectPercent = assumptions.Grant.IndirectPercent;
        EquipmentLevel = Math.Min(FederalEquipmentLevel, assumptions.Grant.EquipmentLevel ?? FederalEquipmentLevel);
        IndirectBase = Lines
            .Where(line => line.Class is { } kind && assumptions.Grant.IndirectClasses.Contains(kind))
            .Sum(line => line.Total);
    }

    /// <summary>The lesser of the federal level and the farm's own: cost of one piece from which it is equipment, in US dollars.</summary>
    public decimal EquipmentLevel { get; }

    /// <summary>What the indirect rate is of: all lines of its classes.</summary>
    public decimal IndirectBase { get; }

    /// <summary>Rows called equipment that cost less than the level: supplies by 2 CFR 200.1. A row is taken as one piece.</summary>
    public IReadOnlyList<GrantLine> BelowEquipmentLevel =>
        [.. Lines.Where(line => line.Class == ObjectClass.Equipment && line.Total < EquipmentLevel)];

    /// <summary>Rows called supplies that cost as much as the level or more: equipment where they are one piece.</summary>
    public IReadOnlyList<GrantLine> MaybeEquipment =>
        [.. Lines.Where(line => line.Class == ObjectClass.Supplies && line.Total >= EquipmentLevel)];

    /// <summary>The project.</summary>
    public string Project { get; }

    /// <summary>The narrative: rows by object class, then what assumptions add.</summary>
    public IReadOnlyList<GrantLine> Lines { get; }

    /// <summary>Match asked for, in percent; null: none stated.</summary>
    public decimal? MatchPercent { get; }

    /// <summary>True: the match is worked out on the funder's money; false: on the whole project.</summary>
    public bool MatchOfAward { get; }

    /// <summary>The indirect rate in percent; null: no indirect charges.</summary>
    public decimal? IndirectPercent { get; }

    /// <summary>True when the indirect rate is above what needs no negotiated rate.</summary>
    public bool IndirectNeedsNegotiatedRate => IndirectPercent > DeMinimisPercent;

    /// <summary>The same as the federal form has it.</summary>
    public GrantForm Form => new(this);

    /// <summary>Asked of the funder.</summary>
    public decimal Funder => Lines.Sum(line => line.Funder);

    /// <summary>What the funder doesn't give, in kind included, whoever gives it.</summary>
    public decimal Match => Lines.Sum(line => line.Match);

    /// <summary>The part of the match the farm gives itself, in kind included.</summary>
    public decimal OwnMatch => Lines.Where(line => line.MatchFrom == MatchSource.Applicant).Sum(line => line.Match);

    /// <summary>The part of the match that is given, not paid.</summary>
    public decimal InKind => Lines.Where(line => line.InKind).Sum(line => line.Match);

    /// <summary>The whole project.</summary>
    public decimal Total => Funder + Match;

    /// <summary>What is paid in money: the whole less what is given in kind.</summary>
    public decimal CashCost => Total - InKind;

    /// <summary>The match the funder asks for; not available when no percent is stated.</summary>
    public Result MatchNeeded => MatchPercent is not { } percent ? Result.NotAvailable("match_percent is not given")
        : Result.Known(MatchOfAward ? Money.Rounded(Funder * percent / 100m).Amount : RequiredMatch(Funder, 1m - (percent / 100m)));

    /// <summary>What one class holds.</summary>
    /// <param name="objectClass">The class; null: indirect charges.</param>
    /// <returns>Funder and match.</returns>
    public (decimal Funder, decimal Match) Of(ObjectClass? objectClass) =>
        (
            Lines.Where(line => line.Class == objectClass).Sum(line => line.Funder),
            Lines.Where(line => line.Class == objectClass).Sum(line => line.Match)
        );

    /// <summary>
    /// The match that goes with an award that is a share of the whole project: award / share - award, rounded to the cent.
    /// </summary>
    /// <param name="award">The funder's money, at least 0.</param>
    /// <param name="funderShare">The funder's share of the whole project, above 0 and at most 1.</param>
    /// <returns>The match.</returns>
    public static decimal RequiredMatch(decimal award, decimal funderShare)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(award);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(funderShare);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(funderShare, 1m);
        return Money.Rounded(award / funderShare).Amount - award;
    }

    /// <summary>Indirect charges.</summary>
    /// <param name="baseAmount">The base, in currency.</param>
    /// <param name="percent">The rate in percent.</param>
    /// <returns>The charges, rounded to the cent.</returns>
    public static decimal Indirect(decimal baseAmount, decimal percent) => Money.Rounded(baseAmount * percent / 100m).Amount;

    /// <summary>The budget of a project.</summary>
    /// <param name="records">The records.</param>
    /// <param name="project">The project's name, in any case.</param>
    /// <param name="assumptions">Indirect rate and base, match, hours in kind.</param>
    /// <returns>The budget.</returns>
    /// <exception cref="ArgumentException">The funding table has no such project.</exception>
    public static GrantBudget Of(FarmRecords records, string project, FundingAssumptions assumptions)
    {
        ArgumentNullException.ThrowIfNull(records);
        ArgumentNullException.ThrowIfNull(project);
        ArgumentNullException.ThrowIfNull(assumptions);
        List<FundingRow> rows = RowsOf(records, project);
        Notation notation = records.Settings.Notation;
        decimal? hour = assumptions.Saving.HourValue ?? records.Settings.OwnerWage;
        List<GrantLine> lines = [.. rows.OrderBy(row => row.ObjectClass).Select(row => LineOf(row, hour, notation))];
        if (assumptions.Grant.InKindHours is var hours and > 0m)
        {
            decimal value = hour ?? throw new ArgumentException(
                "in_kind_hours need hour_value, or owner_wage among the farm's settings.", nameof(assumptions));
            lines.Insert(lines.FindLastIndex(line => line.Class == ObjectClass.Personnel) + 1, HoursGiven(hours, value, notation));
        }

        if (assumptions.Grant.IndirectPercent is { } percent and > 0m)
        {
            IReadOnlyList<ObjectClass> classes = assumptions.Grant.IndirectClasses;
            List<GrantLine> inBase = lines.FindAll(line => line.Class is { } kind && classes.Contains(kind));
            lines.AddRange(
                inBase
                    .GroupBy(line => line.Year)
                    .OrderBy(year => year.Key)
                    .Select(year => IndirectOf(year, percent, assumptions.Grant.IndirectFunderPercent, notation))
            );
        }

        return new GrantBudget(rows[0].Project.Trim(), lines, assumptions);
    }

    private static List<FundingRow> RowsOf(FarmRecords records, string project)
    {
        List<FundingRow> rows = records.Tables.Funding.FindAll(row =>
            row.Project.Trim().Equals(project.Trim(), StringComparison.OrdinalIgnoreCase));
        string[] known = [.. records.Tables.Funding.Select(row => row.Project.Trim()).Distinct(StringComparer.OrdinalIgnoreCase)];
        return rows.Count > 0 ? rows : throw new ArgumentException(
            known.Length == 0
                ? "The records hold no funding table, so there is no project to ask money for."
                : $"There is no project \"{project}\" in the funding table; it holds {string.Join(", ", known)}.",
            nameof(project));
    }

    private static GrantLine HoursGiven(decimal hours, decimal value, Notation notation) =>
        new(ObjectClass.Personnel, "Unpaid hours given to the project", notation.Text($"{hours:0.##} hours x {value:0.00}"),
            0m, Money.Rounded(hours * value).Amount, InKind: true, null);

    private static GrantLine IndirectOf(IGrouping<int, GrantLine> year, decimal percent, decimal funderPercent, Notation notation)
    {
        decimal baseAmount = year.Sum(line => line.Total), indirect = Indirect(baseAmount, percent);
        decimal funder = Money.Rounded(indirect * funderPercent / 100m).Amount;
        return new GrantLine(
            null,
            year.Key == 1 ? "Indirect charges" : $"Indirect charges, year {year.Key}",
            notation.Text($"{percent:0.##}% of {baseAmount:0.00}"),
            funder,
            indirect - funder,
            InKind: false,
            null
        )
        {
            Year = year.Key,
            QuarterWeights =
            [
                .. Enumerable.Range(0, Quarters).Select(quarter => year.Sum(line => line.Total * line.QuarterWeights[quarter])),
            ],
        };
    }

    private static GrantLine LineOf(FundingRow row, decimal? hour, Notation notation)
    {
        bool inKind = row.InKind;
        decimal percent = row.FunderPercent ?? (inKind ? 0m : 100m);
        decimal funder = Money.Rounded(row.Amount * percent / 100m).Amount;
        string terms = notation.Text($"{row.Amount:#,##0.00}, funder {percent:0.##}%");
        if (inKind && row.ObjectClass == ObjectClass.Personnel && hour is { } value and > 0m)
        {
            terms += notation.Text($"; {row.Amount / value:0.##} hours at {value:0.00}");
        }

        return new GrantLine(
            row.ObjectClass,
            row.Item.Trim() + (string.IsNullOrWhiteSpace(row.Note) ? "" : $" ({row.Note.Trim()})"),
            terms,
            funder,
            row.Amount - funder,
            inKind,
            row.Source
        )
        {
            MatchFrom = row.MatchFrom ?? MatchSource.Applicant,
            Year = (int)(row.BudgetYear ?? 1m),
            QuarterWeights = [.. Enumerable.Range(1, Quarters).Select(quarter => quarter == (row.Quarter ?? 1m) ? 1m : 0m)],
        };
    }
}
