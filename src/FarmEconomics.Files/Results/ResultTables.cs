using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Files.Workbooks;
using FarmEconomics.Planning.Variances;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Files.Results;

/// <summary>
/// Writes a season's result tables, the contract for other programs (docs/records.md): dot decimals, ISO dates, money to the cent, rates
/// and quantities to 4 decimals, blank for "not available".
/// </summary>
public static class ResultTables
{
    /// <summary>Writes all tables into a folder that exists and is the caller's to fill.</summary>
    /// <param name="season">The season.</param>
    /// <param name="problems">The problems to list, located.</param>
    /// <param name="folder">The folder.</param>
    /// <param name="book">A workbook that gets the same tables, a sheet each, or null.</param>
    /// <exception cref="IOException">A file can't be written.</exception>
    public static void Write(SeasonReview season, IReadOnlyList<Problem> problems, string folder, Workbook? book = null)
    {
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(problems);
        WriteCrops(season, Path.Combine(folder, "crops.csv"), book);
        WritePlantings(season, Path.Combine(folder, "plantings.csv"), book);
        WriteChannels(season, Path.Combine(folder, "channels.csv"), book);
        WritePools(season, Path.Combine(folder, "pools.csv"), book);
        WriteCharges(season, Path.Combine(folder, "charges.csv"), book);
        WriteStatement(season, Path.Combine(folder, "statement.csv"), book);
        WriteReconciliation(season, Path.Combine(folder, "reconciliation.csv"), book);
        SeasonCosts costs = SeasonCosts.Of(season);
        WhatWasShort shorts = WhatWasShort.Of(costs);
        ShortTables.Write(shorts, folder, book);
        SupplyResults.Write(shorts.WaterAndPower, folder, book);
        LossResults.Write(costs, folder, book);
        PlanResults.Write(PlanVariances.Of(costs), folder, book);
        WriteProblems(problems, season.Notation, Path.Combine(folder, "problems.csv"), book);
    }

    /// <summary>The tables by file name, each with what it holds.</summary>
    public static IReadOnlyList<(string Name, string What)> All { get; } =
    [
        ("crops.csv", "what each crop earned, from output to net return, with every rate"),
        ("plantings.csv", "the same for each planting, with its beds"),
        ("channels.csv", "what each channel brought, its fees, costs and hours"),
        ("pools.csv", "what each shared cost was, and who bears it"),
        ("charges.csv", "what each crop was charged by each pool"),
        ("statement.csv", "the statement of the whole farm"),
        ("reconciliation.csv", "the proof that nothing was lost: every difference is 0.00"),
        (ShortTables.Uses, "beds by cover, hours, stores and trays against their limits, week by week or day by day"),
        (ShortTables.Crops, "what each crop added to the farm per unit of what was short, while it was"),
        (SupplyResults.Weeks, "water needed against the limit week by week, what was put on, and what was lost"),
        (SupplyResults.Crops, "the water each crop took, and what it added per 1,000 gallons"),
        (SupplyResults.Days, "the water of every block day by day: rain and watering in, used, stored and drained, stress and loss"),
        (SupplyResults.Worth, "what more water, more sprinklers and longer hours would have saved over the season"),
        (SupplyResults.Months, "power wanted, made and missing month by month, and what more battery or panels would have saved"),
        (SupplyResults.Loads, "which load gives way first when power is short, and what it went without"),
        (LossResults.Picked, "where all that was picked went, and what it brought or would have brought net of packing and fees"),
        (LossResults.Sowings, "every sowing beside the mean of its crop: price, yield, hours, part not sold"),
        (LossResults.Tasks, "minutes per crate or per bed-foot of every task, year by year"),
        (PlanResults.Crops, "each crop beside its plan, and what made the difference"),
        ("problems.csv", "what the records check found, with file and line"),
    ];

    // The figures are in the farm's own unit of length, and the headings say so.
    private static string[] Headings(SeasonReview season) =>
        [.. BudgetTable.Columns.Select(column => season.Settings.LengthUnit.Label(column.Name))];

    private static void WriteCrops(SeasonReview season, string path, Workbook? book)
    {
        using CsvTable table = new(path, book, Headings(season));
        foreach (EnterpriseBudget budget in season.Crops)
        {
            ResultValue.Row(table, BudgetTable.Columns, budget);
        }
    }

    private static void WritePlantings(SeasonReview season, string path, Workbook? book)
    {
        using CsvTable table = new(path, book, ["planting", "bed", .. Headings(season)]);
        foreach (EnterpriseBudget budget in season.Plantings)
        {
            Enterprise enterprise = budget.Enterprises[0];
            table.Text(budget.Name).Text(string.Join("; ", enterprise.Planting.Beds.Select(bed => bed.Bed.Name).Distinct()));
            ResultValue.Row(table, BudgetTable.Columns, budget);
        }
    }

