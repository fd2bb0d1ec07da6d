using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>A yearly gain or cost of a project.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Quantity">How much a year; null: an amount of money as such.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Each">Money for one of it.</param>
/// <param name="Amount">Money a year, signed: above 0 is gained; not available when not assumed or not known.</param>
/// <param name="From">Where the figures come from.</param>
public sealed record YearlySaving(string Name, decimal? Quantity, string Unit, decimal? Each, Result Amount, string From);

/// <summary>What an input does to the net present value.</summary>
/// <param name="Input">The input.</param>
/// <param name="Lower">Net present value with the input a tenth lower.</param>
/// <param name="Higher">Net present value with the input a tenth higher.</param>
public sealed record InvestmentSwing(string Input, decimal Lower, decimal Higher)
{
    /// <summary>How far apart the two are.</summary>
    public decimal Width => Math.Abs(Higher - Lower);
}

/// <summary>What a project must save a year to pay, without anything assumed about what it will.</summary>
/// <param name="Outlay">What it costs the farm now.</param>
/// <param name="Yearly">(Outlay - salvage) x CRF(i, n) + salvage x i, in currency a year.</param>
/// <param name="Hours">The same in hours at the value of an hour.</param>
public sealed record SavingNeeded(decimal Outlay, Result Yearly, Result Hours);

/// <summary>
/// The investment asked for: its cost now, its yearly saving for as long as it serves, its salvage at the end; with the grant and without.
/// Without it there are no indirect charges: they exist only with a grant. With it what others give of the match is no cost of the farm.
/// Work given in kind counts at its value. Amounts in currency, before tax; yearly amounts at the end of each year.
/// </summary>
public sealed class Investment
{
    private const decimal Tenth = 0.1m;
    private readonly FundingAssumptions assumptions;
    private readonly decimal? hourValue;

    private Investment(
        GrantBudget budget,
        StoreFacts? facts,
        List<YearlySaving> savings,
        FundingAssumptions assumptions,
        FarmSettings settings
    )
    {
        Budget = budget;
        Facts = facts;
        Savings = savings;
        this.assumptions = assumptions;
        hourValue = assumptions.Saving.HourValue ?? settings.OwnerWage;
        DiscountRate = (assumptions.Project.DiscountPercent ?? settings.InterestPercent) is { } percent
            ? Result.Known(percent / 100m)
            : Result.NotAvailable("the cost of capital isn't known (discount_percent, or interest_percent among the farm's settings)");
    }

    /// <summary>The budget it costs.</summary>
    public GrantBudget Budget { get; }

    /// <summary>What the records tell of the pool it improves; null: none named.</summary>
    public StoreFacts? Facts { get; }

    /// <summary>What is gained and spent a year.</summary>
    public IReadOnlyList<YearlySaving> Savings { get; }

    /// <summary>
    /// Cost of capital, as a fraction; not available when neither discount_percent nor the farm's interest_percent is given.
    /// </summary>
    public Result DiscountRate { get; }

    /// <summary>Years it serves.</summary>
    public int Years => Project.LifeYears!.Value;

    /// <summary>What it fetches at the end, in currency.</summary>
    public decimal Salvage => Project.Salvage!.Value;

    /// <summary>What holds of the project, filled in where nothing is given.</summary>
    internal ProjectAssumptions Project => assumptions.Project;

    /// <summary>Why it can't be told whether the project pays; null when it can.</summary>
    public string? Missing => YearlySaving.Reason ?? DiscountRate.Reason;

    /// <summary>
    /// The yearly saving: all lines that are assumed; not available when none is, or when nobody knows what one of them is worth.
    /// </summary>
    public Result YearlySaving =>
        Savings.FirstOrDefault(saving => saving is { Quantity: not null, Amount.IsAvailable: false }) is { } unvalued ? unvalued.Amount
        : Savings.All(saving => !saving.Amount.IsAvailable)
            ? Result.NotAvailable(
                "no yearly saving is assumed (hours_saved, losses_saved_percent, ice_saved_percent, power_saved_kwh, other_saving)"
            )
            : Result.Known(Savings.Sum(saving => saving.Amount.Value ?? 0m));

