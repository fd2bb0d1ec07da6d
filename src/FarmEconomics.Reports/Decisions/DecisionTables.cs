using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Decisions;

/// <summary>The tables of what-if and chance: cost behavior, break-even, grids, swings, outcomes, years.</summary>
public static class DecisionTables
{
    /// <summary>Every cost of a budget with what it varies with.</summary>
    public static ReportTable Behavior(SeasonCosts costs, EnterpriseBudget budget)
    {
        ReportTable table = new ReportTable(
            $"{budget.Name} {budget.CropYear}: what each cost varies with", costs.Season.Notation).Of<CostLine>()
            .Column("Cost", line => line.Name)
            .Column("Line", line => line.Line.ToString().ToLowerInvariant())
            .Column("Varies with", line => Varies(line.VariesWith))
            .Column("Cash or not", line => line.IsNonCash ? "non-cash" : "cash")
            .Column("Amount", Look.Money, line => line.Amount)
            .Rows(costs.Of(budget))
            .Note("What varies with length, bed time, quantity or units sold goes when the crop goes. "
                + "Trips (market days, delivery rounds, box days) go when nothing is sold through their channel any more; "
                + "fixed cost stays. Growing and nursery hours vary with length, picking and packing with quantity.");
        return table.Total("All costs", "", "", "", budget.TotalCost);
    }

    /// <summary>Costs of every crop by what they vary with.</summary>
    public static ReportTable BehaviorOfCrops(SeasonCosts costs)
    {
        SeasonReview season = costs.Season;
        ReportTable table = new ReportTable($"Costs of {season.CropYear} by what they vary with", season.Notation)
            .Opens()
            .Column("Crop")
            .Column("Brought in", Look.WholeMoney, part: FigurePart.Output)
            .Column("Length and bed time", Look.WholeMoney)
            .Column("Quantity", Look.WholeMoney)
            .Column("Units sold", Look.WholeMoney)
            .Column("Brought in less those three", Look.WholeMoney)
            .Column("Trips", Look.WholeMoney)
            .Column("Fixed", Look.WholeMoney)
            .Column("Left over", Look.WholeMoney);
        foreach (EnterpriseBudget crop in season.Crops.OrderByDescending(crop => crop.NetReturn.Amount))
        {
            table.Row(Cells(costs, crop, crop.Name));
        }

        return table.Total(Cells(costs, season.Farm, "All crops"));
    }

    /// <summary>Break-even price and yield, long and short run, both forms.</summary>
    public static ReportTable BreakEvens(SeasonCosts costs, EnterpriseBudget crop)
    {
        string unit = crop.Crop?.Unit ?? "unit";
        SeasonReview season = costs.Season;
        ReportTable table = new ReportTable($"{crop.Name} {season.CropYear}: break-even", season.Notation)
            .Column("For whom, and how")
            .Column("Price", Look.Rate, per: unit)
            .Column("Yield", Look.Exact, unit: season.Notation.Text($"{unit} sold per bed-foot"));
        foreach (BreakEvenPair pair in BreakEvenPair.Of(crop, costs.Model(crop)))
        {
            table.Row(pair.Label, pair.Price, pair.YieldPerBedFoot);
        }

        return table
            .Row(
                "as it was",
                crop.AveragePrice,
                crop.Sums.BedFeet.Value > 0m ? crop.Sums.Sold / crop.Sums.BedFeet.Value : ReportCell.Missing("nothing planted in beds")
            )
            .Note(
                "For the crop: its own net return is 0, charges of pools as they were. For the farm: "
                    + "it nets what it nets without the crop; trips and fixed cost stay, boxes are refilled, "
                    + "and the price is that of units sold outside boxes. "
                    + "What was eaten and what is on hand count at their value and come off the cost. "
                    + "Full form: a channel's fee follows the price; picking, packing and selling follow the yield. Textbook form: "
                    + "costs over units sold, or over the price."
            )
            .Note(
                crop.BreakEvenPrice.Value < 0m
                    ? "A price below 0: what was eaten and what is on hand are worth more than all cost, so the crop pays at any price."
                    : null
            );
    }

