using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>Reads off what one change did by itself: rows touched, value before and after, money moved, and what stayed.</summary>
internal sealed class ChangeEffects
{
    private readonly RecordsCopy copy;
    private readonly ScenarioChange change;
    private readonly SeasonMoney before;
    private readonly SeasonMoney after;
    private readonly SeasonRows rows;
    private readonly FarmRecords records;
    private readonly int year;

    private ChangeEffects(FarmReview real, RecordsCopy copy, ScenarioOutcome alone, ScenarioChange change)
    {
        this.copy = copy;
        this.change = change;
        records = real.Records;
        year = alone.Before.CropYear;
        before = new SeasonMoney(real, alone.Before);
        after = new SeasonMoney(alone.Review, alone.After);
        rows = new SeasonRows(real, year);
    }

    internal static ChangeEffect Of(FarmReview real, RecordsCopy copy, ScenarioOutcome alone, ScenarioChange change)
    {
        ChangeEffects effects = new(real, copy, alone, change);
        List<TouchedRows> touched = effects.rows.Count(copy.Touched);
        (EffectMeasure measure, BeforeAfter value, Result moved) = effects.Read();
        return new ChangeEffect(
            change,
            measure,
            value,
            effects.UnitOf(measure),
            touched,
            moved,
            alone.FarmNet,
            ChangeNotes.Of(real, alone.Before, copy, effects.rows, touched, change)
        )
        {
            SettingBefore = change.Subject == ScenarioSubject.Setting ? SettingWords.Of(real.Records.Settings, change.Name!) : null,
        };
    }

    private (EffectMeasure Measure, BeforeAfter Value, Result Moved) Read()
    {
        Crop? crop = change.Scope == ScenarioScope.Crop ? records.Crop(change.Name!) : null;
        return change.Subject switch
        {
            ScenarioSubject.Setting => (
                EffectMeasure.Setting,
                new BeforeAfter(SettingWords.Number(records.Settings, change.Name!), SettingWords.Number(copy.Settings, change.Name!)),
                Result.NotAvailable("a setting is no row of the records")
            ),
            ScenarioSubject.Price when crop is not null =>
                (EffectMeasure.PricePerUnit, Both(money => money.PricePerUnit(crop, change.Channel)), Sales.Difference),
            ScenarioSubject.Price => (EffectMeasure.Money, Both(money => money.SalesThrough(change.Channel)), Sales.Difference),
            ScenarioSubject.Yield or ScenarioSubject.Without when crop is not null =>
                (EffectMeasure.Quantity, Both(money => money.Picked(crop)), Sales.Difference),
            ScenarioSubject.Yield => (EffectMeasure.Money, Sales, Sales.Difference),
            ScenarioSubject.Wage =>
                (EffectMeasure.MoneyPerHour, Both(money => money.PerHour(change.Scope, change.Name)), Moved(money => money.Labor)),
            ScenarioSubject.Hours => (EffectMeasure.Hours, HoursChanged(), Moved(money => money.Labor)),
            ScenarioSubject.Fee => (EffectMeasure.Percent, Both(money => money.FeePercent(change.Name!)), Moved(money => money.Fees)),
            _ => Amounts(),
        };
    }

    private BeforeAfter Sales => Both(money => money.Sales);

    /// <summary>The rows of the season that the change touched.</summary>
    private IEnumerable<IRecordRow> Meant => copy.Touched.Where(rows.IsOfSeason);

    private BeforeAfter HoursChanged() =>
        new(before.HoursOf(change, [.. Meant]), after.HoursOf(change, [.. Meant.Select(copy.Now)]));

    private (EffectMeasure Measure, BeforeAfter Value, Result Moved) Amounts()
    {
        BeforeAfter amounts = new(Result.Known(Meant.Sum(Amount)), Result.Known(Meant.Select(copy.Now).Sum(Amount)));
        return (EffectMeasure.Money, amounts, amounts.Difference);
    }

    private BeforeAfter Both(Func<SeasonMoney, Result> read) => new(read(before), read(after));

    private Result Moved(Func<SeasonMoney, decimal> read) => Result.Known(read(after) - read(before));

    private string? UnitOf(EffectMeasure measure) =>
        measure is EffectMeasure.PricePerUnit or EffectMeasure.Quantity ? records.Crop(change.Name!).Unit : null;

    private static decimal Amount(IRecordRow row) =>
        row switch
        {
            ExpenseRow expense => expense.Amount,
            IncomeRow income => income.Amount,
            _ => 0m,
        };
}
