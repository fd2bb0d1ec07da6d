using FarmEconomics.Records;
using FarmEconomics.Records.Reading;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>Reads one change: its subject, whom it names, and how far it goes.</summary>
internal sealed class ScenarioReader(FarmRecords records)
{
    private static readonly Dictionary<string, ScenarioSubject> Subjects = new(StringComparer.OrdinalIgnoreCase)
    {
        ["price"] = ScenarioSubject.Price,
        ["prices"] = ScenarioSubject.Price,
        ["wage"] = ScenarioSubject.Wage,
        ["wages"] = ScenarioSubject.Wage,
        ["hours"] = ScenarioSubject.Hours,
        ["expenses"] = ScenarioSubject.Expenses,
        ["expense"] = ScenarioSubject.Expenses,
        ["yield"] = ScenarioSubject.Yield,
        ["yields"] = ScenarioSubject.Yield,
        ["income"] = ScenarioSubject.Income,
        ["fee"] = ScenarioSubject.Fee,
    };

    private const string Left = "without ";

    private readonly ScenarioNames names = new(records);
    private readonly ScenarioValues values = new(records);

    internal ScenarioChange Read(TextPart part)
    {
        if (part.Text.StartsWith(Left, StringComparison.OrdinalIgnoreCase))
        {
            string crop = names.Crop(part.From(Left.Length)).Name;
            ScenarioStep all = new(-100m, IsPercent: true);
            return new ScenarioChange(ScenarioSubject.Without, ScenarioScope.Crop, crop, null, all, "");
        }

        int equals = part.Text.LastIndexOf('=');
        if (equals < 0)
        {
            throw part.Fault($"\"{part.Text}\" says no new value: \"=\" and a value or a percent were expected, as in {Example()}.");
        }

        TextPart left = part.Until(equals);
        TextPart value = part.From(equals + 1);
        if (left.Text.Length == 0)
        {
            throw part.Fault($"What is to change is missing before \"=\"; expected was for example {Example()}.");
        }

        int space = left.Text.IndexOf(' ', StringComparison.Ordinal);
        string head = space < 0 ? left.Text : left.Text[..space];
        return Subjects.TryGetValue(head, out ScenarioSubject subject) ? Named(subject, left, head, value) : Setting(left, value);
    }

    private ScenarioChange Named(ScenarioSubject subject, TextPart left, string head, TextPart value)
    {
        TextPart rest = left.From(head.Length);
        TextPart? name = null;
        TextPart? at = null;
        if (rest.Text.StartsWith("of ", StringComparison.OrdinalIgnoreCase))
        {
            name = rest.From(3);
        }
        else if (rest.Text.StartsWith("at ", StringComparison.OrdinalIgnoreCase) && subject == ScenarioSubject.Price)
        {
            at = rest.From(3);
        }
        else if (rest.Text.Length > 0)
        {
            string channel = subject == ScenarioSubject.Price ? ", or \"at\" and a channel" : "";
            throw rest.Fault($"After \"{head}\" comes \"of\" and a name{channel}, not \"{rest.Text}\".");
        }

        return subject == ScenarioSubject.Price ? Price(name, at, value) : Other(subject, left, name, value);
    }

    private ScenarioChange Setting(TextPart left, TextPart value)
    {
        SettingSpec setting = ScenarioNames.Setting(left, Subjects.Keys);
        return values.Setting(setting, left, value);
    }

    private ScenarioChange Price(TextPart? name, TextPart? at, TextPart value)
    {
        (Crop? crop, Channel? channel) = name is { } named
            ? names.CropAndChannel(named)
            : (null, at is { } place ? names.PricedChannel(place) : null);
        ScenarioStep step = values.Step(value, allowValue: crop is not null, "a price per unit of the crop");
        return new ScenarioChange(
            ScenarioSubject.Price,
            crop is null ? ScenarioScope.All : ScenarioScope.Crop,
            crop?.Name,
            channel?.Name,
            step,
            value.Text
        );
    }

    private ScenarioChange Other(ScenarioSubject subject, TextPart left, TextPart? name, TextPart value)
    {
        (ScenarioScope scope, string? known) = subject switch
        {
            ScenarioSubject.Wage => name is { } who ? names.Worker(who) : (ScenarioScope.Hired, null),
            ScenarioSubject.Hours => name is { } what ? names.CropOrStage(what) : (ScenarioScope.All, null),
            ScenarioSubject.Expenses => name is { } what ? names.CategoryOrPool(what) : (ScenarioScope.All, null),
            ScenarioSubject.Yield => name is { } what ? (ScenarioScope.Crop, names.Crop(what).Name) : (ScenarioScope.All, null),
            _ when name is { } where => (ScenarioScope.Channel, names.ChannelFor(subject, where).Name),
            _ => throw left.Fault($"Which channel's? Expected was {left.Text} of CHANNEL."),
        };
        if (subject == ScenarioSubject.Fee)
        {
            return new ScenarioChange(subject, scope, known, null, values.Fee(value), value.Text);
        }

        bool allowValue = subject == ScenarioSubject.Wage && name is not null;
        ScenarioStep step = values.Step(value, allowValue, "money per hour");
        if (subject is ScenarioSubject.Hours or ScenarioSubject.Yield && step.Factor <= 0m)
        {
            throw value.Fault("A change above -100% was expected: without any of it, the rest of the season would not be the same one.");
        }

        if (subject == ScenarioSubject.Wage && name is { } worker)
        {
            names.CheckWage(scope, known, step, worker);
        }

        return new ScenarioChange(subject, scope, known, null, step, value.Text);
    }

    private string Example() => $"price of {(records.Crops.Count > 0 ? records.Crops[0].Name : "CROP")}=+10%";
}
