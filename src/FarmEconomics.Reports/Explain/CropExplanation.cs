using System.Net;
using System.Text;
using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Explain;

/// <summary>
/// The figures of a crop or planting opened: each line down to the rows that name it (file and line), and to each pool's share, with
/// the pool's own rows. Every section's tables add up to the budget's figure to the cent.
/// </summary>
[TypeFormatterSource(typeof(HtmlFormatterSource), PreferredMimeTypes = ["text/html", "text/plain"])]
public sealed class CropExplanation : IHtmlDisplay
{
    private static readonly BudgetLine[] Shown =
    [
        BudgetLine.Output,
        BudgetLine.Materials,
        BudgetLine.Selling,
        BudgetLine.GrossMargin,
        BudgetLine.Labor,
        BudgetLine.Infrastructure,
        BudgetLine.Overhead,
        BudgetLine.Establishment,
        BudgetLine.NetReturn,
    ];

    /// <summary>The cost lines, each opened in a section of its own.</summary>
    public static IReadOnlyList<BudgetLine> CostLines { get; } =
    [BudgetLine.Materials, BudgetLine.Selling, BudgetLine.Labor, BudgetLine.Infrastructure, BudgetLine.Overhead, BudgetLine.Establishment];

    private CropExplanation(SeasonReview season, EnterpriseBudget budget, BudgetLine? line)
    {
        Name = budget.Name;
        CropYear = season.CropYear;
        Budget = BudgetTable(season, budget);
        Dictionary<StatementLine, List<PoolPath>> paths = Enum.GetValues<StatementLine>()
            .Where(each => line is not { } only || BudgetLines.Of(each) == only)
            .ToDictionary(each => each, each => PoolPath.Of(season, budget, each));
        List<ExplainSection> sections = line is null ? [OutputSection.Of(season, budget)] : [];
        sections.AddRange(
            CostLines
                .Where(each => line is { } only ? each == only : Has(budget, each))
                .Select(each =>
                    each == BudgetLine.Establishment
                        ? EstablishmentSection.Of(season, budget)
                        : LineSection.Of(season, budget, Booked(each), paths[Booked(each)])
                )
        );
        Lines = sections.ToList();
        List<PoolResult> pools = paths.Values.SelectMany(each => each).Select(path => path.Pool).Distinct().ToList();
        Pools = pools.ConvertAll(pool => LineSection.PoolRows(season, pool));
    }

    /// <summary>The crop or planting.</summary>
    public string Name { get; }

    /// <summary>The crop year.</summary>
    public int CropYear { get; }

    /// <summary>The enterprise budget, line by line.</summary>
    public ReportTable Budget { get; }

    /// <summary>Output and each cost line, opened.</summary>
    public IReadOnlyList<ExplainSection> Lines { get; }

    /// <summary>The own rows of each pool that charged it.</summary>
    public IReadOnlyList<ReportTable> Pools { get; }

    /// <summary>Opens the figures of a crop, or of a planting.</summary>
    /// <param name="season">The season.</param>
    /// <param name="crop">The name of a crop, else of a planting.</param>
    /// <param name="line">One of <see cref="CostLines"/>; null: output and all of them.</param>
    /// <exception cref="ArgumentException">No such crop or planting in that year; the message names the nearest.</exception>
    public static CropExplanation Of(SeasonReview season, string crop, BudgetLine? line = null)
    {
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(crop);
        EnterpriseBudget? budget = season.FindBudget(crop)
            ?? season.Plantings.FirstOrDefault(planting => string.Equals(planting.Name, crop.Trim(), StringComparison.OrdinalIgnoreCase));
        if (budget is null)
        {
            string? nearest = NearestName.Find(crop.Trim(), season.Crops.Concat(season.Plantings).Select(candidate => candidate.Name));
            throw new ArgumentException(
                $"There is no crop or planting \"{crop.Trim()}\" in {season.CropYear}. "
                    + (
                        nearest is null
                            ? $"Its crops are {string.Join(", ", season.Crops.Select(candidate => candidate.Name))}."
                            : $"Did you mean {nearest}?"
                    )
            );
        }

        return new CropExplanation(season, budget, line);
    }

    /// <inheritdoc/>
    public string ToHtml() => Write(
        (html, title) => html.Append("<h3>").Append(WebUtility.HtmlEncode(title)).Append("</h3>\n"),
        (html, sentence) => html.Append("<p>").Append(WebUtility.HtmlEncode(sentence)).Append("</p>\n"),
        (html, table) => html.Append(table.ToHtml()));

    /// <inheritdoc/>
    public string ToPlainText() => Write(
        (text, title) => text.Append('\n').Append(title).Append('\n').Append('=', title.Length).Append('\n'),
        (text, sentence) => text.Append(TextLines.Of(sentence)).Append('\n'),
        (text, table) => text.Append('\n').Append(table.ToPlainText()));

    private string Write(
        Action<StringBuilder, string> title,
        Action<StringBuilder, string> sentence,
        Action<StringBuilder, ReportTable> table
    )
    {
        StringBuilder all = new();
        table(all, Budget);
        foreach (ExplainSection section in Lines)
        {
            title(all, section.Title);
            foreach (string words in section.Sentences)
            {
                sentence(all, words);
            }

            foreach (ReportTable rows in section.Tables)
            {
                table(all, rows);
            }
        }

        if (Pools.Count > 0)
        {
            title(all, "The pools' own rows");
            foreach (ReportTable rows in Pools)
            {
                table(all, rows);
            }
        }

        return all.ToString();
    }

    /// <summary>Perennials alone have a line of establishment.</summary>
    internal static bool Has(EnterpriseBudget budget, BudgetLine line) =>
        line != BudgetLine.Establishment || budget.Sums.Establishment != Units.Money.Zero || budget.Known.Establishment is not null;

    private static StatementLine Booked(BudgetLine line) => Enum.GetValues<StatementLine>().First(each => BudgetLines.Of(each) == line);

    private static ReportTable BudgetTable(SeasonReview season, EnterpriseBudget budget)
    {
        ReportTable table = new ReportTable($"Enterprise budget of {budget.Name}, {season.CropYear}", season.Notation)
            .InOrder()
            .Column("Line")
            .Column("Amount", Look.Money);
        foreach (BudgetLine line in Shown.Where(line => Has(budget, line)))
        {
            string name = line.Sign() < 0 ? $"- {line.Name()}" : Words.Phrase.Sentence(Words.LineWords.Of(line));
            table.Row(name, ReportCell.Of(budget.Line(line)));
        }

        return table;
    }
}
