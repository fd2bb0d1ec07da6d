using System.Globalization;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Funding;
using FarmEconomics.Planning;

namespace FarmEconomics.Recount.Tests;

/// <summary>Holds the outlook of a plan on file against the recount: cash by month, what to buy, hours, break-even.</summary>
internal static class OutlookComparison
{
    // Hours of a week are told to four decimals; beyond them the two ways agree to a millionth.
    private const double Rounding = 0.00005 + 1e-6;

    /// <summary>How many figures were compared, and those that differ.</summary>
    internal static (int Compared, List<string> Differences) Of(Reviewed reviewed, Recount recount, int year)
    {
        SeasonReview season = reviewed.Review.Season(year - 1);
        BalanceSheet? sheet = BalanceSheet.At(season.Records, season.Settings.EndOf(year - 1).AddDays(-1));
        PlanSettings settings = new() { OpeningCash = sheet?.Cash, UnpaidInvoices = sheet?.UnpaidInvoices ?? 0m };
        PlanModel model = PlanFacts.Of(reviewed.Review, SeasonCosts.Of(season), settings);
        PlanDraft draft = PlanOnFile.Of(season.Records, year)!;
        PlanOutlook outlook = PlanOutlook.Of(season, model, draft);

        // What comes into its bed for the year after takes hours by the model alone.
        PlanOutlook ofTheYear = PlanOutlook.Of(
            season,
            model,
            draft with
            {
                Plantings = [.. draft.Plantings.Where(one => one.CropYear == year)],
            }
        );
        recount.Ask($"CREATE OR REPLACE TABLE outlook AS SELECT {year} AS year");
        recount.RunApart("plan-weeks");
        recount.RunApart("plan-outlook");

        int compared = 0;
        List<string> differences = [];
        void Same(string what, decimal theirs, object? ours, double near)
        {
            compared++;
            double own = Convert.ToDouble(ours, CultureInfo.InvariantCulture);
            if (Math.Abs((double)theirs - own) > near)
            {
                differences.Add(FormattableString.Invariant($"{what}: {theirs} / {own}"));
            }
        }

        foreach (Dictionary<string, object?> row in recount.Rows("FROM outlook_months"))
        {
            PlanMonth month = outlook.Months[Convert.ToInt32(row["month"], CultureInfo.InvariantCulture)];
            string line = (string)row["line"]!;
            Same($"{month.Month:yyyy-MM} {line}", Of(month, line), row["money"], line == "wages" ? 0.02 : 0.0051);
        }

        foreach (Dictionary<string, object?> row in recount.Rows("FROM outlook_weeks"))
        {
            PlanWeek week = outlook.Weeks[Convert.ToInt32(row["week"], CultureInfo.InvariantCulture)];
            Same($"{week.From:yyyy-MM-dd} hours", week.Hours, row["hours"], Rounding);
            Same($"{week.From:yyyy-MM-dd} own hours", week.Own, row["own"], 0.0001);
            Same($"{week.From:yyyy-MM-dd} hired hours", week.Hired, row["hired"], 0.0001);
            Same($"{week.From:yyyy-MM-dd} sales", week.Sales, row["sales"], 0.0001);
        }

        foreach (Dictionary<string, object?> row in recount.Rows("FROM outlook_supplies"))
        {
            SupplyNeed need = outlook.Supplies.Single(one => one.Crop == (string)row["crop"]!);
            Same($"{need.Crop} sowings", need.Sowings, row["sowings"], 0.0);
            Same($"{need.Crop} bed-feet", need.BedFeet, row["feet"], 0.005001);
            Same($"{need.Crop} trays", need.Trays, row["trays"], 1e-6);
            Assert.Equal(row["cost"] is null, need.Cost is null);
            Same($"{need.Crop} cost", need.Cost ?? 0m, row["cost"] ?? 0.0, 1e-6);
            Assert.Equal(row["first"], need.First.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        }

        Dictionary<string, object?> known = recount.Rows("FROM outlook_known")[0];
        Assert.Equal(known["hours"], outlook.HoursUnknown is null);
        Assert.Equal(known["costs"], outlook.CostsUnknown is null);
        Dictionary<string, object?> sums = recount.Rows("FROM outlook_sums")[0];

        // Months are told to the cent: what half a cent in each of 84 figures moves, where little is left of the money.
        decimal breakEven = outlook.BreakEven.Value ?? 0m;
        double left = Convert.ToDouble(sums["left_of_it"], CultureInfo.InvariantCulture);
        object? counted = outlook.CostsUnknown is null ? sums["break_even"] : 0.0;
        Same("break-even", breakEven, counted, Math.Max(1.0, 0.42 * Math.Abs((double)breakEven) / left));
        Same("hours", ofTheYear.Weeks.Sum(week => week.Hours), sums["hours"], 0.005);
        Assert.Equal(outlook.Supplies.Count, recount.Count("FROM outlook_supplies"));
        return (compared, differences);
    }

    private static decimal Of(PlanMonth month, string line) =>
        line switch
        {
            "sales" => month.Sales,
            "shares" => month.Shares,
            "other income" => month.OtherIncome,
            "invoices" => month.Invoices,
            "supplies" => month.Supplies,
            "wages" => month.Wages,
            "bought in" => month.BoughtIn,
            "running" => month.Running,
            _ => month.Drawn,
        };
}
