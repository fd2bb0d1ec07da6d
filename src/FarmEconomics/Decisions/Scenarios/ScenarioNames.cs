using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>Finds whom a change names among the records' own names, and says what is nearest when nobody is.</summary>
internal sealed class ScenarioNames(FarmRecords records)
{
    private IEnumerable<string> CropNames => records.Crops.Select(crop => crop.Name);

    private IEnumerable<string> ChannelNames => records.Channels.Select(channel => channel.Name);

    internal static SettingSpec Setting(TextPart name, IEnumerable<string> subjects) =>
        FarmSettingsReader.Settings.FirstOrDefault(setting => HeadingKey.Of(setting.Name) == HeadingKey.Of(name.Text))
        ?? throw name.Unknown(
            $"\"{name.Text}\" can't be changed: "
                + "a setting of farm.csv, or price, wage, hours, expenses, yield, income or fee and whose, was expected.",
            FarmSettingsReader.Settings.Select(setting => setting.Name).Concat(subjects));

    internal Crop Crop(TextPart name) => records.FindCrop(name.Text) ?? throw name.Unknown($"There is no crop \"{name.Text}\".", CropNames);

    /// <summary>CROP, or CROP at CHANNEL: a crop's own name may hold the word "at".</summary>
    internal (Crop Crop, Channel? Channel) CropAndChannel(TextPart name)
    {
        if (records.FindCrop(name.Text) is { } whole)
        {
            return (whole, null);
        }

        int last = -1;
        for (
            int at = name.Text.IndexOf(" at ", StringComparison.OrdinalIgnoreCase);
            at >= 0;
            at = name.Text.IndexOf(" at ", at + 1, StringComparison.OrdinalIgnoreCase)
        )
        {
            if (records.FindCrop(name.Text[..at]) is { } crop && Channel(name.Text[(at + 4)..]) is not null)
            {
                return (crop, PricedChannel(name.From(at + 4)));
            }

            last = at;
        }

        return last < 0 ? (Crop(name), null) : (Crop(name.Until(last)), PricedChannel(name.From(last + 4)));
    }

    internal Channel PricedChannel(TextPart name)
    {
        Channel channel = Known(name);
        return channel.IsPriced || channel.Kind == ChannelKind.Other ? channel
            : channel.Kind == ChannelKind.Share
                ? throw name.Fault(
                    $"Members of {channel.Name} pay for the season, not for a crop: write income of {channel.Name}=+5% instead."
                )
            : throw name.Fault(
                $"What leaves through {channel.Name} brings no money; a channel of kind market, stand or wholesale was expected."
            );
    }

    internal Channel ChannelFor(ScenarioSubject subject, TextPart name)
    {
        Channel channel = Known(name);
        bool fits =
            subject == ScenarioSubject.Income
                ? channel.Kind is ChannelKind.Share or ChannelKind.Other
                : channel.IsSold || channel.Kind == ChannelKind.Other;
        return fits ? channel
            : subject == ScenarioSubject.Income
                ? throw name.Fault($"{channel.Name} takes its money by the sale: write prices at {channel.Name}=+5% instead.")
            : throw name.Fault($"What leaves through {channel.Name} brings no money that a fee could be of.");
    }

    internal (ScenarioScope Scope, string? Name) Worker(TextPart name)
    {
        if (Words.TryParse(name.Text, out WorkerKind kind) && kind != WorkerKind.Volunteer)
        {
            return (kind == WorkerKind.Hired ? ScenarioScope.Hired : ScenarioScope.Owner, null);
        }

        List<string> workers = records.Tables.Workers.Select(row => row.Worker.Trim()).ToList();
        string? known = workers.Find(worker => Same(worker, name.Text));
        return known is not null
            ? (ScenarioScope.Worker, known)
            : throw name.Unknown(
                $"There is no worker \"{name.Text}\"; hired, owner or a name of workers.csv was expected.",
                workers.Concat(["hired", "owner"])
            );
    }

