using System.Globalization;
using FarmEconomics.Page.Farm;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Page.Fields;

/// <summary>
/// A notebook's parameters as labeled fields, with the values of one request: what is typed in, what is wrong with it, and what the
/// notebook gets.
/// </summary>
internal sealed class FieldForm
{
    private readonly Dictionary<string, string> values = [];
    private readonly Dictionary<string, string> faults = [];
    private readonly Dictionary<string, object> parameters = [];

    private FieldForm(IReadOnlyList<PageField> fields) => Fields = fields;

    /// <summary>The fields in the order of the notebook's cell.</summary>
    internal IReadOnlyList<PageField> Fields { get; private set; }

    /// <summary>The farm's decimal mark.</summary>
    internal char DecimalMark { get; private init; }

    /// <summary>What is wrong, by the field's key.</summary>
    internal IReadOnlyDictionary<string, string> Faults => faults;

    /// <summary>What the notebook is run with.</summary>
    internal IReadOnlyDictionary<string, object> Parameters => parameters;

    /// <summary>The values that are not the defaults, as an address has them after the question mark; equal for equal values.</summary>
    internal string Query { get; private set; } = "";

    /// <summary>The crop year asked for; 0: the latest.</summary>
    internal int Year => parameters.GetValueOrDefault("year") as int? ?? 0;

    /// <summary>The settings to try, joined.</summary>
    internal string Settings => parameters.GetValueOrDefault("settings") as string ?? "";

    /// <summary>Whether rows in error are left out.</summary>
    internal bool SkipBadRows => parameters.GetValueOrDefault("skip_bad_rows") as bool? ?? false;

    /// <summary>The changes of a what-if, joined; empty when there are none.</summary>
    internal string Changes { get; private set; } = "";

    /// <summary>A field's value as it shall stand in it.</summary>
    internal string Value(PageField field) => values.GetValueOrDefault(field.Key, field.Default);

    /// <summary>Reads a request.</summary>
    /// <param name="declared">The notebook's parameters.</param>
    /// <param name="farm">The records as they are, for the names to choose from.</param>
    /// <param name="folder">The records folder, for the notebook and for files within it.</param>
    /// <param name="scenarioFile">The file of named scenarios.</param>
    /// <param name="given">The request's values by key; keys that are no field are left alone.</param>
    internal static FieldForm Read(
        IReadOnlyList<ReportField> declared, OpenedFarm farm, string folder, string scenarioFile, IReadOnlyDictionary<string, string> given)
    {
        List<PageField> fields = [.. declared.SelectMany(parameter => FieldsOf(parameter, farm))];
        char mark = farm.Settings.DecimalMark;
        FieldForm form = new(fields) { DecimalMark = mark };
        foreach (PageField field in fields)
        {
            string text = (given.TryGetValue(field.Key, out string? typed) ? typed : field.Default).Trim();
            form.values[field.Key] = text;
            bool isSetting = field.Key.StartsWith(SettingFields.Prefix, StringComparison.Ordinal);
            if ((isSetting ? SettingFields.Fault(field, text, mark) : FieldText.Fault(field, text, mark)) is { } fault)
            {
                form.faults[field.Key] = fault;
            }
        }

        form.Query = form.Changed();
        if (declared.Any(parameter => parameter.Choice == "change"))
        {
            foreach ((string key, string fault) in ChangeFields.Faults(form.values, farm))
            {
                form.faults.TryAdd(key, fault);
            }
        }

        foreach (ReportField parameter in declared)
        {
            form.Set(parameter, folder, scenarioFile, mark);
        }

        return form;
    }

    /// <summary>Takes out a field whose value the page's own address says: it can't be changed there, and isn't one.</summary>
    internal void SaidByThePage(string key)
    {
        Fields = [.. Fields.Where(field => field.Key != key)];
        Query = Changed();
    }

    private string Changed() => string.Join('&', Fields
        .Where(field => values[field.Key] != field.Default)
        .Select(field => $"{Uri.EscapeDataString(field.Key)}={Uri.EscapeDataString(values[field.Key])}"));

    /// <summary>Says what is wrong with a value that can be read and still can't be; the notebook isn't run with it.</summary>
    internal void Refuse(string key, string fault)
    {
        faults[key] = fault;
        parameters.Remove(key);
    }

