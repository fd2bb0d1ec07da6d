using System.Globalization;

namespace FarmEconomics.DemoFarm;

/// <summary>The crop plan: what goes in where and when, in successions. The same plan every year; the season moves it.</summary>
internal static class CropPlan
{
    /// <summary>A line of the plan.</summary>
    /// <param name="Crop">The crop.</param>
    /// <param name="Place">Structure, or "field".</param>
    /// <param name="InBed">Month and day the first succession goes in.</param>
    /// <param name="YearBefore">True when it goes in the autumn before its crop year.</param>
    /// <param name="Count">Successions.</param>
    /// <param name="Every">Days between successions.</param>
    /// <param name="Feet">Bed-feet of each.</param>
    /// <param name="Nursery">Days in trays before; 0: sown in place.</param>
    /// <param name="ToPick">Days in bed to the first pick.</param>
    /// <param name="Span">Days from the first pick to the last.</param>
    public sealed record Line(
        string Crop,
        string Place,
        (int Month, int Day) InBed,
        bool YearBefore,
        int Count,
        int Every,
        int Feet,
        int Nursery,
        int ToPick,
        int Span
    );

    // crop | place | in bed (- = the year before) | successions | days between | bed-feet | days in trays | days to first pick | days of
    // picking
    private const string Table = """
        Salad mix|Warm House|02-05|1|0|75|0|42|26
        Salad mix|Long Tunnel|03-05|1|0|55|0|45|14
        Salad mix|Ridge Tunnel|03-28|1|0|55|0|40|19
        Salad mix|field|04-20|15|10|50|0|40|12
        Salad mix|Long Tunnel|10-06|1|0|110|0|42|34
        Salad mix|Warm House|10-06|1|0|75|0|45|32
        Spinach|Warm House|02-05|1|0|40|0|42|24
        Spinach|Long Tunnel|-09-12|1|0|60|0|172|45
        Spinach|Ridge Tunnel|-09-12|1|0|60|0|188|42
        Spinach|field|04-10|3|16|50|0|43|15
        Spinach|field|08-08|3|12|75|0|44|22
        Spinach|Long Tunnel|10-05|1|0|60|0|46|32
        Spinach|Warm House|10-06|1|0|40|0|46|30
        Arugula|Warm House|02-08|1|0|45|0|41|24
        Arugula|field|04-12|12|12|25|0|41|12
        Arugula|Long Tunnel|10-05|1|0|70|0|42|34
        Head lettuce|Long Tunnel|03-28|1|0|90|32|32|8
        Head lettuce|Ridge Tunnel|03-30|1|0|90|32|30|9
        Head lettuce|field|05-06|15|8|50|28|38|11
        Kale|field|05-14|1|0|190|34|40|125
        Kale|field|07-18|1|0|110|30|46|80
        Chard|field|05-20|1|0|120|30|42|110
        Bok choy|field|05-06|1|0|40|21|30|12
        Bok choy|field|08-08|2|16|50|21|32|14
        Radish|Ridge Tunnel|03-22|1|0|40|0|32|8
        Radish|field|04-28|9|13|50|0|28|10
        Salad turnips|field|05-02|6|20|50|0|42|14
        Carrots|Ridge Tunnel|03-01|1|0|90|0|66|4
        Carrots|field|05-01|4|18|100|0|70|20
        Carrots|field|07-06|1|0|720|0|84|16
        Beets|field|05-05|2|28|100|0|58|20
        Beets|field|07-08|1|0|340|0|78|18
        Winter radish|field|08-01|1|0|140|0|60|14
        Rutabaga|field|06-22|1|0|140|0|90|18
        Parsnips|field|05-04|1|0|180|0|126|30
        Celeriac|field|05-22|1|0|120|70|118|14
        Scallions|Ridge Tunnel|-09-14|1|0|45|0|208|22
        Scallions|field|05-10|4|24|50|45|52|20
        Onions|field|05-04|1|0|600|72|95|12
        Leeks|field|05-20|1|0|145|74|112|45
        Garlic|field|-10-12|1|0|420|0|280|5
        Potatoes|field|05-08|1|0|250|0|90|18
        Potatoes|field|05-16|1|0|620|0|116|14
        Winter squash|field|06-02|1|0|820|18|92|12
        Cabbage|field|05-12|1|0|110|34|66|21
        Cabbage|field|06-20|1|0|210|32|100|12
        Broccoli|field|05-10|1|0|120|32|58|14
        Broccoli|field|07-14|1|0|180|30|60|18
        Kohlrabi|field|05-08|1|0|50|24|38|14
        Kohlrabi|field|07-28|1|0|75|22|40|18
        Snap beans|field|05-26|4|15|100|0|53|15
        Snap peas|field|04-22|2|14|110|0|62|17
        Zucchini|field|05-29|3|20|100|20|36|36
        Cucumbers|Ridge Tunnel|05-10|1|0|90|22|42|65
        Cucumbers|field|06-05|1|0|170|18|46|36
        Tomatoes|Warm House|04-22|1|0|180|48|67|92
        Tomatoes|Long Tunnel|05-08|1|0|270|46|72|72
        Cherry tomatoes|Long Tunnel|05-08|1|0|90|46|66|78
        Peppers|Ridge Tunnel|05-15|1|0|180|56|66|66
        Eggplant|Ridge Tunnel|05-15|1|0|90|56|70|60
        Melons|field|06-03|1|0|190|24|74|20
        Basil|Warm House|05-10|1|0|45|34|34|95
        Cilantro|field|05-04|6|20|25|0|46|12
        Parsley|field|05-14|1|0|100|40|42|108
        """;

    public static readonly IReadOnlyList<Line> Lines = [.. Table.Split('\n').Select(Parse)];

    private static Line Parse(string line)
    {
        var f = line.Trim().Split('|');
        int N(int i) => int.Parse(f[i], CultureInfo.InvariantCulture);
        var before = f[2].StartsWith('-');
        var day = f[2].TrimStart('-').Split('-');
        return new Line(
            f[0], f[1], (int.Parse(day[0], CultureInfo.InvariantCulture), int.Parse(day[1], CultureInfo.InvariantCulture)), before,
            N(3), N(4), N(5), N(6), N(7), N(8));
    }
}
