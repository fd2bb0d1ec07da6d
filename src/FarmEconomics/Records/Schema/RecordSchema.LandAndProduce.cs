using static FarmEconomics.Records.Schema.ColumnType;

namespace FarmEconomics.Records.Schema;

/// <content>The farm, its beds and crops, and what was picked and sold.</content>
public static partial class RecordSchema
{
    private const string CropUnit = "the crop's unit, or that of `unit`";

    private static IEnumerable<TableSchema> LandAndProduce() =>
    [
        new("farm", "one setting of the farm",
        [
            Must("setting", Text, "The setting's name, from the list of settings."),
            Must("value", Text, "Its value."),
        ])
        { Without = "Without farm.csv every setting keeps its default; with no owner wage and no interest rate, net return is shown before owner labor and before ownership cost." },
        new("crops", "a crop and the unit it is counted in",
        [
            Must("crop", Name, "The crop's name."),
            Must("unit", Name, "The unit it is counted in: lb, bunch, head, pint."),
            Col("group", Text, "A group the crop is shown under, such as greens or roots."),
            Col("family", Text, "The plant family."),
            Col("storage_days", Number, new(0m, 36_500m), "Days it keeps after harvest; blank: to the end of the crop year.") with { Unit = "days" },
            Ref("store", "pools", "The pool it is kept in, or several separated by `;`.") with { MaxLength = 1000 },
            Col("water_need", Number, new(0.001m, 1_000m) { OrZero = true }, "Need of water per bed-foot-day; 1 is average, and so is blank.") with { Unit = "ratio" },
            Col("units_per_crate", Number, new(0.001m, 100_000m), "How many of its units fill one crate; blank: estimated from what it sold for.") with { Unit = "units" },
            Col("perennial", YesNo, "Yes when a planting stays over several crop years."),
        ])
        { Required = true },
        new("units", "another unit of a crop: 1 bag = 0.3125 lb",
        [
            MustRef("crop", "crops", "The crop."),
            Must("unit", Name, "The other unit."),
            Must("base_units", Number, new(0.001m, 10_000m), "How many of the crop's own units one of it holds.") with { Unit = "the crop's unit" },
        ])
        { Without = "Without units.csv every quantity must be in the crop's own unit." },
        new("beds", "a permanent bed, or a shelf of trays",
        [
            Must("bed", Name, "The bed's name."),
            Must("length_ft", Number, Length, "Length of the bed.") with { Unit = Feet, MetricName = "length_m" },
            Col("width_in", Number, new(0.1m, 10_000m), "Width of the bed top; blank: the farm's standard width.") with { Unit = "in", MetricName = "width_cm" },
            Col("block", Text, "The block of beds it lies in."),
            Col("structure", Name, "The tunnel or house it lies in; blank: open field."),
            Col("from", Date, "First day the bed exists; blank: always."),
            Col("to", Date, "Last day the bed exists; blank: still there."),
        ])
        { Required = true },
        new("plantings", "one sowing or transplanting in one bed; the same planting may repeat with other beds",
        [
            Must("planting", Name, "The planting's name."),
            MustRef("crop", "crops", "The crop."),
            MustRef("bed", "beds", "The bed."),
            Must("bed_feet", Number, Length, "Length of bed it takes.") with { Unit = Feet, MetricName = "bed_meters" },
            Must("in_bed", Date, "The day it was sown or set in the bed."),
            Col("out_of_bed", Date, "The day the bed was free again; blank: the day after the last harvest."),
            Col("sown", Date, "The day it was sown in the nursery; blank: sown in place."),
            Col("trays", Number, new(0.001m, 100_000m) { OrZero = true }, "Trays in the nursery.") with { Unit = "trays" },
            Col("method", Text, "Sown in place, transplanted, and the like."),
            Col("variety", Text, "The variety."),
            Col("crop_year", Year, "The crop year, when it isn't that of the first harvest."),
        ])
        { Required = true },
        new("harvests", "what was picked on a day",
        [
            Must("date", Date, "The day of the harvest."),
            Ref("crop", "crops", "The crop; may be blank when the planting is named."),
            Ref("planting", "plantings", "The planting; may be blank when the crop is named."),
            Must("quantity", Number, QuantityOrNone, "What was picked, without what was culled.") with { Unit = CropUnit },
            Ref("unit", "units", "The unit; blank: the crop's own."),
            Col("culled", Number, QuantityOrNone, "Further quantity thrown out in the field.") with { Unit = CropUnit },
        ])
        { Required = true, OneOf = ["crop", "planting"] },
        new("sales", "what left the farm through any channel, the household's and the compost heap's included",
        [
            Must("date", Date, "The day it left."),
            MustRef("crop", "crops", "The crop."),
            MustRef("channel", "channels", "The channel it left through."),
            Must("quantity", Number, QuantityOrNone, "The quantity.") with { Unit = CropUnit },
            Ref("unit", "units", "The unit; blank: the crop's own."),
            Col("unit_price", Price, PriceFromZero, "Price of one unit.") with { Unit = "currency per unit of the row" },
            Col("amount", Money, AnyAmount, "Money for the whole row; counts before unit_price. Below 0 with quantity 0: a credit, money given back for what was sold.") with { Unit = Currency },
            Ref("planting", "plantings", "The planting it came from, when known."),
        ])
        { Required = true },
        new("channels", "a way goods leave the farm",
        [
            Must("channel", Name, "The channel's name."),
            Pick<ChannelKind>("kind", "What kind of channel it is.", required: true),
            Col("fee_percent", Percent, Part, "The channel's fee, in percent of the sale.") with { Unit = "%" },
            Ref("values_from", "channels", "The channel whose prices value goods that carry none."),
            Col("elasticity", Number, Elasticity, "How much more the channel takes for a lower price: 2 means 2% more sold for a price 1% lower; blank: 2. Only for market, stand and wholesale."),
        ])
        { Without = "Without channels.csv the kind and the fee of a channel are not known, so shares, household use, donations and waste can't be told from sales." },
        new("prices", "a list price",
        [
            MustRef("crop", "crops", "The crop."),
            Must("price", Price, PriceFromZero, "Price of one unit.") with { Unit = "currency per unit of the row" },
            Ref("unit", "units", "The unit; blank: the crop's own."),
            Ref("channel", "channels", "The channel; blank: all channels."),
            Col("from", Date, "First day the price holds; blank: always."),
            Col("reference", YesNo, "Yes for somebody else's price, such as a published market report; kept apart."),
        ])
        { Without = "Without prices.csv goods that carry no price are valued at the crop's average realised price only." },
        new("income", "money not tied to a crop",
        [
            Must("date", Date, "The day."),
            MustRef("channel", "channels", "A channel of kind share for share payments, of kind other for other farm income."),
            Must("amount", Money, AnyAmount, "Money received; negative when paid back.") with { Unit = Currency },
            Col("crop_year", Year, "The crop year a payment made early is for; blank: that of the date."),
            Col("note", Text, "A remark."),
        ])
        { Without = "Without income.csv share payments and other farm income are not known, so what the shares received earns nothing." },
    ];
}
