using FarmEconomics.Decisions.Chances;

namespace FarmEconomics.ProvingGround.World;

/// <summary>Draws the truth of one crop around its kind. Every range here is invented.</summary>
internal static class CropMaker
{
    /// <summary>What of the farm a crop depends on.</summary>
    internal sealed record Setting(Traits Traits, Labor Labor, Outlet[] Outlets, Shares Shares);

    internal static Crop Make(SeededRandom random, CropKind kind, Setting farm)
    {
        double price = Math.Round(kind.Market.Price * FarmMaker.Factor(random, 0.18) * 4) / 4;
        price = Math.Max(0.5, price);
        KindWork work = new(
            kind.Work.Grow * FarmMaker.Factor(random, 0.3),
                kind.Work.Pick * FarmMaker.Factor(random, 0.3), kind.Work.Pack * FarmMaker.Factor(random, 0.3));
        KindCost cost = new(kind.Cost.Seed * FarmMaker.Factor(random, 0.2), kind.Cost.Supplies, kind.Cost.Packaging);
        double weekly = FarmMaker.Between(random, 80, 240) * FarmMaker.Factor(random, 0.3) * farm.Traits.Market / price;
        return new Crop
        {
            Name = kind.Name,
            Cover = kind.Tunnel ? 1 : 0,
            Time = kind.Time,
            Work = work,
            Cost = cost,
            Price = price,
            Yield = kind.Market.Yield * FarmMaker.Factor(random, 0.36),
            WindowLoss = FarmMaker.Between(random, 0.05, 0.5),
            BestWeek = FarmMaker.Between(random, kind.Time.First, kind.Time.Last),
            FailChance = FarmMaker.Between(random, 0.0, 0.12),
            Spread = (FarmMaker.Between(random, -0.05, 0.25), FarmMaker.Between(random, 0.08, 0.30), FarmMaker.Between(random, 0.10, 0.35)),
            Demands = Demands(random, price, weekly, (work.Pick + work.Pack) * farm.Labor.OwnerWage + cost.Packaging),
            BoxMost = farm.Shares.Members * FarmMaker.Between(random, 1.5, 4.0) / price,
            UnitsPerCrate = Math.Max(2, Math.Round(40 / price)),
        };
    }

    private static Demand[] Demands(SeededRandom random, double price, double weekly, double handling)
    {
        (double Price, double Part)[] channels =
        [
            (price, FarmMaker.Between(random, 0.35, 0.65)),
            (Math.Round(price * FarmMaker.Between(random, 0.9, 1.0), 2), FarmMaker.Between(random, 0.1, 0.3)),
            (Math.Round(price * FarmMaker.Between(random, 0.55, 0.8), 2),
                random.NextUniform() < 0.6 ? FarmMaker.Between(random, 0.2, 0.8) : 0.0),
        ];
        return channels.Select(channel => Demand(random, channel.Price, channel.Part * weekly, handling)).ToArray();
    }

    private static Demand Demand(SeededRandom random, double price, double units, double handling)
    {
        double elasticity = FarmMaker.Between(random, 0.8, 3.5);
        double most = World.Demand.Ends[0];
        for (int i = 1; i < World.Demand.Ends.Length && price * World.Demand.Step(most, World.Demand.Ends[i], elasticity) > handling; i++)
        {
            most = World.Demand.Ends[i];
        }

        return new Demand(price, units, elasticity, most);
    }
}
