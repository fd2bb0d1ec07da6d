namespace FarmEconomics.DemoFarm;

/// <summary>One crop's lots on hand, drawn first in, first out; what is too old is passed over.</summary>
internal sealed class Stock(CropSpec crop)
{
    private readonly List<(DateOnly Picked, decimal Left)> lots = [];

    public CropSpec Crop { get; } = crop;

    public void Put(DateOnly day, decimal quantity) => lots.Add((day, quantity));

    /// <summary>What may still be sold that day.</summary>
    public decimal Sound(DateOnly day) => lots.Where(l => Age(l, day) <= Crop.StorageDays).Sum(l => l.Left);

    /// <summary>What has to go within so many days or is lost.</summary>
    public decimal Ending(DateOnly day, int within) => lots.Where(l => Age(l, day) + within > Crop.StorageDays).Sum(l => l.Left);

    public decimal All => lots.Sum(l => l.Left);

    /// <summary>Draws the oldest first; never more than there is.</summary>
    public void Draw(decimal quantity)
    {
        while (quantity > 0m)
        {
            var lot = lots[0];
            var part = Math.Min(lot.Left, quantity);
            quantity -= part;
            if (part == lot.Left)
            {
                lots.RemoveAt(0);
            }
            else
            {
                lots[0] = (lot.Picked, lot.Left - part);
            }
        }
    }

    private static int Age((DateOnly Picked, decimal Left) lot, DateOnly day) => day.DayNumber - lot.Picked.DayNumber;
}
