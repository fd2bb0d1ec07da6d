using System.Buffers;
using System.Xml;

namespace FarmEconomics.Files.Workbooks.Reading;

/// <summary>What a style shows a number as.</summary>
internal enum NumberLook
{
    /// <summary>A number.</summary>
    Plain,

    /// <summary>A day, with or without a time.</summary>
    Day,

    /// <summary>Hours and minutes up to a day: 7:30.</summary>
    Time,

    /// <summary>Hours and minutes that may go beyond a day: 31:30.</summary>
    Duration,

    /// <summary>A time of day: 7:30 AM.</summary>
    Clock,

    /// <summary>A hundred times what the cell holds, with a percent sign: 5% for 0.05.</summary>
    Percent,
}

/// <summary>
/// What the styles of a workbook show numbers as. A spreadsheet keeps days, times and hours as plain numbers; only the style tells them
/// apart.
/// </summary>
internal sealed class CellLooks
{
    private const int MaxStyles = 100_000;

    private static readonly SearchValues<char> Elapsed = SearchValues.Create("hHmMsS");

    private readonly List<NumberLook> looks = [];

    public static CellLooks None { get; } = new();

    public NumberLook Of(int style) => style >= 0 && style < looks.Count ? looks[style] : NumberLook.Plain;

    public static CellLooks Read(Stream stream)
    {
        var styles = new CellLooks();
        Dictionary<int, NumberLook> custom = [];
        bool inCellStyles = false;
        using XmlReader xml = WorkbookReader.Xml(stream);
        while (xml.Read())
        {
            if (xml.LocalName == "cellXfs")
            {
                inCellStyles = xml.NodeType == XmlNodeType.Element && !xml.IsEmptyElement;
            }
            else if (
                xml.NodeType == XmlNodeType.Element
                && xml.LocalName == "numFmt"
                && custom.Count < MaxStyles
                && int.TryParse(xml.GetAttribute("numFmtId"), out int format)
            )
            {
                custom[format] = LookOf(xml.GetAttribute("formatCode") ?? "");
            }
            else if (inCellStyles && xml.NodeType == XmlNodeType.Element && xml.LocalName == "xf" && styles.looks.Count < MaxStyles)
            {
                _ = int.TryParse(xml.GetAttribute("numFmtId"), out int id);
                styles.looks.Add(custom.TryGetValue(id, out NumberLook look) ? look : BuiltIn(id));
            }
        }

        return styles;
    }

    // The numbers of the formats no workbook writes out: ECMA-376 part 1, 18.8.30.
    private static NumberLook BuiltIn(int id) => id switch
    {
        9 or 10 => NumberLook.Percent,
        18 or 19 => NumberLook.Clock,
        20 or 21 or 45 or 47 => NumberLook.Time,
        46 => NumberLook.Duration,
        (>= 14 and <= 17) or 22 or (>= 27 and <= 36) or (>= 50 and <= 58) => NumberLook.Day,
        _ => NumberLook.Plain,
    };

    // Letters outside quotes and escapes: d or y is a day (a month alone, mm, may be minutes), h or s a time, [h] hours beyond a day, %
    // a percentage.
    private static NumberLook LookOf(string format)
    {
        bool time = false, duration = false, clock = false, percent = false;
        for (int i = 0; i < format.Length; i++)
        {
            switch (char.ToLowerInvariant(format[i]))
            {
                case '\\' or '_' or '*':
                    i++;
                    break;
                case '"':
                    i = EndOf(format, i, '"');
                    break;
                case '[':
                    int end = EndOf(format, i, ']');
                    duration |= end > i + 1 && format.AsSpan(i + 1, end - i - 1).IndexOfAnyExcept(Elapsed) < 0;
                    i = end;
                    break;
                case 'd' or 'y':
                    return NumberLook.Day;
                case 'h' or 's':
                    time = true;
                    break;
                case 'a':
                    clock = time;
                    break;
                case '%':
                    percent = true;
                    break;
                default:
                    break;
            }
        }

        return duration ? NumberLook.Duration
            : time ? (clock ? NumberLook.Clock : NumberLook.Time)
            : percent ? NumberLook.Percent
            : NumberLook.Plain;
    }

    private static int EndOf(string format, int start, char end)
    {
        int at = format.IndexOf(end, start + 1);
        return at < 0 ? format.Length - 1 : at;
    }
}
