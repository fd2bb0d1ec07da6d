using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.ProvingGround.Play;

/// <summary>
/// Sells what is on hand: at list price as far as the week's demand goes; what would spoil, and what there is too much of to sell at list
/// while it keeps, at a lower price, the step that adds most first, as long as it covers picking, packing and packaging.
/// </summary>
internal sealed class Selling
{
    private readonly Farm farm;
    private readonly Stock[] stocks;
    private readonly (int Outlet, double To, double Adds)[][] steps;
    private readonly double[] times;

    internal Selling(Farm farm, Stock[] stocks)
    {
        this.farm = farm;
        this.stocks = stocks;
        times = new double[farm.Outlets.Length];
        steps = farm.Crops.Select(StepsOf).ToArray();
    }

    /// <summary>Units the channels could still take while what is picked now keeps, less what is on hand.</summary>
    internal double Wanted(SeasonDraw draw, int c, int week)
    {
        double units = 0.0;
        int last = Math.Min(Farm.Weeks - 1, week + farm.Crops[c].Time.Keeps - 1);
        for (int ahead = week; ahead <= last; ahead++)
        {
            for (int o = 0; o < farm.Outlets.Length; o++)
            {
                // The grower knows this week's demand; of the coming ones only what is usual, and plans for list price there.
                double usual = farm.Outlets[o].IsOpen(ahead) ? farm.Crops[c].Demands[o].Units : 0.0;
                units += ahead == week ? draw.Demand(c, o, week) * farm.Crops[c].Demands[o].MostTimes : usual;
            }
        }

        return Math.Max(0.0, units - stocks[c].All);
    }

    /// <summary>Sells a week.</summary>
    /// <returns>Sales less fees and packaging, $.</returns>
    internal double Sell(SeasonDraw draw, int week, IDiary? diary)
    {
        double cash = 0.0;
        for (int c = 0; c < stocks.Length; c++)
        {
            if (stocks[c].All > 0.0)
            {
                cash += SellCrop(draw, c, week, diary);
            }
        }

        return cash;
    }

    private double SellCrop(SeasonDraw draw, int c, int week, IDiary? diary)
    {
        Crop crop = farm.Crops[c];
        double left = stocks[c].All;
        double cheap = Surplus(draw, c, week);
        Array.Clear(times);
        foreach ((int outlet, double to, double _) in steps[c])
        {
            double demand = draw.Demand(c, outlet, week);
            double room = demand * (to - times[outlet]);
            bool atList = to <= 1.0;
            double sold = Math.Min(room, atList ? left : Math.Min(left, cheap));
            if (sold > 0.0)
            {
                times[outlet] += sold / demand;
                left -= sold;
                cheap = Math.Max(0.0, cheap - sold);
            }
        }

        double cash = 0.0;
        for (int o = 0; o < times.Length; o++)
        {
            double demand = draw.Demand(c, o, week);
            if (times[o] > 0.0)
            {
                double units = times[o] * demand;
                double money = demand * crop.Demands[o].Price * Demand.Revenue(times[o], crop.Demands[o].Elasticity);
                cash += (money * (1.0 - farm.Outlets[o].Fee)) - (units * crop.Cost.Packaging);
                stocks[c].Take(units);
                diary?.Sold(c, o, week, (units, money / units));
            }
        }

        return cash;
    }

    /// <summary>What must go this week: the oldest, or what is more than the usual demand of the weeks it keeps.</summary>
    private double Surplus(SeasonDraw draw, int c, int week)
    {
        double ahead = 0.0;
        for (int later = week; later < Math.Min(Farm.Weeks, week + farm.Crops[c].Time.Keeps); later++)
        {
            for (int o = 0; o < farm.Outlets.Length; o++)
            {
                ahead += later == week ? draw.Demand(c, o, week) : farm.Outlets[o].IsOpen(later) ? farm.Crops[c].Demands[o].Units : 0.0;
            }
        }

        return Math.Max(stocks[c].Oldest, stocks[c].All - ahead);
    }

    private (int Outlet, double To, double Adds)[] StepsOf(Crop crop)
    {
        List<(int Outlet, double To, double Adds)> found = [];
        for (int o = 0; o < farm.Outlets.Length; o++)
        {
            Demand demand = crop.Demands[o];
            double net = demand.Price * (1.0 - farm.Outlets[o].Fee);
            for (int i = 0; i < Demand.Ends.Length && Demand.Ends[i] <= demand.MostTimes; i++)
            {
                double from = i == 0 ? 0.0 : Demand.Ends[i - 1];
                found.Add((o, Demand.Ends[i], net * Demand.Step(from, Demand.Ends[i], demand.Elasticity)));
            }
        }

        return [.. found.OrderByDescending(step => step.Adds).ThenBy(step => step.Outlet).ThenBy(step => step.To)];
    }
}
