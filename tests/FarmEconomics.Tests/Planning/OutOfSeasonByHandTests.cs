using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Reports.Planning;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>A sowing planned far from every week its crop came into a bed is told, where enough are on record to say so; by hand.</summary>
public class OutOfSeasonByHandTests
{
    /// <summary>
    /// Carrots came in on May 1 and May 22 of two years, days 120 and 141 of the year (from 0; a day later in 2024, a leap year): within
    /// 28 days of those it is told no more, so from April 3 to June 20. Crop years begin on January 1: May 1 lies in the week of April 30,
    /// May 22 in that of May 21.
    /// </summary>
    [Theory]
    [InlineData("2026-01-01", true)]
    [InlineData("2026-04-02", true)]
    [InlineData("2026-04-03", false)]
    [InlineData("2026-06-20", false)]
    [InlineData("2026-06-21", true)]
    [InlineData("2026-11-12", true)]
    public void Sowing_OverFourWeeksFromThoseOnRecord_IsTold(string day, bool told)
    {
        PlanProblem[] found = [.. Told(Farm(), "Carrots", day)];
        Assert.Equal(told ? 1 : 0, found.Length);
        Assert.All(found, one =>
        {
            Assert.Equal(new SownOnRecord(Day("2026-04-30"), Day("2026-05-21"), 4, 2), one.OnRecord);
            Assert.Equal(("Carrots", 0m), (one.Where, one.Short));
        });
    }

    [Fact]
    public void Problem_SaysTheWeeksOnRecordAndWhatTheyRestOn() => Assert.Equal(
        "Carrots, week of Nov 12: far from every week it came into a bed here, those of Apr 30 to May 21 (4 sowings in 2 seasons) (P26).",
        PlanWords.Problem(Assert.Single(Told(Farm(), "Carrots", "2026-11-12")), Notation.Default));

    /// <summary>Three sowings, or four of one year, are too few to say so; a planting on record already isn't planned any more.</summary>
    [Fact]
    public void Sowing_WhereTooFewAreOnRecord_IsNotTold()
    {
        Assert.Empty(Told(Bare().Planting("A", "Carrots", "A", 10m, "2024-05-01", "2024-08-01")
            .Planting("B", "Carrots", "A", 10m, "2025-05-01", "2025-08-01").Planting("C", "Carrots", "A", 10m, "2025-05-22", "2025-08-01"),
            "Carrots", "2026-11-12"));
        FarmBuilder oneYear = Bare();
        foreach (string name in new[] { "A", "B", "C", "D" })
        {
            oneYear.Planting(name, "Carrots", "A", 10m, "2025-05-01", "2025-08-01");
        }

        Assert.Empty(Told(oneYear, "Carrots", "2026-11-12"));
    }

    /// <summary>
    /// Garlic goes in in October for the year after: 77 days before its year begins, on record and in the plan alike; and an October row
    /// that a grower wrote for the year it is set in is in the same week of the calendar.
    /// </summary>
    [Theory]
    [InlineData(2027)]
    [InlineData(2026)]
    public void Sowing_InFallForTheYearAfter_IsHeldAgainstThoseOfItsKind(int cropYear)
    {
        FarmBuilder farm = Farm();
        foreach (int year in new[] { 2022, 2023, 2024, 2025 })
        {
            farm.Planting($"G{year}", "Garlic", "B", 10m, $"{year}-10-16", $"{year + 1}-07-20", cropYear: year + 1);
        }

        Assert.Empty(Told(farm, "Garlic", "2026-10-20", cropYear));
        Assert.Empty(Told(farm, "Garlic", "2026-10-11", cropYear));
        Assert.Single(Told(farm, "Garlic", "2026-03-20", 2026));
    }

    /// <summary>
    /// Carrots came in on May 1 and 22 and on August 1 (day 212, 213 in 2024): June 27, day 177, is 35 days and more from all of them, but
    /// between the first and the last. Of a perennial nothing is told.
    /// </summary>
    [Fact]
    public void Sowing_BetweenThoseOnRecord_AndOfAPerennial_IsNotTold()
    {
        FarmBuilder farm = Farm().Planting("E2025", "Carrots", "B", 10m, "2025-08-01", "2025-10-01").Perennial("Sorrel");
        foreach (int year in new[] { 2024, 2025 })
        {
            farm.Planting($"S{year}", "Sorrel", "B", 10m, $"{year}-05-01", $"{year}-08-01")
                .Planting($"T{year}", "Sorrel", "B", 10m, $"{year}-05-22", $"{year}-08-01");
        }

        Assert.Empty(Told(farm, "Carrots", "2026-06-27"));
        Assert.Single(Told(farm, "Carrots", "2026-11-12"));
        Assert.Empty(Told(farm, "Sorrel", "2026-11-12"));
    }

    /// <summary>
    /// A planting came in when the first of its beds did, on record (May 22, not June 20) as in the plan (January 10, not May 1).
    /// </summary>
    [Fact]
    public void Sowing_IntoSeveralBeds_CountsFromItsFirstDay()
    {
        FarmBuilder farm = Farm().Planting("D2025", "Carrots", "B", 10m, "2025-06-20", "2025-08-01");
        Assert.Single(Told(farm, "Carrots", "2026-06-21"));
        DraftPlanting row = new(2026, "P26", "Carrots", "A", 10m, Day("2026-05-01"), Day("2026-06-30"))
        {
            Yield = 10m,
            Hours = 0m,
            Cost = 0m,
        };
        PlanDraft draft = new(2026, [row, row with { Bed = "B", In = Day("2026-01-10") }], []);
        PlanOutlook outlook = PlanOutlook.Of(farm.Season(2025), PlanByHandTests.ModelOf(farm), draft);
        Assert.Equal(Day("2026-01-10"), Assert.Single(outlook.Problems, one => one.Kind == PlanProblemKind.OutOfSeason).Day);
    }

    private static IEnumerable<PlanProblem> Told(FarmBuilder farm, string crop, string day, int cropYear = 2026)
    {
        DraftPlanting row = new(cropYear, "P26", crop, "A", 10m, Day(day), Day(day).AddDays(30)) { Yield = 10m, Hours = 0m, Cost = 0m };
        PlanDraft draft = new(2026, [row, row with { Bed = "B" }], []);
        return PlanOutlook.Of(farm.Season(2025), PlanByHandTests.ModelOf(farm), draft).Problems
            .Where(one => one.Kind == PlanProblemKind.OutOfSeason);
    }

    private static FarmBuilder Farm()
    {
        FarmBuilder farm = Bare();
        foreach (int year in new[] { 2024, 2025 })
        {
            farm.Planting($"C{year}", "Carrots", "A", 10m, $"{year}-05-01", $"{year}-08-01")
                .Planting($"D{year}", "Carrots", "A", 10m, $"{year}-05-22", $"{year}-08-01")
                .Pick($"{year}-07-10", $"C{year}", 10m).Sell($"{year}-07-12", "Carrots", "Market", 10m, price: 2m);
        }

        return farm;
    }

    private static FarmBuilder Bare() => new FarmBuilder(new FarmSettings { OwnerWage = 15m }).AsOf("2025-12-31").Bed("A").Bed("B")
        .Crop("Carrots").Crop("Garlic").Channel("Market", ChannelKind.Market)
        .Spend("2025-04-20", 30m, "seed", crop: "Carrots");

    private static DateOnly Day(string text) => DateOnly.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
