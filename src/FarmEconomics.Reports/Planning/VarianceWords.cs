using FarmEconomics.Planning.Variances;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Planning;

/// <summary>A season beside its plan, in sentences and a table.</summary>
public static class VarianceWords
{
    private const int Told = 3;
    private const int NamedInShort = 2;

    /// <summary>What the season brought against the plan, and the crop that missed it by most.</summary>
    /// <param name="variances">The variances.</param>
    /// <returns>Sentences for a terminal.</returns>
    public static string Headline(PlanVariances variances)
    {
        ArgumentNullException.ThrowIfNull(variances);
        Notation notation = variances.Season.Notation;
        string crops = string.Join(
            " ",
            Moved(variances).Take(Told).Select(crop => OfCrop(crop, notation))
        );
        string parts = Parts(Kinds(variances), notation);
        return string.Join(
            ' ',
            new[] { Sum(variances) + (parts.Length > 0 ? $": {parts}." : "."), crops, Outlook(variances), NotKnown(variances) }
                .Where(part => part.Length > 0));
    }

    /// <summary>
    /// The same for the season's page: the sum, the biggest reasons, the crops that missed by most, and where the rest stands.
    /// </summary>
    /// <param name="variances">The variances.</param>
    /// <param name="slugs">The names of crops in addresses.</param>
    /// <param name="rest">Where they stand crop by crop: an address of <see cref="PageTarget"/>.</param>
    /// <returns>A few sentences.</returns>
    public static Prose Short(PlanVariances variances, CropSlugs slugs, string rest)
    {
        ArgumentNullException.ThrowIfNull(variances);
        ArgumentNullException.ThrowIfNull(slugs);
        Notation notation = variances.Season.Notation;
        HashSet<string> grown = [.. variances.Season.Crops.Select(crop => crop.Name)];
        string crops = string.Join(
            ", ",
            Moved(variances)
                .Take(NamedInShort)
                .Select(crop => $"{Named(crop.Crop)} {MoreOrLess(crop.Difference.Amount, notation)}"));
        string reasons = string.Join(
            ", ",
            Largest(Kinds(variances)).Select(part => $"{MoreOrLess(part.Amount, notation)} by {Name(part.Kind)}")
        );
        string link = PageTarget.Link("Crop by crop", rest);
        string Named(string crop) => grown.Contains(crop) ? PageTarget.Link(crop, PageTarget.Crop(slugs[crop])) : Prose.Text(crop);

        string sum = Prose.Text(Sum(variances)) + (reasons.Length > 0 ? $": {reasons}." : ".");
        return new Prose(
            string.Join(
                ' ',
                new[]
                {
                    sum, crops.Length > 0 ? crops + "." : "", Prose.Text(Outlook(variances)), Prose.Text(NotKnown(variances)), link + ".",
                }.Where(part =>
                    part.Length > 0
                )
            )
        );
    }

    /// <summary>What the whole year looks like, during it; empty once it is over.</summary>
    // What rounds to nothing is no difference to tell of.
    private static IEnumerable<CropVariance> Moved(PlanVariances variances) =>
        variances.Crops.Where(crop => Math.Abs(crop.Difference.Amount) >= 0.5m);

    /// <summary>What isn't on record, and what the plan doesn't say.</summary>
    private static string NotKnown(PlanVariances variances)
    {
        string planned = variances.AsPlanned.Count == 0 ? ""
            : $"Not on record, and counted as planned: {Phrase.List([.. variances.AsPlanned])}.";
        string came = variances.AsCame.Count == 0 ? ""
            : $"Not in the plan, and counted as they came: {Phrase.List([.. variances.AsCame])}.";
        return $"{planned} {came}".Trim();
    }

    private static string Outlook(PlanVariances variances) => !variances.IsPartOfYear ? ""
        : $"With the plan for the rest of the year that makes "
            + $"{variances.Season.Notation.InWords(variances.Outlook.Amount, Look.WholeMoney)}; "
            + $"{variances.Season.Notation.InWords(variances.YearPlanned.Amount, Look.WholeMoney)} was planned.";