    /// <summary>Cost and saving without the grant; null when no saving is assumed or the cost of capital isn't known.</summary>
    public CapitalBudget? WithoutGrant => Outlay(CostWithoutGrant);

    /// <summary>What the project costs where no grant comes: all of it but the indirect charges.</summary>
    public decimal CostWithoutGrant => Budget.Lines.Where(line => line.Class is not null).Sum(line => line.Total);

    /// <summary>What it must save a year with the grant; needs nothing but the cost of capital.</summary>
    public SavingNeeded NeededWithGrant => Needed(Budget.OwnMatch);

    /// <summary>What it must save a year without the grant.</summary>
    public SavingNeeded NeededWithoutGrant => Needed(CostWithoutGrant);

    /// <summary>
    /// Owning against hiring, the yearly cost of owning with the grant; null where hire_rate or own_running_cost isn't given, or the cost
    /// of capital isn't known.
    /// </summary>
    public OwnOrHire? OwnOrHire =>
        assumptions.Project is { HireRate: { } hire, OwnRunningCost: { } own } && NeededWithGrant.Yearly.Value is { } owning
            ? new OwnOrHire(owning, own, hire)
            : null;

    /// <summary>The same with the grant; null as well.</summary>
    public CapitalBudget? WithGrant => Outlay(Budget.OwnMatch);

    /// <summary>Net present value with the grant when one input is a tenth lower or higher, widest first.</summary>
    public IReadOnlyList<InvestmentSwing> HangsOn
    {
        get
        {
            if (YearlySaving.Value is not { } saving || DiscountRate.Value is not { } capital)
            {
                return [];
            }

            return [.. Swings(saving, capital).OrderByDescending(swing => swing.Width)];
        }
    }

    private IEnumerable<InvestmentSwing> Swings(decimal saving, decimal capital)
    {
        (int life, decimal salvage, decimal own) = (Years, Salvage, Budget.OwnMatch);
        int years = Math.Max(1, (int)Math.Round(life * Tenth, MidpointRounding.AwayFromZero));
        yield return new("Cost of the project", Paying(own - (Budget.Total * Tenth)), Paying(own + (Budget.Total * Tenth)));
        yield return new("Grant", Paying(own + (Budget.Funder * Tenth)), Paying(own - (Budget.Funder * Tenth)));
        yield return new(
            $"Years it serves ({years} fewer or more)",
            Npv(own, saving, Math.Max(1, life - years), capital, salvage),
            Npv(own, saving, life + years, capital, salvage));
        yield return new("Cost of capital", At(1m - Tenth), At(1m + Tenth));
        if (salvage > 0m)
        {
            yield return new("Worth at the end", Fetching(1m - Tenth), Fetching(1m + Tenth));
        }

        foreach (YearlySaving line in Savings.Where(line => line.Amount.IsAvailable))
        {
            decimal tenth = line.Amount.Value!.Value * Tenth;
            yield return new(line.Name, Saved(saving - tenth), Saved(saving + tenth));
        }

        decimal Paying(decimal cost) => Npv(cost, saving, life, capital, salvage);
        decimal At(decimal part) => Npv(own, saving, life, capital * part, salvage);
        decimal Fetching(decimal part) => Npv(own, saving, life, capital, salvage * part);
        decimal Saved(decimal yearly) => Npv(own, yearly, life, capital, salvage);
        decimal Npv(decimal cost, decimal yearly, int serves, decimal rate, decimal fetches) =>
            Make(cost, yearly, serves, rate, fetches).NetPresentValue;
    }