    /// <summary>Net return, or gross margin per bed-foot-week, over price and yield.</summary>
    public static ReportTable Grid(SensitivityGrid grid, FarmSettings farm, bool perBedTime = false)
    {
        ReportTable table = new ReportTable(
            perBedTime
                ? farm.Notation.Text($"{grid.Model.Name}: gross margin per bed-foot-week by price and yield")
                : $"{grid.Model.Name}: {grid.Model.NetReturnLabel} by price and yield",
            farm.Notation
        ).Column("Price", Look.Percent);
        foreach (decimal yield in grid.YieldFactors)
        {
            table.Column(farm.Notation.Text($"Yield {yield * 100m:0}%"), perBedTime ? Look.Rate : Look.WholeMoney);
        }

        for (int i = 0; i < grid.PriceFactors.Count; i++)
        {
            int row = i;
            table.Row([
                grid.PriceFactors[i],
                .. Enumerable
                    .Range(0, grid.YieldFactors.Count)
                    .Select(j => perBedTime ? (ReportCell)grid.MarginPerBedFootWeek[row][j] : grid.NetReturn[row][j]),
            ]);
        }

        return table.Note("100% and 100% is the season as it was.");
    }

    /// <summary>Simulated outcomes of every crop and the farm; its years where they are too few for a chance.</summary>
    public static ReportTable Outcomes(Simulation simulation, Notation notation) => ChanceWords.Outcomes(simulation, notation);

    /// <summary>Why a chance of 0 % or 100 % is no certainty.</summary>
    internal const string NeverSeen =
        "0% and 100% mean: never otherwise in seasons like those on record. A year unlike any of yours could differ.";

    /// <summary>The assumptions of simulation and verdicts, and whose they are.</summary>
    public static ReportTable Assumptions(Verdicts verdicts)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        ReportTable table = new ReportTable("What the decisions rest on; all of it is yours to set", verdicts.Season.Notation)
            .Column("Assumption").Column("Value").Column("From");
        (string, string, string)[] rows =
        [
            .. OfChance(verdicts.Simulation, verdicts.Season.Notation),
            .. OfMarket(verdicts.Settings, verdicts.Season.Settings),
            .. OfVerdict(verdicts.Settings, verdicts.Season.Settings),
        ];
        foreach ((string assumption, string value, string from) in rows)
        {
            table.Row(assumption, value, from);
        }

