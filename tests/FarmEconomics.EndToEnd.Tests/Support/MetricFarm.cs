using System.Globalization;
using System.Text;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>
/// The demo farm as a grower elsewhere would have written it: meters, centimeters, kilograms, euros, decimal commas, semicolons. The land,
/// the work and the amounts of money are the same, so that every amount must come out the same.
/// </summary>
internal static class MetricFarm
{
    /// <summary>Meters in a foot, exactly (international foot, NIST Handbook 44, Appendix C).</summary>
    internal const decimal MetersPerFoot = 0.3048m;

    /// <summary>Liters in a US gallon, exactly: 231 cubic inches.</summary>
    internal const decimal LitersPerGallon = 3.785411784m;

    private const decimal CentimetersPerInch = 2.54m;
    private const decimal MillimetersPerInch = 25.4m;

    // Minutes hold four decimals: steps that are exact in both units, 0.381 = 1.25 x 0.3048.
    private const decimal StepPerFoot = 0.381m;
    private const decimal StepPerMeter = 1.25m;

    /// <summary>Writes it, from the folder of the demo farm.</summary>
    internal static string Write(string demo, string folder)
    {
        Directory.CreateDirectory(folder);
        foreach (string path in Directory.EnumerateFiles(demo, "*.csv"))
        {
            string table = Path.GetFileNameWithoutExtension(path);
            List<string[]> rows = PlainCsv.Read(File.ReadAllText(path));
            string[] headings = rows[0];
            StringBuilder text = new();
            Append(text, headings.Select(Heading));
            foreach (string[] row in rows.Skip(1))
            {
                Append(text, table switch
                {
                    "farm" => Setting(row),
                    "limits" when row[0] == "water" => [row[0], Comma(Times(row[1], LitersPerGallon)), "liters a day", row[3], row[4]],
                    _ => headings.Select((heading, i) => Value(table, heading, row[i], row[^1])),
                });
            }

            if (table == "farm")
            {
                text.Append("length_unit;m\ndecimal_mark;,\n");
            }

            File.WriteAllText(Path.Combine(folder, table + ".csv"), text.ToString());
        }

        return folder;
    }

    /// <summary>Writes the demo farm as it is, in feet, with minutes per length in the same steps as <see cref="Write"/> takes them.</summary>
    internal static string WriteInFeet(string demo, string folder)
    {
        Directory.CreateDirectory(folder);
        foreach (string path in Directory.EnumerateFiles(demo, "*.csv"))
        {
            string[] lines = File.ReadAllLines(path);
            if (Path.GetFileName(path) == "labor_standards.csv")
            {
                lines = [.. lines.Select(line => line.Split(',')).Select(row => string.Join(',', row[^1] == "bed_foot" ? [row[0], row[1], Text(Steps(row[2]) * StepPerFoot), row[3]] : row))];
            }

            File.WriteAllLines(Path.Combine(folder, Path.GetFileName(path)), lines);
        }

        return folder;
    }

    private static decimal Steps(string minutes) => decimal.Round(decimal.Parse(minutes, CultureInfo.InvariantCulture) / StepPerFoot);

    private static string Text(decimal value) => value.ToString("0.##########", CultureInfo.InvariantCulture);

    private static string Heading(string heading) => heading switch
    {
        "length_ft" => "length_m",
        "width_in" => "width_cm",
        "bed_feet" => "bed_meters",
        "rain_in" => "rain_mm",
        "tmin_f" => "tmin_c",
        "tmax_f" => "tmax_c",
        "gallons" => "liters",
        "set_gallons" => "set_liters",
        "soil_water_in_ft" => "soil_water_mm_m",
        "sprinkler_gph" => "sprinkler_lph",
        _ => heading,
    };

    private static IEnumerable<string> Setting(string[] row) => row[0] switch
    {
        "farm_name" => [row[0], "Quillfrost"],
        "currency" => [row[0], "EUR"],
        "standard_bed_width_in" => ["standard_bed_width_cm", Comma(Times(row[1], CentimetersPerInch))],
        "panel_yield" => [row[0], row[1].Replace('.', ',')],
        _ => [row[0], row[0] == "as_of" ? row[1] : Comma(row[1])],
    };

    private static string Value(string table, string heading, string value, string last) =>
        (table, heading) switch
        {
            (_, "length_ft") or (_, "bed_feet") => Comma(Times(value, MetersPerFoot)),
            ("crops", "establishment_cost") => Comma(
                value.Length == 0 ? "" : Text(decimal.Round(decimal.Parse(value, CultureInfo.InvariantCulture) / MetersPerFoot, 4))
            ),
            (_, "width_in") => Comma(Times(value, CentimetersPerInch)),
            (_, "rain_in") => Comma(Times(value, MillimetersPerInch)),
            (_, "tmin_f") or (_, "tmax_f") => Comma(Text((decimal.Parse(value, CultureInfo.InvariantCulture) - 32m) / 1.8m)),
            (_, "gallons") or (_, "set_gallons") or (_, "sprinkler_gph") => Comma(Times(value, LitersPerGallon)),
            (_, "soil_water_in_ft") => Comma(Times(value, MillimetersPerInch / MetersPerFoot)),
            // Rates of the seed pool are weights beside each other, all per length, so they stay.
            ("labor_standards", "minutes") when last == "bed_foot" => Comma(Text(Steps(value) * StepPerMeter)),
            (_, "per") => value == "bed_foot" ? "bed_meter" : value,
            (_, "basis") => value
                .Replace("bed-foot", "bed-meter", StringComparison.Ordinal)
                .Replace("bed-feet", "bed-meters", StringComparison.Ordinal),
            ("limits", "unit") => value.Replace("gallons", "liters", StringComparison.Ordinal),
            (_, "unit") => value == "lb" ? "kg" : value,
            _ => Comma(value),
        };

    private static string Times(string value, decimal factor) =>
        value.Length == 0 ? "" : Text(decimal.Parse(value, CultureInfo.InvariantCulture) * factor);

    private static string Comma(string value) =>
        decimal.TryParse(value, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _) ? value.Replace('.', ',') : value;

    private static void Append(StringBuilder text, IEnumerable<string> fields) =>
        text.AppendJoin(';', fields.Select(field => field.AsSpan().IndexOfAny(";\"\n") >= 0 ? $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : field)).Append('\n');
}