    /// <summary>The investment behind a grant budget.</summary>
    /// <param name="season">Last season, for what the records know.</param>
    /// <param name="budget">The budget.</param>
    /// <param name="assumptions">What is saved, and for how long.</param>
    /// <param name="power">Tells what a kWh more costs; null: by days of shortage, else by a year's use.</param>
    /// <returns>The investment.</returns>
    /// <exception cref="ArgumentException">project_pool names no pool.</exception>
    public static Investment Of(SeasonReview season, GrantBudget budget, FundingAssumptions assumptions, IMarginalPower? power = null)
    {
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(budget);
        ArgumentNullException.ThrowIfNull(assumptions);
        FarmRecords records = season.Records;
        ProjectRow? row = ProjectAssumptions.RowOf(records, budget.Project);
        decimal? assumed = assumptions.Project.Salvage;
        assumptions = assumptions with { Project = assumptions.Project.For(records, budget.Project) };
        RequireSense(assumptions, assumed, budget, season.Notation);
        StoreFacts? facts = assumptions.Project.PoolIn(records, budget.Project) is { } pool ? StoreFacts.Of(season, pool, power) : null;
        return new Investment(budget, facts, SavingsOf(season, row, facts, assumptions), assumptions, season.Settings);
    }

    /// <summary>Refuses what was asked for; what the records say is shown as it is.</summary>
    private static void RequireSense(FundingAssumptions assumptions, decimal? salvage, GrantBudget budget, Notation notation)
    {
        if (assumptions.Saving.Pattern.Count > assumptions.Project.LifeYears)
        {
            throw new ArgumentException(notation.Text($"saving_pattern names {assumptions.Saving.Pattern.Count} years, "
                + $"but the project serves {assumptions.Project.LifeYears} (project_life_years)."), nameof(assumptions));
        }

        if (salvage > budget.Total)
        {
            throw new ArgumentException(notation.Text($"{budget.Project} is to fetch {salvage:#,##0.00} at the end and "
                + $"costs {budget.Total:#,##0.00}: correct project_salvage."), nameof(assumptions));
        }
    }

    private static List<YearlySaving> SavingsOf(SeasonReview season, ProjectRow? row, StoreFacts? facts, FundingAssumptions assumptions)
    {
        SavingAssumptions saving = assumptions.Saving with
        {
            LossesPercent = assumptions.Saving.LossesPercent ?? row?.LossesSavedPercent,
            PowerKwh = assumptions.Saving.PowerKwh ?? row?.PowerSavedKwh,
        };
        return
        [
            saving.Hours is null && row is { HoursSavedPercent: { } part } ? PartOfHours(season, part, row.Value, facts, saving)
                : HoursSaved(season, facts, saving),
            LossesSaved(season, facts, saving),
            IceSaved(season, facts, saving),
            PowerSaved(season, facts, saving),
            new("Other gain", null, "", null,
                saving.Other is { } gain ? Result.Known(gain) : Result.NotAvailable("other_saving is not given"), "assumed"),
            new("Other yearly cost", null, "", null,
                saving.Cost is { } spent ? Result.Known(-spent) : Result.NotAvailable("other_cost is not given"), "assumed"),
        ];
    }

    private static YearlySaving PartOfHours(SeasonReview season, decimal part, ProjectRow row, StoreFacts? facts, SavingAssumptions saving)
    {
        Result hours = ProjectChoice.HoursOf(season, row, facts);
        if (hours.Value is not { } logged)
        {
            return new("Hours saved", part, "% of the hours", null, hours, "projects table");
        }

        YearlySaving saved = HoursSaved(season, facts, saving with { Hours = logged * part / 100m });
        return saved with { From = season.Notation.Text($"projects table: {part:0.##}% of the {logged:#,##0.#} hours on record") };
    }

    private static YearlySaving HoursSaved(SeasonReview season, StoreFacts? facts, SavingAssumptions saving)
    {
        decimal? hour = saving.HourValue ?? season.Settings.OwnerWage;
        Result each = hour is { } value ? Result.Known(value) : Result.NotAvailable("no hour_value and no owner_wage");
        string because = facts is null ? "assumed"
            : facts.Hours.Value is { } logged
                ? season.Notation.Text($"assumed; the records hold {logged:0.#} hours for {facts.Pool.Name}")
            : $"assumed; the records hold no hours ({facts.Hours.Reason})";
        return new("Hours saved", saving.Hours, "hours", hour, Times(saving.Hours, each, "hours_saved"), because);
    }

