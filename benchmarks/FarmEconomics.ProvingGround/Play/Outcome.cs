namespace FarmEconomics.ProvingGround.Play;

/// <summary>What a season brought, $.</summary>
/// <param name="Cash">Sales less fees, and share payments, less everything paid out.</param>
/// <param name="OwnHours">Own hours worked.</param>
/// <param name="Value">Cash less own hours at the owner's wage: what policies are measured by.</param>
internal readonly record struct Outcome(double Cash, double OwnHours, double Value);
