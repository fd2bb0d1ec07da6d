using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Pricing;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Answers;

/// <summary>The columns of the list of prices.</summary>
public enum PriceColumn
{
    /// <summary>The crop.</summary>
    Crop,

    /// <summary>The unit it is mostly sold in.</summary>
    Unit,

    /// <summary>What a unit sold for.</summary>
    SoldFor,

    /// <summary>The price to ask.</summary>
    AtLeast,

    /// <summary>By how much that is more.</summary>
    RaiseBy,

    /// <summary>The price that pays full cost.</summary>
    BreakEven,

    /// <summary>The season's lowest and highest price.</summary>
    Range,
}

/// <summary>Every crop's price in a channel, by what to do with it; and what those prices rest on, crop by crop.</summary>
internal static class PriceList
{
    private static readonly (PriceStanding Standing, string Title, string Words)[] Groups =
    [
        (PriceStanding.Raise, "Raise", "sold below full cost"),
        (PriceStanding.WhenYouCan, "Raise when you can", ""),
        (PriceStanding.Keep, "Keep", "what you got, or your list price, is enough"),
        (PriceStanding.CannotBePriced, "Can't be priced", "full cost is far above anything it ever sold for: see whether to keep it"),
        (PriceStanding.Unknown, "Can't tell", "see below"),
    ];

    internal static TableBlock Of(ReviewedFarm farm, PriceFindings found)
    {
        Notation notation = farm.Notation;
        ReportTable table = new ReportTable(Caption(found), notation)
            .Column("Crop").As(PriceColumn.Crop)
            .Column("Unit").As(PriceColumn.Unit)
            .Column("Sold for", Look.Rate).As(PriceColumn.SoldFor)
            .Column("At least", Look.Rate).As(PriceColumn.AtLeast)
            .Column("Raise by", Look.Rate).As(PriceColumn.RaiseBy).HiddenOnPhone()
            .Column("Break-even", Look.Rate).As(PriceColumn.BreakEven)
            .Column("Your range").As(PriceColumn.Range).HiddenOnPhone();
        foreach ((PriceStanding standing, string title, string words) in Groups)
        {
            List<CropPrice> crops = [.. found[standing]];
            if (crops.Count > 0)
            {
                string said = words.Length > 0 ? words : $"paid every cost, but {PriceFindings.LessThanWanted(found.Book)}";
                table.Group($"{title}: {crops.Count}", said);
                crops.ForEach(price => table.Row(Row(farm, price)));
            }
        }

        AddWithoutSales(table, farm, found);
        return new TableBlock(PricesBlock.Sheet, $"What to ask at {found.Channel.Name}", table) { Rows = 0 };
    }

    private static void AddWithoutSales(ReportTable table, ReviewedFarm farm, PriceFindings found)
    {
        if (found.Elsewhere.Count > 0)
        {
            table.Group(
                $"Not sold there in {farm.Season.CropYear}: {found.Elsewhere.Count}",
                "its part of the channel's cost is taken to be that of the crops that were, in proportion to sales"
            );
            foreach (ElsewherePrice price in found.Elsewhere)
            {
                Result even = price.Prices.For(price.Crop.ToBase(1m, price.Unit)).FullCost;
                table.Row(Crop(farm, price.Crop), price.Unit, "", Asked(price.Advice), "", even, "");
            }
        }

        if (found.Without.Count > 0)
        {
            table.Group($"No price to work out: {found.Without.Count}");
            foreach (CropWithoutPrice missing in found.Without)
            {
                table.Row(Crop(farm, missing.Crop), missing.Crop.Unit, ReportCell.Missing(missing.Reason), "", "", "", "");
            }
        }
    }

