using FarmEconomics.Page.Farm;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Page.Fields;

/// <summary>What may be changed in a what-if, as fields: prices of crops first, wages, and any other change in words.</summary>
internal static class ChangeFields
{
    private const int PriceRows = 3;
    private const string Other = "change.more";
    private const string Wages = "change.wages";
    private const string Prices = "change.prices";

    internal static IEnumerable<PageField> Of(OpenedFarm farm)
    {
        string money = Looks.Sign(farm.Settings.Currency).Trim();
        for (int row = 1; row <= PriceRows; row++)
        {
            string group = row == 1 ? "Change a price" : $"Change a {(row == 2 ? "second" : "third")} price";
            yield return new($"price{row}.crop", "Crop", FieldKind.Choice, "", "")
            {
                Options = [new("", "no change"), .. (farm.Choices("crop") ?? []).Select(crop => new FieldOption(crop, crop))],
                Group = group,
            };
            yield return new($"price{row}.channel", "Where", FieldKind.Choice, "", "")
            {
                Options = [new("", "wherever it is sold"), .. (farm.Choices("channel") ?? []).Select(channel => new FieldOption(channel, channel))],
                Group = group,
            };
            yield return new($"price{row}.to", "New price", FieldKind.Text, "", $"A price per unit, such as 4{farm.Settings.DecimalMark}50, or a part more or less, such as +10% or -5%.") { Unit = money, Group = group };
        }

        yield return new(Prices, "All prices", FieldKind.Text, "", "A part more or less, such as +3%; empty = as they were.") { Group = "Change all prices or wages" };
        yield return new(Wages, "All wages paid", FieldKind.Text, "", "A part more or less, such as +5%; empty = as they were.") { Group = "Change all prices or wages" };
        yield return new(Other, "Other changes", FieldKind.Lines, "", "One a line: hours of Carrots=-20%, wage of crew=18, owner_wage=25.") { Group = "Other changes" };
    }

    /// <summary>The changes as the notebook takes them, with semicolons between them.</summary>
    internal static string Join(IReadOnlyDictionary<string, string> values, char decimalMark)
    {
        List<string> changes = [];
        for (int row = 1; row <= PriceRows; row++)
        {
            string to = values.GetValueOrDefault($"price{row}.to", "");
            if (values.GetValueOrDefault($"price{row}.crop", "") is { Length: > 0 } crop && to.Length > 0)
            {
                string channel = values.GetValueOrDefault($"price{row}.channel", "");
                changes.Add($"price of {crop}{(channel.Length > 0 ? $" at {channel}" : "")}={Dotted(to, decimalMark)}");
            }
        }

        Add(Prices, "prices");
        Add(Wages, "wages");
        changes.AddRange(values.GetValueOrDefault(Other, "").Split(['\n', '\r', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));
        return string.Join("; ", changes);

        void Add(string key, string what)
        {
            if (values.GetValueOrDefault(key, "") is { Length: > 0 } part)
            {
                changes.Add($"{what}={Dotted(part, decimalMark)}");
            }
        }
    }

    private static string Dotted(string text, char decimalMark) => decimalMark == ',' && !text.Contains('.', StringComparison.Ordinal) ? text.Replace(',', '.') : text;
}