    private static YearlySaving LossesSaved(SeasonReview season, StoreFacts? facts, SavingAssumptions saving)
    {
        Result each = facts is null ? Result.NotAvailable("no pool named") : Result.Known(facts.LostValue / 100m);
        string because = facts is null
            ? "assumed"
            : season.Notation.Text(
                $"records: produce kept in {facts.Pool.Name} and lost or thrown out, "
                    + $"{facts.LostValue:0.00} at average price{Without(facts)}; the part saved is assumed"
            );
        Result amount = Times(saving.LossesPercent, each, "losses_saved_percent");
        return new("Produce no longer lost", saving.LossesPercent, "% of the loss", each.Value, amount, because);
    }

    private static YearlySaving IceSaved(SeasonReview season, StoreFacts? facts, SavingAssumptions saving)
    {
        Result each = facts is null ? Result.NotAvailable("no pool named") : facts.IceCost.Map(bill => bill / 100m);
        string? paid = facts?.IceCost.IsAvailable == true ? season.Notation.Text($"{facts.IceCost} paid for ice") : facts?.IceCost.Reason;
        string because = facts is null ? "assumed" : $"records: {paid}; the part saved is assumed";
        Result amount = Times(saving.IcePercent, each, "ice_saved_percent");
        return new("Ice no longer bought", saving.IcePercent, "% of the bill", each.Value, amount, because);
    }

    private static YearlySaving PowerSaved(SeasonReview season, StoreFacts? facts, SavingAssumptions saving)
    {
        MarginalPrice price = saving.PowerPrice is { } given ? new MarginalPrice(Result.Known(given), "power_price")
            : facts?.PowerPrice ?? new MarginalPrice(Result.NotAvailable("no pool named"), "no pool named");
        string because = facts is null ? "assumed"
            : facts.KilowattHours.Value is { } used
                ? season.Notation.Text($"assumed; the records hold {used:0} kWh for {facts.Pool.Name}; {price.Because}")
            : $"assumed; the records hold {facts.KilowattHours.Reason}";
        Result amount = Times(saving.PowerKwh, price.Each, "power_saved_kwh");
        return new("Electricity", saving.PowerKwh, "kWh", price.Each.Value, amount, because);
    }

    private static string Without(StoreFacts facts) => facts.LostWithoutPrice.Count == 0 ? ""
        : $" (without {string.Join(", ", facts.LostWithoutPrice)}, of which nothing was sold)";

    private static Result Times(decimal? quantity, Result each, string name) => quantity is not { } given
        ? Result.NotAvailable($"{name} is not given")
        : each.Value is { } value ? Result.Known(Money.Rounded(given * value).Amount) : each;

    private CapitalBudget? Outlay(decimal outlay) =>
        YearlySaving.Value is { } saving && DiscountRate.Value is { } capital
            ? Make(outlay, saving, Years, capital, Salvage)
            : null;

    private CapitalBudget Make(decimal outlay, decimal saving, int years, decimal rate, decimal salvage)
    {
        decimal[] amounts =
        [
            -outlay,
            .. Enumerable.Range(1, years).Select(year => Money.Rounded(saving * assumptions.Saving.PartIn(year)).Amount),
        ];
        amounts[years] += salvage;
        return new CapitalBudget(amounts, rate);
    }

    /// <summary>(Outlay - salvage) x CRF(i, n) + salvage x i, to the cent, of a project whose years and salvage are filled in.</summary>
    internal static decimal YearlyCost(decimal outlay, ProjectAssumptions project, decimal rate)
    {
        decimal salvage = project.Salvage!.Value;
        return Money
            .Rounded(((outlay - salvage) * Ownership.CapitalRecoveryFactor(rate, project.LifeYears!.Value)) + (salvage * rate))
            .Amount;
    }

    private SavingNeeded Needed(decimal outlay)
    {
        if (DiscountRate.Value is not { } capital)
        {
            return new SavingNeeded(outlay, DiscountRate, DiscountRate);
        }

        decimal yearly = YearlyCost(outlay, Project, capital);
        return new SavingNeeded(
            outlay,
            Result.Known(yearly),
            hourValue is { } value
                ? Result.Of(yearly, value, "an hour is valued at nothing")
                : Result.NotAvailable("no hour_value and no owner_wage")
        );
    }
}