    private static void WriteChannels(SeasonReview season, string path, Workbook? book)
    {
        using CsvTable table = new(path, book, "crop_year", "channel", "kind", "quantity_value", "fees", "direct_costs", "hours",
            "margin", "margin_per_hour");
        foreach (ChannelResult channel in season.Channels)
        {
            bool costs = channel.Known.Costs is null;
            table
                .Whole(season.CropYear)
                .Text(channel.Channel.Name)
                .Text(channel.Channel.Kind.ToString().ToLowerInvariant())
                .Money(channel.Known.Value is null ? channel.QuantityValue.Amount : null)
                .Money(channel.Known.Value is null ? channel.Fees.Amount : null)
                .Money(costs ? channel.DirectCosts.Amount : null)
                .Number(channel.Known.Hours is null ? channel.Hours.Value : null)
                .Money(channel.Known.NoGrossMargin is null ? channel.Margin.Amount : null)
                .Number(channel.MarginPerHour.Value);
            table.End();
        }
    }

    private static void WritePools(SeasonReview season, string path, Workbook? book)
    {
        using CsvTable table = new(path, book, "crop_year", "pool", "cash_cost", "labor_cost", "ownership_cost", "hours",
            "received_from_pools", "passed_to_pools", "to_crops", "to_household", "unused", "not_assigned");
        foreach (PoolResult pool in season.Pools)
        {
            decimal? Owned(Money amount) => pool.OwnershipKnown ? amount.Amount : null;
            table
                .Whole(season.CropYear)
                .Text(pool.Pool.Name)
                .Money(pool.Cash.Amount)
                .Money(pool.Labor.Amount)
                .Money(Owned(pool.Ownership))
                .Number(pool.Hours)
                .Money(pool.ReceivedKnown ? pool.ReceivedFromPools.Amount : null)
                .Money(pool.PassedKnown ? pool.PassedToPools.Amount : null)
                .Money(Owned(pool.ToCrops))
                .Money(Owned(pool.ToHousehold))
                .Money(Owned(pool.Unused))
                .Money(Owned(pool.NotAssigned));
            table.End();
        }
    }

    private static void WriteCharges(SeasonReview season, string path, Workbook? book)
    {
        using CsvTable table = new(path, book, "crop_year", "pool", "crop", "amount");
        foreach (PoolResult pool in season.Pools)
        {
            foreach (IGrouping<Crop, PoolCharge> crop in pool.Charges.Where(charge => charge.Enterprise is not null)
                .GroupBy(charge => charge.Enterprise!.Crop).OrderBy(group => group.Key.Index))
            {
                table
                    .Whole(season.CropYear)
                    .Text(pool.Pool.Name)
                    .Text(crop.Key.Name)
                    .Money(pool.OwnershipKnown ? crop.Sum(charge => charge.Amount.Amount) : null);
                table.End();
            }
        }
    }

    private static void WriteStatement(SeasonReview season, string path, Workbook? book)
    {
        using CsvTable table = new(path, book, "crop_year", "line", "amount");
        foreach (FarmStatementLine line in FarmStatement.Of(season))
        {
            table.Whole(season.CropYear).Text(line.Name).Money(line.Amount);
            table.End();
        }
    }

    private static void WriteReconciliation(SeasonReview season, string path, Workbook? book)
    {
        using CsvTable table = new(path, book, "crop_year", "check", "left", "right", "difference");
        foreach (ReconciliationCheck check in season.Reconciliation)
        {
            table.Whole(season.CropYear).Text(check.Check).Money(check.Left).Money(check.Right).Money(check.Difference);
            table.End();
        }
    }

    internal static void WriteProblems(IReadOnlyList<Problem> problems, Notation notation, string path, Workbook? book = null)
    {
        using CsvTable table = new(path, book, "severity", "code", "file", "line", "column", "message");
        foreach (Problem problem in problems)
        {
            table
                .Text(problem.Severity.ToString().ToLowerInvariant())
                .Text(problem.Code)
                .Text(problem.Source.File)
                .Whole(problem.Source.Line > 0 ? problem.Source.Line : null)
                .Text(problem.Column is { } column ? RecordSchema.NameFor(column, notation.LengthUnit) : null)
                .Text(
                    problem.Further == 0
                        ? problem.Message
                        : notation.Text($"{problem.Message} And {problem.Further:N0} further rows with the same fault.")
                );
            table.End();
        }
    }
}
