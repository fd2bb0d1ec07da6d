using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>
/// Tax depreciation by the general system of MACRS under the half-year convention: IRS Publication 946, Table A-1. The class is the user's
/// input; a tax preparer decides it, and whether the mid-quarter convention, bonus depreciation or section 179 applies instead.
/// </summary>
public static class MacrsTable
{
    // Percent of the basis, year by year; 200 % declining balance up to ten years, 150 % above, both turning to straight line.
    private static readonly SortedDictionary<int, decimal[]> Percents = new()
    {
        [3] = [33.33m, 44.45m, 14.81m, 7.41m],
        [5] = [20m, 32m, 19.2m, 11.52m, 11.52m, 5.76m],
        [7] = [14.29m, 24.49m, 17.49m, 12.49m, 8.93m, 8.92m, 8.93m, 4.46m],
        [10] = [10m, 18m, 14.4m, 11.52m, 9.22m, 7.37m, 6.55m, 6.55m, 6.56m, 6.55m, 3.28m],
        [15] = [5m, 9.5m, 8.55m, 7.7m, 6.93m, 6.23m, 5.9m, 5.9m, 5.91m, 5.9m, 5.91m, 5.9m, 5.91m, 5.9m, 5.91m, 2.95m],
        [20] =
        [
            3.75m,
            7.219m,
            6.677m,
            6.177m,
            5.713m,
            5.285m,
            4.888m,
            4.522m,
            4.462m,
            4.461m,
            4.462m,
            4.461m,
            4.462m,
            4.461m,
            4.462m,
            4.461m,
            4.462m,
            4.461m,
            4.462m,
            4.461m,
            2.231m,
        ],
    };

    /// <summary>The recovery periods of the table, in years.</summary>
    public static IReadOnlyCollection<int> RecoveryYears => Percents.Keys;

    /// <summary>The percentages of a recovery period, one per tax year, one year more than the period.</summary>
    /// <param name="recoveryYears">One of <see cref="RecoveryYears"/>.</param>
    /// <returns>Percent of the basis (20 = 20 %); they sum to 100.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The table has no such period.</exception>
    public static IReadOnlyList<decimal> Percent(int recoveryYears) =>
        Percents.TryGetValue(recoveryYears, out decimal[]? percents)
            ? percents
            : throw new ArgumentOutOfRangeException(
                nameof(recoveryYears),
                recoveryYears,
                $"The table has {string.Join(", ", Percents.Keys)} years."
            );

    /// <summary>Depreciation year by year, each rounded to the cent; the last year takes the rest.</summary>
    /// <param name="basis">The depreciable basis, in currency; at least 0.</param>
    /// <param name="recoveryYears">One of <see cref="RecoveryYears"/>.</param>
    /// <param name="yearsHeld">The tax year of disposal counted from the first, 1 and up: that year counts half, later ones nothing; null:
    /// kept.</param>
    /// <returns>One amount per tax year; for an asset that is kept they sum to the basis.</returns>
    public static IReadOnlyList<decimal> Schedule(decimal basis, int recoveryYears, int? yearsHeld = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(basis);
        IReadOnlyList<decimal> percents = Percent(recoveryYears);
        decimal[] amounts = new decimal[percents.Count];
        decimal rest = basis;
        for (int year = 0; year < amounts.Length; year++)
        {
            decimal full = year == amounts.Length - 1 ? rest : Math.Min(rest, Money.Rounded(basis * percents[year] / 100m).Amount);
            rest -= full;
            amounts[year] = yearsHeld is not { } held || year + 1 < held ? full
                : year + 1 == held && year < amounts.Length - 1 ? Money.Rounded(full / 2m).Amount
                : year + 1 == held ? full
                : 0m;
        }

        return amounts;
    }
}