        return table;
    }

    private static (string, string, string)[] OfChance(Simulation simulation, Notation notation)
    {
        SimulationSettings chance = simulation.Settings;
        string unused = chance.FromOwnRecords ? "; not used" : "";
        return
        [
            ("Random seed", chance.Seed.ToString(), "ours"),
            ("Simulated seasons", notation.Text($"{chance.Draws:#,0}"), "ours"),
            (
                "Prices and yields",
                chance.FromOwnRecords
                    ? $"from the crop's own seasons where there are {chance.LeastSeasons}, else no chance is told"
                    : "triangular",
                "the records, or ours"
            ),
            ("Seasons looked back at", simulation.Past is { } past ? ChanceWords.Seasons(past) : "none", "the records"),
            ("Money of past seasons", simulation.Past is { } level ? ChanceWords.Level(level, notation) : "as it was", "the records"),
            (
                "Triangular price",
                notation.Text($"{chance.PriceLow:0.00} to {chance.PriceHigh:0.00} of the price as it was{unused}"),
                "lower end: a published pessimistic rule (University of Kentucky, 2001); upper: ours"
            ),
            (
                "Triangular yield",
                notation.Text($"{chance.YieldLow:0.00} to {chance.YieldHigh:0.00} of the yield as it was{unused}"),
                "ours, no source"
            ),
            (
                "Price with yield",
                chance.PriceYieldCorrelation is { } own
                    ? notation.Text($"{own:0.00}")
                    : "rank correlation of the crop's seasons where there are eight, else 0",
                "the records"
            ),
            ("Yields of different crops", notation.Text($"{chance.SharedWeather:0.00}"), "ours, no source: one season's weather for all"),
            ("Prices of different crops", notation.Text($"{chance.SharedMarket:0.00}"), "ours, no source: one season's market for all"),
        ];
    }

    private static (string, string, string)[] OfMarket(VerdictSettings rule, FarmSettings farm) =>
    [
        (
            "Price when more is grown",
            rule.Elasticity is { } elasticity
                ? farm.Notation.Text($"elasticity {elasticity:0.##} in every channel: {elasticity:0.##}% more sold for a price 1% lower")
                : "each channel's elasticity, 2 unless it says otherwise",
            "ours, no source"
        ),
        (
            "What channels take at today's price",
            farm.Notation.Text($"the most they took of it at {VerdictSettings.AtListPrice * 100m:0.#}% or more of list price "
                + $"within two weeks of that week, in weeks with less than 5% thrown out or given away"),
            "ours, no source"
        ),
        ("Trips", "stay until nothing leaves through the channel", "ours: a market stand costs the same whatever is on it"),
        (
            "Boxes",
            farm.Notation.Text($"refilled to what they were worth, at most to what members paid; "
                + $"bought in at {farm.BuyInPercent:0.##}% of list price"),
            "ours"
        ),
        (
            "Hired hours a change frees",
            farm.HiredHoursCanBeCut ? "can be cut: they are cash" : "are paid all the same",
            "the settings"
        ),
    ];

    private static (string, string, string)[] OfVerdict(VerdictSettings rule, FarmSettings farm)
    {
        Notation notation = farm.Notation;
        string dearer = (rule.PriceChangePercent ?? farm.PriceChangePercent) is { } rise
            ? notation.Text($"{rise:0.##}% more a year")
            : "in the money of their year";
        return
        [
            ("Past seasons", $"sales at list price now over then, hours at today's cost of an hour, other costs {dearer}", "ours"),
            (
                "Noise",
                notation.Text($"spread of each crop's seasons, all crops taken together, over the number of seasons; "
                    + $"{rule.RuleError * 100m:0}% of labor and of harvests divided by rule"),
                "ours, no source"
            ),
            (
                "Other crops in its beds",
                notation.Text($"add more than the noise of both and {rule.MixShare * 100m:0}% of its output; "
                    + $"never in place of a perennial"),
                "ours, tried on invented farms"
            ),
            ("Grow", notation.Text($"{rule.GrowStep * 100m:0}% more, or the room there is"), "ours"),
        ];
    }

    /// <summary>The same crop over the years.</summary>
    public static ReportTable Years(CropOverYears years, FarmSettings farm)
    {
        LengthUnit length = farm.LengthUnit;
        string unit = years.Years.Count > 0 ? years.Years[0].Budget.Crop?.Unit ?? "unit" : "unit";
        ReportTable table = new ReportTable($"{years.Crop} over the years, in the money of each year", farm.Notation)
            .Column("Year", Look.Year)
            .Column(length.Label("Bed-feet"), Look.Quantity)
            .Column("Picked", Look.Exact, unit: farm.Notation.Text($"{unit} per bed-foot"))
            .Column("Price", Look.Rate, per: unit)
            .Column("Brought in", Look.Rate, per: length.Label("bed-foot"))
            .Column("Full cost", Look.Rate, per: unit)
            .Column("Left over", Look.Rate, per: unit)
            .Column("Left over", Look.WholeMoney)
            .Column("Gross margin", Look.Rate, per: length.Label("bed-foot-week"));
        foreach (CropYearFigures year in years.Years)
        {
            EnterpriseBudget budget = year.Budget;
            table.Row(
                year.CropYear,
                budget.Sums.BedFeet.Value,
                budget.YieldPerBedFoot,
                budget.AveragePrice,
                budget.OutputPerBedFoot,
                year.CostPerUnit,
                year.NetReturnPerUnit,
                ReportCell.Known(budget.NetReturn, budget.Known.NoFullNetReturn),
                budget.GrossMarginPerBedFootWeek
            );
        }

        return table.Note(years.Statement);
    }

    internal static string Varies(CostDriver driver) => driver switch
    {
        CostDriver.BedTime => "bed time",
        CostDriver.Units => "units sold",
        CostDriver.Fixed => "nothing (fixed)",
        _ => driver.ToString().ToLowerInvariant(),
    };

    private static IReadOnlyList<ReportCell> Cells(SeasonCosts costs, EnterpriseBudget budget, string name)
    {
        SensitivityModel model = costs.Model(budget);
        string? missing = budget.Known.Costs ?? budget.Known.LaborCost;
        ReportCell Known(Units.Money money) => ReportCell.Known(money, missing);
        return
        [
            name,
            ReportCell.Known(budget.Output, budget.Known.Value),
            Known(model.Cost(CostDriver.Length) + model.Cost(CostDriver.BedTime)),
            Known(model.Cost(CostDriver.Quantity)),
            Known(model.Cost(CostDriver.Units)),
            ReportCell.Known(budget.NetReturn + model.Cost(CostDriver.Trips) + model.Cost(CostDriver.Fixed), budget.Known.NoNetReturn),
            Known(model.Cost(CostDriver.Trips)),
            ReportCell.Known(model.Cost(CostDriver.Fixed), missing ?? budget.Known.Ownership ?? budget.Known.Establishment),
            ReportCell.Known(budget.NetReturn, budget.Known.NoFullNetReturn),
        ];
    }
}
