using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Blocks;

/// <summary>How numbers look on a page: a true minus, a plus before a gain.</summary>
internal static class BlockNumber
{
    /// <summary>The minus sign of typography, as wide as a figure.</summary>
    internal const char Minus = Display.TrueMinus.Sign;

    /// <summary>A cell's text in its column; empty where nothing is known.</summary>
    internal static string Of(ReportColumn column, ReportCell cell, Notation notation)
    {
        if (cell.Number is not { } number || !column.IsNumeric)
        {
            return cell.Reason is null ? column.Show(cell, notation) : "";
        }

        string text = Typeset(column.Show(cell, notation));
        return column.IsChange && number > 0m && text.Any(c => c is > '0' and <= '9') ? "+" + text : text;
    }

    /// <summary>Money, a rate or another number in a sentence.</summary>
    internal static string Of(decimal value, Look look, Notation notation) => Typeset(notation.InWords(value, look));

    /// <summary>Money in whole units, without its sign: "$1,501" for what is said to be more or less.</summary>
    internal static string Size(decimal value, Notation notation) => notation.InWords(Math.Abs(value), Look.WholeMoney);

    /// <summary>A share in whole percent: "42%".</summary>
    internal static string Percent(decimal share, Notation notation) =>
        Typeset(notation.Text($"{decimal.Round(share * 100m, 0, MidpointRounding.AwayFromZero):0}%"));

    /// <summary>A sentence whose numbers were written elsewhere: a true minus before money.</summary>
    internal static string Tidy(string sentence) => Display.TrueMinus.In(sentence);

    /// <summary>A number written elsewhere, with a true minus.</summary>
    internal static string Typeset(string text) => (text.StartsWith('-') ? Minus + text[1..] : text);
}