    private static string Sum(PlanVariances variances)
    {
        decimal difference = (variances.Actual - variances.Planned).Amount;
        string so = variances.IsPartOfYear ? $"Up to {variances.UpTo:MMM d} the crops" : $"In {variances.Season.CropYear} the crops";
        return Math.Abs(difference) < 0.5m ? $"{so} brought what was planned"
            : $"{so} brought {variances.Season.Notation.InWords(Math.Abs(difference), Look.WholeMoney)} "
                + $"{(difference < 0m ? "less" : "more")} than planned";
    }

    private static IEnumerable<(VarianceKind Kind, decimal Amount)> Kinds(PlanVariances variances) =>
        Enum.GetValues<VarianceKind>().Select(kind => (kind, variances.Of(kind).Amount));

    private static IEnumerable<(VarianceKind Kind, decimal Amount)> Largest(IEnumerable<(VarianceKind Kind, decimal Amount)> parts) =>
        parts.Where(part => Math.Abs(part.Amount) >= 0.5m).OrderByDescending(part => Math.Abs(part.Amount)).Take(Told);

    // In words, so that no line ends between a sign and its amount.
    private static string MoreOrLess(decimal amount, Notation notation) =>
        $"{BlockNumber.Size(amount, notation)} {(amount < 0m ? "less" : "more")}";

    private static string Signed(decimal amount, Notation notation) =>
        (amount > 0m ? "+" : "") + BlockNumber.Of(amount, Look.WholeMoney, notation);

    /// <summary>The parts of every crop's difference; they sum to it to the cent.</summary>
    /// <param name="variances">The variances.</param>
    /// <returns>The table.</returns>
    public static ReportTable Crops(PlanVariances variances)
    {
        ArgumentNullException.ThrowIfNull(variances);
        ReportTable table = new ReportTable($"Plan against {variances.Season.CropYear}", variances.Season.Notation)
            .InOrder()
            .Column("Crop")
            .Column("Planned", Look.Money)
            .Column("Came", Look.Money)
            .Column("Difference", Look.Money);
        VarianceKind[] kinds = Enum.GetValues<VarianceKind>();
        foreach (VarianceKind kind in kinds)
        {
            table.Column(Phrase.Sentence(Name(kind)), Look.Money);
        }

        foreach (CropVariance crop in variances.Crops)
        {
            table.Row([crop.Crop, crop.Planned, crop.Actual, crop.Difference, .. kinds.Select(kind => (ReportCell)crop.Parts[kind])]);
        }

        table = NotKnown(variances) is { Length: > 0 } unknown ? table.Note(unknown) : table;
        return table
            .Total([
                "All",
                variances.Planned,
                variances.Actual,
                variances.Actual - variances.Planned,
                .. kinds.Select(kind => (ReportCell)variances.Of(kind)),
            ])
            .Note(
                "Sales after fees, boxes at their list value, less hours at their cost, seed and supplies. "
                    + "Each part is the plan with what stands left of it as it came, so the parts sum to the difference to the cent."
            )
            .Note(
                "A plan names no wage and no culls: those of the season before count as planned. "
                    + "Price and use of seed and supplies aren't told apart. What wasn't planned stands under rest."
            );
    }

    private static string OfCrop(CropVariance crop, Notation notation)
    {
        string less = crop.Difference.Amount < 0m ? "less" : "more";
        string parts = Parts(crop.Parts.Select(part => (part.Key, part.Value.Amount)), notation);
        return $"{crop.Crop}: of {notation.InWords(Math.Abs(crop.Difference.Amount), Look.WholeMoney)} {less} than planned, {parts}.";
    }

    private static string Parts(IEnumerable<(VarianceKind Kind, decimal Amount)> parts, Notation notation) =>
        string.Join(", ", Largest(parts).Select(part => $"{Signed(part.Amount, notation)} {Name(part.Kind)}"));

    private static string Name(VarianceKind kind) => kind switch
    {
        VarianceKind.Area => "length",
        VarianceKind.Yield => "yield",
        VarianceKind.Culls => "culls",
        VarianceKind.PartSold => "part sold",
        VarianceKind.ChannelMix => "where sold",
        VarianceKind.Price => "price",
        VarianceKind.Hours => "hours",
        VarianceKind.Wage => "cost of an hour",
        VarianceKind.Spending => "supplies",
        _ => "rest",
    };
}
