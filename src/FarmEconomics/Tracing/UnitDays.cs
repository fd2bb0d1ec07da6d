namespace FarmEconomics.Tracing;

/// <summary>
/// Quantities times days held: from pick to the day sold or used (0 on the same day); what never was counts up to the day it stopped
/// keeping or the closing date.
/// </summary>
internal static class UnitDays
{
    /// <summary>In units of 10^-8 times days, by enterprise.</summary>
    internal static Int128[] Of(LotLedger ledger)
    {
        (LotTable lots, PartTable parts) = (ledger.Lots, ledger.Parts);
        Int128[] days = new Int128[lots.Enterprises.Count];
        for (int part = 0; part < parts.Count; part++)
        {
            if (parts.Source[part] is >= 0 and int lot)
            {
                days[lots.Enterprise[lot]] += (Int128)parts.Quantity[part] * parts.DaysHeld(part);
            }
        }

        int closing = lots.Records.AsOf.DayNumber;
        for (int lot = 0; lot < lots.Row.Length; lot++)
        {
            days[lots.Enterprise[lot]] += (Int128)lots.Remaining[lot] * (Math.Min(lots.KeptUntil[lot], closing) - lots.Day[lot]);
        }

        return days;
    }
}
