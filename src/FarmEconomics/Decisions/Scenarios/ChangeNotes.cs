using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>What a reader of a change should know: what it left as it was, and why.</summary>
internal static class ChangeNotes
{
    internal static List<string> Of(
        FarmReview real,
        SeasonReview season,
        RecordsCopy copy,
        SeasonRows rows,
        IReadOnlyList<TouchedRows> touched,
        ScenarioChange change
    )
    {
        int year = season.CropYear;
        List<string> notes = [];
        bool settingsMove = change.Subject == ScenarioSubject.Setting || copy.Settings != real.Records.Settings;
        if (!settingsMove && touched.All(table => table.OfSeason == 0))
        {
            notes.Add($"No row of {year} is touched, so nothing changes.");
        }

        notes.AddRange(change.Subject switch
        {
            ScenarioSubject.Setting => Settings(real.Records, change),
            ScenarioSubject.Price => Prices(real, year, copy, rows, change),
            ScenarioSubject.Yield => ["Quantities picked and sold move at the same price; "
                + "hours, packaging and all other costs stay as they were, unless they are changed too."],
            ScenarioSubject.Wage when change is { Scope: ScenarioScope.Hired, Step.IsPercent: false } =>
                ["The cost of an hour is what the books hold for hired work, payroll taxes included, over the hired hours; "
                    + "wages that name a crop or pool are left as they are. "
                    + "Where the books hold none, it is the wage before payroll burden."],
            ScenarioSubject.Without => ["Its own rows go, and of shared work and money what was charged to it and varies with length, "
                + "bed time, quantity or units sold. Fixed cost and trips stay; boxes are refilled."],
            ScenarioSubject.Hours => Hours(season, change),
            ScenarioSubject.Expenses => Books(real.Records, copy, change),
            _ => [],
        });
        return notes;
    }

    private static IEnumerable<string> Settings(FarmRecords records, ScenarioChange change)
    {
        List<string> own = records
            .Tables.Workers.Where(row => row.Kind == WorkerKind.Owner && row.Wage is not null)
            .Select(row => row.Worker.Trim())
            .Distinct(StringComparer.OrdinalIgnoreCase)
            .ToList();
        if (change.Name == "owner_wage" && own.Count > 0)
        {
            yield return $"{string.Join(", ", own)}: keeps the wage in workers.csv, which goes before owner_wage; "
                + $"wage of owner={change.ValueText} changes both.";
        }
    }

    private static IEnumerable<string> Prices(FarmReview real, int year, RecordsCopy copy, SeasonRows rows, ScenarioChange change)
    {
        HashSet<SaleRow> touched = [.. copy.Touched.OfType<SaleRow>()];
        List<Disposition> sold = real
            .Trace.Dispositions.Where(disposition =>
                rows.IsOfSeason(disposition.Row)
                && (change.Channel is null || disposition.Channel.Name == change.Channel)
                && (change.Scope != ScenarioScope.Crop || disposition.Crop.Name == change.Name)
            )
            .ToList();
        int unpriced = sold.Count(disposition =>
            disposition.Channel.IsPriced && !PriceChanges.HasMoney(disposition.Row) && !touched.Contains(disposition.Row)
        );
        if (unpriced > 0)
        {
            yield return real.Records.Settings.Notation.Text(
                $"{unpriced:#,0} sales carry no price of their own and follow the list price."
            );
        }

        int credits = change.Step.IsPercent ? 0 : sold.Count(disposition => disposition.Row.Amount < 0m);
        if (credits > 0)
        {
            yield return real.Records.Settings.Notation.Text($"{credits:#,0} credits are left as they are.");
        }

        if (real.Trace.ShareIncome.Any(pair => pair.Key.Window == year && pair.Value.Amount != 0m))
        {
            yield return "Members' share payments stay; a crop's part of them moves with its list value. "
                + "Change them with income of CHANNEL.";
        }
    }

    private static IEnumerable<string> Hours(SeasonReview season, ScenarioChange change)
    {
        yield return "Hired hours keep their cost per hour, so wages in the books move with them; unpaid hours move at the owner's wage.";
        if (change.Scope == ScenarioScope.Crop)
        {
            yield return "Only hours that name the crop or one of its plantings move; shared hours"
                + (season.Farm.Sums.EstimatedHours > 0m ? " and hours filled in from time standards" : "") + " are left as they were.";
        }
    }

    private static IEnumerable<string> Books(FarmRecords records, RecordsCopy copy, ScenarioChange change)
    {
        if (
            change.Scope == ScenarioScope.Pool
            && records.Tables.Assets.Exists(row => string.Equals(row.Pool.Trim(), change.Name, StringComparison.OrdinalIgnoreCase))
        )
        {
            yield return "The yearly cost of equipment and buildings in the pool (assets.csv) stays.";
        }

        List<CategoryRow> categories = copy.Touched.OfType<ExpenseRow>().Select(row => records.Category(row.Category)).Distinct().ToList();
        if (categories.Count > 0 && categories.TrueForAll(category => !category.EntersBudgets()))
        {
            yield return $"Rows of class {categories[0].Class.ToString().ToLowerInvariant()} never enter a budget, "
                + "so the net return stays.";
        }

        if (change.Scope == ScenarioScope.All)
        {
            yield return "All running costs of the books; wages, interest on loans, purchases and drawings are left as they were.";
        }
    }
}
