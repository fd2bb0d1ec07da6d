using System.Text;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Page.Fixing;

/// <summary>
/// What stands on the page of next year where a farm is opened: the button that takes the plan over into the records, and the plan's rows
/// there, each with the way to change it and what is wrong with it.
/// </summary>
internal static class PlanView
{
    /// <summary>Where a plan is taken over.</summary>
    internal const string TakePath = "/plan/take";

    /// <summary>Where the sales planned of a crop are.</summary>
    internal const string SalesPath = "/plan/sales";

    /// <summary>The files of a plan.</summary>
    internal static readonly string[] Files = ["plan.csv", "plan_sales.csv"];

    /// <summary>The button that takes the plan over.</summary>
    /// <param name="draft">The plan.</param>
    /// <param name="query">What the page was asked for.</param>
    /// <param name="standing">How many rows of a plan for that year the records hold.</param>
    /// <param name="seen">What was looked at, field by field: the records, and each file.</param>
    /// <param name="whyNot">Why nothing can be saved; null when it can.</param>
    /// <param name="notation">How the farm writes.</param>
    internal static string Take(
        PlanDraft draft,
        string query,
        int standing,
        IReadOnlyDictionary<string, string> seen,
        string? whyNot,
        Notation notation
    )
    {
        if (whyNot is not null)
        {
            return $"<section id=\"take\"><p class=\"cap\">{Text(whyNot)} The command plan writes the plan into a folder of its "
                + $"own.</p></section>\n";
        }

        StringBuilder html = new($"<section id=\"take\">\n<h2>Take this plan over</h2>\n<form method=\"post\" action=\"{TakePath}\">\n");
        html.Append($"<input type=\"hidden\" name=\"_query\" value=\"{Text(query)}\">\n");
        foreach ((string field, string version) in seen)
        {
            html.Append($"<input type=\"hidden\" name=\"{Text(field)}\" value=\"{Text(version)}\">\n");
        }

        string instead =
            standing == 0 ? "" : $" They take the place of the {notation.Count(standing, "row")} for {draft.CropYear} that stand there.";
        html.Append(
            $"<p>{notation.Count(draft.Plantings.Count, "row")} go into plan.csv and {notation.Count(draft.Sales.Count, "row")} into "
                + $"plan_sales.csv of your records.{instead} Nothing is written before you press; "
                + $"what stood there is kept in the folder history.</p>\n"
        );
        return html.Append(
                $"<p class=\"buttons\"><button class=\"main\">"
                    + (standing == 0 ? "Save the plan in my records" : $"Save it in place of the plan for {draft.CropYear}")
                    + $"</button></p>\n"
                    + $"</form>\n</section>\n"
            )
            .ToString();
    }

    /// <summary>The plan's rows in the records, problems first.</summary>
    /// <param name="records">The records.</param>
    /// <param name="cropYear">The crop year planned.</param>
    /// <param name="outlook">What the plan does.</param>
    internal static string Rows(FarmRecords records, int cropYear, PlanOutlook outlook)
    {
        List<PlanRow> plan = [.. PlanOnFile.Rows(records, cropYear)];
        string[] sales =
        [
            .. records
                .Tables.PlanSales.Where(row => row.CropYear == cropYear)
                .Select(row => records.Crop(row.Crop).Name)
                .Distinct()
                .Order(StringComparer.Ordinal)
                .Select(crop => SalesLink(crop, cropYear)),
        ];
        StringBuilder html = new(
            $"<details id=\"plan-rows\"{(outlook.Problems.Any(problem => problem.Kind != PlanProblemKind.Hours) ? " open" : "")}><summary>"
                + $"<h2>Change your plan, row by row</h2></summary>\n<div class=\"folded\">\n"
        );
        html.Append(Problems(plan, cropYear, outlook, records.Settings.Notation));
        html.Append($"<p><a href=\"{Text(FixView.Address("plan.csv", 0))}\">Add a sowing</a>"
            + $" · <a href=\"{Text(FixView.Address("plan_sales.csv", 0))}\">Add a sale</a></p>\n");
        html.Append(sales.Length == 0 ? "<p>No sales are planned.</p>\n" : $"<p>Sales planned of {string.Join(", ", sales)}.</p>\n");
        html.Append(Table("rows", Plantings(records, plan)));
        return html.Append("</div>\n</details>\n").ToString();
    }

