using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Rotation and credit of the year planned, 2026, on a farm of two covers, by hand (docs/methods.md, section 20): carrots (umbels) and
/// beets (goosefoot) are sown, garlic's family isn't on record, rhubarb (docks) stays. Within 3 years counts what stood since 2024 began.
/// </summary>
public class RotationOfSeveralByHandTests
{
    /// <summary>
    /// In the tunnel alone 3 years: carrots stood in T1 in 2024, so only T2 is free of umbels, 40 feet twice as wide as the standard;
    /// of goosefoot both are, 60 + 80. A row on labor is none on rotation. Told is what isn't known, and
    /// nothing of a structure without beds.
    /// </summary>
    [Fact]
    public void Rotation_OfOneCover_IsLimitedThereAlone()
    {
        PlanModel model = PlanByHandTests.ModelOf(Farm().Limit("labor", 90m, "hours a week").Limit("rotation Tunnel", 3m, "years"));
        Assert.Equal(
            [("Umbels", 1, 80.0, "T2"), ("Goosefoot", 1, 140.0, "T1 T2")],
            model.Rotation.Select(one => (one.Family, one.Cover, one.Feet, string.Join(' ', one.Beds.Order())))
        );
        string[] told = [.. model.NotChecked.Where(note => note.StartsWith("rotation", StringComparison.Ordinal))];
        Assert.Equal(["rotation of Garlic: no family on record", "rotation before 2024: no plantings on record"], told);
    }

    /// <summary>
    /// Of two rows the longer holds. Beds that are gone when the year begins or come after it don't count; that of its first day and that
    /// of June do, 30 and 20 feet. In P (100) carrots left on the first day of 2024, before the window: it is free of them; in A they
    /// stood in 2025, in B in 2024, and beets in 2025.
    /// </summary>
    [Fact]
    public void Rotation_CountsBedsThereAreInTheYear()
    {
        FarmBuilder farm = Farm()
            .Limit("rotation", 2m, "years")
            .Limit("rotation", 3m, "years")
            .Bed("Gone", 50m)
            .Bed("First", 30m)
            .Bed("After", 50m)
            .Bed("June", 20m)
            .Bed("P", 100m)
            .Planting("C23", "Carrots", "P", 50m, "2023-05-01", "2024-01-01", cropYear: 2023)
            .Planting("C24b", "Carrots", "B", 10m, "2024-05-01", "2024-07-31");
        BedRow Row(string bed) => farm.Tables.Beds.First(row => row.Bed == bed);
        farm.Set(Row("Gone"), BedRow.ToColumn, new DateOnly(2025, 12, 31));
        farm.Set(Row("First"), BedRow.ToColumn, new DateOnly(2026, 1, 1));
        farm.Set(Row("After"), BedRow.FromColumn, new DateOnly(2027, 1, 1));
        farm.Set(Row("June"), BedRow.FromColumn, new DateOnly(2026, 6, 1));
        Assert.Equal(
            [("Umbels", "First June P", 30.0 + 20.0 + 100.0), ("Goosefoot", "A First June P", 100.0 + 150.0)],
            PlanByHandTests
                .ModelOf(farm)
                .Rotation.Where(one => one.Cover == 0)
                .Select(one => (one.Family, string.Join(' ', one.Beds.Order()), one.Feet))
        );
    }

    /// <summary>
    /// Plantings are on record since March 2024. Rotation of 3 years, wherever it holds, asks for all of 2024: what stood in January and
    /// February isn't known; 2 years ask for 2025. One that came in on January 1, 2024 leaves no day unknown.
    /// </summary>
    [Theory]
    [InlineData(3, false, true)]
    [InlineData(2, false, false)]
    [InlineData(3, true, false)]
    public void Rotation_TellsTheYearsBeforeTheRecords(int tunnel, bool earlier, bool told)
    {
        FarmBuilder farm = Farm().Limit("rotation", 2m, "years").Limit("rotation Tunnel", tunnel, "years");
        farm = earlier ? farm.Planting("C24x", "Carrots", "A", 10m, "2024-01-01", "2024-05-01") : farm;
        Assert.Equal(told, PlanByHandTests.ModelOf(farm).NotChecked.Contains("rotation before 2024: no plantings on record"));
    }

    /// <summary>Without a row on rotation that is told.</summary>
    [Fact]
    public void Rotation_WithoutARow_IsTold() =>
        Assert.Contains(
            "rotation: no row of limits says in how many years a family may stand in a bed again",
            PlanByHandTests.ModelOf(Farm().Limit("labor", 90m, "hours a week")).NotChecked
        );

    /// <summary>Of two rows of credit that hold in the same months, March and April, the lesser counts.</summary>
    [Fact]
    public void Credit_OfTwoRows_IsTheLesser()
    {
        FarmBuilder farm = Farm()
            .Limit("line of credit", 2000m, from: "2026-01-01", to: "2026-12-31")
            .Limit("line of credit", 1500m, from: "2026-03-01", to: "2026-04-30");
        Assert.Equal(
            Enumerable.Range(1, 12).Select(month => month is 3 or 4 ? 1500.0 : 2000.0),
            PlanByHandTests.ModelOf(farm, new PlanSettings { OpeningCash = 1000m }).Cash!.Line
        );
    }

    private static FarmBuilder Farm()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 15m, InterestPercent = 5m })
            .AsOf("2025-12-31")
            .Bed("A")
            .Bed("B")
            .Bed("T1", 60m, structure: "Tunnel")
            .Bed("T2", 40m, width: 60m, structure: "Tunnel")
            .Crop("Carrots")
            .Crop("Beets")
            .Crop("Garlic")
            .Perennial("Rhubarb")
            .Channel("Market", ChannelKind.Market)
            .Spend("2024-05-01", 9m, "seed")
            .Spend("2025-05-01", 9m, "seed")
            .Planting("C24", "Carrots", "T1", 60m, "2024-03-01", "2024-07-31")
            .Planting("C25", "Carrots", "A", 60m, "2025-03-01", "2025-07-31")
            .Planting("B25", "Beets", "B", 60m, "2025-03-01", "2025-07-31")
            .Planting("G25", "Garlic", "A", 20m, "2025-08-10", "2025-11-30")
            .Planting("R", "Rhubarb", "B", 20m, "2024-03-01")
            .Pick("2024-06-01", "C24", 60m)
            .Pick("2025-06-01", "C25", 60m)
            .Pick("2025-06-01", "B25", 60m)
            .Pick("2025-11-01", "G25", 20m)
            .Pick("2025-06-01", "R", 20m)
            .Sell("2025-06-02", "Carrots", "Market", 60m, price: 2m)
            .Sell("2025-06-02", "Beets", "Market", 60m, price: 2m);
        (string Crop, string Family)[] families = [("Carrots", "Umbels"), ("Beets", "Goosefoot"), ("Rhubarb", "Docks")];
        foreach ((string crop, string family) in families)
        {
            farm.Set(farm.Tables.Crops.First(row => row.Crop == crop), CropRow.FamilyColumn, family);
        }

        return farm;
    }
}
