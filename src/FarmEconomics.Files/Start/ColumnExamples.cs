using FarmEconomics.Records;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Start;

/// <summary>A value for each column, as a grower would write it.</summary>
internal static class ColumnExamples
{
    private static readonly Dictionary<string, string> ByColumn = new()
    {
        ["farm.setting"] = "owner_wage",
        ["farm.value"] = "20",
        ["crops.unit"] = "head",
        ["crops.store"] = "cold room",
        ["crops.storage_days"] = "5",
        ["crops.units_per_crate"] = "24",
        ["units.unit"] = "case",
        ["units.base_units"] = "24",
        ["prices.price"] = "2.50",
        ["limits.limit"] = "labor",
        ["limits.unit"] = "hours a week",
        ["totals.table"] = "labor",
        ["totals.measure"] = "hours",
        ["totals.amount"] = "2310.75",
        ["totals.tolerance"] = "5",
        ["aliases.table"] = "crops",
        ["aliases.alias"] = "Head lettce",
        ["aliases.name"] = "Head lettuce",
        ["imports.import"] = "register",
        ["imports.table"] = "sales",
        ["imports.column"] = "crop",
        ["imports.source_column"] = "Item",
        ["imports.constant"] = "Saturday Market",
        ["imports.when"] = "LETT HD",
        ["imports.becomes"] = "Head lettuce",
        ["imports.format"] = "MM/DD/YYYY",
    };

    private static readonly Dictionary<string, string> ByName = new()
    {
        ["crop"] = "Head lettuce",
        ["unit"] = "head",
        ["group"] = "greens",
        ["family"] = "daisy",
        ["water_need"] = "1.2",
        ["kc_ini"] = "0.7",
        ["kc_mid"] = "1.05",
        ["kc_end"] = "0.95",
        ["ky"] = "1.1",
        ["ky_ini"] = "0.4",
        ["ky_dev"] = "0.4",
        ["ky_mid"] = "1.3",
        ["ky_late"] = "0.5",
        ["rain_in"] = "0.4",
        ["rain_mm"] = "10",
        ["tmin_f"] = "52",
        ["tmin_c"] = "11",
        ["tmax_f"] = "79",
        ["tmax_c"] = "26",
        ["et0_in"] = "0.19",
        ["et0_mm"] = "4.8",
        ["solar_mj"] = "21",
        ["wind_mph"] = "4.5",
        ["wind_ms"] = "2",
        ["dewpoint_f"] = "55",
        ["dewpoint_c"] = "13",
        ["gallons"] = "450",
        ["liters"] = "1700",
        ["sprinkler_hours"] = "24",
        ["soil_water_in_ft"] = "1.5",
        ["soil_water_mm_m"] = "125",
        ["efficiency_percent"] = "70",
        ["sprinkler_gph"] = "60",
        ["sprinkler_lph"] = "230",
        ["set_gallons"] = "900",
        ["set_liters"] = "3400",
        ["kwh"] = "11.4",
        ["generator_hours"] = "2",
        ["shed_order"] = "1",
        ["bed"] = "Lane 01",
        ["length_ft"] = "100",
        ["width_in"] = "30",
        ["length_m"] = "30",
        ["width_cm"] = "75",
        ["bed_meters"] = "15",
        ["block"] = "Lane",
        ["structure"] = "Warm house",
        ["planting"] = "Head lettuce 1",
        ["bed_feet"] = "50",
        ["in_bed"] = "2025-04-15",
        ["out_of_bed"] = "2025-06-20",
        ["sown"] = "2025-03-10",
        ["trays"] = "2",
        ["method"] = "transplanted",
        ["variety"] = "green butterhead",
        ["quantity"] = "48",
        ["culled"] = "3",
        ["channel"] = "Saturday Market",
        ["values_from"] = "Saturday Market",
        ["unit_price"] = "2.50",
        ["amount"] = "120.00",
        ["fee_percent"] = "5",
        ["elasticity"] = "2",
        ["worker"] = "Ada",
        ["hours"] = "3.5",
        ["task"] = "harvest",
        ["wage"] = "17.50",
        ["minutes"] = "2.5",
        ["rate"] = "0.36",
        ["category"] = "seed",
        ["payee"] = "the seed house",
        ["pool"] = "packaging",
        ["tax_line"] = "Seeds and plants",
        ["capacity"] = "90",
        ["user"] = "cold room",
        ["load"] = "Cold room compressor",
        ["watts"] = "780",
        ["hours_per_day"] = "8.5",
        ["asset"] = "Walk-behind tractor",
        ["cost"] = "6200.00",
        ["life_years"] = "15",
        ["salvage"] = "600.00",
        ["grant"] = "1000.00",
        ["note"] = "new stock",
        ["item"] = "Cash and checking",
        ["class"] = "current asset",
        ["project"] = "Larger cold room",
        ["loan"] = "Boiler note",
        ["limit"] = "labor",
        ["object_class"] = "equipment",
    };

    public static string Of(TableSchema table, ColumnSchema column) =>
        ByColumn.GetValueOrDefault($"{table.Name}.{column.Name}")
        ?? (column.Allowed.Count > 0 ? column.Allowed[0] : null)
        ?? ByName.GetValueOrDefault(column.Name)
        ?? column.Type switch
        {
            ColumnType.Date => "2025-06-30",
            ColumnType.Year => "2025",
            ColumnType.YesNo => "yes",
            ColumnType.Percent => "6.5",
            ColumnType.Money => "120.00",
            ColumnType.Text or ColumnType.Name => "",
            _ => "1",
        };

    /// <summary>The same with the farm's decimal mark.</summary>
    public static string Of(TableSchema table, ColumnSchema column, FarmSettings farm) =>
        column.Type is ColumnType.Text or ColumnType.Name or ColumnType.Date || farm.DecimalMark == '.'
            ? Of(table, column)
            : Of(table, column).Replace('.', farm.DecimalMark);

    /// <summary>What a column holds, in a few words.</summary>
    public static string Holds(ColumnSchema column, FarmSettings farm) => column.Type switch
    {
        ColumnType.Text => "text",
        ColumnType.Name when column.RefersTo is not null => $"a name in {column.RefersTo}",
        ColumnType.Name => "a name",
        ColumnType.Date => "a date",
        ColumnType.Hours => $"hours: 7{farm.DecimalMark}5, or a time: 7:30",
        ColumnType.Money => "an amount of money, at most 2 decimals",
        ColumnType.Price => "a price, at most 4 decimals",
        ColumnType.Rate => "a rate, at most 4 decimals",
        ColumnType.Percent => $"a percentage: 6{farm.DecimalMark}5 is 6{farm.DecimalMark}5%",
        ColumnType.Year => "a year",
        ColumnType.YesNo => "yes or no",
        ColumnType.Choice or ColumnType.Basis => "one of: " + string.Join(", ", column.Allowed),
        _ => "a number",
    };
}
