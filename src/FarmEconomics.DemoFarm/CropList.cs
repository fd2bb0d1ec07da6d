using System.Globalization;

namespace FarmEconomics.DemoFarm;

/// <summary>
/// The crops the farm grows. Yields and prices are our own, set within the published bands that the plausibility test names.
/// </summary>
internal static class CropList
{
    // name | unit | group | family | storage days | store | water | per crate | yield per bed-foot | market price | wholesale part
    // | share portion | seed $/bed-foot | packing $/unit | grow min/bed-foot | harvest min/unit | pack min/unit | feet per tray | step |
    // perennial
    private const string Table = """
        Salad mix|lb|greens|mixed|2|cold room|1.2|6|1.35|14|0.70|0.3125|0.45|0.46|3.1|3.72|3.5|0|0.25|no
        Spinach|lb|greens|amaranth|2|cold room|1.1|6|1.16|13|0.70|0.3125|0.43|0.41|3.1|4.01|3.21|0|0.25|no
        Arugula|lb|greens|brassica|2|cold room|1.1|6|0.74|14|0.70|0.25|0.25|0.46|2.8|3.87|3.36|0|0.25|no
        Head lettuce|head|greens|daisy|3|cold room|1.2|24|2.75|3.75|0.55|1|0.2|0.04|2.2|0.43|0.38|14|1|no
        Kale|bunch|greens|brassica|4|cold room|1|24|2.3|3.75|0.58|1|0.15|0.05|2.7|1.08|0.51|24|1|no
        Chard|bunch|greens|amaranth|4|cold room|1|24|2.5|3.75|0.58|1|0.15|0.05|2.7|1.08|0.51|24|1|no
        Bok choy|head|greens|brassica|4|cold room|1.1|20|2.2|3|0.60|1|0.15|0.04|2.5|0.57|0.58|20|1|no
        Pea shoots|lb|microgreens|legume|6|cold room|0.2|4|0.56|25|0.75|0.125|1.43|1.22|5|5.04|6.41|1|0.25|no
        Micro mix|lb|microgreens|mixed|6|cold room|0.2|4|0.5|32|0.75|0|2.09|1.49|5.5|6.3|7|1|0.25|no
        Radish|bunch|roots|brassica|6|cold room|0.9|24|2.94|3.5|0.58|1|0.18|0.04|2.1|1.28|0.72|0|1|no
        Salad turnips|bunch|roots|brassica|6|cold room|1|24|1.97|3.75|0.60|1|0.18|0.04|2.1|1.28|0.72|0|1|no
        Carrots|lb|roots|carrot|180|cold room|1|25|2.14|3.2|0.55|1.5|0.25|0.07|3|1.03|0.66|0|0.5|no
        Beets|lb|roots|amaranth|150|cold room|1|25|1.97|3.5|0.55|1.5|0.2|0.07|2.9|1.14|0.72|0|0.5|no
        Winter radish|lb|roots|brassica|100|cold room|0.9|25|1.72|2.9|0.58|1|0.12|0.07|2.2|1.01|0.72|0|0.5|no
        Rutabaga|lb|roots|brassica|150|cold room|0.9|30|1.97|2.2|0.58|1.5|0.1|0.05|2.2|1.01|0.58|0|0.5|no
        Parsnips|lb|roots|carrot|150|cold room|0.9|25|1.48|3.5|0.60|1|0.2|0.07|3.6|1.85|0.88|0|0.5|no
        Celeriac|lb|roots|carrot|150|cold room|1.2|25|1.35|3.25|0.60|1|0.2|0.07|2.7|1.72|1.17|30|0.5|no
        Scallions|bunch|alliums|allium|6|cold room|1|36|3.07|3|0.58|1|0.25|0.04|2.7|1.14|0.58|22|1|no
        Onions|lb|alliums|allium|170|root cellar|0.9|40|2.76|2.6|0.58|1.5|0.25|0.04|2.5|1.01|0.51|40|0.5|no
        Leeks|lb|alliums|allium|40|cold room|1|25|3.1|3.75|0.60|1|0.23|0.07|3.1|1.48|0.93|40|0.5|no
        Garlic|lb|alliums|allium|200|root cellar|0.7|20|0.56|15|0.70|0.25|0.35|0.11|2.4|3.43|2.92|0|0.25|no
        Potatoes|lb|field|nightshade|200|root cellar|0.9|40|2.14|2.7|0.55|2|0.43|0.04|1.9|1.08|0.45|0|0.5|no
        Winter squash|lb|field|cucurbit|110|root cellar|0.8|40|2.03|2.15|0.60|3|0.12|0.03|1|0.35|0.18|24|0.5|no
        Cabbage|lb|field|brassica|120|root cellar|1.1|40|2.7|1.9|0.60|3|0.12|0.03|1.8|0.43|0.3|26|0.5|no
        Broccoli|lb|field|brassica|5|cold room|1.1|20|0.69|4.25|0.60|1|0.18|0.08|2.8|2.72|1.3|26|0.5|no
        Kohlrabi|lb|field|brassica|14|cold room|1|25|1.9|2.75|0.60|1|0.15|0.05|2.2|1.01|0.72|20|0.5|no
        Snap beans|lb|fruiting|legume|4|cold room|1|20|1.41|5.9|0.62|0.75|0.18|0.07|1.9|8.01|0.88|0|0.5|no
        Snap peas|lb|fruiting|legume|4|cold room|1|20|0.52|7.5|0.62|0.5|0.31|0.08|3.4|9.73|0.88|0|0.5|no
        Zucchini|lb|fruiting|cucurbit|6|cold room|1.1|30|2.8|2.4|0.55|1.25|0.1|0.04|1.8|0.64|0.36|20|0.5|no
        Cucumbers|lb|fruiting|cucurbit|6|cold room|1.3|30|3.19|3.25|0.58|1|0.2|0.04|3.4|0.71|0.36|20|0.5|no
        Tomatoes|lb|fruiting|nightshade|7|pack shed|1.4|20|5.4|5.4|0.62|1.5|0.53|0.07|12.3|0.86|0.51|18|0.5|no
        Cherry tomatoes|pint|fruiting|nightshade|6|pack shed|1.4|12|6.87|5.5|0.65|1|0.51|0.3|15.7|5.38|1.03|18|1|no
        Peppers|lb|fruiting|nightshade|8|cold room|1.2|20|1.78|4.9|0.62|0.75|0.37|0.07|4|1.14|0.58|22|0.5|no
        Eggplant|lb|fruiting|nightshade|6|cold room|1.2|20|2.09|4.3|0.60|0.75|0.35|0.07|3.8|1.01|0.58|22|0.5|no
        Melons|each|fruiting|cucurbit|7|pack shed|1.1|10|0.52|4.5|0.65|0|0.25|0.07|2.9|1.28|0.45|22|1|no
        Basil|bunch|herbs|mint|4|pack shed|1.2|36|3.19|3|0.60|1|0.25|0.05|2.9|1.14|0.45|16|1|no
        Cilantro|bunch|herbs|carrot|5|cold room|1|36|2.45|2.75|0.58|1|0.15|0.04|2.2|1.14|0.51|0|1|no
        Parsley|bunch|herbs|carrot|4|cold room|1|36|3.68|2.75|0.58|1|0.15|0.04|2.5|1.01|0.51|24|1|no
        Asparagus|lb|perennials|asparagus|6|cold room|0.6|20|0.32|8|0.70|0.5|0|0.08|1.2|4.29|2.05|0|0.5|yes
        Rhubarb|lb|perennials|knotweed|6|cold room|0.6|20|1.48|3.75|0.60|1|0|0.05|1.1|1.01|0.58|0|0.5|yes
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
