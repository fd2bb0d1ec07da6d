using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Files.Workbooks;
using FarmEconomics.Funding;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Explain;
using FarmEconomics.Reports.Funding;
using FarmEconomics.Reports.Pricing;
using FarmEconomics.Reports.WhatIf;

namespace FarmEconomics.WholeWay.Tests.Fuzz;

/// <summary>The commands decide, prices, writeup, whatif and explain, with options at their ends; each works as its command does.</summary>
internal sealed class Questions(Random random, FarmReview review, int year)
{
    private static readonly string[] Amounts = ["+10%", "-10%", "-100%", "+0%", "+0.0001%", "+100000%", "0", "0.01", "4.50", "1000",
        "1000000"];

    private readonly SeasonReview season = review.Season(year);

    internal void Ask()
    {
        switch (random.Next(5))
        {
            case 0:
                Decide();
                break;
            case 1:
                Prices();
                break;
            case 2:
                WriteUp();
                break;
            case 3:
                WhatIf();
                break;
            default:
                Explain();
                break;
        }
    }

    /// <summary>A change, or two, of a what-if.</summary>
    internal static string Change(Random random, FarmRecords records)
    {
        string Of(IEnumerable<string> names) => names.ToArray() is { Length: > 0 } all ? all[random.Next(all.Length)] : "none";
        string One()
        {
            string crop = Of(records.Crops.Select(crop => crop.Name));
            string channel = Of(records.Channels.Select(channel => channel.Name));
            string[] what =
            [
                "owner_wage", "interest_percent", "payroll_burden_percent", $"price of {crop}", $"price of {crop} at {channel}",
                $"prices at {channel}", "prices", "wages", "wage of hired", "wage of owner", $"hours of {crop}",
                $"hours of {Of(Words.All<Stage>())}", "hours", $"expenses of {Of(records.Tables.Expenses.Select(row => row.Category))}",
                $"expenses of {Of(records.Pools.Select(pool => pool.Name))}", "expenses", $"yield of {crop}", "yields",
                $"income of {channel}", $"fee of {channel}",
            ];
            return $"{what[random.Next(what.Length)]}={Amounts[random.Next(Amounts.Length)]}";
        }

        return random.Next(2) == 0 ? One() : $"{One()}; {One()}";
    }

    /// <summary>Assumptions of a write-up at the ends of what they may be.</summary>
    internal static string Assumptions(Random random)
    {
        string[] all =
        [
            "area_factor=0", "yield_factor=0", "price_factor=1000", "wage_factor=0", "cost_factor=0", "path_width=0",
            "minimum_cash=1000000", "off_farm_income=-5000", "coverage_ratio=0", "project_month=12", "project_month=1",
            "project_life_years=1", "project_life_years=40", "project_salvage=100000", "discount_percent=0", "discount_percent=100",
            "hours_saved=0", "hours_saved=60", "hours_saved=100000", "hour_value=0", "losses_saved_percent=100",
            "ice_saved_percent=100", "power_saved_kwh=-500", "power_price=0", "other_saving=1000", "other_cost=1000000", "new_loan=0",
            "new_loan=5000; new_loan_percent=6; new_loan_years=5",
            "new_loan=5000; new_loan_percent=0; new_loan_years=100; new_loan_payments=1",
            "new_loan=1; new_loan_percent=100; new_loan_years=1; new_loan_payments=365", "indirect_percent=100", "match_percent=99.99",
            "match_percent=1000; match_base=award", "in_kind_hours=100000", "cash_items=", "loan_items=a",
        ];
        return string.Join("; ", Enumerable.Range(0, random.Next(1, 4)).Select(_ => all[random.Next(all.Length)]).Distinct());
    }

    private string? Crop() => season.Crops.Count == 0 ? null : season.Crops[random.Next(season.Crops.Count)].Name;

