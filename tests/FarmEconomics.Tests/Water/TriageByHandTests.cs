using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>
/// The list for the field on a farm whose losses are worked out here by themselves: a perennial that needs 6.35 mm (0.25 inches) every day
/// of a dry summer, whose grown roots (0.30 m, as small vegetables of FAO-56) hold 30 mm in a soil of 100 mm a meter, 9 of them without
/// stress; Ky 1. It came in on the morning of the list, its soil full, and stands the 175 days to the closing date, that day included.
/// </summary>
public class TriageByHandTests
{
    private const double Need = 6.35;
    private const double Holds = 30.0;
    private const double Gallon = 3.785411784;

    /// <summary>Liters for a mm on 100 feet of a bed of 30 inches at 50%: 30.48 x 0.762 / 0.5.</summary>
    private const double PerMm = 30.48 * 0.762 / 0.5;

    private static readonly DateOnly Morning = new(2025, 7, 10);

    /// <summary>
    /// The part of the yield lost in the days of watering and the six after, of 175 x 6.35 mm in all (Eq. 84 to 86 of FAO-56).
    /// </summary>
    private static double Lost(double mm, int days = 1)
    {
        (double dry, double missed) = (0.0, 0.0);
        for (int day = 0; day < days + 6; day++)
        {
            double put = day < days ? mm / days : 0.0;
            double used = Math.Min(dry <= 0.3 * Holds ? Need : Need * (Holds - dry) / (0.7 * Holds), Holds - dry + put);
            missed += Need - used;
            dry = Math.Max(0.0, dry + used - put);
        }

        return missed / (175 * Need);
    }

    private static double Worth(SowingWater sowing) => 1000.0 * (1 + (sowing.Block.Index * 3 % 7));

    private static WaterTriage List(FarmWater farm, double amount, int days = 1, bool hours = false) =>
        WaterTriage.Of(farm, new WaterAtHand(Morning, days, amount, hours), (sowing, _) => Worth(sowing));

    /// <summary>On paper, without water: 0, 0, 1.119, 2.701, 3.804, 4.574, 5.111 mm missed of 1111.25.</summary>
    [Fact]
    public void Unwatered_Week_LosesWhatItsStressedDaysMiss()
    {
        Assert.Equal((1.119 + 2.701 + 3.804 + 4.574 + 5.111) / 1111.25, Lost(0), 5);
        WaterTriage list = List(Farm(2), 0);
        Assert.Equal(["Block 1", "Block 0"], list.Lines.Select(line => line.Block.Name));
        Assert.Equal(4000 * Lost(0), list.Lines[0].Unwatered, 6);
        Assert.Equal(1000 * Lost(0), list.Lines[1].Unwatered, 6);
        Assert.Equal(5000 * Lost(0), list.Unwatered, 6);
        Assert.Equal(list.Unwatered, list.Lost, 9);
        Assert.Equal(0.0, list.Gap, 9);
    }

    /// <summary>The day's need of 6.35 mm is all the full soil can hold; on three days it is three times as much.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void Wanted_IsWhatFillsTheSoilAndTheDaysOfWatering(int days) =>
        Assert.All(List(Farm(2), 100, days).Lines, line => Assert.Equal(days * Need * PerMm, line.Wanted, 6));

    /// <summary>
    /// What a block gets and loses, by the working above; the dearest is filled first, and the same depth everywhere loses more.
    /// </summary>
    [Theory]
    [InlineData(200.0, 1)]
    [InlineData(400.0, 1)]
    [InlineData(900.0, 3)]
    public void Parts_LoseByWhatTheyGet(double liters, int days)
    {
        WaterTriage list = List(Farm(3), liters, days);
        Assert.All(list.Lines, line =>
            Assert.Equal(Lost(line.Amount / PerMm, days) * 1000 * (1 + (line.Block.Index * 3 % 7)), line.Lost, 6)
        );
        Assert.All(list.Lines, line => Assert.Equal(line.Unwatered - line.Lost, line.Saved, 9));
        Assert.Equal([2, 1, 0], list.Lines.Select(line => line.Block.Index)); // worth 7000, 4000, 1000
        Assert.Equal(Math.Min(liters, days * Need * PerMm), list.Lines[0].Amount, 3);
        Assert.Equal(liters, list.Lines.Sum(line => line.Amount), 6);
        Assert.Equal(12000 * Lost(liters / 3 / PerMm, days), list.LostEvenly, 6);
        Assert.True(list.LostEvenly > list.Lost + 0.1);
        Assert.Equal(list.Unwatered - list.Lost, list.SavedWith(liters), 9);
        Assert.InRange(list.Gap, 0.0, 0.01); // every block may be watered in part
    }

