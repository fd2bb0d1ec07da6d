namespace FarmEconomics.Decisions.Scenarios;

/// <summary>What a change of a scenario is about.</summary>
public enum ScenarioSubject
{
    /// <summary>A setting of the farm table.</summary>
    Setting,

    /// <summary>What goods are sold for.</summary>
    Price,

    /// <summary>What an hour of work costs.</summary>
    Wage,

    /// <summary>How many hours were worked.</summary>
    Hours,

    /// <summary>Lines of the books.</summary>
    Expenses,

    /// <summary>What was picked, and with it what left the farm.</summary>
    Yield,

    /// <summary>Share payments and other money that no crop is named for.</summary>
    Income,

    /// <summary>A channel's fee.</summary>
    Fee,

    /// <summary>A crop not grown.</summary>
    Without,
}

/// <summary>Whom a change of a scenario names.</summary>
public enum ScenarioScope
{
    /// <summary>Nobody: all of them.</summary>
    All,

    /// <summary>A setting.</summary>
    Setting,

    /// <summary>A crop.</summary>
    Crop,

    /// <summary>A stage of work.</summary>
    Stage,

    /// <summary>All hired work.</summary>
    Hired,

    /// <summary>All unpaid work of owners.</summary>
    Owner,

    /// <summary>A worker.</summary>
    Worker,

    /// <summary>A category of the books.</summary>
    Category,

    /// <summary>A pool.</summary>
    Pool,

    /// <summary>A channel.</summary>
    Channel,
}

/// <summary>How far a change goes: to a new value, or by a percent of the old one. The default is the value 0.</summary>
/// <param name="Number">The new value; or the percent, -10 for 10 % less, not below -100.</param>
/// <param name="IsPercent">True when it is a percent of the old value.</param>
public readonly record struct ScenarioStep(decimal Number, bool IsPercent)
{
    /// <summary>The factor of a percent: 0.9 for -10 %; 1 for a new value.</summary>
    public decimal Factor => IsPercent ? 1m + (Number / 100m) : 1m;
}

/// <summary>One change of a scenario, with every name known to the records it was read for. Immutable.</summary>
/// <param name="Subject">What it is about.</param>
/// <param name="Scope">Whom it names.</param>
/// <param name="Name">The name in the records' own spelling; null for <see cref="ScenarioScope.All"/>, hired and owner.</param>
/// <param name="Channel">The channel a price is of; null: all channels.</param>
/// <param name="Step">How far it goes; 0 for a setting that isn't a number.</param>
/// <param name="ValueText">The value as written, without spaces around it.</param>
public sealed record ScenarioChange(
    ScenarioSubject Subject,
    ScenarioScope Scope,
    string? Name,
    string? Channel,
    ScenarioStep Step,
    string ValueText
)
{
    /// <summary>The text form, which reads back as the same change: <c>price of Carrots at Stand=+10%</c>.</summary>
    public string Text
    {
        get
        {
            if (Subject == ScenarioSubject.Without)
            {
                return $"without {Name}";
            }

            string subject = (Subject, Scope) switch
            {
                (ScenarioSubject.Setting, _) => Name!,
                (ScenarioSubject.Price, ScenarioScope.All) => "prices",
                (ScenarioSubject.Wage, ScenarioScope.All) => "wages",
                (ScenarioSubject.Yield, ScenarioScope.All) => "yields",
                (ScenarioSubject.Expenses, ScenarioScope.Category) => $"expenses of category {Name}",
                (ScenarioSubject.Expenses, ScenarioScope.Pool) => $"expenses of pool {Name}",
                (_, ScenarioScope.All) => Words(Subject),
                (_, ScenarioScope.Hired or ScenarioScope.Owner) => $"{Words(Subject)} of {Scope.ToString().ToLowerInvariant()}",
                _ => $"{Words(Subject)} of {Name}",
            };
            return $"{subject}{(Channel is null ? "" : $" at {Channel}")}={ValueText}";
        }
    }

    /// <summary>From the widest to the narrowest: what is narrower counts after, and so in place of, what is wider.</summary>
    internal int Narrowness =>
        Scope switch
        {
            ScenarioScope.Setting => 0,
            ScenarioScope.All => 1,
            ScenarioScope.Stage
            or ScenarioScope.Hired
            or ScenarioScope.Owner
            or ScenarioScope.Category
            or ScenarioScope.Pool
            or ScenarioScope.Channel => 2,
            _ => 3,
        } + (Channel is null ? 0 : 2);

    /// <summary>The text form.</summary>
    public override string ToString() => Text;

    private static string Words(ScenarioSubject subject) => subject.ToString().ToLowerInvariant();
}