    /// <summary>The sales planned of a crop, each with the way to change it; null where there are none.</summary>
    /// <param name="records">The records.</param>
    /// <param name="cropYear">The crop year planned.</param>
    /// <param name="crop">The crop.</param>
    internal static string? SalesOf(FarmRecords records, int cropYear, string crop)
    {
        List<PlanSaleRow> sales =
        [
            .. records.Tables.PlanSales.Where(row => row.CropYear == cropYear && records.Crop(row.Crop).Name == crop),
        ];
        return sales.Count == 0
            ? null
            : $"<h1>{Text(crop)}: sales planned for {cropYear}</h1>\n"
                + $"<p><a href=\"{Text(FixView.Address("plan_sales.csv", 0))}\">Add a sale</a> · <a href=\"/next-year\">"
                + $"Back to the plan</a></p>\n"
                + Table("sales", Sales(records, sales));
    }

    private static string Table(string name, ReportTable table) =>
        PageShell.WithAddresses(BlockHtml.Of([new TableBlock(new BlockKey("plan", name), null, table) { Rows = 0 }]).Text, target =>
            "/" + target
        );

    private static string SalesLink(string crop, int cropYear) =>
        $"<a href=\"{Text($"{SalesPath}?year={cropYear}&crop={Uri.EscapeDataString(crop)}")}\">{Text(crop)}</a>";

    private static string Problems(List<PlanRow> plan, int cropYear, PlanOutlook outlook, Notation notation)
    {
        if (outlook.Problems.Count == 0)
        {
            return "";
        }

        StringBuilder html = new("<ul class=\"problems\">\n");
        foreach (PlanProblem problem in outlook.Problems)
        {
            string rows = string.Join(
                ", ",
                plan.Where(row => problem.Plantings.Contains(row.Planting.Trim()) && row.Bed.Trim() == problem.Where)
                    .Select(row => $"<a href=\"{Text(FixView.Address(row.Source.File, row.Source.Line))}\">{Text(row.Planting)}</a>")
            );
            rows = problem.Kind == PlanProblemKind.Sales ? SalesLink(problem.Where, cropYear) : rows;
            html.Append($"<li>{Text(Reports.Planning.PlanWords.Problem(problem, notation, withPlantings: false))} {rows}</li>\n");
        }

        return html.Append("</ul>\n").ToString();
    }

    private static ReportTable Plantings(FarmRecords records, List<PlanRow> plan)
    {
        ReportTable table = new ReportTable("Sowings: a name leads to its row", records.Settings.Notation)
            .Column("Planting")
            .Column("Bed")
            .Column("Length", Look.Quantity, records.Settings.Notation.Label("bed-feet"))
            .Column("In bed", Look.Date)
            .Column("Out of bed", Look.Date)
            .Column("Yield", Look.Quantity, "crop's unit")
            .Column("Hours", Look.Hours, "hours");
        foreach (PlanRow row in plan)
        {
            table.Row(Linked(row.Planting, row.Source), row.Bed, row.BedFeet, row.InBed, row.OutOfBed, row.Yield,
                row.Hours is { } hours ? hours : ReportCell.Missing("the row says no hours"));
        }

        return table;
    }

    private static ReportTable Sales(FarmRecords records, List<PlanSaleRow> sales)
    {
        ReportTable table = new ReportTable("A channel leads to its row", records.Settings.Notation)
            .Column("Channel")
            .Column("Quantity", Look.Quantity, "unit of the row")
            .Column("Price", Look.Rate)
            .Column("From", Look.Date)
            .Column("Weeks", Look.Count);
        foreach (PlanSaleRow row in sales)
        {
            table.Row(Linked(row.Channel, row.Source), row.Quantity, row.Price, row.From, row.Weeks ?? 1m);
        }

        return table;
    }

    private static ReportCell Linked(string words, SourceLine source) =>
        PageTarget.Record(source) is { } target ? ((ReportCell)words).To(target) : words;

    private static string Text(string text) => PageShell.Encode(text);
}
