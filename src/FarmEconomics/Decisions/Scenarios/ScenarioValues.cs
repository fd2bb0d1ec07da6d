using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>Reads how far a change goes, in the farm's own decimal mark.</summary>
internal sealed class ScenarioValues(FarmRecords records)
{
    private const decimal MostPercent = 10_000m;
    private static readonly ColumnSchema Percent = new("percent", ColumnType.Percent, "");
    private static readonly ColumnSchema Price = new("price", ColumnType.Price, "");

    /// <summary>
    /// Settings that say how the records are read or named, or which season is meant: nothing that could have gone differently.
    /// </summary>
    private static readonly string[] NoWhatIf =
    [
        "farm_name",
        "currency",
        "crop_year_start",
        "length_unit",
        "as_of",
        "date_format",
        "decimal_mark",
    ];

    private Notation Notation => records.Settings.Notation;

    private char Mark => Notation.DecimalMark;

    /// <summary>A signed percent, or a new value of 0 or more where one makes sense.</summary>
    internal ScenarioStep Step(TextPart value, bool allowValue, string what)
    {
        string percents = $"a percent with its sign, such as +10% or -5{Mark}5%";
        if (value.Text.EndsWith('%'))
        {
            if (value.Text[0] is not ('+' or '-' or '\u2212'))
            {
                throw value.Fault($"By how much, up or down? {Capital(percents)}, was expected, not \"{value.Text}\".");
            }

            return ReadPercent(value) is { } percent and >= -100m and <= MostPercent
                ? new ScenarioStep(percent, IsPercent: true)
                : throw value.Fault(
                    Notation.Text(
                        $"{Capital(percents)}, not below -100% and not above +{MostPercent:0}%, was expected, not \"{value.Text}\"."
                    )
                );
        }

        bool number = NumberText.Read(value.Text, Price, Mark, out decimal amount) == NumberFault.None;
        if (allowValue && number && amount >= 0m && value.Text[0] is not ('+' or '-' or '\u2212'))
        {
            return new ScenarioStep(amount, IsPercent: false);
        }

        throw value.Fault(allowValue
            ? $"{Capital(what)} of 0 or more with at most 4 decimals, or {percents}, was expected, not \"{value.Text}\"."
            : $"{Capital(percents)}, was expected, not \"{value.Text}\".");
    }

    /// <summary>A channel's fee in percent of the sale.</summary>
    internal ScenarioStep Fee(TextPart value) =>
        value.Text.Length > 0 && char.IsAsciiDigit(value.Text[0]) && ReadPercent(value) is { } percent and <= 100m
            ? new ScenarioStep(percent, IsPercent: false)
            : throw value.Fault($"The new fee in percent of the sale, 0 to 100 without a sign, was expected, not \"{value.Text}\".");

    /// <summary>A setting: its new value as farm.csv would have it; owner_wage also by a percent.</summary>
    internal ScenarioChange Setting(SettingSpec setting, TextPart name, TextPart value)
    {
        if (NoWhatIf.Contains(setting.Name))
        {
            throw name.Fault($"{setting.Name} says how the records are read or which season is meant; "
                + "it is nothing that could have gone differently. Set it in farm.csv, or with --set for the whole run.");
        }

        if (setting.Name == "owner_wage" && value.Text.EndsWith('%'))
        {
            ScenarioStep step = Step(value, allowValue: true, "a wage");
            return records.Settings.OwnerWage is null
                ? throw value.Fault("The records give no owner_wage that a percent could be of; write a value, such as owner_wage=20.")
                : Change(step);
        }

        if (value.Text.Length > 0 && value.Text[0] is '+' or '-' or '\u2212' && value.Text.EndsWith('%'))
        {
            throw value.Fault($"{setting.Name} takes its new value, without a sign, not a change by a percent.");
        }

        _ = FarmSettingsReader.Apply(records.Settings, setting.Name, value.Text, out Problem? problem);
        if (problem is not null)
        {
            throw value.Fault(problem.Message);
        }

        return Change(new ScenarioStep(ReadNumber(value) ?? 0m, IsPercent: false));

        ScenarioChange Change(ScenarioStep step) =>
            new(ScenarioSubject.Setting, ScenarioScope.Setting, setting.Name, null, step, value.Text);
    }

    private decimal? ReadPercent(TextPart value) =>
        NumberText.Read(value.Text, Percent, Mark, out decimal percent) == NumberFault.None ? percent : null;

    private decimal? ReadNumber(TextPart value) =>
        NumberText.Read(value.Text.TrimEnd('%'), Price, Mark, out decimal number) == NumberFault.None ? number : null;

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