    private void Decide()
    {
        SeasonCosts costs = SeasonCosts.Of(season);
        if (Crop() is not { } crop || random.Next(3) == 0)
        {
            Verdicts verdicts = Verdicts.Of(review, costs, new VerdictSettings());
            _ = DecisionSentences.VerdictLines(verdicts) + DecisionTables.Assumptions(verdicts).ToPlainText();
            return;
        }

        decimal[] lengths = [0.01m, 1m, 50m, 100_000m];
        decimal?[] elasticities = [null, 0.1m, 2m, -2m, 1000m];
        Change change = new((ChangeKind)random.Next(4), crop, lengths[random.Next(lengths.Length)], Crop(),
            elasticities[random.Next(elasticities.Length)]);
        ChangeAnswer answer;
        try
        {
            answer = new ChangeJudge(costs).Judge(change);
        }
        catch (ArgumentException)
        {
            // The command says it: more than there is, or a crop for itself.
            return;
        }

        Notation notation = season.Notation;
        _ = string.Join(" ", ChangeSentences.First(answer, notation)) + ChangeSentences.Rest(answer, notation) + ChangeTables.CashAndHours(answer, notation).ToPlainText()
            + ChangeTables.Boxes(answer, notation).ToPlainText() + ChangeTables.Filling(answer, notation).ToPlainText() + ChangeTables.Partial(answer, notation).ToPlainText()
            + ChangeTables.BothAnswers(answer, notation).ToPlainText() + ChangeTables.Moved(answer, notation).ToPlainText()
            + ChangeTables.BeforeAndAfter(answer, notation).ToPlainText() + ChangeTables.Fits(answer, notation).ToPlainText()
                + ChangeTables.Weeks(answer).ToPlainText();
    }

    private void Prices()
    {
        decimal?[] hours = [null, 0m, 0.01m, 35m, 10_000m];
        decimal?[] margins = [null, null, 0m, 50m, 99m];
        decimal[] steps = [0.01m, 0.25m, 100m];
        PriceTerms terms = new()
        {
            WantedPerHour = hours[random.Next(hours.Length)],
            WantedMarginPercent = margins[random.Next(margins.Length)],
            Step = steps[random.Next(steps.Length)],
        };
        PriceBook book = PriceBook.Of(review, year, terms);
        _ = PriceTables.Assumptions(book).ToPlainText() + PriceTables.Channels(book).ToPlainText();
        foreach (Channel channel in PriceSheet.Channels(book))
        {
            if (channel.Kind != ChannelKind.Share)
            {
                _ = PriceTables.Prices(book, channel).ToPlainText() + PriceSheet.Body(book, channel);
                continue;
            }

            ShareTerms asked = new() { Members = random.Next(2) == 0 ? null : random.Next(1, 100_000) };
            SharePricing shares = SharePricing.Of(book, ShareContents.Recorded(book, channel), asked);
            _ = ShareTables.Weeks(book, shares).ToPlainText() + ShareTables.Price(book, shares, asked).ToPlainText()
                + PriceSheet.Body(book, shares, asked);
        }
    }

    private void WriteUp()
    {
        FundingAssumptions assumptions = FundingAssumptions.None;
        string classes = string.Join("; ", review.Records.Tables.Assets.Where(row => !row.Asset.Contains(';', StringComparison.Ordinal))
            .Select(row => $"{row.Asset}={new[] { 3, 5, 7, 10, 15, 20 }[random.Next(6)]}"));
        FundingWriteUp writeUp;
        try
        {
            assumptions = FundingAssumptions.Parse(random.Next(2) == 0 ? "" : Assumptions(random), random.Next(2) == 0 ? "" : classes);
            writeUp = FundingWriteUp.Of(review, year, review.Records.Tables.Funding.Select(row => row.Project).FirstOrDefault(), assumptions);
        }
        catch (ArgumentException)
        {
            // The command says what is wrong with an assumption.
            return;
        }

        if (writeUp.Checks.FirstOrDefault(check => check.Difference != 0m) is { } broken)
        {
            throw new InvalidOperationException(
                $"The write-up disagrees with itself: {broken.Name}: {broken.Left} against {broken.Right}.");
        }

        _ = WriteUpReport.Answer(writeUp).ToPlainText() + WriteUpReport.HowSure(writeUp).ToPlainText();
        _ = WorkbookWriter.ToBytes(WriteUpReport.Workbook(writeUp));
        foreach (FundingSheet sheet in WriteUpReport.Sheets(writeUp))
        {
            _ = sheet.Table.ToHtml();
        }
    }

    private void WhatIf()
    {
        FarmScenario scenario;
        try
        {
            scenario = FarmScenario.Parse("fuzz", Change(random, review.Records), review.Records);
        }
        catch (ScenarioTextException)
        {
            return;
        }

        WhatIfReport report = WhatIfReport.Of(review, season, scenario);
        _ = report.Answer().ToPlainText() + report.Changes().ToPlainText() + report.Farm().ToPlainText() + report.Crops().ToPlainText()
            + report.RequireProof();
    }

    private void Explain()
    {
        if (Crop() is { } crop)
        {
            _ = CropExplanation
                .Of(season, crop, random.Next(2) == 0 ? null : CropExplanation.CostLines[random.Next(CropExplanation.CostLines.Count)])
                .ToPlainText();
        }
    }
}
