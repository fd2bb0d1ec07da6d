using Bogus;

namespace FarmEconomics.DemoFarm;

/// <summary>Money not tied to a crop: what members pay for the season, and the workshops.</summary>
internal static class Incomes
{
    public sealed record Line(DateOnly Date, string Channel, decimal Amount, int? CropYear, string? Note);

    public static IReadOnlyList<Line> All()
    {
        var random = FarmFacts.RandomFor(8);
        var lines = new List<Line>();
        foreach (var year in FarmFacts.Years)
        {
            Members(lines, year, FarmFacts.Members(year), random);
            lines.Add(new Line(new(year, 3, 23), FarmFacts.Workshops, 240m + (15m * random.Int(0, 8)), null, "seed-sowing afternoon"));
            lines.Add(new Line(new(year, 9, 14), FarmFacts.Workshops, 300m + (15m * random.Int(0, 8)), null, "root cellar day"));
        }

        // The first members of 2026 have paid by the closing date.
        Members(lines, 2026, 22, random);
        return [.. lines.Where(l => l.Date >= FarmFacts.FirstDay && l.Date <= FarmFacts.AsOf).OrderBy(l => l.Date)];
    }

    /// <summary>Most pay at once between December and May; one in four in two parts.</summary>
    private static void Members(List<Line> lines, int year, int count, Randomizer random)
    {
        var price = FarmFacts.SharePrice(year);
        for (var i = 1; i <= count; i++)
        {
            var day = new DateOnly(year - 1, 12, 5).AddDays(random.Int(0, year == 2026 ? 80 : 150));
            // The records begin with 2023: who paid that season's share the December before is written on the first of January.
            if (day < FarmFacts.FirstDay)
            {
                day = FarmFacts.FirstDay;
            }

            var half = i % 4 == 0;
            var note = $"share {i:00}";
            var named = day.Year < year ? year : (int?)null;
            lines.Add(new Line(day, FarmFacts.Share, half ? price / 2m : price, named, half ? note + ", first half" : note));
            if (half)
            {
                lines.Add(new Line(new(year, 6, random.Int(1, 28)), FarmFacts.Share, price / 2m, null, note + ", second half"));
            }
        }
    }
}
