namespace FarmEconomics.ProvingGround.World;

/// <summary>Whether a plan (bed-feet by crop and sowing week) fits the beds, and how it is made to fit.</summary>
internal static class PlanRoom
{
    /// <summary>Bed-feet in use by week under a cover.</summary>
    internal static double[] Use(Farm farm, double[][] plan, int cover)
    {
        double[] use = new double[Farm.Weeks];
        for (int c = 0; c < plan.Length; c++)
        {
            for (int sown = 0; farm.Crops[c].Cover == cover && sown < Farm.Weeks; sown++)
            {
                for (int week = sown; plan[c][sown] > 0 && week <= Math.Min(farm.Crops[c].LastPickOf(sown), Farm.Weeks - 1); week++)
                {
                    use[week] += plan[c][sown];
                }
            }
        }

        return use;
    }

    /// <summary>Hours a week is expected to need when everything is picked.</summary>
    internal static double ExpectedHours(Farm farm, double[][] plan, int week)
    {
        double hours = farm.FixedHours(week);
        for (int c = 0; c < plan.Length; c++)
        {
            Crop crop = farm.Crops[c];
            for (int sown = 0; sown <= week; sown++)
            {
                bool stands = plan[c][sown] > 0 && week <= crop.LastPickOf(sown);
                hours += stands ? plan[c][sown] * crop.Work.Grow * GrowPart(crop, week - sown) : 0.0;
                bool picked = stands && week >= sown + crop.Time.Lag;
                hours += picked ? plan[c][sown] * crop.Yield * crop.WeekFactor(sown)
                    * (1 - crop.FailChance) / crop.Time.Picking * crop.HandlingHours : 0.0;
            }
        }

        return hours;
    }

    /// <summary>
    /// The part of a sowing's growing hours that falls in a week: 40 % in the first, the rest evenly until the bed is free.
    /// </summary>
    internal static double GrowPart(Crop crop, int weeksIn) =>
        (weeksIn == 0 ? 0.4 : 0.0) + (0.6 / (crop.Time.Lag + crop.Time.Picking));

    /// <summary>Shrinks all sowings of overfull weeks in proportion, in place.</summary>
    internal static void Shrink(Farm farm, double[][] plan) => Fit(farm, plan, null);

    /// <summary>
    /// Makes a plan fit in place: what it has more than <paramref name="kept"/> is shrunk in overfull weeks, in proportion.
    /// </summary>
    /// <param name="farm">The farm.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="kept">A plan that fits and isn't touched where it is smaller; null: all is shrunk.</param>
    internal static void Fit(Farm farm, double[][] plan, double[][]? kept)
    {
        for (int cover = 0; cover < Farm.Covers; cover++)
        {
            for (int week = 0; week < Farm.Weeks; week++)
            {
                double use = Use(farm, plan, cover)[week];
                double over = use - farm.BedFeet[cover];
                if (over > 1e-9)
                {
                    ShrinkWeek(farm, plan, kept, (cover, week, over));
                }
            }
        }
    }

    private static void ShrinkWeek(Farm farm, double[][] plan, double[][]? kept, (int Cover, int Week, double Over) full)
    {
        double more = 0.0;
        for (int pass = 0; pass < 2; pass++)
        {
            for (int c = 0; c < plan.Length; c++)
            {
                for (int sown = 0; farm.Crops[c].Cover == full.Cover && sown <= full.Week; sown++)
                {
                    double added = farm.Crops[c].LastPickOf(sown) < full.Week ? 0.0
                        : Math.Max(0.0, plan[c][sown] - (kept?[c][sown] ?? 0.0));
                    if (pass == 0)
                    {
                        more += added;
                    }
                    else if (added > 0.0)
                    {
                        plan[c][sown] -= added * Math.Min(1.0, full.Over / more);
                    }
                }
            }
        }
    }
}
