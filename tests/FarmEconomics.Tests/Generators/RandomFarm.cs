using System.Text;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;

namespace FarmEconomics.Tests.Generators;

/// <summary>
/// A small random farm, the same for the same seed: two years of odd records that the checks would let through. Made for finding lost
/// cents, so it likes refunds, parts of farm use, missing tables, circles of pools and sales beyond what was picked.
/// </summary>
internal sealed class RandomFarm
{
    /// <summary>
    /// The same few hundred farms in an ordinary run, so that a change that never met the fault isn't the one that fails; any farm at all where FARMECONOMICS_FARMS asks for many.
    /// </summary>
    private static readonly CsCheck.Gen<uint> Seeds = Environment.GetEnvironmentVariable("FARMECONOMICS_FARMS") is null ? CsCheck.Gen.UInt[0, 299] : CsCheck.Gen.UInt;

    internal static readonly CsCheck.Gen<RandomFarm> Gen = CsCheck.Gen.Select(Seeds, seed => new RandomFarm(seed, distinctDays: false));

    /// <summary>Farms in which no two lots or leavings of a crop share a day, so that file order breaks no tie.</summary>
    internal static readonly CsCheck.Gen<RandomFarm> GenDistinctDays = CsCheck.Gen.Select(Seeds, seed => new RandomFarm(seed, distinctDays: true));

    private const int Days = 730;
    private static readonly DateOnly Start = new(2024, 1, 1);
    private static readonly string[] ChannelNames = ["stall", "shop", "boxes", "own table", "given", "heap", "misc"];

    private readonly Random random;
    private readonly bool distinctDays;
    private readonly HashSet<(string, DateOnly)> takenDays = [];
    private readonly Dictionary<string, DateOnly> plantedOn = [];
    private readonly Dictionary<string, string> cropOf = [];
    private readonly List<(string Crop, DateOnly Day)> picks = [];
    private readonly List<string> crops = [];
    private readonly List<string> ownPools = [];

    internal RandomFarm(uint seed, bool distinctDays)
    {
        Seed = seed;
        this.distinctDays = distinctDays;
        random = new Random(unchecked((int)seed));
        Farm = new FarmBuilder(Settings());
        Land();
        Produce();
        if (!distinctDays && Chance(25))
        {
            Volunteers();
        }

        if (Chance(12))
        {
            Loose();
        }

        if (Chance(12))
        {
            PaidCrew();
        }

        if (Chance(85))
        {
            Work();
        }

        if (Chance(85))
        {
            SharedCosts();
        }

        if (Chance(90))
        {
            Books();
        }
    }

    internal uint Seed { get; }

    internal FarmBuilder Farm { get; }

    /// <summary>Pools of the farm's own, by name.</summary>
    internal IReadOnlyList<string> OwnPools => ownPools;

    public override string ToString()
    {
        StringBuilder text = new($"random farm of seed {Seed}: {Farm.Settings}");
        foreach (IRecordRow row in Farm.Tables.Crops.Cast<IRecordRow>().Concat(Farm.Tables.Plantings.Cast<IRecordRow>()).Concat(Farm.Tables.Harvests.Cast<IRecordRow>()).Concat(Farm.Tables.Sales.Cast<IRecordRow>())
            .Concat(Farm.Tables.Channels.Cast<IRecordRow>()).Concat(Farm.Tables.Labor.Cast<IRecordRow>()).Concat(Farm.Tables.Expenses.Cast<IRecordRow>()).Concat(Farm.Tables.Pools.Cast<IRecordRow>()).Concat(Farm.Tables.Use.Cast<IRecordRow>()).Concat(Farm.Tables.Assets.Cast<IRecordRow>()))
        {
            text.AppendLine().Append(row.GetType().Name);
            foreach (Column column in row.Home.Schema.Stored)
            {
                if (column.Text(row.Home, row.Index) is { Length: > 0 } value)
                {
                    text.Append(' ').Append(column.Schema.Name).Append('=').Append(value);
                }
            }
        }

        return text.ToString();
    }

