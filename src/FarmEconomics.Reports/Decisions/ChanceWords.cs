using FarmEconomics.Decisions.Chances;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Decisions;

/// <summary>
/// Chance in words and tables: percent where there are seasons enough, else in how many of the years on record a crop lost.
/// </summary>
public static class ChanceWords
{
    /// <summary>"lost in all 3 years", "lost in 1 of 3 years", "a loss in 12 % of simulated seasons".</summary>
    public static string Lost(Outcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        return outcome.ChanceOfLoss.Value is { } chance ? $"a loss in {Phrase.Percent(chance)} of simulated seasons"
            : outcome.Years.Count == 0 ? "no year on record tells whether it lost"
            : outcome.Years.Count == 1 ? outcome.YearsLost == 1 ? "lost in its only year on record"
                : "didn't lose in its only year on record"
            : outcome.YearsLost == outcome.Years.Count
                ? $"lost in {(outcome.Years.Count == 2 ? "both" : $"all {outcome.Years.Count}")} years"
            : outcome.YearsLost == 0 ? $"lost in none of {outcome.Years.Count} years"
            : $"lost in {outcome.YearsLost} of {outcome.Years.Count} years";
    }

    /// <summary>Why no chance is told.</summary>
    internal static string TooFew(Simulation simulation)
    {
        List<string> costs = [.. simulation.Risks.Select(risk => risk.Model.FullCostLabel).Distinct()];
        return $"No chance in percent: it takes {simulation.Settings.LeastSeasons} seasons recorded whole. Loss = years in which the crop "
            + $"fell short of its {(costs.Count == 0 ? "full cost" : string.Join(" or ", costs))}, in the money of each year.";
    }

    /// <summary>The seasons looked back at, and those left out with the reason.</summary>
    internal static string Seasons(PastSeasons past) => (past.Whole.Count == 0 ? "none" : string.Join(", ", past.Whole))
        + (past.InPart.Count == 0 ? ""
            : $"; left out: {string.Join("; ", past.InPart.Select(year => $"{year.CropYear} ({year.Reason})"))}");

    /// <summary>How money of past seasons is brought to the reviewed year's level.</summary>
    internal static string Level(PastSeasons past, Notation notation)
    {
        List<int> nominal = [.. past.Whole.Where(past.Level.IsNominal)];
        string how = past.Settings.PriceChangePercent is { } percent
            ? notation.Text($"sales times {1.0 + (percent / 100.0):0.####} a year")
            : $"sales at list prices of {past.Level.CropYear}; costs are those of {past.Level.CropYear}";
        return nominal.Count == 0 ? how
            : nominal.Count == past.Whole.Count(year => year != past.Level.CropYear)
                ? "sales in the money of their year: no list prices with dates tell how prices moved"
            : $"{how}; {Phrase.List([.. nominal.Select(year => $"{year}")])} in the money of "
                + $"{(nominal.Count == 1 ? "its" : "their")} year: no list prices tell";
    }

    /// <summary>Simulated outcomes of every crop and the farm, or the years on record.</summary>
    internal static ReportTable Outcomes(Simulation simulation, Notation notation) => simulation.HasChance
        ? Simulated(simulation, notation) : Years(simulation, notation);

    private static ReportTable Simulated(Simulation simulation, Notation notation)
    {
        ReportTable table = new ReportTable(notation.Text($"Net return in {simulation.Settings.Draws:#,0} simulated seasons"), notation)
            .Column("Crop").Column("P5", Look.WholeMoney).Column("P50", Look.WholeMoney).Column("P95", Look.WholeMoney)
                .Column("Mean", Look.WholeMoney)
            .Column("Chance of a loss", Look.Percent).Column("Years on record").Column("Price factor").Column("Yield factor")
                .Column("Correlation", Look.Exact);
        for (int i = 0; i < simulation.Crops.Count; i++)
        {
            Outcome crop = simulation.Crops[i];
            CropRisk risk = simulation.Risks[i];
            ReportCell none = ReportCell.Missing(crop.WhyNoChance ?? "");
            table.Row(crop.WhyNoChance is null
                ? [crop.Name, crop.P5, crop.P50, crop.P95, crop.Mean, crop.ChanceOfLoss, YearsCell(crop), risk.Price.Words(notation),
                    risk.Yield.Words(notation), decimal.Round((decimal)risk.Correlation, 2)]
                : [crop.Name, none, none, none, none, none, YearsCell(crop), "", "", none]);
        }

        Outcome farm = simulation.Farm;
        List<string> named = [.. simulation.Risks.Where(risk => risk.Seasons.Any(season => season.NamesOnlyTheCrop))
            .Select(risk => risk.Model.Name)];
        return table.Total("All crops", farm.P5, farm.P50, farm.P95, farm.Mean, farm.ChanceOfLoss, YearsCell(farm), "", "", "")
            .Note("Factors are relative to the season as it was: the mean of the crop's seasons, "
                + "and how far they and its plantings lie apart. One season in twenty is worse than P5, one in twenty better than P95.")
            .Note(named.Count == 0 ? null
                : $"Harvests of some seasons name only the crop, so they tell nothing of how plantings differ: {Phrase.List(named)}.")
            .Note(DecisionTables.NeverSeen);
    }

    private static ReportTable Years(Simulation simulation, Notation notation)
    {
        List<int> years = [.. simulation.Crops.SelectMany(crop => crop.Years.Select(year => year.CropYear))
            .Concat(simulation.Farm.Years.Select(year => year.CropYear)).Distinct().Order()];
        ReportTable table = new ReportTable("Net return in each year on record", notation).Opens().Column("Crop");
        years.ForEach(year => table.Column($"{year}", Look.WholeMoney));
        table.Column("Lost");
        foreach (Outcome crop in simulation.Crops)
        {
            table.Row(Cells(crop.Name, crop));
        }

        return table.Total(Cells("All crops of the year", simulation.Farm)).Note(TooFew(simulation))
            .Note(simulation.Past is { InPart.Count: > 0 } past
                ? $"Years recorded in part are left out: "
                    + $"{string.Join("; ", past.InPart.Select(year => $"{year.CropYear} ({year.Reason})"))}."
                : null);

        ReportCell[] Cells(string name, Outcome outcome)
        {
            Dictionary<int, Money> byYear = outcome.Years.ToDictionary(year => year.CropYear, year => year.NetReturn);
            return [name, .. years.Select(year => byYear.TryGetValue(year, out Money net) ? net : (ReportCell)""), YearsCell(outcome)];
        }
    }

    private static ReportCell YearsCell(Outcome outcome) => outcome.Years.Count == 0 ? ""
        : $"lost in {outcome.YearsLost} of {outcome.Years.Count}";
}
