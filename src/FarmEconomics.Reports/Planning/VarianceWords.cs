using FarmEconomics.Planning.Variances;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Planning;

/// <summary>A season beside its plan, in sentences and a table.</summary>
public static class VarianceWords
{
    private const int Told = 3;

    /// <summary>What the season brought against the plan, and the crop that missed it by most.</summary>
    /// <param name="variances">The variances.</param>
    /// <returns>Sentences for a terminal.</returns>
    public static string Headline(PlanVariances variances)
    {
        ArgumentNullException.ThrowIfNull(variances);
        Notation notation = variances.Season.Notation;
        decimal difference = (variances.Actual - variances.Planned).Amount;
        string so = variances.IsPartOfYear ? $"Up to {variances.Season.Records.AsOf:MMM d}" : $"In {variances.Season.CropYear}";
        string all = $"{so} the crops brought {notation.InWords(Math.Abs(difference), Look.WholeMoney)} {(difference < 0m ? "less" : "more")} than planned";
        string crops = string.Join(" ", variances.Crops.Where(crop => crop.Difference.Amount != 0m).Take(Told).Select(crop => OfCrop(crop, notation)));
        return $"{all}: {Parts(Enum.GetValues<VarianceKind>().Select(kind => (kind, variances.Of(kind).Amount)), notation)}. {crops}".Trim();
    }

    /// <summary>The parts of every crop's difference; they sum to it to the cent.</summary>
    /// <param name="variances">The variances.</param>
    /// <returns>The table.</returns>
    public static ReportTable Crops(PlanVariances variances)
    {
        ArgumentNullException.ThrowIfNull(variances);
        ReportTable table = new ReportTable($"Plan against {variances.Season.CropYear}", variances.Season.Notation).InOrder().Column("Crop").Column("Planned", Look.Money).Column("Came", Look.Money).Column("Difference", Look.Money);
        VarianceKind[] kinds = Enum.GetValues<VarianceKind>();
        foreach (VarianceKind kind in kinds)
        {
            table.Column(Phrase.Sentence(Name(kind)), Look.Money);
        }

        foreach (CropVariance crop in variances.Crops)
        {
            table.Row([crop.Crop, crop.Planned, crop.Actual, crop.Difference, .. kinds.Select(kind => (ReportCell)crop.Parts[kind])]);
        }

        return table.Total(["All", variances.Planned, variances.Actual, variances.Actual - variances.Planned, .. kinds.Select(kind => (ReportCell)variances.Of(kind))])
            .Note("Sales after fees, boxes at their list value, less hours at their cost, seed and supplies. Each part is the plan with what stands left of it as it came, so the parts sum to the difference to the cent.")
            .Note("A plan names no wage: the cost of an hour of the season before counts as planned. Price and use of seed and supplies aren't told apart.");
    }

    private static string OfCrop(CropVariance crop, Notation notation)
    {
        string less = crop.Difference.Amount < 0m ? "less" : "more";
        return $"{crop.Crop}: of {notation.InWords(Math.Abs(crop.Difference.Amount), Look.WholeMoney)} {less} than planned, {Parts(crop.Parts.Select(part => (part.Key, part.Value.Amount)), notation)}.";
    }

    private static string Parts(IEnumerable<(VarianceKind Kind, decimal Amount)> parts, Notation notation) =>
        string.Join(", ", parts.Where(part => Math.Abs(part.Amount) >= 0.5m).OrderByDescending(part => Math.Abs(part.Amount)).Take(Told)
            .Select(part => $"{notation.InWords(part.Amount, Look.WholeMoney)} {Name(part.Kind)}"));

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