    private bool Chance(int percent) => random.Next(100) < percent;

    private T? Perhaps<T>(int percent, Func<T> value)
        where T : struct => Chance(percent) ? value() : null;

    private string? PerhapsOf(int percent, List<string> names) => names.Count > 0 && Chance(percent) ? Of(names) : null;

    private T Of<T>(IReadOnlyList<T> items) => items[random.Next(items.Count)];

    private decimal Number(int low, int high, int decimals)
    {
        int scale = (int)Math.Pow(10, decimals);
        return (decimal)random.Next(low * scale, (high * scale) + 1) / scale;
    }

    private DateOnly Date(DateOnly from) => from.AddDays(random.Next(Math.Max(1, Days - (from.DayNumber - Start.DayNumber))));

    private static string Iso(DateOnly date) => date.ToString("yyyy-MM-dd");

    private FarmSettings Settings() => new()
    {
        CropYearStartMonth = Chance(30) ? random.Next(1, 13) : 1,
        CropYearStartDay = Chance(20) ? random.Next(1, 29) : 1,
        OwnerWage = Perhaps(80, () => Number(5, 30, 2)),
        UnpaidHours = Chance(30) ? UnpaidHours.None : UnpaidHours.AsLogged,
        PayrollBurdenPercent = Number(0, 20, 1),
        InterestPercent = Perhaps(85, () => Number(0, 9, 2)),
        ClosingStock = Chance(90) ? ClosingStock.Count : ClosingStock.Ignore,
        OwnershipMethod = Chance(50) ? OwnershipMethod.CapitalRecovery : OwnershipMethod.DepreciationAndInterest,
        IdleCapacity = Chance(70) ? IdleCapacity.Separate : IdleCapacity.Spread,
        AsOf = Perhaps(40, () => Start.AddDays(random.Next(300, Days + 60))),
    };

    private void Land()
    {
        int beds = random.Next(1, 4);
        for (int i = 0; i < beds; i++)
        {
            Farm.Bed($"bed {i}", 100, Perhaps(30, () => Number(20, 60, 1)), Chance(40) ? "tunnel" : null);
        }

        int count = random.Next(1, 5);
        for (int i = 0; i < count; i++)
        {
            crops.Add($"crop {i}");
            Farm.Crop(
                crops[i],
                storageDays: Perhaps(75, () => Of<decimal>([0, 1, 1.5m, 5, 60, 300])),
                perCrate: Perhaps(70, () => Number(1, 40, 1)),
                store: Chance(30) ? "cold room"
                    : Chance(10) ? "cold room; cellar"
                    : null,
                water: Perhaps(60, () => Number(0, 3, 1)),
                perennial: Chance(15),
                group: Chance(50) ? "roots" : null,
                bears: i % 2 == 0 ? 2.5m : null,
                established: i == 0 ? 1.25m : null
            );
            if (Chance(50))
            {
                Farm.Unit(crops[i], "crate", Number(1, 30, 2));
            }
        }

        count = random.Next(1, 7);
        for (int i = 0; i < count; i++)
        {
            string name = $"p{i}";
            string crop = cropOf[name] = Of(crops);
            DateOnly at = Start.AddDays(random.Next(600));
            plantedOn[name] = at;
            int? year = Perhaps(10, () => random.Next(2024, 2027));
            for (int rows = random.Next(1, 3); rows > 0; rows--)
            {
                DateOnly inBed = rows == 1 ? at : at.AddDays(random.Next(20));
                Farm.Planting(name, crop, $"bed {random.Next(beds)}", Number(1, 60, 1), Iso(inBed), Chance(70) ? Iso(inBed.AddDays(random.Next(150))) : null,
                    Chance(50) ? Iso(inBed.AddDays(-random.Next(50))) : null, Perhaps(50, () => Number(1, 9, 0)), year);
            }
        }
    }

