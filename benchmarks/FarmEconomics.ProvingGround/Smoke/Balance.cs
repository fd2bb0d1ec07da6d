using FarmEconomics.ProvingGround.Play;
using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.ProvingGround.Smoke;

/// <summary>Adds a played season up again from what its diary was told: no unit and no dollar may appear or vanish.</summary>
internal sealed class Balance(Farm farm, double[][] plan) : IDiary
{
    private readonly double[] picked = new double[plan.Length];
    private readonly double[] gone = new double[plan.Length];
    private double cash = farm.Shares.Members * farm.Shares.Payment;

    /// <summary>What doesn't hold; null when all does.</summary>
    internal static string? Of(Farm farm, double[][] plan, SeasonDraw draw)
    {
        Balance balance = new(farm, plan);
        Outcome outcome = new SeasonPlay(farm).Play(plan, draw, balance);
        return balance.Check(outcome);
    }

    public void Picked(int crop, int sown, int week, double units) => picked[crop] += units;

    public void Sold(int crop, int outlet, int week, (double Units, double Price) sale)
    {
        gone[crop] += sale.Units;
        cash += sale.Units * ((sale.Price * (1.0 - farm.Outlets[outlet].Fee)) - farm.Crops[crop].Cost.Packaging);
    }

    public void Boxed(int crop, int week, double units)
    {
        gone[crop] += units;
        cash -= units * farm.Crops[crop].Cost.Packaging;
    }

    public void Spoiled(int crop, int week, double units) => gone[crop] += units;

    public void Worked(int crop, string stage, int week, double hours)
    {
    }

    public void WeekDone(int week, double hiredHours, double boughtIn)
    {
        cash -= (hiredHours * farm.Labor.HiredCost) + (boughtIn * farm.Shares.BuyIn);
        cash -= farm.Outlets.Where(outlet => outlet.IsOpen(week)).Sum(outlet => outlet.Trip.Money);
    }

    private string? Check(Outcome outcome)
    {
        for (int c = 0; c < plan.Length; c++)
        {
            Crop crop = farm.Crops[c];
            cash -= plan[c].Sum() * (crop.Cost.Seed + crop.Cost.Supplies);
            double left = picked[c] - gone[c];
            if (left < -1e-6 || (crop.Time.Keeps == 1 && left > 1e-6))
            {
                return FormattableString.Invariant($"Of {crop.Name} {picked[c]} units were picked and {gone[c]} sold, boxed or spoiled.");
            }
        }

        bool same = Math.Abs(cash - outcome.Cash) < 1e-6
            && Math.Abs(outcome.Cash - (outcome.OwnHours * farm.Labor.OwnerWage) - outcome.Value) < 1e-6;
        return same ? null : FormattableString.Invariant($"The season's cash is {outcome.Cash}, its parts add up to {cash}.");
    }
}
