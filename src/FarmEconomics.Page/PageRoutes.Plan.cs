using FarmEconomics.Files.Editing;
using FarmEconomics.Files.Start;
using FarmEconomics.Page.Farm;
using FarmEconomics.Page.Fields;
using FarmEconomics.Page.Fixing;
using FarmEconomics.Page.Views;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Frame;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace FarmEconomics.Page;

/// <summary>The plan of next year: taken over into the records where the grower presses the button, and changed there row by row.</summary>
internal sealed partial class PageRoutes
{
    private void MapPlan(WebApplication app)
    {
        app.MapPost(PlanView.TakePath, (Delegate)TakePlanAsync);
        app.MapGet(PlanView.SalesPath, (HttpContext context) =>
        {
            Dictionary<string, string> given = Given(context.Request.Query);
            string crop = given.GetValueOrDefault("crop", "");
            OpenedFarm opened = cache.Look().Farm();
            return
                int.TryParse(
                    given.GetValueOrDefault("year", ""),
                    System.Globalization.NumberStyles.None,
                    System.Globalization.CultureInfo.InvariantCulture,
                    out int year
                )
                && opened.With(folder => folder.Review is { } review ? PlanView.SalesOf(review.Records, year, crop) : null) is { } body
                ? Page($"{crop}: sales planned", body, NextYearPath)
                : NoFigure(opened, NextYearPath, "There are no sales planned of that crop and year.");
        });
    }

    /// <summary>The field with what the records held when the plan was worked out.</summary>
    private const string Seen = "_seen";

    private static IReport NextYear => ReportCatalog.Get(ReportId.NextYear);

    private static string NextYearPath => Nav.PathOf(ReportId.NextYear);

    /// <summary>What stands between the plan and its fields; nothing on other pages.</summary>
    private string Plan(HttpContext context, Asked asked, ReviewedFarm farm)
    {
        if (asked.Report.Id != ReportId.NextYear)
        {
            return "";
        }

        NextYearParameters parameters = ParameterFields.Make<NextYearParameters>(asked.Shown.Parameters);
        FarmRecords records = farm.Season.Records;
        int year = farm.Season.CropYear + 1, standing = PlanOnFile.Rows(records, year).Count();
        bool isOnFile = standing > 0 && PlanOnFile.Years(records).Contains(year);
        bool isShown = isOnFile && parameters.Plan is "" or NextYearParameters.AsInRecords;
        string html = "";
        if (!isShown)
        {
            Dictionary<string, string> seen = WhyNotFixed is null ? PlanView.Files.ToDictionary(file => file, Editor.VersionOf) : [];
            seen[Seen] = asked.Opened.Fingerprint;
            html += PlanView.Take(
                NextYearReport.DraftOf(farm, parameters, context.RequestAborted),
                asked.Shown.Query,
                standing,
                seen,
                WhyNotFixed,
                farm.Notation
            );
        }

        NextYearParameters own = isShown ? parameters : parameters with { Plan = NextYearParameters.AsInRecords };
        return html + (isOnFile ? PlanView.Rows(records, year, NextYearReport.OutlookOf(farm, own, context.RequestAborted)) : "");
    }

    /// <summary>What was just done to the plan, on top of its page.</summary>
    private string Done(HttpContext context, Asked asked)
    {
        Dictionary<string, string> given = Given(context.Request.Query);
        return asked.Report.Id == ReportId.NextYear
            ? DoneTo(given, given.GetValueOrDefault("undo", "").Split(' ').Where(PlanView.Files.Contains), NextYearPath)
            : "";
    }

    private async Task<IResult> TakePlanAsync(HttpContext context)
    {
        IFormCollection sent = await SentAsync(context).ConfigureAwait(false);
        if (WhyNotFixed is { } why)
        {
            return NotTaken(why, [], StatusCodes.Status403Forbidden);
        }

        FarmSnapshot now = cache.Look();
        FieldForm form = Form(now, NextYear.Fields, Parsed(sent["_query"].ToString()));
        if (form.Faults.Count > 0)
        {
            return SeeOther(context, Nav.Address(NextYearPath, form.Query));
        }

        try
        {
            ReviewedFarm farm = now.Farm(form.Settings, form.SkipBadRows).Reviewed(form.Year);
            // From other records another plan comes, and nobody has looked at that one.
            EditOutcome outcome = sent[Seen] != now.Fingerprint
                ? new EditOutcome(false, "Your records changed after this plan was worked out. Nothing was saved; look at the plan again.")
                : farm.IsReviewed ? Editor.Save(Changes(farm, form, sent, context.RequestAborted))
                : new EditOutcome(false, "The records have errors; nothing can be planned from them.");
            return outcome.Saved
                ? SeeOther(
                    context,
                    Nav.Address(
                        NextYearPath,
                        $"done={Uri.EscapeDataString(outcome.Message)}&undo={Uri.EscapeDataString(string.Join(' ', PlanView.Files))}"
                    )
                )
                : NotTaken(outcome.Message, outcome.Problems, StatusCodes.Status422UnprocessableEntity);
        }
        catch (Exception refused) when (refused is ArgumentException or IOException or UnauthorizedAccessException)
        {
            return NotTaken(Sentence(refused), [], StatusCodes.Status422UnprocessableEntity);
        }
    }

    // The rows for the year go, wherever in their file they stand, and those of the plan come at its end.
    private static List<RowsChange> Changes(ReviewedFarm farm, FieldForm form, IFormCollection sent, CancellationToken cancellation)
    {
        PlanDraft draft = NextYearReport.DraftOf(farm, ParameterFields.Make<NextYearParameters>(form.Parameters), cancellation);
        FarmRecords records = farm.Season.Records;
        ILookup<string, int> gone = PlanOnFile
            .Rows(records, draft.CropYear)
            .Select(row => row.Source)
            .Concat(records.Tables.PlanSales.Where(row => row.CropYear == draft.CropYear).Select(row => row.Source))
            .ToLookup(source => source.File, source => source.Line);
        return
        [
            .. PlanRecords
                .Rows(farm.Settings, draft)
                .Select(table => new RowsChange(table.File, sent[table.File].ToString(), table.Headings, table.Rows)
                {
                    Without = gone[table.File].ToHashSet(),
                    Separator = PlanRecords.Separator(farm.Settings),
                }),
        ];
    }

    private IResult NotTaken(string why, IReadOnlyList<Problem> problems, int status) =>
        Page(
            "Nothing was saved",
            $"<h1>Nothing was saved</h1>\n<p class=\"fault\" role=\"alert\">{PageShell.Encode(why)}</p>\n"
                + string.Concat(
                    problems
                        .Take(10)
                        .Select(problem => $"<p class=\"fault\">{PageShell.Encode($"{problem.Source}: {problem.Message}")}</p>\n")
                )
                + $"<p><a href=\"{NextYearPath}\">Back to the plan</a></p>\n",
            NextYearPath,
            status: status
        );
}
