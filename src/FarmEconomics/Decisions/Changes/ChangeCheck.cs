using FarmEconomics.Budgets;
using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Changes;

/// <summary>Whether a change makes sense.</summary>
internal static class ChangeCheck
{
    internal static void Require(Change change, EnterpriseBudget crop, EnterpriseBudget? replacement)
    {
        bool sized = change.Kind is ChangeKind.Shrink or ChangeKind.Grow;
        string? wrong =
            sized && change.Feet <= 0m ? change.Notation.Label("bed-feet must be above 0")
            : change.Kind == ChangeKind.Shrink && change.Feet > crop.Sums.BedFeet.Value
                ? change.Notation.Text($"{crop.Name} has only {crop.Sums.BedFeet} bed-feet")
            : change.Kind == ChangeKind.Swap && replacement == crop ? "a crop can't take its own place"
            : change.Elasticity == 0m ? "an elasticity of 0 has no price at which more could be sold"
            : (replacement ?? crop).Sums.BedFeet.Value <= 0m && change.Kind != ChangeKind.Drop ? "it has no bed space to go by"
            : null;
        if (wrong is not null)
        {
            throw new ArgumentException($"{change.Title}: {wrong}.");
        }
    }
}
