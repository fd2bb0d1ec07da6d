using FarmEconomics.ProvingGround.World;
using FarmEconomics.Records;

namespace FarmEconomics.ProvingGround.Plans;

/// <summary>
/// Hours as the records tell them: rows that name a crop are its own, the others are divided by bed time (growing) or by list value
/// picked.
/// </summary>
internal sealed class RecordsHours
{
    private readonly RecordsFacts facts;
    private readonly HashSet<string> hands;
    private readonly double[] limit = new double[Farm.Weeks];
    private readonly double[] fixedHours = new double[Farm.Weeks];
    private readonly double own;

    internal RecordsHours(RecordsFacts facts)
    {
        this.facts = facts;
        hands = [.. facts.Tables.Workers.Where(row => row.Kind == WorkerKind.Hired).Select(row => row.Worker)];
        foreach (LaborRow row in facts.Tables.Labor.Where(row => row.Task is "sell" or "overhead"))
        {
            fixedHours[RecordsFacts.WeekOf(row.Date)] += (double)row.Hours / facts.Years.Length;
        }

        double[] weekly = [.. facts.Tables.Labor.Where(row => !IsHired(row)).GroupBy(row => (row.Date.Year, RecordsFacts.WeekOf(row.Date)))
            .Select(week => week.Sum(row => (double)row.Hours)).Order()];
        own = weekly.Length == 0 ? 0.0 : weekly[(int)(0.9 * (weekly.Length - 1))];
        for (int week = 0; week < Farm.Weeks; week++)
        {
            DateOnly day = new DateOnly(facts.Years[^1], 1, 1).AddDays(7 * week);
            limit[week] = (double)facts.Tables.Limits.Where(row => Covers(row, day) || Covers(row, day.AddYears(1)))
                .Select(row => row.Amount).DefaultIfEmpty(0m).Min();
        }
    }

    internal bool IsHired(LaborRow row) => hands.Contains(row.Worker);

    internal double OwnLeft(int week) => Math.Max(0.0, Math.Min(own, limit[week]) - fixedHours[week]);

    internal double HiredLeft(int week) => Math.Max(0.0, limit[week] - Math.Max(own, fixedHours[week]));

    /// <summary>Hours a bed-foot to grow.</summary>
    internal double GrowPerFoot(int c, int weeks)
    {
        double bedTime = Enumerable.Range(0, facts.Feet.Length)
            .Sum(i => facts.Feet[i] * facts.Seen[i].Select(one => (double)one.Weeks).DefaultIfEmpty(0.0).Average());
        return (Named(c, "grow") / facts.Feet[c]) + (Unnamed("grow") * weeks / bedTime);
    }

    /// <summary>Hours a unit to pick and pack.</summary>
    internal double HandlingPerUnit(int c)
    {
        double value = Enumerable.Range(0, facts.Harvested.Length).Sum(i => facts.Harvested[i] * facts.ListPrice[i]);
        double named = facts.Harvested[c] > 0.0 ? (Named(c, "harvest") + Named(c, "pack")) / facts.Harvested[c] : 0.0;
        return named + ((Unnamed("harvest") + Unnamed("pack")) * facts.ListPrice[c] / value);
    }

    private static bool Covers(LimitRow row, DateOnly day) =>
        (row.From is not { } from || from <= day) && (row.To is not { } to || day <= to);

    private double Named(int c, string task) => facts.Worked(row => row.Task == task && row.Crop == facts.Tables.Crops[c].Crop);

    private double Unnamed(string task) => facts.Worked(row => row.Task == task && string.IsNullOrEmpty(row.Crop));
}
