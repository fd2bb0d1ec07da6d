using FarmEconomics.Files;
using FarmEconomics.ProvingGround.World;
using FarmEconomics.Records;

namespace FarmEconomics.ProvingGround.Plans;

/// <summary>What the records hold, added up by crop and week; nothing of the truth is known here.</summary>
internal sealed class RecordsFacts
{
    private readonly Dictionary<string, int> index;

    internal RecordsFacts(FarmFolder folder)
    {
        Tables = folder.Reading.Tables;
        index = Tables.Crops.Select((row, i) => (row.Crop, i))
            .ToDictionary(pair => pair.Crop, pair => pair.i, StringComparer.OrdinalIgnoreCase);
        int crops = index.Count;
        (Feet, Harvested, ListPrice) = (new double[crops], new double[crops], new double[crops]);
        Seen = [.. Enumerable.Range(0, crops).Select(_ => new List<(int In, int Weeks)>())];
        YieldAt = [.. Enumerable.Range(0, crops).Select(_ => new double[Farm.Weeks])];
        Years = [.. folder.Review!.CropYears];
        AddPlantings(folder);
        foreach (Tracing.Lot lot in folder.Review.Trace.Lots)
        {
            int c = IndexOf(lot.Enterprise.Crop.Name);
            int since = (lot.Date.DayNumber - lot.Enterprise.Planting.Beds[0].In.DayNumber) / 7;
            Harvested[c] += (double)lot.Quantity;
            YieldAt[c][Math.Clamp(since, 0, Farm.Weeks - 1)] += (double)lot.Quantity;
        }

        for (int c = 0; c < crops; c++)
        {
            ListPrice[c] = PriceOf(Tables.Crops[c].Crop, Tables.Channels[0].Channel, Years[^1]);
        }
    }

    internal RecordTables Tables { get; }

    internal int[] Years { get; }

    /// <summary>Bed-feet of all years by crop.</summary>
    internal double[] Feet { get; }

    internal double[] Harvested { get; }

    /// <summary>Last list price in the first channel, $ a unit.</summary>
    internal double[] ListPrice { get; }

    /// <summary>Week in and weeks in the bed of every sowing on record, by crop.</summary>
    internal List<(int In, int Weeks)>[] Seen { get; }

    /// <summary>Units picked by crop and weeks since the sowing came into its bed, all years together.</summary>
    internal double[][] YieldAt { get; }

    internal int IndexOf(string crop) => index[crop];

    internal static int WeekOf(DateOnly date) => Math.Min(Farm.Weeks - 1, (date.DayOfYear - 1) / 7);

    /// <summary>The list price of a year; 0 where there is none.</summary>
    internal double PriceOf(string crop, string channel, int year) => (double)Tables.Prices
        .Where(row => row.Crop == crop && row.Channel == channel && (row.From is not { } from || from.Year <= year))
        .OrderBy(row => row.From).Select(row => row.Price).LastOrDefault();

    internal double Spent(Func<ExpenseRow, bool> which) => (double)Tables.Expenses.Where(which).Sum(row => row.Amount);

    internal double Worked(Func<LaborRow, bool> which) => (double)Tables.Labor.Where(which).Sum(row => row.Hours);

    private void AddPlantings(FarmFolder folder)
    {
        foreach (Tracing.Enterprise enterprise in folder.Review!.Trace.Enterprises.DistinctBy(enterprise => enterprise.Planting))
        {
            int c = IndexOf(enterprise.Crop.Name);
            Tracing.BedStay first = enterprise.Stays[0];
            Feet[c] += (double)enterprise.Stays.Sum(stay => stay.BedFeet);
            Seen[c].Add((WeekOf(first.In), Math.Max(1, (first.Days + 6) / 7)));
        }
    }
}