    /// <summary>Blocks worth the same stand in the order of their table.</summary>
    [Fact]
    public void Lines_OfBlocksWorthTheSame_KeepTheirOrder()
    {
        WaterTriage list = WaterTriage.Of(Farm(3), new WaterAtHand(Morning, 1, 0, false), (_, _) => 1000.0);
        Assert.Equal([0, 1, 2], list.Lines.Select(line => line.Block.Index));
    }

    /// <summary>
    /// Sets of 30, 50 and 40 gallons (blocks worth 1000, 4000, 7000), once a day: every way to lay them out that fits, the losses by the
    /// working above. In sprinkler-hours a set of 30 gallons at 60 an hour is half an hour.
    /// </summary>
    [Theory]
    [InlineData(29.9, 1, false)]
    [InlineData(45.0, 1, false)]
    [InlineData(70.0, 1, false)]
    [InlineData(89.9, 1, false)]
    [InlineData(300.0, 1, false)]
    [InlineData(140.0, 2, false)]
    [InlineData(1.2, 1, true)]
    [InlineData(2.4, 2, true)]
    public void Sets_AreLaidOutAsLosesLeast(double there, int days, bool hours)
    {
        double[] sets = [30, 50, 40],
            worth = [1000, 4000, 7000];
        double[] sizes = [.. sets.Select(set => hours ? set / 60 : set * Gallon)];
        double amount = hours ? there : there * Gallon;
        int most = days + 1;
        (double Lost, int[] Counts)[] ways =
        [
            .. Enumerable
                .Range(0, most * most * most)
                .Select(way => new[] { way % most, way / most % most, way / most / most })
                .Where(counts => counts.Zip(sizes, (count, size) => count * size).Sum() <= amount)
                .Select(counts => (counts.Select((count, i) => worth[i] * Lost(count * sets[i] * Gallon / PerMm, days)).Sum(), counts)),
        ];
        WaterTriage list = List(Farm(3, [30, 50, 40]), amount, days, hours);
        (double lost, int[] best) = ways.MinBy(way => way.Lost);

        Assert.Equal(lost, list.Lost, 6);
        Assert.Equal(best, list.Lines.OrderBy(line => line.Block.Index).Select(line => line.Sets!.Value));
        Assert.All(list.Lines, line => Assert.Equal(line.Sets!.Value * sizes[line.Block.Index], line.Amount, 6));
        Assert.True(list.Gap >= -1e-9);
    }

    /// <summary>
    /// A set of 40 gallons on the block worth 7000 and 60 gallons in parts: the dearer of the others is filled, the rest is left to the
    /// last.
    /// </summary>
    [Fact]
    public void Sets_BesideParts_LeaveTheRestToThese()
    {
        WaterTriage list = List(Farm(3, [null, null, 40]), 100 * Gallon);
        TriageLine[] lines = [.. list.Lines.OrderBy(line => line.Block.Index)];
        Assert.Equal([null, null, 1], lines.Select(line => line.Sets));
        Assert.Equal(0.0, lines[0].Amount, 3);
        Assert.Equal(60 * Gallon, lines[1].Amount, 3);
        Assert.Equal(40 * Gallon, lines[2].Amount, 6);
    }

