using System.Text;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>RFC 4180, read without the program's own reader.</summary>
internal static class PlainCsv
{
    /// <summary>All rows of a text, the headings first.</summary>
    internal static List<string[]> Read(string text)
    {
        List<string[]> rows = [];
        List<string> row = [];
        StringBuilder field = new();
        bool quoted = false;
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (c == '"')
            {
                bool twice = quoted && i + 1 < text.Length && text[i + 1] == '"';
                quoted = twice || !quoted;
                if (twice)
                {
                    field.Append('"');
                    i++;
                }
            }
            else if (quoted || c is not (',' or '\n' or '\r'))
            {
                field.Append(c);
            }
            else if (c != '\r')
            {
                row.Add(field.ToString());
                field.Clear();
                if (c == '\n')
                {
                    rows.Add([.. row]);
                    row.Clear();
                }
            }
        }

        return rows;
    }
}
