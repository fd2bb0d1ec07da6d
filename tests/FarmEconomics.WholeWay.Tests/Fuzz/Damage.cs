using System.Text;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.WholeWay.Tests.Fuzz;

/// <summary>What is done to a folder: bytes changed, cells of other kinds, or the ends of what is allowed.</summary>
internal enum DamageKind
{
    Bytes,
    Cells,
    Extremes,
}

/// <summary>Damages a folder of records; equal for equal random numbers.</summary>
internal static class Damage
{
    private static readonly byte[][] Nasty =
    [
        [0], [0xFF], [0xC3], "\""u8.ToArray(), "\n"u8.ToArray(), "\r"u8.ToArray(), ","u8.ToArray(), ";"u8.ToArray(), "\t"u8.ToArray(),
        "\"\n\""u8.ToArray(), "-"u8.ToArray(), "99999999999999"u8.ToArray(), "total"u8.ToArray(),
        "=1+1"u8.ToArray(), [0xEF, 0xBB, 0xBF],
    ];

    internal static void Cells(List<RecordSheet> sheets, Random random)
    {
        for (int changes = random.Next(1, 4); changes > 0; changes--)
        {
            RecordSheet sheet = sheets[random.Next(sheets.Count)];
            int column = random.Next(sheet.Heading.Count);
            if (sheet.Rows.Count == 0 || random.Next(20) == 0)
            {
                sheet.Heading[column] = CellValues.Wrong(random);
            }
            else
            {
                sheet.Rows[random.Next(sheet.Rows.Count)][column] = CellValues.Wrong(random);
            }
        }
    }

    internal static void Extremes(List<RecordSheet> sheets, Random random)
    {
        for (int changes = random.Next(1, 6); changes > 0; changes--)
        {
            RecordSheet sheet = sheets[random.Next(sheets.Count)];
            if (sheet.Rows.Count > 0)
            {
                Change(sheets, sheet, random);
            }
        }
    }

    private static void Change(List<RecordSheet> sheets, RecordSheet sheet, Random random)
    {
        int column = random.Next(sheet.Heading.Count);
        int row = random.Next(sheet.Rows.Count);
        ColumnSchema? schema = sheet.Schema(column);
        string Value() => CellValues.Extreme(schema, sheets, sheet, column, random);
        switch (random.Next(12))
        {
            case 0:
                string same = Value();
                sheet.Rows.ForEach(each => each[column] = same);
                break;
            case 1:
                sheet.Rows.ForEach(each => each[column] = random.Next(2) == 0 ? each[column] : Value());
                break;
            case 2:
                sheet.Rows.RemoveAt(row);
                break;
            case 3:
                sheet.Rows.Insert(random.Next(sheet.Rows.Count), [.. sheet.Rows[row]]);
                break;
            case 4:
                sheet.Rows.RemoveRange(row, sheet.Rows.Count - row);
                break;
            case 5 when RecordSchema.Find(sheet.Table) is { Required: false }:
                sheets.Remove(sheet);
                break;
            case 6 when schema is not { Required: true } && sheet.Heading.Count > 1:
                sheet.Heading.RemoveAt(column);
                sheet.Rows.ForEach(each => each.RemoveAt(column));
                break;
            case 7:
                sheet.Rows.Reverse();
                break;
            case 8:
                Setting(sheets, random);
                break;
            default:
                sheet.Rows[row][column] = Value();
                break;
        }
    }

    private static void Setting(List<RecordSheet> sheets, Random random)
    {
        (string Name, string[] Values)[] settings =
        [
            ("owner_wage", ["0", "0.0001", "1000", "100000"]), ("interest_percent", ["0", "0.0001", "100"]),
            ("payroll_burden_percent", ["0", "100"]), ("crop_year_start", ["12-31", "02-28", "07-01"]),
            ("closing_stock", ["count", "ignore"]), ("ownership_method", ["capital-recovery", "depreciation-and-interest"]),
            ("idle_capacity", ["separate", "spread"]), ("length_unit", ["m"]),
            ("standard_bed_width_in", ["0.0001", "30", "100000"]), ("as_of", ["1990-01-01", "2023-06-30", "2024-02-29", "2099-12-31"]),
            ("decimal_mark", [","]), ("date_format", ["DD.MM.YYYY"]), ("currency", ["EUR", "JPY"]),
            ("farm_name", ["<b>x</b>", "a*b_c", ""]),
        ];
        (string name, string[] values) = settings[random.Next(settings.Length)];
        if (sheets.Find(sheet => sheet.Table == "farm") is { Heading: ["setting", "value"] } farm)
        {
            farm.Rows.RemoveAll(row => row[0] == name);
            farm.Rows.Add([name, values[random.Next(values.Length)]]);
        }
    }

    internal static byte[] Bytes(string file, Random random)
    {
        List<byte> bytes = [.. Encoding.UTF8.GetBytes(file)];
        for (int changes = random.Next(1, 6); changes > 0; changes--)
        {
            int at = random.Next(bytes.Count);
            int length = Math.Min(random.Next(1, 40), bytes.Count - at);
            switch (random.Next(6))
            {
                case 0:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 1:
                    bytes.InsertRange(at, Nasty[random.Next(Nasty.Length)]);
                    break;
                case 2:
                    bytes.RemoveRange(at, Math.Min(length, bytes.Count - 1));
                    break;
                case 3:
                    bytes.InsertRange(at, bytes.GetRange(at, length));
                    break;
                case 4:
                    bytes.RemoveRange(Math.Max(1, at), bytes.Count - Math.Max(1, at));
                    break;
                default:
                    bytes.InsertRange(random.Next(bytes.Count), bytes.GetRange(at, length));
                    break;
            }
        }

        return [.. bytes];
    }
}
