namespace FarmEconomics.Decisions.Short;

/// <summary>An amount for every day of a stretch of days, added up span by span: each span costs two steps, however long it is.</summary>
internal sealed class DayLine
{
    private readonly DateOnly first;
    private readonly decimal[] steps;

    internal DayLine(DateOnly first, int days)
    {
        this.first = first;
        steps = new decimal[days + 1];
    }

    /// <summary>
    /// Adds an amount to the days from <paramref name="from"/> to the day before <paramref name="to"/>; days outside the stretch are left
    /// out.
    /// </summary>
    internal void Add(DateOnly from, DateOnly to, decimal amount)
    {
        int start = Math.Clamp(from.DayNumber - first.DayNumber, 0, steps.Length - 1);
        int end = Math.Clamp(to.DayNumber - first.DayNumber, 0, steps.Length - 1);
        if (start < end)
        {
            steps[start] += amount;
            steps[end] -= amount;
        }
    }

    /// <summary>The amount of each day.</summary>
    internal decimal[] ByDay()
    {
        decimal[] days = new decimal[steps.Length - 1];
        decimal sum = 0m;
        for (int i = 0; i < days.Length; i++)
        {
            days[i] = sum += steps[i];
        }

        return days;
    }
}

/// <summary>The days on which something was short.</summary>
internal sealed class DaySet
{
    private readonly DateOnly first;
    private readonly int[] upTo;

    internal DaySet(DateOnly first, int days, IEnumerable<(DateOnly From, int Days)> spans)
    {
        this.first = first;
        bool[] within = new bool[days];
        foreach ((DateOnly from, int length) in spans)
        {
            for (int i = Math.Max(0, from.DayNumber - first.DayNumber); i < Math.Min(days, from.DayNumber - first.DayNumber + length); i++)
            {
                within[i] = true;
            }
        }

        upTo = new int[days + 1];
        for (int i = 0; i < days; i++)
        {
            upTo[i + 1] = upTo[i] + (within[i] ? 1 : 0);
        }
    }

    /// <summary>How many of the days lie from <paramref name="from"/> to the day before <paramref name="to"/>.</summary>
    internal int Between(DateOnly from, DateOnly to)
    {
        int start = Math.Clamp(from.DayNumber - first.DayNumber, 0, upTo.Length - 1);
        int end = Math.Clamp(to.DayNumber - first.DayNumber, 0, upTo.Length - 1);
        return start < end ? upTo[end] - upTo[start] : 0;
    }

    internal bool Has(DateOnly day) => Between(day, day.AddDays(1)) > 0;
}