    /// <summary>Refuses a wage that no figure would follow.</summary>
    internal void CheckWage(ScenarioScope scope, string? worker, ScenarioStep step, TextPart name)
    {
        List<WorkerRow> rows = scope == ScenarioScope.Worker ? records.Tables.Workers.FindAll(row => Same(row.Worker, worker!)) : [];
        if (rows.Exists(row => row.Kind == WorkerKind.Volunteer))
        {
            throw name.Fault($"Hours of {worker}, a volunteer, carry no money.");
        }

        if (
            rows.Exists(row => row.Kind == WorkerKind.Hired)
            && records.Expenses.Any(row => records.Category(row.Category) is var category && category.IsLabor() && !category.IsBurden())
        )
        {
            throw name.Fault($"What hired work cost stands in the books, all workers together, so the wage of {worker} alone moves "
                + "nothing: write wages=+5%, or wage of hired=18 for what an hour costs on average.");
        }

        bool owner = scope == ScenarioScope.Owner || rows.Exists(row => row.Kind == WorkerKind.Owner);
        IEnumerable<WorkerRow> wages =
            scope == ScenarioScope.Owner ? records.Tables.Workers.Where(row => row.Kind == WorkerKind.Owner) : rows;
        if (
            step.IsPercent
            && scope != ScenarioScope.Hired
            && !(owner && records.Settings.OwnerWage is not null)
            && !wages.Any(row => row.Wage is not null)
        )
        {
            throw name.Fault($"The records give no wage of {name.Text} that a percent could be of; write a value.");
        }
    }

    /// <summary>A crop goes before a stage of the same name; "stage NAME" names the stage.</summary>
    internal (ScenarioScope Scope, string? Name) CropOrStage(TextPart name)
    {
        TextPart stage = WithoutPrefix(name, "stage ");
        return records.FindCrop(name.Text) is { } crop ? (ScenarioScope.Crop, crop.Name)
            : Words.TryParse(stage.Text, out Stage word) ? (ScenarioScope.Stage, Words.Of(word))
            : records.FindCrop(WithoutPrefix(name, "crop ").Text) is { } named ? (ScenarioScope.Crop, named.Name)
            : throw name.Unknown(
                $"There is no crop and no stage of work \"{name.Text}\"; stages are {string.Join(", ", Words.All<Stage>())}.",
                CropNames.Concat(Words.All<Stage>())
            );
    }

    /// <summary>A category goes before a pool of the same name; "pool NAME" names the pool.</summary>
    internal (ScenarioScope Scope, string? Name) CategoryOrPool(TextPart name)
    {
        List<string> categories = Defaults.Categories.Concat(records.Tables.Categories).Select(row => row.Category.Trim()).ToList();
        string text = name.Text;
        return Category(text)
            ?? Pool(text)
            ?? Category(WithoutPrefix(name, "category ").Text)
            ?? Pool(WithoutPrefix(name, "pool ").Text)
            ?? throw WithoutPrefix(WithoutPrefix(name, "category "), "pool ")
                .Unknown(
                    $"There is no category of the books and no pool \"{text}\".",
                    categories.Concat(records.Pools.Select(other => other.Name))
                );

        (ScenarioScope, string?)? Category(string wanted) =>
            categories.Find(other => Same(other, wanted)) is { } known ? (ScenarioScope.Category, known) : null;

        (ScenarioScope, string?)? Pool(string wanted) => records.FindPool(wanted) is { } known ? (ScenarioScope.Pool, known.Name) : null;
    }

    private Channel Known(TextPart name) => Channel(name.Text) ?? throw name.Unknown($"There is no channel \"{name.Text}\".", ChannelNames);

    private Channel? Channel(string name) => records.Channels.Find(channel => Same(channel.Name, name));

    private static TextPart WithoutPrefix(TextPart name, string prefix) =>
        name.Text.StartsWith(prefix, StringComparison.OrdinalIgnoreCase) ? name.From(prefix.Length) : name;

    private static bool Same(string left, string right) => string.Equals(left.Trim(), right.Trim(), StringComparison.OrdinalIgnoreCase);
}
