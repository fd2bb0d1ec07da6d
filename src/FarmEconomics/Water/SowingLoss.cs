namespace FarmEconomics.Water;

/// <summary>
/// What a sowing's yield loses by the water it misses. A stage of growth with a Ky of its own is a period of its own, against what it
/// needs itself; all other days are one period, by the season's Ky against the need from first day to last. What is left of each is
/// multiplied (<see cref="YieldLoss.Together"/>). With no Ky by stage all days are that one period.
/// </summary>
internal sealed class SowingLoss
{
    /// <summary>The season's, and four stages.</summary>
    internal const int MostPeriods = 5;

    private readonly double[] perMm;
    private readonly int[]? periodOf;

    /// <summary>A sowing's losses.</summary>
    /// <param name="crop">The crop's figures.</param>
    /// <param name="stages">Its stages over the sowing's days.</param>
    /// <param name="days">What it needs on each day, mm, and whether that is known.</param>
    /// <param name="potential">What it needs in all, mm.</param>
    internal SowingLoss(CropWater crop, StageDays stages, (double[] Need, bool[] Known) days, double potential)
    {
        perMm = new double[crop.ByStage.IsSet ? MostPeriods : 1];
        perMm[0] = potential > 0 ? crop.Response / potential : 0;
        if (!crop.ByStage.IsSet)
        {
            return;
        }

        GrowthStage[] stageOf = [.. Enumerable.Range(1, days.Need.Length).Select(day => stages.On(day))];
        periodOf = [.. stageOf.Select(stage => crop.ByStage.Of(stage) is null ? 0 : 1 + (int)stage)];
        foreach (GrowthStage stage in Enum.GetValues<GrowthStage>())
        {
            int[] of = [.. Enumerable.Range(0, stageOf.Length).Where(day => stageOf[day] == stage)];
            double need = SowingWater.PotentialOf(of.Sum(day => days.Need[day]), of.Length, of.Count(day => days.Known[day]));
            perMm[1 + (int)stage] = need > 0 && crop.ByStage.Of(stage) is { } response ? response / need : 0;
        }
    }

    /// <summary>The period of a day: 0, or that of its stage.</summary>
    /// <param name="day">Days since the first.</param>
    internal int PeriodOf(int day) => periodOf is null ? 0 : periodOf[day];

    /// <summary>What each period lost before the first day: nothing.</summary>
    internal double[] None() => new double[perMm.Length];

    /// <summary>The part of the yield lost on a day.</summary>
    /// <param name="day">Days since the first.</param>
    /// <param name="missed">What it missed, mm.</param>
    /// <param name="lost">What each period has lost so far; the day is added.</param>
    /// <returns>0 to 1, of the whole yield.</returns>
    internal double On(int day, double missed, double[] lost)
    {
        int period = PeriodOf(day);
        double part = Math.Min(1 - lost[period], perMm[period] * missed);
        lost[period] += part;
        double others = 1;
        for (int i = 0; i < lost.Length; i++)
        {
            others *= i == period ? 1 : 1 - lost[i];
        }

        return part * others;
    }

    /// <summary>The part of the yield lost by what each period missed.</summary>
    /// <param name="missed">mm, by period.</param>
    /// <returns>0 to 1.</returns>
    internal double Of(ReadOnlySpan<double> missed)
    {
        double whole = Math.Min(1, perMm[0] * missed[0]);
        if (periodOf is null)
        {
            return whole;
        }

        double left = 1 - whole;
        for (int i = 1; i < perMm.Length; i++)
        {
            left *= 1 - Math.Min(1, perMm[i] * missed[i]);
        }

        return 1 - left;
    }
}
