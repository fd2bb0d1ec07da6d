using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.ProvingGround.Folders;

/// <summary>Finds a bed for each sowing and writes the plantings.</summary>
internal static class BedBook
{
    private const double OutNoted = 0.85;

    /// <summary>Beds of 100 feet, the last of what is left.</summary>
    internal static IEnumerable<(string Name, double Feet)> BedsOf(Farm farm, int cover)
    {
        int number = 1;
        for (double left = farm.BedFeet[cover]; left > 0.0; left -= 100)
        {
            yield return (FormattableString.Invariant($"{(cover == 0 ? "Field" : "Tunnel")} {number++:00}"), Math.Min(100, left));
        }
    }

    /// <summary>
    /// First bed with room: sowings come in order of their week, so what a bed has free in that week it has free until the sowing is out,
    /// and a plan that fits the beds in sum always finds room.
    /// </summary>
    internal static void Write(Farm farm, double[][] plan, Book book)
    {
        for (int cover = 0; cover < Farm.Covers; cover++)
        {
            (string Name, double Feet)[] beds = [.. BedsOf(farm, cover)];
            List<(int Bed, int Out, double Feet)> taken = [];
            for (int week = 0; week < Farm.Weeks; week++)
            {
                taken.RemoveAll(place => place.Out <= week);
                for (int c = 0; c < plan.Length; c++)
                {
                    if (farm.Crops[c].Cover == cover && plan[c][week] > 0.0)
                    {
                        Place(farm, book, (c, week, plan[c][week]), (beds, taken));
                    }
                }
            }
        }
    }

    private static void Place(
        Farm farm, Book book, (int Crop, int Week, double Feet) sowing,
            ((string Name, double Feet)[] Beds, List<(int Bed, int Out, double Feet)> Taken) room)
    {
        int last = farm.Crops[sowing.Crop].LastPickOf(sowing.Week) + 1;
        string free = book.Random.NextUniform() < OutNoted ? book.Date(Math.Min(last, 51)) : "";
        double left = sowing.Feet;
        for (int bed = 0; bed < room.Beds.Length && left > 0.005; bed++)
        {
            double feet = Math.Min(left, room.Beds[bed].Feet - room.Taken.Where(place => place.Bed == bed).Sum(place => place.Feet));
            feet = Math.Round(feet, 2);
            if (feet > 0.0)
            {
                room.Taken.Add((bed, last, feet));
                left -= feet;
                string crop = farm.Crops[sowing.Crop].Name;
                string name = book.Name(sowing.Crop, sowing.Week);
                book.Plantings.Row($"{name},{crop},{room.Beds[bed].Name},{feet},{book.Date(sowing.Week)},{free}");
            }
        }
    }
}
