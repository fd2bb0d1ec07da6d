using System.Globalization;

namespace FarmEconomics.DemoFarm;

/// <summary>The crops the farm grows. Yields and prices are our own, set within the published bands that the plausibility test names.</summary>
internal static class CropList
{
    // name | unit | group | family | storage days | store | water | per crate | yield per bed-foot | market price | wholesale part
    // | share portion | seed $/bed-foot | packing $/unit | grow min/bed-foot | harvest min/unit | pack min/unit | feet per tray | step | perennial
    private const string Table = """
        Salad mix|lb|greens|mixed|2|cold room|1.2|6|1.1|13|0.70|0.3125|0.36|0.34|2.8|3.25|3|0|0.25|no
        Spinach|lb|greens|amaranth|2|cold room|1.1|6|0.95|12|0.70|0.3125|0.34|0.30|2.8|3.5|2.75|0|0.25|no
        Arugula|lb|greens|brassica|2|cold room|1.1|6|0.6|13|0.70|0.25|0.2|0.34|2.5|3.38|2.88|0|0.25|no
        Head lettuce|head|greens|daisy|3|cold room|1.2|24|2.35|3.5|0.55|1|0.16|0.03|2.0|0.38|0.33|14|1|no
        Kale|bunch|greens|brassica|4|cold room|1|24|2.2|3.5|0.58|1|0.12|0.04|2.4|0.94|0.44|24|1|no
        Chard|bunch|greens|amaranth|4|cold room|1|24|2.3|3.5|0.58|1|0.12|0.04|2.4|0.94|0.44|24|1|no
        Bok choy|head|greens|brassica|4|cold room|1.1|20|1.9|2.75|0.60|1|0.12|0.03|2.2|0.5|0.5|20|1|no
        Pea shoots|lb|microgreens|legume|6|cold room|0.2|4|0.56|24|0.75|0.125|1.3|0.9|5|4.4|5.5|1|0.25|no
        Micro mix|lb|microgreens|mixed|6|cold room|0.2|4|0.5|30|0.75|0|1.9|1.1|5.5|5.5|6|1|0.25|no
        Radish|bunch|roots|brassica|6|cold room|0.9|24|2.4|3.25|0.58|1|0.14|0.03|1.9|1.12|0.62|0|1|no
        Salad turnips|bunch|roots|brassica|6|cold room|1|24|1.6|3.5|0.60|1|0.14|0.03|1.9|1.12|0.62|0|1|no
        Carrots|lb|roots|carrot|180|cold room|1|25|1.75|3.1|0.55|1.5|0.20|0.05|2.7|0.9|0.56|0|0.5|no
        Beets|lb|roots|amaranth|150|cold room|1|25|1.6|3.25|0.55|1.5|0.16|0.05|2.6|1|0.62|0|0.5|no
        Winter radish|lb|roots|brassica|100|cold room|0.9|25|1.4|2.75|0.58|1|0.10|0.05|2|0.88|0.62|0|0.5|no
        Rutabaga|lb|roots|brassica|150|cold room|0.9|30|1.6|2|0.58|1.5|0.08|0.04|2|0.88|0.5|0|0.5|no
        Parsnips|lb|roots|carrot|150|cold room|0.9|25|1.2|3.25|0.60|1|0.16|0.05|3.2|1.62|0.75|0|0.5|no
        Celeriac|lb|roots|carrot|150|cold room|1.2|25|1.1|3|0.60|1|0.16|0.05|2.4|1.5|1|30|0.5|no
        Scallions|bunch|alliums|allium|6|cold room|1|36|2.5|2.75|0.58|1|0.20|0.03|2.4|1|0.5|22|1|no
        Onions|lb|alliums|allium|170|root cellar|0.9|40|2.25|2.4|0.58|1.5|0.20|0.03|2.2|0.88|0.44|40|0.5|no
        Leeks|lb|alliums|allium|40|cold room|1|25|2.7|3.5|0.60|1|0.18|0.05|2.8|1.3|0.8|40|0.5|no
        Garlic|lb|alliums|allium|200|root cellar|0.7|20|0.46|14|0.70|0.25|0.28|0.08|2.1|3|2.5|0|0.25|no
        Potatoes|lb|field|nightshade|200|root cellar|0.9|40|1.75|2.5|0.55|2|0.34|0.03|1.7|0.94|0.38|0|0.5|no
        Winter squash|lb|field|cucurbit|110|root cellar|0.8|40|1.65|2|0.60|3|0.10|0.02|0.9|0.31|0.15|24|0.5|no
        Cabbage|lb|field|brassica|120|root cellar|1.1|40|2.2|1.75|0.60|3|0.10|0.02|1.6|0.38|0.25|26|0.5|no
        Broccoli|lb|field|brassica|5|cold room|1.1|20|0.56|4|0.60|1|0.14|0.06|2.5|2.38|1.12|26|0.5|no
        Kohlrabi|lb|field|brassica|14|cold room|1|25|1.55|2.5|0.60|1|0.12|0.04|2|0.88|0.62|20|0.5|no
        Snap beans|lb|fruiting|legume|4|cold room|1|20|1.15|5.5|0.62|0.75|0.14|0.05|1.7|7|0.75|0|0.5|no
        Snap peas|lb|fruiting|legume|4|cold room|1|20|0.54|7|0.62|0.5|0.24|0.06|3|8.5|0.75|0|0.5|no
        Zucchini|lb|fruiting|cucurbit|6|cold room|1.1|30|2.5|2.25|0.55|1.25|0.08|0.03|1.6|0.56|0.31|20|0.5|no
        Cucumbers|lb|fruiting|cucurbit|6|cold room|1.3|30|2.6|3|0.58|1|0.16|0.03|3|0.62|0.31|20|0.5|no
        Tomatoes|lb|fruiting|nightshade|7|pack shed|1.4|20|4.4|5|0.62|1.5|0.42|0.05|11|0.75|0.44|18|0.5|no
        Cherry tomatoes|pint|fruiting|nightshade|6|pack shed|1.4|12|5.6|5|0.65|1|0.40|0.22|14|4.7|0.88|18|1|no
        Peppers|lb|fruiting|nightshade|8|cold room|1.2|20|1.45|4.5|0.62|0.75|0.30|0.05|3.6|1|0.5|22|0.5|no
        Eggplant|lb|fruiting|nightshade|6|cold room|1.2|20|1.7|4|0.60|0.75|0.28|0.05|3.4|0.88|0.5|22|0.5|no
        Melons|each|fruiting|cucurbit|7|pack shed|1.1|10|0.42|4|0.65|0|0.20|0.05|2.6|1.12|0.38|22|1|no
        Basil|bunch|herbs|mint|4|pack shed|1.2|36|2.6|2.75|0.60|1|0.20|0.04|2.6|1|0.38|16|1|no
        Cilantro|bunch|herbs|carrot|5|cold room|1|36|2|2.5|0.58|1|0.12|0.03|2|1|0.44|0|1|no
        Parsley|bunch|herbs|carrot|4|cold room|1|36|3|2.5|0.58|1|0.12|0.03|2.2|0.88|0.44|24|1|no
        Asparagus|lb|perennials|asparagus|6|cold room|0.6|20|0.26|7.5|0.70|0.5|0|0.06|1.1|3.75|1.75|0|0.5|yes
        Rhubarb|lb|perennials|knotweed|6|cold room|0.6|20|1.2|3.5|0.60|1|0|0.04|1.0|0.88|0.5|0|0.5|yes
        """;

    public static readonly IReadOnlyList<CropSpec> All = [.. Table.Split('\n').Select(Parse)];

    private static readonly Dictionary<string, CropSpec> ByName = All.ToDictionary(c => c.Name);

    public static CropSpec Get(string name) => ByName[name];

    private static CropSpec Parse(string line)
    {
        var f = line.Trim().Split('|');
        decimal N(int i) => decimal.Parse(f[i], CultureInfo.InvariantCulture);
        return new CropSpec(
            f[0], f[1], f[2], f[3], (int)N(4), f[5].Length == 0 ? null : f[5], N(6), N(7), N(8), N(9), N(10),
            N(11), N(12), N(13), N(14), N(15), N(16), N(17), N(18), f[19] == "yes");
    }
}