    private void Produce()
    {
        for (int i = random.Next(10); i > 0; i--)
        {
            string planting = $"p{random.Next(plantedOn.Count)}";
            DateOnly from = plantedOn[planting];
            DateOnly day = from.AddDays(random.Next(140));
            if (!distinctDays && Chance(40))
            {
                // So soon that some planting can always have given it: no stay is taken as shorter than 60 days.
                day = from.AddDays(random.Next(60));
                Farm.PickCrop(Iso(day), cropOf[planting], Number(0, 200, 1), Perhaps(20, () => Number(0, 9, 2)));
                picks.Add((cropOf[planting], day));
            }
            else if (!distinctDays || takenDays.Add((cropOf[planting], day)))
            {
                Farm.Pick(Iso(day), planting, Number(0, 200, 2), culled: Perhaps(20, () => Number(0, 9, 2)));
                picks.Add((cropOf[planting], day));
            }
        }

        bool channels = Chance(85);
        if (channels)
        {
            Farm.Channel("stall", ChannelKind.Market, Perhaps(50, () => Number(0, 12, 2))).Channel("shop", ChannelKind.Wholesale, Perhaps(50, () => Number(0, 30, 1)))
                .Channel("boxes", ChannelKind.Share, Perhaps(30, () => Number(0, 9, 1)), Chance(60) ? "stall" : null).Channel("own table", ChannelKind.Household, valuesFrom: Chance(50) ? "stall" : null)
                .Channel("given", ChannelKind.Donation).Channel("heap", ChannelKind.Waste).Channel("misc", ChannelKind.Other, Perhaps(20, () => 2m));
        }

        for (int i = random.Next(14); i > 0; i--)
        {
            // Half of what left did so some days before or after a harvest.
            (string crop, DateOnly day) = picks.Count > 0 && Chance(50) ? Of(picks) : (Of(crops), Date(Start.AddDays(90)));
            day = day.AddDays(random.Next(-5, 15));
            if (distinctDays && !takenDays.Add((crop + " out", day)))
            {
                continue;
            }

            string? planting = plantedOn.Keys.FirstOrDefault(name => cropOf[name] == crop && Chance(15));
            Farm.Sell(Iso(day), crop, Of(ChannelNames), Number(0, 90, 1) + 0.1m, Perhaps(60, () => Number(0, 9, 4)), Perhaps(30, () => Number(0, 300, 2)), planting,
                Farm.Tables.Units.Exists(unit => unit.Crop == crop) && Chance(30) ? "crate" : null);
        }

        for (int i = random.Next(5); i > 0; i--)
        {
            Farm.Price(Of(crops), Number(0, 9, 4), channels && Chance(50) ? Of(["stall", "shop"]) : null, Chance(60) ? Iso(Date(Start)) : null, Chance(10) ? true : null);
        }

        for (int i = random.Next(4); i > 0; i--)
        {
            Farm.Income(Iso(Date(Start)), Of(["boxes", "boxes", "misc"]), Number(-50, 900, 2), Perhaps(30, () => random.Next(2024, 2026)));
        }
    }

    /// <summary>A crop that left its bed long ago, came into one again, and was picked a few days before.</summary>
    private void Volunteers()
    {
        Farm.Crop("volunteers").Bed("far bed");
        DateOnly first = Start.AddDays(random.Next(30));
        DateOnly second = Start.AddDays(430 + random.Next(60));
        DateOnly pick = second.AddDays(-1 - random.Next(10));
        Farm.Planting("v1", "volunteers", "far bed", 10, Iso(first), Iso(first.AddDays(20 + random.Next(20)))).Planting("v2", "volunteers", "far bed", Number(1, 60, 1), Iso(second), Chance(50) ? Iso(second.AddDays(50)) : null);
        if (Farm.Settings.WindowOf(pick) == Farm.Settings.WindowOf(second) && !(Farm.Settings.AsOf < second))
        {
            Farm.PickCrop(Iso(pick), "volunteers", Number(1, 90, 1));
        }
    }

