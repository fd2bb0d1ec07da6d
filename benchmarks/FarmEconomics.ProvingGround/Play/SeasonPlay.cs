using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.ProvingGround.Play;

/// <summary>
/// Plays a season of a farm under a plan, week by week: grow, pick as far as the hours reach and anybody will buy, fill the boxes, sell.
/// The grower sells sensibly and in the same way under every plan; only what was sown differs.
/// </summary>
internal sealed class SeasonPlay
{
    private readonly Farm farm;
    private readonly Stock[] stocks;
    private readonly double[] ripe;
    private readonly double[] wanted;
    private readonly BoxFilling boxes;
    private readonly Selling selling;

    internal SeasonPlay(Farm farm)
    {
        this.farm = farm;
        stocks = farm.Crops.Select(crop => new Stock(crop.Time.Keeps)).ToArray();
        ripe = new double[farm.Crops.Length];
        wanted = new double[farm.Crops.Length];
        boxes = new BoxFilling(farm, stocks);
        selling = new Selling(farm, stocks);
    }

    /// <summary>Plays a season at today's prices.</summary>
    internal Outcome Play(double[][] plan, SeasonDraw draw, IDiary? diary = null)
    {
        double cash = farm.Shares.Members * farm.Shares.Payment;
        cash -= LengthCost(plan) + farm.Outlets.Sum(outlet => outlet.Trip.Money * (outlet.Season.Last - outlet.Season.First + 1));
        double own = 0.0;
        foreach (Stock stock in stocks)
        {
            stock.Clear();
        }

        for (int week = 0; week < Farm.Weeks; week++)
        {
            double hours = farm.FixedHours(week) + Grow(plan, week, diary);
            hours += Pick(plan, draw, (week, hours), diary);
            double hired = Math.Min(Math.Max(0.0, hours - farm.Labor.Own), farm.Labor.HiredIn(week));
            own += hours - hired;
            double bought = boxes.Fill(draw, week, diary);
            cash += selling.Sell(draw, week, diary) + boxes.Packaging;
            cash -= (hired * farm.Labor.HiredCost) + (bought * farm.Shares.BuyIn);
            for (int c = 0; c < stocks.Length; c++)
            {
                double spoiled = stocks[c].Age();
                if (spoiled > 0.0)
                {
                    diary?.Spoiled(c, week, spoiled);
                }
            }

            diary?.WeekDone(week, hired, bought);
        }

        return new Outcome(cash, own, cash - (own * farm.Labor.OwnerWage));
    }

    private double LengthCost(double[][] plan)
    {
        double cost = 0.0;
        for (int c = 0; c < plan.Length; c++)
        {
            cost += plan[c].Sum() * (farm.Crops[c].Cost.Seed + farm.Crops[c].Cost.Supplies);
        }

        return cost;
    }

    private double Grow(double[][] plan, int week, IDiary? diary)
    {
        double all = 0.0;
        for (int c = 0; c < plan.Length; c++)
        {
            Crop crop = farm.Crops[c];
            double hours = 0.0;
            for (int sown = Math.Max(0, week - crop.Time.Lag - crop.Time.Picking + 1); sown <= week; sown++)
            {
                hours += plan[c][sown] * crop.Work.Grow * PlanRoom.GrowPart(crop, week - sown);
            }

            if (hours > 0.0)
            {
                diary?.Worked(c, "grow", week, hours);
            }

            all += hours;
        }

        return all;
    }

    /// <summary>Picks what is ripe and can be used, as far as the week's hours reach.</summary>
    /// <returns>Hours of picking and packing.</returns>
    private double Pick(double[][] plan, SeasonDraw draw, (int Week, double Busy) now, IDiary? diary)
    {
        double need = 0.0;
        for (int c = 0; c < plan.Length; c++)
        {
            ripe[c] = RipeOf(plan, draw, c, now.Week);
            wanted[c] = ripe[c] > 0.0 ? Math.Min(ripe[c], selling.Wanted(draw, c, now.Week) + boxes.Wanted(c, now.Week)) : 0.0;
            need += wanted[c] * farm.Crops[c].HandlingHours;
        }

        double limit = farm.Labor.Own + farm.Labor.HiredIn(now.Week) - now.Busy;
        double part = need <= limit ? 1.0 : Math.Max(0.0, limit / need);
        for (int c = 0; c < plan.Length; c++)
        {
            double picked = wanted[c] * part;
            if (picked > 0.0)
            {
                stocks[c].Add(picked);
                Tell(plan, draw, (c, now.Week, picked), diary);
            }
        }

        return need * part;
    }

    private double RipeOf(double[][] plan, SeasonDraw draw, int c, int week)
    {
        KindTime time = farm.Crops[c].Time;
        double units = 0.0;
        for (int sown = Math.Max(0, week - time.Lag - time.Picking + 1); sown <= week - time.Lag; sown++)
        {
            units += plan[c][sown] * draw.Yield(c, sown) / time.Picking;
        }

        return units;
    }

    private void Tell(double[][] plan, SeasonDraw draw, (int Crop, int Week, double Units) picked, IDiary? diary)
    {
        if (diary is null)
        {
            return;
        }

        (int c, int week, double units) = picked;
        Crop crop = farm.Crops[c];
        for (int sown = Math.Max(0, week - crop.Time.Lag - crop.Time.Picking + 1); sown <= week - crop.Time.Lag; sown++)
        {
            double part = plan[c][sown] * draw.Yield(c, sown) / crop.Time.Picking / ripe[c];
            if (part > 0.0)
            {
                diary.Picked(c, sown, week, units * part);
            }
        }

        diary.Worked(c, "harvest", week, units * crop.Work.Pick);
        diary.Worked(c, "pack", week, units * crop.Work.Pack);
    }
}
