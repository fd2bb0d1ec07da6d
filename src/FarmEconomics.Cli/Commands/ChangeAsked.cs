using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;

namespace FarmEconomics.Cli.Commands;

/// <summary>The change <c>decide</c> is asked about, as its options give it.</summary>
/// <param name="Drop">The crop not grown, or null.</param>
/// <param name="Shrink">The crop grown less of, or null.</param>
/// <param name="Grow">The crop grown more of, or null.</param>
/// <param name="Swap">Two crops, the second in place of the first; or null, or none.</param>
/// <param name="By">How much bed less or more, or null.</param>
/// <param name="Elasticity">How the market takes more, or null.</param>
internal sealed record ChangeAsked(string? Drop, string? Shrink, string? Grow, string[]? Swap, NumberOption? By, NumberOption? Elasticity)
{
    private const decimal LeastElasticity = 0.01m;

    private bool IsSized => Shrink is not null || Grow is not null;

    /// <summary>What can be told without a farm: whether the options go together.</summary>
    /// <exception cref="WrongUseException">They don't.</exception>
    internal void Check()
    {
        int changes = (Drop is null ? 0 : 1) + (Shrink is null ? 0 : 1) + (Grow is null ? 0 : 1) + (Swap is { Length: 2 } ? 1 : 0);
        string? wrong = changes > 1 ? "Give one change at a time: --drop, --shrink, --grow or --swap."
            : IsSized && By is null ? "--shrink and --grow need --by LENGTH: how much bed less or more."
            : !IsSized && By is not null ? "--by goes with --shrink or --grow."
            : null;
        if (wrong is not null)
        {
            throw new WrongUseException(wrong);
        }
    }

    /// <summary>The change, its numbers read as the farm writes them; null when none is asked about.</summary>
    /// <exception cref="WrongUseException">A number can't be.</exception>
    internal Change? On(Notation notation)
    {
        decimal? elasticity = Elasticity?.On(notation);
        if (elasticity is > -LeastElasticity and < LeastElasticity)
        {
            throw new WrongUseException(
                notation.Text(
                    $"With an elasticity under {LeastElasticity} there is hardly a price at which more could be sold; give one above it."
                )
            );
        }

        decimal by = By?.On(notation) ?? 0m;
        return Drop is not null ? new Change(ChangeKind.Drop, Drop, 0m, null, elasticity)
            : Shrink is not null ? new Change(ChangeKind.Shrink, Shrink, by, null, elasticity)
            : Grow is not null ? new Change(ChangeKind.Grow, Grow, by, null, elasticity)
            : Swap is { Length: 2 } ? new Change(ChangeKind.Swap, Swap[0], 0m, Swap[1], elasticity)
            : null;
    }
}
