using System.Globalization;

namespace FarmEconomics.Reports.Display;

/// <summary>Text whose lines never end between a minus and the sign of the money behind it.</summary>
internal static class Unbroken
{
    private const string Held = "\u2212\u2060";

    /// <summary>The text with the two held together.</summary>
    internal static string Of(string text)
    {
        int at = Next(text, 0);
        if (at < 0)
        {
            return text;
        }

        System.Text.StringBuilder held = new(text.Length + 4);
        int from = 0;
        for (; at >= 0; at = Next(text, from))
        {
            held.Append(text, from, at - from).Append(Held);
            from = at + 1;
        }

        return held.Append(text, from, text.Length - from).ToString();
    }

    private static int Next(string text, int from)
    {
        int at = text.IndexOf(TrueMinus.Sign, from);
        while (at >= 0 && !(at + 1 < text.Length && char.GetUnicodeCategory(text[at + 1]) == UnicodeCategory.CurrencySymbol))
        {
            at = text.IndexOf(TrueMinus.Sign, at + 1);
        }

        return at;
    }
}
