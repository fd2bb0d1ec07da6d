using FarmEconomics.Records;

namespace FarmEconomics.Budgets.Completeness;

/// <summary>A value far from others of its kind: likely a slip of the pen, perhaps the truth.</summary>
/// <param name="Source">The row.</param>
/// <param name="What">What the value is: "price of Spinach by the bag through Saturday Market".</param>
/// <param name="Value">The value.</param>
/// <param name="Median">The median of its kind.</param>
/// <param name="Count">How many values there are of its kind.</param>
/// <param name="Score">How many robust standard deviations it is away, on the scale of ratios.</param>
/// <param name="Money">What the row would change by, were the median right; null when it carries no money.</param>
public sealed record Outlier(SourceLine Source, string What, decimal Value, decimal Median, int Count, double Score, decimal? Money);

/// <summary>
/// Finds values far from the median of their kind, by the modified z-score of Iglewicz and Hoaglin (How to Detect and Handle Outliers, ASQC
/// 1993): 0.6745 (x - median) / MAD above 3.5. It is taken on logarithms, since prices, quantities and hours spread by factors, and a kind
/// that hardly spreads counts as spreading by 5 %, so that a price raised once is no outlier; quantities and hours by a quarter, since they
/// are written in round figures. What more than a tenth of the picks or entries of a kind do is a habit and no slip (all three our choice).
/// </summary>
public static class Outliers
{
    private const double Limit = 3.5;
    private const double Scale = 0.6745;
    private const int Fewest = 8;
    private const int Habit = 10;
    private static readonly double LeastSpread = Math.Log(1.05), LeastOfRound = Math.Log(1.25);

    /// <summary>The outliers of a span of days, the most money first, then the furthest away.</summary>
    /// <param name="tables">The tables.</param>
    /// <param name="from">First day.</param>
    /// <param name="until">First day after the span.</param>
    /// <returns>The outliers; kinds with fewer than 8 values have none.</returns>
    public static IReadOnlyList<Outlier> Of(RecordTables tables, DateOnly from, DateOnly until)
    {
        ArgumentNullException.ThrowIfNull(tables);
        bool In(DateOnly date) => date >= from && date < until;
        List<(IRecordRow Row, string What, decimal Value)> values =
        [
            .. tables
                .Sales.Where(row => In(row.Date) && row.Quantity > 0m && PriceOf(row) > 0m)
                .Select(row =>
                    (
                        (IRecordRow)row,
                        $"price of {row.Crop.Trim()}{(row.Unit is { } unit ? $" per {unit.Trim()}" : "")} through {row.Channel.Trim()}",
                        PriceOf(row)!.Value
                    )
                ),
            .. tables
                .Harvests.Where(row => In(row.Date) && row.Quantity > 0m)
                .Select(row =>
                    (
                        (IRecordRow)row,
                        $"harvest of {row.Crop?.Trim() ?? row.Planting!.Trim()}{(row.Unit is { } unit ? $" in {unit.Trim()}" : "")}",
                        row.Quantity
                    )
                ),
            .. tables
                .Labor.Where(row => In(row.Date) && row.Hours > 0m)
                .Select(row => ((IRecordRow)row, $"hours of one entry for {row.Task.Trim()}", row.Hours)),
        ];
        return
        [
            .. values
                .GroupBy(value => value.What, StringComparer.OrdinalIgnoreCase)
                .Where(kind => kind.Count() >= Fewest)
                .SelectMany(kind => OfKind([.. kind]))
                .OrderByDescending(outlier => outlier.Money ?? 0m)
                .ThenByDescending(outlier => outlier.Score)
                .ThenBy(outlier => outlier.Source, Comparer<SourceLine>.Create(SourceLine.Compare)),
        ];
    }

    private static IEnumerable<Outlier> OfKind(List<(IRecordRow Row, string What, decimal Value)> kind)
    {
        decimal median = Median(kind.Select(value => value.Value));
        double center = Math.Log((double)median);
        double[] away = [.. kind.Select(value => Math.Abs(Math.Log((double)value.Value) - center))];
        bool isPrice = kind[0].Row is SaleRow;
        double spread = Math.Max(Median(away), isPrice ? LeastSpread : LeastOfRound);

        // As far away as the first that more than a tenth reach: with 8 to 19 values one may be told.
        double usual = isPrice ? 0.0 : away.OrderDescending().ElementAt(Math.Max(1, kind.Count / Habit));
        foreach (((IRecordRow row, string what, decimal value), double far) in kind.Zip(away))
        {
            double score = Scale * far / spread;
            if (score > Limit && far > usual)
            {
                yield return new Outlier(
                    row.Source,
                    what,
                    value,
                    median,
                    kind.Count,
                    score,
                    row is SaleRow sale ? Math.Abs(value - median) * sale.Quantity : null
                );
            }
        }
    }

    private static decimal? PriceOf(SaleRow row) => row.Amount is { } amount ? amount / row.Quantity : row.UnitPrice;

    private static T Median<T>(IEnumerable<T> values)
        where T : System.Numerics.INumber<T>
    {
        T[] sorted = [.. values];
        Array.Sort(sorted);
        int half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / (T.One + T.One);
    }
}
