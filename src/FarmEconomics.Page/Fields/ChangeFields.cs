using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Page.Farm;
using FarmEconomics.Records;

namespace FarmEconomics.Page.Fields;

/// <summary>What may be changed in a what-if, as fields: prices of crops first, wages, and any other change in words.</summary>
internal static class ChangeFields
{
    private const int PriceRows = 3;
    /// <summary>The field for changes in words.</summary>
    internal const string Other = "change.more";
    private const string Wages = "change.wages";
    private const string Prices = "change.prices";

    internal static IEnumerable<PageField> Of(OpenedFarm farm)
    {
        foreach (PageField field in Enumerable.Range(1, PriceRows).SelectMany(row => OfPrice(farm, row)))
        {
            yield return field;
        }

        yield return new(Prices, "All prices", FieldKind.Text, "", "A part more or less, such as +3%; empty = as they were.")
        {
            Group = "Change all prices or wages",
        };
        yield return new(Wages, "All wages paid", FieldKind.Text, "", "A part more or less, such as +5%; empty = as they were.")
        {
            Group = "Change all prices or wages",
        };
        yield return new(Other, "Other changes", FieldKind.Lines, "", "One a line: hours of Carrots=-20%, wage of crew=18, owner_wage=25.")
        {
            Group = "Other changes",
        };
    }

    // The price of one crop; the crop alone changes nothing yet.
    private static IEnumerable<PageField> OfPrice(OpenedFarm farm, int row)
    {
        string group = row == 1 ? "Change a price" : $"Change a {(row == 2 ? "second" : "third")} price";
        yield return new($"price{row}.crop", "Crop", FieldKind.Choice, "", "")
        {
            Options = [new("", "no change"), .. (farm.Choices("crop") ?? []).Select(crop => new FieldOption(crop, crop))],
            Group = group,
            WaitsFor = $"price{row}.to",
        };
        yield return new($"price{row}.channel", "Where", FieldKind.Choice, "", "")
        {
            Options =
            [new("", "wherever it is sold"), .. (farm.Choices("channel") ?? []).Select(channel => new FieldOption(channel, channel))],
            Group = group,
            WaitsFor = $"price{row}.to",
        };
        yield return new(
            $"price{row}.to",
            "New price",
            FieldKind.Text,
            "",
            $"A price per unit, such as 4{farm.Settings.DecimalMark}50, or a part more or less, such as +10% or -5%."
        )
        { Unit = farm.Settings.Notation.Sign, Group = group };
    }

    /// <summary>The changes as the notebook takes them, with semicolons between them.</summary>
    internal static string Join(IReadOnlyDictionary<string, string> values, char decimalMark) =>
        string.Join("; ", Written(values, decimalMark).Select(change => change.Text));

    /// <summary>What is wrong with the changes, by field; names are looked up in the records.</summary>
    internal static IEnumerable<(string Key, string Fault)> Faults(IReadOnlyDictionary<string, string> values, OpenedFarm farm)
    {
        for (int row = 1; row <= PriceRows; row++)
        {
            bool crop = values.GetValueOrDefault($"price{row}.crop", "").Length > 0;
            bool price = values.GetValueOrDefault($"price{row}.to", "").Length > 0;
            if (crop != price)
            {
                yield return crop
                    ? ($"price{row}.to", "Give the new price, or a part more or less such as +10%.")
                    : ($"price{row}.crop", "Choose the crop this price is for.");
            }
        }

        if (farm.With(folder => folder.Review?.Records) is not { } records)
        {
            yield break;
        }

        bool told = false;
        ILookup<string, string> written = Written(values, farm.Settings.DecimalMark).ToLookup(change => change.Key, change => change.Text);
        foreach (IGrouping<string, string> field in written)
        {
            List<string> sentences = [.. field.SelectMany(text => FaultsOf(text, records)).Select(fault => fault.Sentence)];
            if (sentences.Count > 0)
            {
                told = true;
                yield return (field.Key, string.Join(' ', sentences));
            }
        }

        if (!told && Together(values, farm.Settings.DecimalMark, records) is { } together)
        {
            yield return (Written(values, farm.Settings.DecimalMark).Last().Key, together);
        }
    }

    private static IReadOnlyList<ScenarioFault> FaultsOf(string text, FarmRecords records)
    {
        ScenarioText.Read(text, records, out IReadOnlyList<ScenarioFault> faults);
        return faults;
    }

    // Each may be right by itself and two of them set the same thing.
    private static string? Together(IReadOnlyDictionary<string, string> values, char decimalMark, FarmRecords records)
    {
        ScenarioText.Read(Join(values, decimalMark), records, out IReadOnlyList<ScenarioFault> faults);
        return faults.Count == 0 ? null : string.Join(' ', faults.Select(fault => fault.Sentence));
    }

    private static IEnumerable<(string Key, string Text)> Written(IReadOnlyDictionary<string, string> values, char decimalMark)
    {
        for (int row = 1; row <= PriceRows; row++)
        {
            string to = values.GetValueOrDefault($"price{row}.to", "");
            if (values.GetValueOrDefault($"price{row}.crop", "") is { Length: > 0 } crop && to.Length > 0)
            {
                string channel = values.GetValueOrDefault($"price{row}.channel", "");
                yield return ($"price{row}.to", $"price of {crop}{(channel.Length > 0 ? $" at {channel}" : "")}={Amount(to, decimalMark)}");
            }
        }

        foreach ((string key, string what) in new[] { (Prices, "prices"), (Wages, "wages") })
        {
            if (values.GetValueOrDefault(key, "") is { Length: > 0 } part)
            {
                yield return (key, $"{what}={Amount(part, decimalMark)}");
            }
        }

        foreach (
            string line in values
                .GetValueOrDefault(Other, "")
                .Split(['\n', '\r', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
        )
        {
            yield return (Other, line);
        }
    }

    // People write $4.50 or 4,50 € into a field for a price.
    // Changes are read with the farm's own decimal mark; in a field a dot is one as well.
    private static string Amount(string text, char decimalMark)
    {
        string bare = text.Trim().Trim('$', '€', '£').Trim();
        return bare.Contains(decimalMark, StringComparison.Ordinal) ? bare : bare.Replace('.', decimalMark);
    }
}
