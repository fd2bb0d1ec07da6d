using FarmEconomics.Tracing;

namespace FarmEconomics.Decisions.Short;

/// <summary>What an enterprise used of something on given days, and which part of the enterprise that concerns.</summary>
/// <param name="Enterprise">A planting of the season.</param>
/// <param name="Use">How much, above 0.</param>
/// <param name="Part">
/// The part of the planting that stands where the thing is, 0 to 1: less than 1 only for one that stood under several covers.
/// </param>
internal sealed record EnterpriseUse(Enterprise Enterprise, decimal Use, decimal Part = 1m);

/// <summary>Something held against its limit, with who used it on given days.</summary>
/// <param name="Resource">The thing.</param>
/// <param name="On">Who used it on the days on which it was short.</param>
internal sealed record ResourceUse(ScarceResource Resource, Func<DaySet, IEnumerable<EnterpriseUse>> On);
