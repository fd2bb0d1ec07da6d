using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Short;

/// <summary>
/// What a season was short of, from the records alone, and what each crop added to the farm per unit of it in the weeks or days in which it
/// was short: one list per thing and cover.
/// A thing is short where at least 85 % of its limit is in use (our own, no source; settable). Source of the measure: contribution per unit
/// of the limiting factor, the rule of managerial accounting for one
/// limit (OpenStax, Principles of Accounting vol. 2, chapter on short-term decisions); with several limits at once no single list is the
/// ranking.
/// </summary>
public sealed class WhatWasShort
{
    /// <summary>Short from this part of the limit on, unless set otherwise.</summary>
    public const decimal UsualShortAt = 0.85m;

    private static readonly OncePer<SeasonCosts, WhatWasShort> Found = new(costs => new WhatWasShort(costs, UsualShortAt));

    private WhatWasShort(SeasonCosts costs, decimal shortAt)
    {
        Season = costs.Season;
        ShortAt = shortAt;
        WaterAndPower = WaterAndPower.Of(costs);
        SeasonDays days = new(Season);
        WrittenLimits limits = new(Season.Records);
        List<NotChecked> notChecked = [];
        List<ResourceUse> found = [.. BedLength.Find(Season, days, shortAt)];
        WeeklyHours hours = new(costs);
        if (hours.IsLogged(days))
        {
            found.AddRange(hours.Find(days, limits, shortAt));
        }
        else
        {
            notChecked.Add(new NotChecked("hours", $"no hours of {Season.CropYear} are logged"));
        }

        found.AddRange(new StoreCrates(Season).Find(days, limits, shortAt, notChecked));
        TraysAndPower rest = new(Season, days, limits, shortAt);
        found.AddRange(rest.Trays(notChecked));
        found.AddRange(rest.Power(WaterAndPower.Power, notChecked));
        found.AddRange(new DailyWater(WaterAndPower, days, limits, shortAt).Find(notChecked));
        foreach (ResourceUse use in found)
        {
            use.Resource.Crops = use.Resource.Short.Count == 0 ? [] : Ranked(costs, use.On(days.ShortDays(use.Resource)));
        }

        Resources = found.ConvertAll(use => use.Resource);
        NotChecked = [.. limits.NotChecked, .. notChecked];
    }

    /// <summary>The season.</summary>
    public SeasonReview Season { get; }

    /// <summary>The part of a limit from which on something is short, above 0.</summary>
    public decimal ShortAt { get; }

    /// <summary>The season's water and power.</summary>
    public WaterAndPower WaterAndPower { get; }

    /// <summary>What was held against a limit: beds by cover, hours, stores, trays, power, water, sprinklers.</summary>
    public IReadOnlyList<ScarceResource> Resources { get; }

    /// <summary>What was short at least once.</summary>
    public IEnumerable<ScarceResource> Short => Resources.Where(resource => resource.Short.Count > 0);

    /// <summary>What can't be checked, each with what no record tells.</summary>
    public IReadOnlyList<NotChecked> NotChecked { get; }

    /// <summary>Looks for what a season was short of.</summary>
    /// <param name="costs">The season's costs.</param>
    /// <param name="shortAt">The part of a limit from which on something is short; above 0.</param>
    /// <returns>What was short.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="shortAt"/> is not above 0.</exception>
    public static WhatWasShort Of(SeasonCosts costs, decimal shortAt = UsualShortAt)
    {
        ArgumentNullException.ThrowIfNull(costs);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(shortAt);
        return shortAt == UsualShortAt ? Found.Of(costs) : new WhatWasShort(costs, shortAt);
    }

    private static List<ScarceUse> Ranked(SeasonCosts costs, IEnumerable<EnterpriseUse> uses)
    {
        Dictionary<Enterprise, EnterpriseUse> byEnterprise = uses.ToDictionary(use => use.Enterprise);
        Dictionary<Crop, (decimal Money, decimal Use, string? Missing)> crops = [];
        foreach (EnterpriseBudget planting in costs.Season.Plantings)
        {
            if (byEnterprise.TryGetValue(planting.Enterprises[0], out EnterpriseUse? use))
            {
                Result contribution = Contribution.Of(costs, planting);
                (decimal money, decimal sum, string? missing) = crops.GetValueOrDefault(planting.Crop!);
                crops[planting.Crop!] = (money + ((contribution.Value ?? 0m) * use.Part), sum + use.Use, missing ?? contribution.Reason);
            }
        }

        return
        [
            .. crops
                .Select(crop => new ScarceUse(
                    crop.Key,
                    crop.Value.Missing is { } why ? Result.NotAvailable(why) : Result.Known(crop.Value.Money),
                    crop.Value.Use
                ))
                .OrderByDescending(use => use.PerUnit.IsAvailable)
                .ThenByDescending(use => use.PerUnit.Value)
                .ThenBy(use => use.Crop.Index),
        ];
    }
}
