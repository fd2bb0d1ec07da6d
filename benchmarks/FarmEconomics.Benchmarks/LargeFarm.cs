using System.Globalization;
using System.Text;

namespace FarmEconomics.Benchmarks;

/// <summary>
/// Writes a records folder of any size: forty crops, sales with the harvests they were sold from, hours and bills. Seeded: the same
/// number of rows gives the same bytes. Everything in it is invented.
/// </summary>
internal static class LargeFarm
{
    private const int FirstYear = 2016;
    private const int CropCount = 40;
    private const int DaysOfPicking = 50;
    private const int SalesADay = 10;
    private const int LaborRowsADay = 20;

    /// <summary>How many sales one planting makes.</summary>
    internal const int SalesPerPlanting = DaysOfPicking * SalesADay;

    private static readonly string[] Channels = ["Porch Pickup", "Saturday Market", "Kitchen Door", "Harvest Share", "Household"];

    /// <summary>Writes the folder.</summary>
    /// <param name="folder">A folder that may be there already; its files are replaced.</param>
    /// <param name="sales">How many sales rows, about; at least one planting a year is made.</param>
    /// <param name="years">How many crop years they are spread over.</param>
    /// <param name="seed">Another seed, another farm of the same shape.</param>
    internal static void Write(string folder, int sales, int years = 10, int seed = 20251125)
    {
        Directory.CreateDirectory(folder);
        int plantings = Math.Max(1, sales / (years * SalesPerPlanting));
        WriteSmallTables(folder, plantings, years);
        var random = new Random(seed);
        using StreamWriter plantingRows = Open(folder, "plantings", "planting,crop,bed,bed_feet,in_bed,out_of_bed,sown,trays");
        using StreamWriter harvestRows = Open(folder, "harvests", "date,crop,planting,quantity,unit");
        using StreamWriter saleRows = Open(folder, "sales", "date,crop,channel,quantity,unit,amount");
        using StreamWriter laborRows = Open(folder, "labor", "date,worker,hours,task,crop");
        using StreamWriter expenseRows = Open(folder, "expenses", "date,amount,category,crop");
        for (int year = FirstYear; year < FirstYear + years; year++)
        {
            for (int i = 0; i < plantings; i++)
            {
                DateOnly start = StartOf(year, i);
                plantingRows.Write(string.Create(CultureInfo.InvariantCulture,
                    $"{Name(year, i)},{Crop(i)},Bed {i / 10 % BedCount(plantings):000},10,{start:yyyy-MM-dd},{start.AddDays(45 + DaysOfPicking):yyyy-MM-dd},{start.AddDays(-30):yyyy-MM-dd},2\n"));
            }

            WriteYear(random, year, plantings, harvestRows, saleRows);
            WriteWorkAndBills(random, year, laborRows, expenseRows);
        }
    }

    private static void WriteYear(Random random, int year, int plantings, StreamWriter harvests, StreamWriter sales)
    {
        for (DateOnly day = new(year, 1, 1); day.Year == year; day = day.AddDays(1))
        {
            string date = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            for (int i = 0; i < plantings; i++)
            {
                int since = day.DayNumber - StartOf(year, i).DayNumber - 45;
                if (since < 0 || since >= DaysOfPicking)
                {
                    continue;
                }

                // Hundredths of a pound; the last crop sells a little more than was picked, so that some sales meet no harvest.
                int picked = 0;
                for (int k = 0; k < 2; k++)
                {
                    int hundredths = (2 * random.Next(1000, 5000)) + k;
                    picked += hundredths;
                    harvests.Write(string.Create(CultureInfo.InvariantCulture, $"{date},{Crop(i)},{Name(year, i)},{hundredths / 100m},lb\n"));
                }

                int left = i % CropCount == CropCount - 1 ? picked * 103 / 100 : picked * 98 / 100;
                for (int k = 0; k < SalesADay; k++)
                {
                    // No two sales of a day are alike: the check would warn of rows entered twice.
                    int hundredths = k == SalesADay - 1 ? left : (left / (SalesADay - k)) + (7 * (k - 4));
                    left -= hundredths;
                    string channel = Channels[random.Next(Channels.Length)];
                    int cents = hundredths * random.Next(150, 450) / 100;
                    string amount = channel is "Harvest Share" or "Household" ? "" : string.Create(CultureInfo.InvariantCulture, $"{cents / 100}.{cents % 100:00}");
                    sales.Write(string.Create(CultureInfo.InvariantCulture, $"{date},{Crop(i)},{channel},{hundredths / 100m},lb,{amount}\n"));
                }
            }
        }
    }