    private void Set(ReportField parameter, string folder, string scenarioFile, char mark)
    {
        string text = values.GetValueOrDefault(parameter.Name, "");
        if (faults.ContainsKey(parameter.Name))
        {
            return;
        }

        if (parameter.Unit == "file" && text.Length > 0)
        {
            if (FilesOfTheFarm.Find(folder, text) is { } path)
            {
                parameters[parameter.Name] = path;
            }
            else
            {
                faults[parameter.Name] = $"There is no file {text} in the records folder; give the name of one that lies there.";
            }
        }
        else
        {
            parameters[parameter.Name] = parameter switch
            {
                { Unit: "folder" } => folder,
                { Unit: "scenario file" } => File.Exists(scenarioFile) ? scenarioFile : "",
                { Choice: "setting" } => SettingFields.Join(values, FaultlessSettings(), mark),
                { Choice: "change" } => Changes = ChangeFields.Join(values, mark),
                { Type: ParameterType.Whole } => (int)FieldText.Number(text, mark)!.Value,
                { Type: ParameterType.Number } => FieldText.Number(text, mark)!.Value,
                { Type: ParameterType.Approximate } => (double)FieldText.Number(text, mark)!.Value,
                { Type: ParameterType.YesNo } => text == "true",
                _ => text,
            };
        }
    }

    private IEnumerable<PageField> FaultlessSettings() => Fields.Where(field =>
        field.Key.StartsWith(SettingFields.Prefix, StringComparison.Ordinal) && !faults.ContainsKey(field.Key));

    private static IEnumerable<PageField> FieldsOf(ReportField parameter, OpenedFarm farm)
    {
        if (parameter.Unit is "folder" or "scenario file")
        {
            return [];
        }

        if (parameter.Choice == "setting")
        {
            return SettingFields.Of(farm.Settings);
        }

        if (parameter.Choice == "change")
        {
            return ChangeFields.Of(farm);
        }

        (string help, string? meaning) = SplitHelp(parameter);
        PageField field = new(parameter.Name, parameter.Label, KindOf(parameter), Written(parameter.Default), help)
        { Unit = UnitOf(parameter.Unit, farm.Settings), Lowest = parameter.Lowest, Highest = parameter.Highest };
        if (field.Kind == FieldKind.YesNo)
        {
            return [field with { Group = SettingFields.Group }];
        }

        if (parameter.Choice == "crop year")
        {
            return [field with { Kind = FieldKind.Choice, Help = "", Options = Years(farm) }];
        }

        if (parameter.Choice is { } choice && farm.Choices(choice) is { } names)
        {
            FieldOption[] first = field.Default.Length == 0 ? [new("", meaning ?? "none")]
                : names.Contains(field.Default) ? [] : [new(field.Default, field.Default)];
            return [field with { Kind = FieldKind.Choice, Options = [.. first, .. names.Select(name => new FieldOption(name, name))] }];
        }

        string unset = field.Kind == FieldKind.Text ? "empty" : field.Default;
        return [field with { Help = meaning is null ? help : $"{help}{(help.Length > 0 ? "; " : "")}{unset} = {meaning}" }];
    }

    private static IReadOnlyList<FieldOption> Years(OpenedFarm farm) =>
    [
        new("0", farm.LatestYear == 0 ? "the season just ended" : $"{farm.LatestYear}, the season just ended"),
        .. farm.Years.Reverse().Select(year => new FieldOption($"{year}", $"{year}")),
    ];

    private static string? UnitOf(string? unit, Records.FarmSettings settings) =>
        unit switch
        {
            null or "yes or no" or "file" => null,
            "money" => settings.Notation.Sign,
            _ when unit.StartsWith("length", StringComparison.Ordinal) => Records.LengthWords.Short(settings.LengthUnit)
                + unit["length".Length..],
            _ => unit,
        };

    private static FieldKind KindOf(ReportField parameter) => parameter.Type switch
    {
        ParameterType.Whole => FieldKind.Whole,
        ParameterType.Number or ParameterType.Approximate => FieldKind.Number,
        ParameterType.YesNo => FieldKind.YesNo,
        _ => FieldKind.Text,
    };

    // "...; empty = the one that brought in most" says what the default stands for: the first entry of a list, or the end of the help.
    private static (string Help, string? Meaning) SplitHelp(ReportField parameter)
    {
        string sign =
            parameter.Type switch
            {
                ParameterType.Text => "empty",
                ParameterType.YesNo => "true",
                _ => Written(parameter.Default),
            } + " = ";
        int at = parameter.Help.StartsWith(sign, StringComparison.Ordinal)
            ? 0
            : parameter.Help.IndexOf("; " + sign, StringComparison.Ordinal);
        return at < 0 ? (parameter.Help, null)
            : parameter.Type == ParameterType.YesNo ? (parameter.Help[(at + sign.Length)..], null)
            : (parameter.Help[..at], parameter.Help[(at == 0 ? sign.Length : at + 2 + sign.Length)..]);
    }

    private static string Written(object value) => value switch
    {
        bool yes => yes ? "true" : "false",
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => (string)value,
    };
}
