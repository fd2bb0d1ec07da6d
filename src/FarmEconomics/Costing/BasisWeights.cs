using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Costing;

/// <summary>What the plantings of a crop year answer to the basis of one pool.</summary>
internal sealed class BasisWeights(PoolUserFinder finder, PoolUsers users) : IBasisWeights
{
    private Dictionary<int, int>? harvestDays;

    private Pool Pool => users.Pool;

    public decimal BedFeet(int planting) => At(planting).Planting.Beds.Where(Serves).Sum(bed => bed.BedFeet);

    public decimal BedFootDays(int planting)
    {
        Enterprise enterprise = At(planting);
        decimal sum = 0m;
        for (int i = 0; i < enterprise.Planting.Beds.Count; i++)
        {
            sum += Serves(enterprise.Planting.Beds[i]) ? enterprise.BedFootDaysByRow[i] : 0m;
        }

        return sum;
    }

    public decimal TrayDays(int planting) => At(planting).TrayDays;

    public decimal Harvested(int planting) => At(planting).Harvested;

    public decimal HarvestDays(int planting)
    {
        harvestDays ??= finder.Trace.LotsOfYear(finder.Year).Where(lot => lot.Quantity > 0m)
            .GroupBy(lot => lot.Enterprise.Index).ToDictionary(lots => lots.Key, lots => lots.Select(lot => lot.Date).Distinct().Count());
        return harvestDays.GetValueOrDefault(At(planting).Index);
    }

    public decimal UnitDays(int planting)
    {
        // A crop that is never held needs no store, so only one that was held is worth a warning.
        decimal unitDays = finder.Trace.UnitDaysOf(At(planting));
        return unitDays > 0m ? StoreShare(At(planting).Crop) * unitDays : 0m;
    }

    public decimal WaterNeed(int planting)
    {
        Crop crop = At(planting).Crop;
        if (crop.Row.WaterNeed is null)
        {
            finder.WarnOnce(Pool, CostingProblems.MissingWaterNeed(Pool, crop));
        }

        return crop.Row.WaterNeed ?? 1m;
    }

    public void Each(Func<int, decimal> weight)
    {
        for (int i = 0; i < users.OfEnterprise.Length; i++)
        {
            users.OfEnterprise[i] = Math.Max(0m, weight(i));
        }
    }

    public void EachInCrates(Func<int, decimal> quantity)
    {
        decimal[] quantities = [.. Enumerable.Range(0, users.OfEnterprise.Length).Select(quantity)];
        decimal all = 0m;
        decimal unknown = 0m;
        decimal[] values = new decimal[quantities.Length];
        for (int i = 0; i < quantities.Length; i++)
        {
            values[i] = quantities[i] > 0m ? Math.Max(0m, At(i).SalesValue.Amount) : 0m;
            all += values[i];
            unknown += CrateSizes.IsKnown(At(i).Crop) ? 0m : values[i];
        }

        if (unknown * 2m <= all)
        {
            Each(i => Crates(At(i).Crop, quantities[i]));
            return;
        }

        users.BasisUsed = new Basis(BasisKind.SalesValue);
        finder.WarnOnce(Pool, CostingProblems.CratesUnknown(Pool, finder.Year, unknown / all, finder.Records.Settings.Notation));

        // All together they stay the estimated crates, so that written use in crates has the same unit.
        decimal crates = quantities.Select((units, i) => finder.CrateSizes.Of(At(i).Crop) is { } size ? units / size : 0m).Sum();
        Each(i => crates > 0m ? crates * values[i] / all : values[i]);
    }

    public void AddHours(Stage? stage)
    {
        for (int i = 0; i < users.OfEnterprise.Length; i++)
        {
            users.OfEnterprise[i] += stage is { } one ? finder.Hours[i][(int)one] : finder.Hours[i].Sum();
        }
    }

    public void EachBySales()
    {
        if (Pool.Channel is not { } channel)
        {
            Each(i => At(i).SalesValue.Amount);
            return;
        }

        // A channel's pool follows its own sales; goods without money follow their list value, else their crates.
        foreach (Func<Enterprise, ChannelSum, decimal> weight in new Func<Enterprise, ChannelSum, decimal>[]
        {
            (_, sum) => ExactUnits.Money(sum.Amount).Amount,
            (_, sum) => ExactUnits.Money(sum.ListValue).Amount,
            (enterprise, sum) => Crates(enterprise.Crop, ExactUnits.Value(sum.Quantity)),
        })
        {
            // Credits take off what was sold; a planting that only gave money back uses nothing.
            Each(i => weight(At(i), finder.Trace.Valuer.Results.Of(At(i), channel)));
            if (users.OfEnterprise.Sum() > 0m)
            {
                return;
            }
        }
    }

    public void AddRates()
    {
        foreach (InputRateRow row in finder.Records.Tables.InputRates)
        {
            if (finder.Records.Pool(row.Pool) != Pool)
            {
                continue;
            }

            Crop crop = finder.Records.Crop(row.Crop);
            for (int i = 0; i < users.OfEnterprise.Length; i++)
            {
                users.OfEnterprise[i] += At(i).Crop == crop ? row.Rate * RateCount.Of(At(i), row.Per) : 0m;
            }
        }
    }

    private Enterprise At(int planting) => finder.Enterprises[planting];

    private bool Serves(BedPlanting bed) =>
        string.IsNullOrWhiteSpace(Pool.Row.Structure)
        || string.Equals(Pool.Row.Structure.Trim(), bed.Bed.Structure, StringComparison.OrdinalIgnoreCase);

    private decimal Crates(Crop crop, decimal quantity)
    {
        if (quantity <= 0m)
        {
            return 0m;
        }

        decimal? size = finder.CrateSizes.Of(crop);
        if (!CrateSizes.IsKnown(crop))
        {
            finder.WarnOnce(Pool, CostingProblems.MissingUnitsPerCrate(Pool, crop, size, finder.Records.Settings.Notation));
        }

        return size is { } units ? quantity / units : 0m;
    }

    private decimal StoreShare(Crop crop)
    {
        if (CrateDays.ShareIn(Pool, crop, finder.CrateDayPools) is { } share)
        {
            return share;
        }

        finder.WarnOnce(Pool, CostingProblems.MissingStore(Pool, crop));
        return 0m;
    }
}
