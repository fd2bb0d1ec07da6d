using System.Xml;

namespace FarmEconomics.Files.Workbooks.Reading;

/// <summary>Which styles of a workbook show a number as a day.</summary>
internal sealed class DateStyles
{
    private readonly List<bool> _isDate = [];

    public static DateStyles None { get; } = new();

    public bool IsDate(int style) => style >= 0 && style < _isDate.Count && _isDate[style];

    public static DateStyles Read(Stream stream)
    {
        var styles = new DateStyles();
        Dictionary<int, bool> custom = [];
        bool inCellStyles = false;
        using XmlReader xml = WorkbookReader.Xml(stream);
        while (xml.Read())
        {
            if (xml.LocalName == "cellXfs")
            {
                inCellStyles = xml.NodeType == XmlNodeType.Element && !xml.IsEmptyElement;
            }
            else if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "numFmt" && int.TryParse(xml.GetAttribute("numFmtId"), out int format))
            {
                custom[format] = ShowsDay(xml.GetAttribute("formatCode") ?? "");
            }
            else if (inCellStyles && xml.NodeType == XmlNodeType.Element && xml.LocalName == "xf" && styles._isDate.Count < 100_000)
            {
                _ = int.TryParse(xml.GetAttribute("numFmtId"), out int id);
                styles._isDate.Add(custom.TryGetValue(id, out bool date) ? date : id is (>= 14 and <= 17) or 22 or (>= 27 and <= 36) or (>= 50 and <= 58));
            }
        }

        return styles;
    }

    // d or y outside quotes, brackets and escapes: a month alone (mm) may be minutes.
    private static bool ShowsDay(string format)
    {
        bool quoted = false, bracketed = false;
        for (int i = 0; i < format.Length; i++)
        {
            char c = char.ToLowerInvariant(format[i]);
            if (c == '\\' || c == '_' || c == '*')
            {
                i++;
            }
            else if (c == '"')
            {
                quoted = !quoted;
            }
            else if (!quoted && c is '[' or ']')
            {
                bracketed = c == '[';
            }
            else if (!quoted && !bracketed && c is 'd' or 'y')
            {
                return true;
            }
        }

        return false;
    }
}