    private static void WriteWorkAndBills(Random random, int year, StreamWriter labor, StreamWriter expenses)
    {
        string[] tasks = ["Weed", "Pick", "Pack", "Stall"];
        for (int day = 60; day < 350; day++)
        {
            string date = new DateOnly(year, 1, 1).AddDays(day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            for (int k = 0; k < LaborRowsADay; k++)
            {
                labor.Write(string.Create(CultureInfo.InvariantCulture, $"{date},Hand {k % 8},{random.Next(1, 8) * 0.25m},{tasks[k % 4]},{(k % 5 == 0 ? "" : Crop(random.Next(CropCount)))}\n"));
            }

            expenses.Write(string.Create(CultureInfo.InvariantCulture, $"{date},{random.Next(500, 20000) / 100m:0.00},{(day % 3 == 0 ? "seed" : "packaging")},\n"));
        }
    }

    private static void WriteSmallTables(string folder, int plantings, int years)
    {
        Write(folder, "farm", "setting,value", ["farm_name,Large Farm", "owner_wage,20", "interest_percent,5", $"as_of,{FirstYear + years - 1}-12-31"]);
        Write(folder, "crops", "crop,unit,group,storage_days,units_per_crate,water_need", Enumerable.Range(0, CropCount).Select(i => $"{Crop(i)},lb,group {i % 6},{(i % 4 == 0 ? 2 : 120)},20,1"));
        Write(folder, "beds", "bed,length_ft", Enumerable.Range(0, BedCount(plantings)).Select(i => $"Bed {i:000},100"));
        Write(folder, "channels", "channel,kind,fee_percent", ["Porch Pickup,stand,", "Saturday Market,market,5", "Kitchen Door,wholesale,", "Harvest Share,share,", "Household,household,"]);
        Write(folder, "prices", "crop,price", Enumerable.Range(0, CropCount).Select(i => $"{Crop(i)},{2 + (i % 5)}.50"));
        Write(folder, "income", "date,channel,amount", Enumerable.Range(FirstYear, years).Select(year => $"{year}-03-01,Harvest Share,{50000 + (year % 7 * 1000)}.00"));
        Write(folder, "workers", "worker,kind,wage", Enumerable.Range(0, 8).Select(i => i < 2 ? $"Hand {i},owner," : $"Hand {i},hired,{16 + i}"));
        Write(folder, "tasks", "task,stage", ["Weed,grow", "Pick,harvest", "Pack,pack", "Stall,sell"]);
    }

    private static void Write(string folder, string table, string heading, IEnumerable<string> rows)
    {
        using StreamWriter writer = Open(folder, table, heading);
        foreach (string row in rows)
        {
            writer.Write(row + "\n");
        }
    }

    private static StreamWriter Open(string folder, string table, string heading)
    {
        StreamWriter writer = new(Path.Combine(folder, table + ".csv"), append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), 1 << 16);
        writer.Write(heading + "\n");
        return writer;
    }

    private static int BedCount(int plantings) => Math.Max(1, (plantings + 9) / 10);

    private static string Crop(int i) => $"Crop {i % CropCount:00}";

    private static string Name(int year, int i) => $"P{year % 100}-{i}";

    private static DateOnly StartOf(int year, int i) => new DateOnly(year, 1, 1).AddDays(60 + (i * 7 % 200));
}
