using FarmEconomics.Decisions.Chances;
using FarmEconomics.ProvingGround.Play;
using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.ProvingGround.Folders;

/// <summary>The grower's notebook: writes down what happens, as growers do.</summary>
internal sealed class Book(Farm farm) : IDiary
{
    private const double HarvestForgotten = 0.01;
    private const double NamesOnlyCrop = 0.15;
    private const double SpoiledNoted = 0.5;
    private readonly Table harvests = new("harvests", "date,crop,planting,quantity");
    private readonly Table sales = new("sales", "date,crop,channel,quantity,unit_price");
    private readonly Table labor = new("labor", "date,worker,hours,task,crop,channel");
    private readonly List<(string Task, string Crop, string Channel, double Hours)> hours = [];
    private readonly Dictionary<string, double> unnamed = [];

    internal Table Plantings { get; } = new("plantings", "planting,crop,bed,bed_feet,in_bed,out_of_bed");

    internal Table Expenses { get; } = new("expenses", "date,amount,category,crop,channel");

    internal Table Income { get; } = new("income", "date,channel,amount");

    internal int Year { get; private set; }

    /// <summary>Prices of the year over those of the last.</summary>
    internal double Level { get; private set; }

    internal SeededRandom Random { get; private set; } = null!;

    /// <summary>Of the year so far.</summary>
    internal double HiredHours { get; private set; }

    internal double[] SoldByCrop { get; } = new double[farm.Crops.Length];

    internal double BoughtIn { get; private set; }

    internal void Begin(int year, double level, SeededRandom random)
    {
        (Year, Level, Random, HiredHours, BoughtIn) = (year, level, random, 0.0, 0.0);
        Array.Clear(SoldByCrop);
    }

    internal void Save(string folder)
    {
        foreach (Table table in new[] { harvests, sales, labor, Plantings, Expenses, Income })
        {
            table.Save(folder);
        }
    }

    internal string Name(int crop, int sown) => FormattableString.Invariant($"{Year % 100}-{farm.Crops[crop].Name}-{sown:00}");

    internal string Date(int week, int day = 0) => new DateOnly(Year, 1, 1).AddDays((7 * week) + day).ToString("yyyy-MM-dd");

    public void Picked(int crop, int sown, int week, double units)
    {
        if (Math.Round(units, 1) <= 0.0 || Random.NextUniform() < HarvestForgotten)
        {
            return;
        }

        bool only = Random.NextUniform() < NamesOnlyCrop;
        harvests.Row($"{Date(week, 2)},{(only ? farm.Crops[crop].Name : "")},{(only ? "" : Name(crop, sown))},{Math.Round(units, 1)}");
    }

    public void Sold(int crop, int outlet, int week, (double Units, double Price) sale)
    {
        SoldByCrop[crop] += sale.Units;
        if (Math.Round(sale.Units, 1) > 0.0)
        {
            (double units, double price) = (Math.Round(sale.Units, 1), Math.Round(sale.Price * Level, 2));
            sales.Row($"{Date(week, 5)},{farm.Crops[crop].Name},{farm.Outlets[outlet].Name},{units},{price}");
        }
    }

    public void Boxed(int crop, int week, double units)
    {
        SoldByCrop[crop] += units;
        if (Math.Round(units, 1) > 0.0)
        {
            sales.Row($"{Date(week, 3)},{farm.Crops[crop].Name},{FarmTables.Boxes},{Math.Round(units, 1)},");
        }
    }

    public void Spoiled(int crop, int week, double units)
    {
        bool noted = Random.NextUniform() < SpoiledNoted;
        if (noted && Math.Round(units, 1) > 0.0)
        {
            string channel = Random.NextUniform() < 0.3 ? FarmTables.Food : FarmTables.Compost;
            sales.Row($"{Date(week, 6)},{farm.Crops[crop].Name},{channel},{Math.Round(units, 1)},");
        }
    }

    public void Worked(int crop, string stage, int week, double hours)
    {
        if (Random.NextUniform() < farm.Traits.Logged)
        {
            this.hours.Add((stage, farm.Crops[crop].Name, "", hours));
        }
        else
        {
            unnamed[stage] = unnamed.GetValueOrDefault(stage) + hours;
        }
    }

    public void WeekDone(int week, double hiredHours, double boughtIn)
    {
        HiredHours += hiredHours;
        BoughtIn += boughtIn;
        hours.AddRange(unnamed.OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => (pair.Key, "", "", pair.Value)));
        hours.Add(("overhead", "", "", farm.Labor.Overhead));
        hours.AddRange(farm.Outlets.Where(outlet => outlet.IsOpen(week)).Select(outlet => ("sell", "", outlet.Name, outlet.TripHours)));
        if (farm.Shares.IsOpen(week))
        {
            hours.Add(("sell", "", FarmTables.Boxes, farm.Shares.BoxHours));
        }

        WriteHours(week, hiredHours / hours.Sum(row => row.Hours));
        unnamed.Clear();
        hours.Clear();
    }

    /// <summary>Rows go to the hand as long as less than the week's hired part of the hours so far is the hand's.</summary>
    private void WriteHours(int week, double part)
    {
        double all = 0.0;
        double hand = 0.0;
        int row = 0;
        foreach ((string task, string crop, string channel, double worked) in hours)
        {
            all += worked;
            bool hired = hand + (worked / 2.0) < part * all;
            hand += hired ? worked : 0.0;
            double noted = Math.Max(0.05, Math.Round(Math.Round(worked * 20) / 20, 2));
            labor.Row($"{Date(week, row++ % 6)},{(hired ? FarmTables.Hand : FarmTables.Owner)},{noted},{task},{crop},{channel}");
        }
    }
}
