using System.Globalization;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Files;

namespace FarmEconomics.Benchmarks;

/// <summary>
/// An invented farm of so many blocks with five sowings each, dry from July on, its log of watering and a limit half of what is needed at
/// the peak; and the time one season of its water takes: need, limit and log, day by day.
/// </summary>
internal static class DryFarm
{
    private const int BedsABlock = 5;
    private const int Runs = 5;

    private static readonly string[] Crops = ["Tomatoes", "Lettuce", "Potatoes", "Carrots", "Kale", "Onions", "Beets", "Basil"];
    private static readonly DateOnly First = new(2025, 4, 1);
    private static readonly DateOnly Last = new(2025, 10, 31);

    /// <summary>Measures a season of so many blocks: the shortest of five runs, the records read and costed before.</summary>
    internal static void Measure(int blocks)
    {
        string folder = Directory.CreateTempSubdirectory("dry-farm-").FullName;
        try
        {
            Write(folder, blocks);
            double best = double.PositiveInfinity;
            WaterAndPower water = null!;
            for (int i = 0; i < Runs; i++)
            {
                // Records read anew: what a season's water is worked out to is kept with the season.
                SeasonCosts costs = SeasonCosts.Of(FarmFolder.Open(folder).Review!.Season(2025));
                long start = System.Diagnostics.Stopwatch.GetTimestamp();
                water = WaterAndPower.Of(costs);
                _ = water.Water!.LostAtLimit;
                best = Math.Min(best, System.Diagnostics.Stopwatch.GetElapsedTime(start).TotalSeconds);
            }

            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"seconds={best:0.000} blocks={blocks} sowings={water.Farm.Sowings.Count} days={water.Water!.Days} days_short={water.Water.DaysShort} lost={water.Water.LostAtLimit:0.00}"));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Write(string folder, int blocks)
    {
        void File(string name, string heading, IEnumerable<string> rows) =>
            System.IO.File.WriteAllLines(Path.Combine(folder, name + ".csv"), rows.Prepend(heading));
        string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        int beds = blocks * BedsABlock;
        IEnumerable<int> each = Enumerable.Range(0, beds);
        string Planting(int bed) => $"{Crops[bed % Crops.Length]} {bed:000}";
        DateOnly In(int bed) => First.AddDays(20 + (bed * 7 % 70));
        DateOnly Picked(int bed) => In(bed).AddDays(70 + (bed % 30));
        File("farm", "setting,value", ["as_of,2025-12-31", "owner_wage,16"]);
        File("crops", "crop,unit", Crops.Select(crop => $"{crop},lb"));
        File("channels", "channel,kind", ["Market,market"]);
        File("beds", "bed,length_ft,block", each.Select(bed => $"Bed {bed:000},100,Block {bed / BedsABlock:00}"));
        File(
            "plantings",
            "planting,crop,bed,bed_feet,in_bed,out_of_bed",
            each.Select(bed =>
                $"{Planting(bed)},{Crops[bed % Crops.Length]},Bed {bed:000},100,{Day(In(bed))},{Day(Picked(bed).AddDays(14))}"
            )
        );
        File(
            "harvests",
            "date,planting,quantity",
            each.SelectMany(bed =>
                new[] { 0, 7, 13 }.Select(after => $"{Day(Picked(bed).AddDays(after))},{Planting(bed)},{20 + (bed % 9)}")
            )
        );
        File(
            "sales",
            "date,crop,channel,quantity,amount,planting",
            each.SelectMany(bed =>
                new[] { 0, 7, 13 }.Select(after =>
                    $"{Day(Picked(bed).AddDays(after))},{Crops[bed % Crops.Length]},Market,{20 + (bed % 9)},{(20 + (bed % 9)) * (2 + (bed % 5))},{Planting(bed)}"
                )
            )
        );
        File("expenses", "date,amount,category", ["2025-04-02,200,seed"]);
        File("labor", "date,worker,hours,task", ["2025-05-02,me,4,grow"]);
        File("workers", "worker,kind", ["me,owner"]);
        File(
            "blocks",
            "block,soil_water_in_ft,sprinkler_gph",
            Enumerable
                .Range(0, blocks)
                .Select(block => string.Create(CultureInfo.InvariantCulture, $"Block {block:00},{0.8 + (0.3 * (block % 4)):0.0},60"))
        );
        List<DateOnly> days = [.. Enumerable.Range(0, Last.DayNumber - First.DayNumber + 1).Select(First.AddDays)];
        File(
            "weather",
            "date,rain_in,et0_in",
            days.Select(day => $"{Day(day)},{(day.DayNumber % 9 == 0 && day.Month < 7 ? "0.9" : "0")},0.2")
        );
        File(
            "watering",
            "date,block,gallons",
            days.Where(day => day.Month is > 4 and < 10)
                .SelectMany(day =>
                    Enumerable
                        .Range(0, blocks)
                        .Where(block => (block + day.DayNumber) % 4 == 0)
                        .Select(block => $"{Day(day)},Block {block:00},400")
                )
        );
        File(
            "limits",
            "limit,amount,unit",
            [$"water,{100 * blocks},gallons a day", $"sprinklers,{blocks},sprinklers at once", "watering,2,hours a day"]
        );
    }
}