    /// <summary>
    /// 21 blocks with a set of 20 gallons each are more than a million ways: set after set goes where it saves most, so 110 gallons give
    /// one to the five dearest, by their worth of 7000 (2, 9, 16) and 6000 (4, 11), the first of each worth first.
    /// </summary>
    [Fact]
    public void Sets_OfManyBlocks_GoWhereTheySaveMostSetAfterSet()
    {
        WaterTriage list = List(Farm(21, [20]), 110 * Gallon);
        Assert.Equal([2, 4, 9, 11, 16], list.Lines.Where(line => line.Sets == 1).Select(line => line.Block.Index).Order());
        Assert.All(list.Lines, line => Assert.Equal(line.Sets!.Value * 20 * Gallon, line.Amount, 6));
        double set = Lost(0) - Lost(20 * Gallon / PerMm);
        Assert.Equal(((3 * 7000) + (2 * 6000)) * set, list.Unwatered - list.Lost, 6);
        Assert.True(list.Gap > 0.0);
    }

    /// <summary>
    /// Sets of 20 gallons and, on every other block, of 60: it is the saving of a gallon that counts, not that of a set. 120 gallons: 20
    /// each on 2 and 16 (worth 7000, 1.63 mm), 60 on 9 (7000, 4.89 mm, which saves 2% less a gallon), 20 on 4 (6000). By the set 9 and 11
    /// would go first and take all.
    /// </summary>
    [Fact]
    public void Sets_OfTwoSizes_GoWhereAGallonSavesMost()
    {
        WaterTriage list = List(Farm(21, [20, 60]), 120 * Gallon);
        Assert.Equal([2, 4, 9, 16], list.Lines.Where(line => line.Sets == 1).Select(line => line.Block.Index).Order());
        double small = Lost(0) - Lost(20 * Gallon / PerMm),
            large = Lost(0) - Lost(60 * Gallon / PerMm);
        Assert.Equal((20000 * small) + (7000 * large), list.Unwatered - list.Lost, 6);
    }

    /// <summary>
    /// One set of 40 gallons on the block worth 4000, parts on those worth 1000 and 7000. With 100 gallons the set saves 9.85 and 60
    /// gallons on the dearest 25.32, more than 77.9 there (all it takes, 32.37) and 22.1 on the cheapest (1.36). With 85 it is 19.3 and
    /// 9.85 against 32.37 and 0.44: no set.
    /// </summary>
    [Theory]
    [InlineData(100.0, 0.0, 40.0, 60.0)]
    [InlineData(85.0, 85.0 - (6.35 * PerMm / Gallon), 0.0, 6.35 * PerMm / Gallon)]
    public void Set_BesideParts_GoesWhereItSavesMoreThanTheyWould(double gallons, double cheapest, double set, double dearest)
    {
        WaterTriage list = List(Farm(3, [null, 40, null]), gallons * Gallon);
        double[] amounts = [.. list.Lines.OrderBy(line => line.Block.Index).Select(line => line.Amount / Gallon)];
        Assert.Equal([cheapest, set, dearest], amounts, (one, other) => Math.Abs(one - other) < 1e-3);
        Assert.Equal([null, set > 0.0 ? 1 : 0, null], list.Lines.OrderBy(line => line.Block.Index).Select(line => line.Sets));
        Assert.True(list.Gap > -1e-9);
    }

    /// <summary>A block's figures: 1.2 inches a foot are 100 mm a meter; beds of 100 feet at 30 inches and of 50 at 48.</summary>
    [Fact]
    public void Block_OfTwoBeds_HasTheirAreaAndItsFiguresInMetricUnits()
    {
        FarmBuilder farm = Builder(1, [25]);
        farm.Tables.Add<BedRow>(
            new RowValues
            {
                ["bed"] = "Wide",
                ["length_ft"] = 50m,
                ["width_in"] = 48m,
                ["block"] = "block 0 ",
                Source = new SourceLine("beds.csv", 9),
            }
        );
        WaterBlock block = DryFarm.Farm(farm).Blocks[0];
        Assert.Equal((30.48 * 0.762) + (15.24 * 1.2192), block.AreaM2, 9);
        Assert.Equal(100.0, block.SoilMmPerM, 9);
        Assert.Equal((60 * Gallon, 25 * Gallon), (block.SprinklerLiters, block.SetLiters));
        Assert.Equal(((30.48 * 0.762) + (15.24 * 1.2192)) / 0.5, block.LitersPerMm, 9);
    }

