using FarmEconomics.Records.Completeness;

namespace FarmEconomics.Records.Checks;

/// <summary>Warns of control totals the records miss.</summary>
internal static class TotalsMet
{
    public static RecordCheck Check { get; } = new TableCheck("totals: the records meet them", Run);

    private static void Run(CheckContext context)
    {
        foreach (ControlTotal total in ControlTotals.Of(context.Tables, context.Settings))
        {
            if (total.IsMet != false)
            {
                continue;
            }

            TotalRow row = total.Row;
            string span = (row.From, row.To) switch
            {
                ({ } from, { } to) => $" from {from:yyyy-MM-dd} to {to:yyyy-MM-dd}",
                ({ } from, null) => $" from {from:yyyy-MM-dd} on",
                (null, { } to) => $" up to {to:yyyy-MM-dd}",
                _ => "",
            };
            string what = $"{row.Table.Trim()} {row.Measure.Trim()}{span}";
            decimal difference = total.Difference!.Value;
            context.Report(ProblemCodes.TotalMissed, row, "amount",
                context.Notation.Text($"{what}: the records hold {total.Found:0.####}, the total is {row.Amount:0.####}: "
                    + $"{Math.Abs(difference):0.####} too {(difference < 0m ? "little" : "much")} (tolerance "
                    + $"{row.Tolerance ?? 0m:0.####})."),
                context.Notation.Text($"{row.Amount}"));
        }
    }
}
