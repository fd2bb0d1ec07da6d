namespace FarmEconomics.ProvingGround.World;

/// <summary>
/// A kind of crop that worlds draw their crops around. Every figure is invented (from memory of the trade's rough sizes, no source).
/// </summary>
/// <param name="Name">The crop's name in the records.</param>
/// <param name="Tunnel">True: it stands in the tunnel.</param>
/// <param name="Market">List price a unit and units a bed-foot.</param>
/// <param name="Time">Weeks from bed to first picking, weeks of picking, first and last sowing week, weeks a unit keeps.</param>
/// <param name="Work">Hours a bed-foot to grow, and hours a unit to pick and to pack.</param>
/// <param name="Cost">Money a bed-foot for seed and for supplies; money a unit for packaging.</param>
internal sealed record CropKind(string Name, bool Tunnel, KindMarket Market, KindTime Time, KindWork Work, KindCost Cost);

/// <summary>Price in $ a unit; yield in units a bed-foot of a whole sowing.</summary>
internal sealed record KindMarket(double Price, double Yield);

/// <summary>All in weeks; sowing weeks counted from 0, the week of January 1.</summary>
internal sealed record KindTime(int Lag, int Picking, int First, int Last, int Keeps);

/// <summary>Hours a bed-foot (grow), hours a unit (pick, pack).</summary>
internal sealed record KindWork(double Grow, double Pick, double Pack);

/// <summary>$ a bed-foot (seed, supplies), $ a unit (packaging).</summary>
internal sealed record KindCost(double Seed, double Supplies, double Packaging);