    /// <summary>A small crop without units_per_crate beside a large one that has it: its crates can be estimated.</summary>
    private void Loose()
    {
        Farm.Crop("counted", perCrate: Number(2, 20, 1)).Crop("loose").Bed("yard");
        DateOnly pick = Start.AddDays(100 + random.Next(300));
        foreach ((string crop, decimal amount) in (ReadOnlySpan<(string, decimal)>)[("counted", Number(100, 300, 2)), ("loose", Number(5, 50, 2))])
        {
            Farm.Planting($"of {crop}", crop, "yard", Number(1, 60, 1), Iso(pick.AddDays(-40)), Iso(pick.AddDays(9))).Pick(Iso(pick), $"of {crop}", 60m).Sell(Iso(pick), crop, "stall", 50m, amount: amount);
        }

        Farm.Pool("crates", "quantity-crates").Spend(Iso(pick), Number(1, 90, 2), "repairs", pool: "crates");
    }

    /// <summary>A crew that was paid, whose hours nobody logged: a control total and a standard tell of them.</summary>
    private void PaidCrew()
    {
        DateOnly day = Start.AddDays(100 + random.Next(300));
        Farm.Crop("paid").Bed("far row").Planting("of paid", "paid", "far row", Number(1, 60, 1), Iso(day), Iso(day.AddDays(50))).Pick(Iso(day.AddDays(45)), "of paid", 20m)
            .Standard("paid", Stage.Grow, Number(1, 9, 2), RatePer.BedFoot).Total("labor", "hours:grow", Number(200, 900, 1), Iso(day)).Spend(Iso(day), Number(100, 900, 2), "wages");
    }

    private void Work()
    {
        if (Chance(85))
        {
            Farm.Worker("Ann", WorkerKind.Owner, Perhaps(30, () => Number(9, 30, 2))).Worker("Bo", WorkerKind.Hired, Perhaps(70, () => Number(9, 20, 2)))
                .Worker("Cy", WorkerKind.Volunteer).Worker("Bo", WorkerKind.Hired, Number(10, 22, 2), "2024-09-01");
        }

        Farm.Task("own task", Of(Enum.GetValues<Stage>()), Chance(60) ? "general overhead" : null);
        for (int i = random.Next(12); i > 0; i--)
        {
            int tag = random.Next(10);
            Farm.Work(Iso(Date(Start)), Of(["Ann", "Bo", "Cy", "Dee"]), Number(0, 9, 2) + 0.25m, Of(["nursery", "grow", "harvest", "pack", "sell", "overhead", "own task"]),
                crop: tag < 4 ? Of(crops) : null, planting: tag == 4 ? Of(plantedOn.Keys.ToList()) : null,
                channel: tag == 5 && Farm.Tables.Present.Contains("channels") ? Of(ChannelNames) : null, pool: tag == 6 ? Of(["pack work", "fertility and crop supplies"]) : null);
        }

        for (int i = Chance(50) ? random.Next(5) : 0; i > 0; i--)
        {
            Farm.Standard(Of(crops), Of(Enum.GetValues<Stage>()), Number(0, 20, 2) + 0.5m, Of(Enum.GetValues<RatePer>()));
        }

        for (int i = Chance(30) ? random.Next(3) : 0; i > 0; i--)
        {
            Farm.Total("labor", "hours:" + Of(["grow", "harvest", "pack"]), Number(1, 90, 1), Of(["2024-01-01", "2025-01-01"]), null);
        }
    }

