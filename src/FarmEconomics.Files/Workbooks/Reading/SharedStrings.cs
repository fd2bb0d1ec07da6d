using System.Text;
using System.Xml;

namespace FarmEconomics.Files.Workbooks.Reading;

/// <summary>The texts that cells refer to by number.</summary>
internal static class SharedStrings
{
    private const long MaxLetters = 64L << 20;

    // A sheet has at most a million rows, and texts that repeat stand here once.
    private const int MaxTexts = 4_000_000;

    public static List<string> Read(Stream stream)
    {
        List<string> texts = [];
        long letters = 0;
        using XmlReader xml = WorkbookReader.Xml(stream);
        while (xml.Read())
        {
            if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "si")
            {
                string text = TextOf(xml);
                letters += text.Length;
                if (letters > MaxLetters || texts.Count == MaxTexts)
                {
                    throw new InvalidDataException("it holds more text than any farm's records");
                }

                texts.Add(text);
            }
        }

        return texts;
    }

    /// <summary>The text of an <c>si</c> or <c>is</c> element: all its runs, without the readings beside them.</summary>
    public static string TextOf(XmlReader xml)
    {
        if (xml.IsEmptyElement)
        {
            return "";
        }

        int depth = xml.Depth;
        int reading = int.MaxValue;
        StringBuilder? runs = null;
        string text = "";
        while (xml.Read() && xml.Depth > depth)
        {
            if (xml.LocalName == "rPh" && xml.NodeType is XmlNodeType.Element or XmlNodeType.EndElement)
            {
                reading = xml.NodeType == XmlNodeType.Element && !xml.IsEmptyElement ? xml.Depth : int.MaxValue;
            }
            else if (xml.NodeType is XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.SignificantWhitespace or XmlNodeType.Whitespace
                && xml.Depth - depth >= 2 && xml.Depth < reading)
            {
                runs = text.Length == 0 ? runs : (runs ?? new StringBuilder()).Append(text);
                text = xml.Value;
            }
        }

        return Unescape(runs is null ? text : runs.Append(text).ToString());
    }

    /// <summary>Letters XML can't hold are written <c>_x000D_</c>.</summary>
    public static string Unescape(string text)
    {
        int at = text.IndexOf("_x", StringComparison.Ordinal);
        if (at < 0)
        {
            return text;
        }

        var plain = new StringBuilder(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] == '_' && i + 6 < text.Length && text[i + 1] == 'x' && text[i + 6] == '_'
                && ushort.TryParse(text.AsSpan(i + 2, 4), System.Globalization.NumberStyles.AllowHexSpecifier, null, out ushort code))
            {
                plain.Append((char)code);
                i += 6;
            }
            else
            {
                plain.Append(text[i]);
            }
        }

        return plain.ToString();
    }
}
