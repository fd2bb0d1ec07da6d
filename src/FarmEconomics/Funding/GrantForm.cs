using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>Cash needed in the first year of a project, by quarter: a line of Section D.</summary>
/// <param name="Quarters">Four amounts, in whole cents.</param>
public sealed record QuarterlyCash(IReadOnlyList<decimal> Quarters)
{
    /// <summary>Total for the first year.</summary>
    public decimal Year => Quarters.Sum();
}

/// <summary>
/// The federal form of a project's budget, SF-424A (OMB 4040-0006), as far as the records have it, for one program: A the summary, B by
/// object class, C who gives the part the funder doesn't, D cash by quarter, E federal money of later years, F indirect rate. A to D are of
/// the first year; later years stand in E.
/// </summary>
public sealed class GrantForm
{
    private const int LaterYears = 4;
    private readonly GrantBudget budget;
    private readonly List<GrantLine> first;

    internal GrantForm(GrantBudget budget)
    {
        this.budget = budget;
        first = [.. budget.Lines.Where(line => line.Year == 1)];
        FederalCash = ByQuarter(line => line.Funder);
        OtherCash = ByQuarter(line => line.InKind ? 0m : line.Match);
    }

    /// <summary>Section A, line 5, column (e): federal money of the first year.</summary>
    public decimal Federal => first.Sum(line => line.Funder);

    /// <summary>Section A, line 5, column (f): money and goods of all others in the first year.</summary>
    public decimal NonFederal => first.Sum(line => line.Match);

    /// <summary>Section A, line 5, column (g).</summary>
    public decimal Total => Federal + NonFederal;

    /// <summary>Section D, line 13: federal cash by quarter.</summary>
    public QuarterlyCash FederalCash { get; }

    /// <summary>Section D, line 14: cash of all others by quarter. What is given in kind is no cash.</summary>
    public QuarterlyCash OtherCash { get; }

    /// <summary>What is given in kind in the first year: in line 12, not in line 14.</summary>
    public decimal InKind => first.Where(line => line.InKind).Sum(line => line.Match);

    /// <summary>
    /// What the farm pays in money in the first year, the funder's part included: what others give of the match they pay themselves.
    /// </summary>
    internal decimal PaidByFarm =>
        Federal + first.Where(line => !line.InKind && line.MatchFrom == MatchSource.Applicant).Sum(line => line.Match);

    /// <summary>Section E, columns (b) to (e): federal money of the four years after the first.</summary>
    public IReadOnlyList<decimal> LaterFederal =>
        [.. Enumerable.Range(2, LaterYears).Select(year => budget.Lines.Where(line => line.Year == year).Sum(line => line.Funder))];

    /// <summary>Section B, first year: what an object class holds; null: indirect charges.</summary>
    /// <param name="objectClass">The class.</param>
    /// <returns>Funder and match.</returns>
    public (decimal Funder, decimal Match) Of(ObjectClass? objectClass) =>
        (
            first.Where(line => line.Class == objectClass).Sum(line => line.Funder),
            first.Where(line => line.Class == objectClass).Sum(line => line.Match)
        );

    /// <summary>Section C, line 12: what one source gives in the first year.</summary>
    /// <param name="source">The source.</param>
    /// <returns>Cash and in kind.</returns>
    public decimal From(MatchSource source) => first.Where(line => line.MatchFrom == source).Sum(line => line.Match);

    /// <summary>What must agree across the sections.</summary>
    public IReadOnlyList<FundingCheck> Checks =>
        [
            new("SF-424A: line 12, column (e) = line 5, column (f)", Enum.GetValues<MatchSource>().Sum(From), NonFederal),
            new(
                "SF-424A: line 6k = line 5, column (g)",
                Enum.GetValues<ObjectClass>()
                    .Select(kind => (ObjectClass?)kind)
                    .Append(null)
                    .Select(Of)
                    .Sum(cell => cell.Funder + cell.Match),
                Total
            ),
            new("SF-424A: line 13, its quarters = line 5, column (e)", FederalCash.Year, Federal),
            new("SF-424A: line 14, its quarters, and in kind = line 5, column (f)", OtherCash.Year + InKind, NonFederal),
            new("SF-424A: first year and Section E = all federal money", Federal + LaterFederal.Sum(), budget.Funder),
        ];

    private QuarterlyCash ByQuarter(Func<GrantLine, decimal> amount)
    {
        decimal[] quarters = new decimal[4];
        foreach (GrantLine line in first.Where(line => amount(line) != 0m))
        {
            Money[] parts = LargestRemainder.Split(Money.Rounded(amount(line)), line.QuarterWeights);
            for (int i = 0; i < quarters.Length; i++)
            {
                quarters[i] += parts[i].Amount;
            }
        }

        return new QuarterlyCash(quarters);
    }
}
