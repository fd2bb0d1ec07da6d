using FarmEconomics.Decisions.Chances;
using FarmEconomics.ProvingGround.Play;
using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.ProvingGround.Folders;

/// <summary>
/// Writes three seasons of a farm as an ordinary records folder, with ordinary gaps: hours that name no crop (as many as the world says),
/// harvests that name only the crop, a harvest forgotten now and then, spoiled produce noted half of the time, beds whose last day isn't
/// noted, seed bought for several crops.
/// </summary>
internal static class RecordsWriter
{
    internal const int LastYear = 2025;
    private const int Years = 3;

    internal static void Write(Farm farm, string folder)
    {
        Directory.CreateDirectory(folder);
        FarmTables.Write(farm, folder);
        Book book = new(farm);
        SeasonPlay play = new(farm);
        for (int year = LastYear - Years + 1; year <= LastYear; year++)
        {
            SeededRandom random = new(farm.Seed, $"gaps {year}");
            double[][] plan = PlanOf(farm, year, random);
            book.Begin(year, Level(farm, year), random);
            BedBook.Write(farm, plan, book);
            play.Play(plan, new SeasonDraw(farm, $"records {year}"), book);
            BillBook.Write(farm, plan, book);
        }

        book.Save(folder);
    }

    /// <summary>Prices, wages and costs of a year over those of the last.</summary>
    internal static double Level(Farm farm, int year) => Math.Pow(1.0 + farm.Traits.Inflation, year - LastYear);

    /// <summary>Earlier seasons were a little smaller here and there; the last is today's plan.</summary>
    private static double[][] PlanOf(Farm farm, int year, SeededRandom random) => year == LastYear
        ? farm.Today
        : farm.Today.Select(crop => crop.Select(feet => feet == 0.0 ? 0.0 : Smaller(feet, random)).ToArray()).ToArray();

    private static double Smaller(double feet, SeededRandom random) =>
        Math.Max(1.0, Math.Floor(feet * FarmMaker.Between(random, 0.8, 1.0)));
}