    private void SharedCosts()
    {
        string[] bases =
        [
            "bed-foot-days",
            "tray-days",
            "bed-feet",
            "labor-hours",
            "labor-hours:harvest",
            "harvest-days",
            "quantity-crates",
            "crate-days",
            "water",
            "sales-value",
            "input-rates",
            "measured",
            "measured",
            "measured",
        ];
        for (int i = random.Next(6); i > 0; i--)
        {
            string name = i == 1 ? "cold room" : $"pool {i}";
            ownPools.Add(name);
            Farm.Pool(name, i == 1 && Chance(70) ? "crate-days" : Of(bases), Of(Enum.GetValues<StatementLine>()), Chance(20) ? "tunnel" : null, Perhaps(35, () => Number(1, 4000, 0)), Perhaps(50, () => Of(Enum.GetValues<CostDriver>())));
        }

        string[] targets = [.. ownPools, "general overhead", "pack work"];
        foreach (string pool in targets)
        {
            bool toPools = false;
            for (int i = Chance(70) ? random.Next(5) : 0; i > 0; i--)
            {
                string user = Of<string>([.. ownPools, "household", Of(crops), Of(plantedOn.Keys.ToList()), "pack work"]);
                toPools |= ownPools.Contains(user) || user == "pack work";
                Farm.Use(pool, user, Number(0, 300, 2), Perhaps(30, () => random.Next(2023, 2026)));
            }

            if (toPools)
            {
                // A way out, so that no circle is closed.
                Farm.Use(pool, "household", Chance(20) ? 0.01m : Number(1, 9, 1));
            }
        }

        for (int i = Chance(40) ? random.Next(3) : 0; i > 0 && ownPools.Count > 0; i--)
        {
            DateOnly from = Date(Start);
            Farm.Load("load", Of(ownPools), Of<string>([Of(crops), "household"]), Number(0, 900, 0), Number(0, 24, 1), Iso(from), Iso(from.AddDays(random.Next(400))));
        }

        for (int i = Chance(60) ? random.Next(5) : 0; i > 0; i--)
        {
            Farm.Rate(Of<string>(["seed and plants", "packaging", .. ownPools]), Of(crops), Number(0, 5, 3), Of(Enum.GetValues<RatePer>()));
        }

        for (int i = Chance(70) ? random.Next(5) : 0; i > 0; i--)
        {
            decimal cost = Number(10, 9000, 2);
            Farm.Asset($"asset {i}", Of<string>(["general overhead", .. ownPools]), Iso(Start.AddDays(random.Next(-3000, Days))), cost, Number(1, 25, 0), Perhaps(50, () => Number(0, 500, 2)),
                Perhaps(30, () => Number(0, 100, 1)), Perhaps(30, () => Number(0, 1000, 2)), Perhaps(30, () => Number(0, 5, 2)), Perhaps(30, () => Number(0, 3, 2)), Chance(15) ? "2024-08-15" : null);
        }
    }

    private void Books()
    {
        Farm.Category("own operating", ExpenseClass.Operating, Chance(50) ? Of(Enum.GetValues<StatementLine>()) : null, PerhapsOf(50, ownPools), Perhaps(50, () => Of(Enum.GetValues<CostDriver>())));
        string[] categories = ["own operating", "seed", "compost", "packaging", "market fees", "fuel", "wages", "wages", "payroll taxes", "workers compensation", "equipment", "loan principal", "household draw", "income tax", "mortgage interest"];
        for (int i = random.Next(14); i > 0; i--)
        {
            int tag = random.Next(12);
            Farm.Spend(Iso(Date(Start)), Chance(12) ? -Number(0, 200, 2) : Number(0, 900, 2), Of(categories),
                crop: tag < 3 ? Of(crops) : null, planting: tag == 3 ? Of(plantedOn.Keys.ToList()) : null,
                channel: tag == 4 && Farm.Tables.Present.Contains("channels") ? Of(ChannelNames) : null, pool: tag is 5 or 6 ? Of<string>(["general overhead", .. ownPools]) : null,
                farmPercent: Perhaps(20, () => Number(0, 100, 1)), cropYear: Perhaps(10, () => random.Next(2024, 2026)));
        }
    }
}
