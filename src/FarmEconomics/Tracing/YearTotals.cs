using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>
/// What the rows of the sales table come to in each crop year, in cents, added up from the columns themselves and not from what
/// plantings were told: one side of the proof.
/// </summary>
internal sealed class YearTotals
{
    /// <summary>True when rows are dated in the year.</summary>
    internal bool HasRows { get; private set; }

    /// <summary>Amounts dated in the year, of all channels but shares.</summary>
    internal Int128 OutsideShares { get; private set; }

    /// <summary>Fees of what is dated in the year.</summary>
    internal Int128 Fees { get; private set; }

    /// <summary>True when one of them isn't 0.</summary>
    internal bool TakesFees { get; private set; }

    /// <summary>Parts dated in the year that no planting could take: amount, and value with household use at list value.</summary>
    internal Int128 Unassigned { get; private set; }

    internal Int128 UnassignedValue { get; private set; }

    internal Int128 UnassignedFees { get; private set; }

    /// <summary>Parts dated in the year that landed in another.</summary>
    internal Int128 Carried { get; private set; }

    internal Int128 CarriedFees { get; private set; }

    /// <summary>Parts dated in another year that landed in this one.</summary>
    internal Int128 Brought { get; private set; }

    internal Int128 BroughtFees { get; private set; }

    internal static Dictionary<int, YearTotals> Of(LotLedger ledger)
    {
        int crops = ledger.Dispositions.Records.Crops.Count;
        Dictionary<int, YearTotals>[] byCrop = new Dictionary<int, YearTotals>[crops];
        RowRanges.ByCrop(crops, ledger.Parts.Count, crop => byCrop[crop] = Of(ledger, crop));
        Dictionary<int, YearTotals> all = [];
        foreach ((int year, YearTotals own) in byCrop.SelectMany(crop => crop))
        {
            At(all, year).Add(own);
        }

        return all;
    }

    private static Dictionary<int, YearTotals> Of(LotLedger ledger, int crop)
    {
        DispositionTable table = ledger.Dispositions;
        FarmSettings settings = table.Records.Settings;
        Dictionary<int, YearTotals> years = [];
        YearTotals own = new();
        int window = 0;
        int until = int.MinValue;
        for (int i = table.Layout.Starts[crop]; i < table.Layout.Starts[crop + 1]; i++)
        {
            if (table.Day[i] >= until)
            {
                window = settings.WindowOf(DateOnly.FromDayNumber(table.Day[i]));
                until = settings.EndOf(window).DayNumber;
                own = At(years, window);
                own.HasRows = true;
            }

            own.OutsideShares += table.Kind(i) == ChannelKind.Share ? 0 : table.Amount[i];
            long fee = table.Fee(i);
            own.Fees += fee;
            own.TakesFees |= fee != 0;
            own.AddParts(ledger.Parts, i, window, years);
        }

        return years;
    }

    private static YearTotals At(Dictionary<int, YearTotals> years, int year)
    {
        if (!years.TryGetValue(year, out YearTotals? totals))
        {
            years[year] = totals = new YearTotals();
        }

        return totals;
    }

    private void AddParts(PartTable parts, int disposition, int window, Dictionary<int, YearTotals> years)
    {
        for (int part = parts.First[disposition]; part < parts.First[disposition + 1]; part++)
        {
            int enterprise = parts.EnterpriseOf(part);
            if (enterprise < 0)
            {
                Unassigned += parts.Amount(part);
                UnassignedValue +=
                    parts.Dispositions.Kind(disposition) == ChannelKind.Household ? parts.ListValue(part) : parts.Amount(part);
                UnassignedFees += parts.Fee(part);
            }
            else if (parts.Lots.Enterprises[enterprise].CropYear is var year && year != window)
            {
                YearTotals landed = At(years, year);
                Carried += parts.Amount(part);
                CarriedFees += parts.Fee(part);
                landed.Brought += parts.Amount(part);
                landed.BroughtFees += parts.Fee(part);
            }
        }
    }

    private void Add(YearTotals other)
    {
        OutsideShares += other.OutsideShares;
        Fees += other.Fees;
        HasRows |= other.HasRows;
        TakesFees |= other.TakesFees;
        Unassigned += other.Unassigned;
        UnassignedValue += other.UnassignedValue;
        UnassignedFees += other.UnassignedFees;
        Carried += other.Carried;
        CarriedFees += other.CarriedFees;
        Brought += other.Brought;
        BroughtFees += other.BroughtFees;
    }
}
