namespace FarmEconomics.DemoFarm;

/// <summary>The farm's checking account from the first day on; the cash of the balance sheets is what it held.</summary>
internal sealed class CashWalk
{
    /// <summary>In the account when the records begin, and what customers owed then: sales move the walk on the day they left.</summary>
    private const decimal Opening = 11578.40m;

    private readonly SortedDictionary<DateOnly, decimal> moves = [];

    public CashWalk(IReadOnlyList<SalesBook.Sale> sales, IReadOnlyList<BookLine> books)
    {
        foreach (var sale in sales)
        {
            Move(sale.Date, (sale.Money ?? 0m) - Papers.Fee(sale));
        }

        foreach (var line in Incomes.All())
        {
            Move(line.Date, line.Amount);
        }

        foreach (var year in FarmFacts.Years)
        {
            Move(LoanBook.Drawn(year), LoanBook.SeasonLoan);
        }

        foreach (var line in books.Where(line => line.Date >= FarmFacts.FirstDay))
        {
            Move(line.Date, -line.Amount);
        }

        var held = Opening;
        foreach (var (day, move) in moves)
        {
            held += move;
            if (held < 0m)
            {
                throw new InvalidOperationException($"the account would stand at {held} on {day:yyyy-MM-dd}: no bank lets that come about");
            }
        }
    }

    /// <summary>What is in the account at the end of a day.</summary>
    public decimal At(DateOnly day) => Opening + moves.Where(move => move.Key <= day).Sum(move => move.Value);

    private void Move(DateOnly day, decimal amount) => moves[day] = moves.GetValueOrDefault(day) + amount;
}
