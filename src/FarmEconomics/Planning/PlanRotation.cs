namespace FarmEconomics.Planning;

/// <summary>Beds of a cover in which a family hasn't stood for so long that it may come again.</summary>
/// <param name="Family">The family, as the crops table writes it.</param>
/// <param name="Cover">The cover's place.</param>
/// <param name="Beds">The free beds.</param>
/// <param name="Feet">Their bed-feet.</param>
public sealed record PlanRotation(string Family, int Cover, IReadOnlySet<string> Beds, double Feet)
{
    /// <summary>True where a sowing is one of this family's and cover's that needs a free bed: it doesn't stand there already.</summary>
    /// <param name="plan">The model.</param>
    /// <param name="sowing">The sowing.</param>
    /// <returns>True when it counts.</returns>
    public bool Holds(PlanModel plan, PlanSowing sowing)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(sowing);
        return sowing.Cover == Cover && sowing.Standing.Count == 0
            && string.Equals(plan.Crops[sowing.Crop].Family, Family, StringComparison.OrdinalIgnoreCase);
    }
}