    /// <summary>The same numbers on a farm that measures in meters are mm a meter, liters, and beds of 100 m by 30 cm.</summary>
    [Fact]
    public void Block_OfAMetricFarm_TakesItsFiguresAsTheyAre()
    {
        FarmBuilder farm = Builder(1, [25]).With(settings => settings with { LengthUnit = LengthUnit.M });
        WaterBlock block = DryFarm.Farm(farm).Blocks[0];
        Assert.Equal((1.2, 60.0, 25.0), (block.SoilMmPerM, block.SprinklerLiters, block.SetLiters));
        Assert.Equal(100 * 0.3, block.AreaM2, 9);
    }

    /// <summary>Full before its first day, 6.35 mm dry after it, 12.7 after two; nothing is told of days after those asked for.</summary>
    [Fact]
    public void Balance_OfASowing_BeginsFullOnItsFirstDay()
    {
        FarmWater farm = Farm(1);
        double Dry(int days) => WaterBalance.Of(farm.Sowings[0], farm.Log, Morning.AddDays(days)).Depletion;
        Assert.Equal([0.0, 0.0, Need, 2 * Need], new[] { -3, 0, 1, 2 }.Select(Dry));
        Assert.Equal(2, WaterBalance.Of(farm.Sowings[0], farm.Log, Morning.AddDays(2)).Days.Count);
        Assert.Equal(0.0, WaterBalance.Of(farm.Sowings[0], farm.Log, Morning.AddDays(2)).MissedMm, 9);
        Assert.Equal(1.119, WaterBalance.Of(farm.Sowings[0], farm.Log, Morning.AddDays(3)).MissedMm, 3);
    }

    private static FarmWater Farm(int blocks, decimal?[]? sets = null) => DryFarm.Farm(Builder(blocks, sets));

    internal static FarmBuilder Builder(int blocks, decimal?[]? sets = null)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { UnpaidHours = UnpaidHours.None })
            .Crop("Chives", perennial: true)
            .AsOf("2025-12-31");
        CropRow chives = farm.Tables.Crops[0];
        foreach (NumberColumn column in (NumberColumn[])[CropRow.KcIniColumn, CropRow.KcMidColumn, CropRow.KcEndColumn, CropRow.KyColumn])
        {
            farm.Set(chives, column, 1m);
        }

        for (int i = 0; i < blocks; i++)
        {
            farm.Tables.Add<BedRow>(
                new RowValues
                {
                    ["bed"] = $"Bed {i}",
                    ["length_ft"] = 100m,
                    ["block"] = $"Block {i}",
                    Source = new SourceLine("beds.csv", i + 2),
                }
            );
            farm.Planting($"Chives {i}", "Chives", $"Bed {i}", 100m, "2025-07-10");
            farm.Tables.Add<BlockRow>(
                new RowValues
                {
                    ["block"] = $"Block {i}",
                    ["soil_water_in_ft"] = 1.2m,
                    ["efficiency_percent"] = 50m,
                    ["sprinkler_gph"] = 60m,
                    ["set_gallons"] = sets?[i % sets.Length],
                    Source = new SourceLine("blocks.csv", i + 2),
                }
            );
        }

        for (DateOnly day = new(2025, 7, 1); day < new DateOnly(2025, 10, 1); day = day.AddDays(1))
        {
            farm.Tables.Add<WeatherRow>(
                new RowValues
                {
                    ["date"] = day,
                    ["et0_in"] = 0.25m,
                    Source = new SourceLine("weather.csv", day.DayOfYear),
                }
            );
        }

        return farm;
    }
}
