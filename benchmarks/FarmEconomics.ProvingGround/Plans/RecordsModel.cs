using FarmEconomics.Files;
using FarmEconomics.ProvingGround.World;
using FarmEconomics.Records;

namespace FarmEconomics.ProvingGround.Plans;

/// <summary>
/// The plain linear program's model: means of three seasons of records and nothing else. Sowing weeks from the earliest to the latest on
/// record; yield, hours and cost the crop's means; each channel takes the most it took in that week or the two on either side in any
/// year, at the mean part of list price it paid, and nothing more.
/// </summary>
internal sealed class RecordsModel
{
    private const int Around = 2;
    private readonly RecordsFacts facts;
    private readonly RecordsHours hours;

    private RecordsModel(RecordsFacts facts)
    {
        this.facts = facts;
        hours = new RecordsHours(facts);
    }

    internal static PlanModel Of(FarmFolder folder)
    {
        RecordsModel model = new(new RecordsFacts(folder));
        return model.Make((double)folder.Review!.Records.Settings.OwnerWage.GetValueOrDefault());
    }

    private PlanModel Make(double ownerWage)
    {
        RecordTables tables = facts.Tables;
        string[] shares = [.. tables.Channels.Where(row => row.Kind == ChannelKind.Share).Select(row => row.Channel)];
        int last = facts.Years[^1];
        List<int> delivered = [.. tables.Sales.Where(row => shares.Contains(row.Channel) && row.Date.Year == last)
            .Select(row => RecordsFacts.WeekOf(row.Date)).Distinct()];
        double paid = (double)tables.Income.Where(row => shares.Contains(row.Channel) && row.Date.Year == last).Sum(row => row.Amount);
        double hired = facts.Worked(row => row.Date.Year == last && hours.IsHired(row));
        double wages = facts.Spent(row => row.Date.Year == last && row.Category is "wages" or "payroll taxes");
        return new PlanModel
        {
            Sowings = [.. Enumerable.Range(0, tables.Crops.Count).SelectMany(SowingsOf)],
            Crops = [.. Enumerable.Range(0, tables.Crops.Count).Select(c => CropOf(c, shares))],
            BedFeet = [BedFeet(bed => string.IsNullOrEmpty(bed.Structure)), BedFeet(bed => !string.IsNullOrEmpty(bed.Structure))],
            OwnHours = TruthModel.PerWeek(hours.OwnLeft),
            HiredHours = TruthModel.PerWeek(hours.HiredLeft),
            HourCost = (ownerWage, hired > 0.0 ? wages / hired : ownerWage),
            BoxTarget = TruthModel.PerWeek(week => delivered.Contains(week) ? paid / delivered.Count : 0.0),
            BuyIn = 1.0,
        };
    }

    private double BedFeet(Func<BedRow, bool> which) => (double)facts.Tables.Beds.Where(which).Sum(bed => bed.LengthFt);

    private IEnumerable<Sowing> SowingsOf(int c)
    {
        List<(int In, int Weeks)> seen = facts.Seen[c];
        if (seen.Count == 0 || facts.Feet[c] <= 0.0)
        {
            yield break;
        }

        int weeks = seen.Select(one => one.Weeks).Order().ElementAt(seen.Count / 2);
        double cost = CostPerFoot(c);
        double grow = hours.GrowPerFoot(c, weeks);
        int cover = Covered(c) ? 1 : 0;
        for (int sown = seen.Min(one => one.In); sown <= seen.Max(one => one.In); sown++)
        {
            double[] feet = new double[Farm.Weeks];
            double[] work = new double[Farm.Weeks];
            double[] yield = new double[Farm.Weeks];
            for (int since = 0; since < weeks && sown + since < Farm.Weeks; since++)
            {
                feet[sown + since] = 1.0;
                work[sown + since] = grow / weeks;
                yield[sown + since] = facts.YieldAt[c][since] / facts.Feet[c];
            }

            yield return new Sowing(c, cover, feet, work, [yield]) { Cost = cost, Week = sown };
        }
    }

    private bool Covered(int c)
    {
        HashSet<string> covered = [.. facts.Tables.Beds.Where(bed => !string.IsNullOrEmpty(bed.Structure)).Select(bed => bed.Bed)];
        return facts.Tables.Plantings.Any(row => row.Crop == facts.Tables.Crops[c].Crop && covered.Contains(row.Bed));
    }

    /// <summary>$ a bed-foot: bills that name the crop over its bed-feet, the others over all bed-feet.</summary>
    private double CostPerFoot(int c)
    {
        string name = facts.Tables.Crops[c].Crop;
        return (facts.Spent(row => row.Category == "seed" && row.Crop == name) / facts.Feet[c])
            + (facts.Spent(row => row.Category is "seed" or "compost" && string.IsNullOrEmpty(row.Crop)) / facts.Feet.Sum());
    }

    private CropModel CropOf(int c, string[] shares)
    {
        CropRow crop = facts.Tables.Crops[c];
        List<SaleStep>[] steps = [.. Enumerable.Range(0, Farm.Weeks).Select(_ => new List<SaleStep>())];
        foreach (ChannelRow channel in facts.Tables.Channels.Where(row => HasPrices(row)))
        {
            AddSteps(crop.Crop, channel, steps);
        }

        double boxed = facts.Tables.Sales.Where(row => row.Crop == crop.Crop && shares.Contains(row.Channel))
            .Select(row => (double)row.Quantity).DefaultIfEmpty(0.0).Max();
        double crates = facts.Tables.Sales.Sum(row => (double)row.Quantity / UnitsPerCrate(facts.IndexOf(row.Crop)));
        double packaging = crates > 0.0 ? facts.Spent(row => row.Category == "packaging") / crates / UnitsPerCrate(c) : 0.0;
        int keeps = Math.Max(1, (int)crop.StorageDays.GetValueOrDefault(7) / 7);
        return new CropModel((hours.HandlingPerUnit(c), packaging), keeps, [steps], (boxed, facts.ListPrice[c]));
    }

    private static bool HasPrices(ChannelRow row) => row.Kind is ChannelKind.Market or ChannelKind.Stand or ChannelKind.Wholesale;

    private double UnitsPerCrate(int c) => (double)facts.Tables.Crops[c].UnitsPerCrate.GetValueOrDefault(10);

    private void AddSteps(string crop, ChannelRow channel, List<SaleStep>[] steps)
    {
        List<SaleRow> sales =
            [.. facts.Tables.Sales.Where(row => row.Crop == crop && row.Channel == channel.Channel && row.UnitPrice > 0m)];
        if (sales.Count == 0)
        {
            return;
        }

        double part = sales.Average(row => (double)row.UnitPrice!.Value / facts.PriceOf(crop, channel.Channel, row.Date.Year));
        double net = part * facts.PriceOf(crop, channel.Channel, facts.Years[^1])
            * (1.0 - ((double)channel.FeePercent.GetValueOrDefault() / 100.0));
        ILookup<int, double> byWeek = sales.ToLookup(row => RecordsFacts.WeekOf(row.Date), row => (double)row.Quantity);
        for (int week = 0; week < Farm.Weeks; week++)
        {
            double most = Enumerable.Range(week - Around, (2 * Around) + 1).SelectMany(near => byWeek[near]).DefaultIfEmpty(0.0).Max();
            if (most > 0.0)
            {
                steps[week].Add(new SaleStep(most, net));
            }
        }
    }
}