    /// <summary>What the prices of a channel rest on: both break-even prices, what is wanted, list and reference.</summary>
    internal static ReportTable Steps(ReviewedFarm farm, PriceFindings found)
    {
        ReportTable table = new ReportTable($"From break-even to what is wanted, {found.Channel.Name}", farm.Notation)
            .Column("Crop").Column("Unit").Column("Break-even, short run", Look.Rate).Column("Break-even", Look.Rate)
            .Column("Wanted", Look.Rate).Column("List price", Look.Rate).Column("Reference", Look.Rate)
            .Note("Short run: below it each unit sold loses money at once. "
                + "Break-even: pays full cost, the crop's part of shared cost and of the channel included. "
                + "Wanted: never under full cost. A fee is in all three.")
            .Note("Reference prices are somebody else's and enter no other figure.");
        foreach (CropPrice price in found.Book.In(found.Channel))
        {
            decimal size = price.BaseUnits(price.SellingUnit);
            PriceSet set = price.Prices.For(size);
            table.Row(Crop(farm, price.Crop), price.SellingUnit, set.Floor, set.FullCost,
                ((ReportCell)set.Target).Marked(set.TargetIsFullCost ? "What is wanted is less than labor cost: full cost stands." : null),
                PriceTables.Times(price.ListPrice, size), price.References.Count == 0 ? "" : PriceTables.Times(price.Reference, size));
        }

        foreach (ElsewherePrice price in found.Elsewhere)
        {
            decimal size = price.Crop.ToBase(1m, price.Unit);
            PriceSet set = price.Prices.For(size);
            ReportCell even = set.FullCost, wanted = set.Target;
            table.Row(Crop(farm, price.Crop), price.Unit, set.Floor, even.Marked(PriceWords.Elsewhere), wanted.Marked(PriceWords.Elsewhere),
                PriceTables.Times(price.ListPrice, size), "");
        }

        return table;
    }

    /// <summary>What the season's sales there brought against full cost and against what is wanted.</summary>
    internal static ReportTable Against(ReviewedFarm farm, PriceFindings found) =>
        new ReportTable($"Over the season at {found.Channel.Name}, after fees", farm.Notation).Of<CropPrice>()
            .Column("Crop", price => Crop(farm, price.Crop))
            .Column("Sold", Look.Quantity, price => price.Sold.Quantity / price.BaseUnits(price.SellingUnit))
            .Column("Unit", price => price.SellingUnit)
            .Column("Against full cost", Look.WholeMoney, price => price.AgainstFullCost).AsChange().WithBar()
            .Column("Against what is wanted", Look.WholeMoney, price => price.AgainstTarget).AsChange()
            .Rows(found.Book.In(found.Channel).OrderBy(price => price.AgainstFullCost.Value ?? 0m).ThenBy(price => price.Crop.Index))
            .Note("What came in after fees, less what full cost (or what is wanted) would have brought; below 0 it is short.");

    /// <summary>The crop, leading to its page.</summary>
    internal static ReportCell Crop(ReviewedFarm farm, Crop crop) => ((ReportCell)crop.Name).To(PageTarget.Crop(farm.Slugs[crop.Name]));

    private static ReportCell[] Row(ReviewedFarm farm, CropPrice price)
    {
        decimal size = price.BaseUnits(price.SellingUnit);
        PriceAdvice advice = price.Advice(price.SellingUnit);
        Result got = PriceTables.Times(price.Realized, size);
        ReportCell more =
            advice is { Kind: AdviceKind.AtLeast, Price.Value: { } asked } && got.Value is { } had && asked > had ? asked - had : "";
        return
        [
            Crop(farm, price.Crop),
            price.SellingUnit,
            got,
            Asked(advice),
            more,
            PriceTables.Times(price.Prices.FullCost, size),
            Range(price, size, farm.Notation),
        ];
    }

    private static ReportCell Asked(PriceAdvice advice) =>
        advice.Kind switch
        {
            AdviceKind.CannotBePriced => "",
            AdviceKind.Unknown => ReportCell.Missing(advice.Price.Reason ?? "not recorded"),
            _ => ((ReportCell)advice.Price).Marked(
                advice.AtNormalYield ? "Its yield failed by its own record: at least is for a normal yield." : null
            ),
        };

    private static string Range(CropPrice price, decimal size, Notation notation)
    {
        if (PriceTables.Times(price.Lowest, size).Value is not { } low || PriceTables.Times(price.Highest, size).Value is not { } high)
        {
            return "";
        }

        string from = notation.Number(low, Look.Rate), to = notation.Number(high, Look.Rate);
        return from == to ? from : $"{from}–{to}";
    }

    private static string Caption(PriceFindings found)
    {
        decimal fee = found.Channel.Row.FeePercent ?? 0m;
        string fees = fee > 0m ? found.Book.Season.Notation.Text($"; the {fee:0.##}% fee is in it") : "";
        return $"“At least” {PriceFindings.Pays(found.Book)}{fees}. Break-even pays full cost and no more. Your range: "
            + $"lowest and highest sale of {found.Book.Season.CropYear}.";
    }
}
