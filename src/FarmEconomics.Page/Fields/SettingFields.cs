using System.Globalization;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Page.Fields;

/// <summary>The farm's settings that are worth trying out, each as a field; left as they are, they are the records' own.</summary>
internal static class SettingFields
{
    internal const string Prefix = "set.";
    internal const string Group = "Wage, interest and other settings to try";

    internal static IEnumerable<PageField> Of(FarmSettings own)
    {
        string money = own.Notation.Sign;
        yield return Number("owner_wage", "Worth of an unpaid hour of the owner", $"{money} an hour", own.OwnerWage, 0m, 10000m);
        yield return Number("interest_percent", "Yearly cost of capital", "%", own.InterestPercent, 0m, 100m);
        yield return Number("payroll_burden_percent", "Employer's cost on top of wages", "%", own.PayrollBurdenPercent, 0m, 100m);
        yield return Choice(
            "closing_stock", "Produce on hand at the last day used", own.ClosingStock,
            ("count", "counts as brought in"), ("ignore", "is left out"));
        yield return Choice(
            "idle_capacity", "Cost of capacity nobody used", own.IdleCapacity,
            ("separate", "stands on a line of its own"), ("spread", "is spread over the users"));
        yield return Choice(
            "ownership_method", "Yearly cost of owning", own.OwnershipMethod,
            ("capital-recovery", "capital recovery"), ("depreciation-and-interest", "depreciation and interest"));

        PageField Number(string name, string label, string unit, decimal? value, decimal lowest, decimal highest)
        {
            string now = value is { } known ? own.Notation.Number(known, Look.Exact) : "not given";
            return new(Prefix + name, label, FieldKind.Text, "", $"Empty = as in your records: {now}.")
            { Unit = unit, Lowest = lowest, Highest = highest, Group = Group };
        }
    }

    private static PageField Choice<T>(string name, string label, T value, params (string Value, string Text)[] options)
        where T : struct, Enum
    {
        string now = options.FirstOrDefault(option => option.Value == Words.Of(value)).Text;
        IEnumerable<FieldOption> others = options.Select(option => new FieldOption(option.Value, option.Text));
        return new(Prefix + name, label, FieldKind.Choice, "", "")
        { Options = [new("", $"as in your records: {now}"), .. others], Group = Group };
    }

    /// <summary>Why a setting changes nothing with these records; null when it does.</summary>
    internal static string? ChangesNothing(string key, ReviewedFarm farm) =>
        key == Prefix + "owner_wage" && farm.IsReviewed && OwnHourValue.Of(farm.Review.Trace) is { WorkersTableDecides: true }
            ? "workers.csv gives every unpaid hour a wage, so this changes nothing" : null;

    /// <summary>What is wrong with an optional number of a setting.</summary>
    internal static string? Fault(PageField field, string text, char decimalMark) => field.Kind != FieldKind.Text
        ? FieldText.Fault(field, text, decimalMark)
        : text.Length == 0 ? null
        : FieldText.Fault(field with { Kind = FieldKind.Number }, text, decimalMark)
            ?? Refused(field.Key[Prefix.Length..], Written(field, text, decimalMark), decimalMark);

    // What the records would not take: an amount with more decimals than they may have.
    private static string? Refused(string name, string value, char decimalMark)
    {
        FarmSettingsReader.Apply(new FarmSettings { DecimalMark = decimalMark }, name, value, out Problem? problem);
        return problem is null
            ? null : $"“{value}” can’t be used; give {FarmSettingsReader.Settings.First(setting => setting.Name == name).Expected}.";
    }

    /// <summary>The filled-in settings as the notebooks take them: <c>name=value; name=value</c>.</summary>
    internal static string Join(IReadOnlyDictionary<string, string> values, IEnumerable<PageField> fields, char decimalMark) =>
        string.Join(
            "; ",
            fields
                .Where(field => values.GetValueOrDefault(field.Key) is { Length: > 0 })
                .Select(field => $"{field.Key[Prefix.Length..]}={Written(field, values[field.Key], decimalMark)}")
        );

    // Settings are read with the farm's own decimal mark.
    private static string Written(PageField field, string text, char decimalMark) =>
        field.Kind == FieldKind.Choice || FieldText.Number(text, decimalMark) is not { } number
            ? text
            : number.ToString(CultureInfo.InvariantCulture).Replace('.', decimalMark);
}
