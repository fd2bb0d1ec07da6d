using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.ProvingGround.Folders;

/// <summary>Writes the year's bills and the members' payments.</summary>
internal static class BillBook
{
    private const double SeedNamesCrop = 0.7;

    internal static void Write(Farm farm, double[][] plan, Book book)
    {
        double mixed = 0.0;
        double supplies = 0.0;
        double packaging = 0.0;
        for (int c = 0; c < plan.Length; c++)
        {
            Crop crop = farm.Crops[c];
            double seed = plan[c].Sum() * crop.Cost.Seed;
            supplies += plan[c].Sum() * crop.Cost.Supplies;
            packaging += book.SoldByCrop[c] * crop.Cost.Packaging;
            if (book.Random.NextUniform() < SeedNamesCrop)
            {
                Bill(book, 8, seed, $"seed,{crop.Name},");
            }
            else
            {
                mixed += seed;
            }
        }

        Bill(book, 9, mixed, $"seed,,");
        Bill(book, 11, supplies, $"compost,,");
        Bill(book, 16, packaging / 2, $"packaging,,");
        Bill(book, 30, packaging / 2, $"packaging,,");
        Bill(book, 49, book.BoughtIn * farm.Shares.BuyIn, $"bought-in produce,,{FarmTables.Boxes}");
        foreach (Outlet outlet in farm.Outlets)
        {
            Bill(book, outlet.Season.Last, outlet.Trip.Money * (outlet.Season.Last - outlet.Season.First + 1), $"delivery,,{outlet.Name}");
        }

        Bill(book, 48, book.HiredHours * farm.Labor.HiredWage, $"wages,,");
        Bill(book, 49, book.HiredHours * farm.Labor.HiredWage * Labor.PayrollTax, $"payroll taxes,,");
        Bill(book, 3, 900, $"insurance,,");
        Bill(book, 20, 700, $"repairs,,");
        Bill(book, 25, 600, $"utilities,,");
        if (farm.Shares.Members > 0)
        {
            book.Income.Row($"{book.Date(8)},{FarmTables.Boxes},{Math.Round(farm.Shares.Members * farm.Shares.Payment * book.Level, 2)}");
        }
    }

    private static void Bill(Book book, int week, double amount, FormattableString what)
    {
        double money = Math.Round(amount * book.Level, 2);
        if (money > 0.0)
        {
            book.Expenses.Row($"{book.Date(week, 1)},{money},{FormattableString.Invariant(what)}");
        }
    }
}
