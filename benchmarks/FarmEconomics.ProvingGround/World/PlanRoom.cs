namespace FarmEconomics.ProvingGround.World;

/// <summary>Whether a plan (bed-feet by crop and sowing week) fits the beds, and how it is made to fit.</summary>
internal static class PlanRoom
{
    private const int PlacingRounds = 10;

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

    /// <summary>
    /// Puts more of a crop into the beds in place: over today's sowings of it in proportion, each as far as there is room while it stands;
    /// what one has no room for goes to the others. The rest isn't grown.
    /// </summary>
    internal static void Place(Farm farm, double[][] plan, int crop, double feet)
    {
        double[] today = farm.Today[crop];
        for (int round = 0; round < PlacingRounds && feet > 1e-6; round++)
        {
            double all = Enumerable.Range(0, Farm.Weeks).Where(sown => today[sown] > 0.0 && RoomAt(farm, plan, crop, sown) > 1e-6)
                .Sum(sown => today[sown]);
            double wanted = feet;
            for (int sown = 0; all > 0.0 && sown < Farm.Weeks; sown++)
            {
                double put = today[sown] > 0.0 ? Math.Min(wanted * today[sown] / all, RoomAt(farm, plan, crop, sown)) : 0.0;
                put = Math.Min(Math.Max(0.0, put), feet);
                plan[crop][sown] += put;
                feet -= put;
            }
        }
    }

    /// <summary>Bed-feet free in the tightest week a sowing stands.</summary>
    private static double RoomAt(Farm farm, double[][] plan, int crop, int sown)
    {
        int cover = farm.Crops[crop].Cover;
        double[] use = Use(farm, plan, cover);
        int last = Math.Min(farm.Crops[crop].LastPickOf(sown), Farm.Weeks - 1);
        return farm.BedFeet[cover] - use[sown..(last + 1)].Max();
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
