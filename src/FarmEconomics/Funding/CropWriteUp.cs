using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>The lines of a crop's write-up, top to bottom.</summary>
public enum WriteUpItem
{
    /// <summary>Sales and share payments.</summary>
    Sales,

    /// <summary>What the household took.</summary>
    HouseholdUse,

    /// <summary>Produce on hand.</summary>
    ClosingStock,

    /// <summary>The three above.</summary>
    Output,

    /// <summary>Materials.</summary>
    Materials,

    /// <summary>Cost of selling.</summary>
    Selling,

    /// <summary>Output less materials and selling.</summary>
    GrossMargin,

    /// <summary>Hired and unpaid labor.</summary>
    Labor,

    /// <summary>Gross margin less labor.</summary>
    MarginAfterLabor,

    /// <summary>Shared cost of what is used in common.</summary>
    Infrastructure,

    /// <summary>Overhead.</summary>
    Overhead,

    /// <summary>Perennials: carried to later years, or a bearing season's part.</summary>
    Establishment,

    /// <summary>What is left.</summary>
    NetReturn,
}

/// <summary>A line of a crop's write-up: last season and the next by the factors.</summary>
/// <param name="Item">Which line it is.</param>
/// <param name="Name">The line in words.</param>
/// <param name="Last">Last season, in currency.</param>
/// <param name="Next">Next season, in currency.</param>
/// <param name="IsTotal">True for a line derived from those above it.</param>
public sealed record WriteUpLine(WriteUpItem Item, string Name, decimal Last, decimal Next, bool IsTotal = false);

/// <summary>
/// A crop's enterprise budget in write-up form: in all, per 100 bed-feet, per bed and per acre; last season and next. Next season: output x
/// area x yield x price; a cost that varies with area x area, with quantity or sales x area x yield, a channel's fee x area x yield x
/// price, with nothing, and establishment, as it was; labor x the wage factor, all other cost but fees x the cost factor.
/// </summary>
public sealed class CropWriteUp
{
    private const decimal SquareFeetPerAcre = 43560m;
    private const decimal InchesPerFoot = 12m;
    private const decimal SquareMetersPerHectare = 10000m;
    private const decimal CentimetersPerMeter = 100m;

    private CropWriteUp(EnterpriseBudget budget, decimal nextBedFeet, decimal bedFeetPerAcre, decimal bedLength, List<WriteUpLine> lines)
    {
        Budget = budget;
        NextBedFeet = nextBedFeet;
        BedFeetPerAcre = bedFeetPerAcre;
        BedLength = bedLength;
        Lines = lines;
    }

    /// <summary>Last season's budget.</summary>
    public EnterpriseBudget Budget { get; }

    /// <summary>Bed-feet of next season.</summary>
    public decimal NextBedFeet { get; }

    /// <summary>
    /// Bed-feet an acre holds: 43,560 square feet / ((bed width + path) / 12). On a farm in meters, bed-meters a hectare holds: 10,000
    /// square meters / ((bed width + path) / 100).
    /// </summary>
    public decimal BedFeetPerAcre { get; }

    /// <summary>Bed-feet of a bed: the length most of the farm's beds have.</summary>
    public decimal BedLength { get; }

    /// <summary>The lines, output first; sums are to the cent.</summary>
    public IReadOnlyList<WriteUpLine> Lines { get; }

    /// <summary>A line for an area of the crop.</summary>
    /// <param name="line">The line.</param>
    /// <param name="bedFeet">The area, in bed-feet.</param>
    /// <param name="next">True: next season.</param>
    /// <returns>Money for that area; not available when nothing was planted.</returns>
    public Result Per(WriteUpLine line, decimal bedFeet, bool next)
    {
        ArgumentNullException.ThrowIfNull(line);
        decimal planted = next ? NextBedFeet : Budget.Sums.BedFeet.Value;
        return Result.Of((next ? line.Next : line.Last) * bedFeet, planted, "nothing planted in beds");
    }

    /// <summary>The write-ups of all crops of a season.</summary>
    /// <param name="season">The season.</param>
    /// <param name="assumptions">The factors and the path's width.</param>
    /// <returns>One per crop, in the order of the crops table.</returns>
    public static IReadOnlyList<CropWriteUp> Of(SeasonReview season, FundingAssumptions assumptions)
    {
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(assumptions);
        Dictionary<Crop, decimal[,]> costs = CostByLine(season);
        LengthUnit length = season.Settings.LengthUnit;
        decimal perAcre = (length == LengthUnit.M ? SquareMetersPerHectare * CentimetersPerMeter : SquareFeetPerAcre * InchesPerFoot)
            / (season.Settings.StandardBedWidthIn + assumptions.NextSeason.PathWidthIn(length));
        decimal bedLength = UsualBedLength(season);
        return [.. season.Crops.Select(crop => Make(crop, costs[crop.Crop!], perAcre, bedLength, assumptions))];
    }

    /// <summary>The length most of the farm's beds have, at the standard width.</summary>
    /// <param name="season">The season.</param>
    /// <returns>Bed-feet, or bed-meters on a farm that measures in meters; 0 without beds.</returns>
    public static decimal UsualBedLength(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        decimal width = season.Settings.StandardBedWidthIn;
        return season.Records.Tables.Beds.GroupBy(bed => bed.LengthFt * (bed.WidthIn ?? width) / width)
            .OrderByDescending(group => group.Count()).ThenByDescending(group => group.Key).Select(group => group.Key).FirstOrDefault();
    }

    private static CropWriteUp Make(
        EnterpriseBudget crop,
        decimal[,] costs,
        decimal perAcre,
        decimal bedLength,
        FundingAssumptions assumptions
    )
    {
        Table table = new(costs, assumptions.NextSeason);
        table.Output(WriteUpItem.Sales, "Sales and share payments", crop.SalesValue);
        table.Output(WriteUpItem.HouseholdUse, "Household use", crop.Sums.Household);
        table.Output(WriteUpItem.ClosingStock, "Closing stock", crop.Sums.ClosingStock);
        table.Left(WriteUpItem.Output, "Output");
        table.Cost(WriteUpItem.Materials, "Materials", StatementLine.Materials);
        table.Cost(WriteUpItem.Selling, "Selling", StatementLine.Selling);
        table.Left(WriteUpItem.GrossMargin, "Gross margin");
        table.Cost(WriteUpItem.Labor, "Labor", StatementLine.Labor);
        table.Left(WriteUpItem.MarginAfterLabor, "Margin after labor");
        table.Cost(WriteUpItem.Infrastructure, "Infrastructure", StatementLine.Infrastructure);
        table.Cost(WriteUpItem.Overhead, "Overhead", StatementLine.Overhead);
        decimal establishment = crop.Sums.Establishment.Amount;
        table.Cost(WriteUpItem.Establishment, "Establishment of perennials", establishment, establishment);
        table.Left(WriteUpItem.NetReturn, "Net return");
        return new CropWriteUp(crop, crop.Sums.BedFeet.Value * assumptions.NextSeason.Area, perAcre, bedLength, table.Lines);
    }

    /// <summary>The lines of a crop's table with what is left after each, last season and next.</summary>
    private sealed class Table
    {
        private readonly decimal[,] costs;
        private readonly NextSeasonAssumptions factors;

        // In the order of CostDriver, channels' fees last.
        private readonly decimal[] byBehavior;
        private decimal last;
        private decimal next;

        internal Table(decimal[,] costs, NextSeasonAssumptions factors)
        {
            (this.costs, this.factors) = (costs, factors);
            (decimal area, decimal yield, decimal price) = (factors.Area, factors.Yield, factors.Price);
            byBehavior = [area, area * yield, area * yield, 1m, area, 1m, area * yield * price];
        }

        internal List<WriteUpLine> Lines { get; } = [];

        internal void Output(WriteUpItem item, string name, Money amount)
        {
            decimal becomes = Money.Rounded(amount.Amount * factors.Area * factors.Yield * factors.Price).Amount;
            Lines.Add(new WriteUpLine(item, name, amount.Amount, becomes));
            (last, next) = (last + amount.Amount, next + becomes);
        }

        internal void Cost(WriteUpItem item, string name, StatementLine line)
        {
            decimal factor = line == StatementLine.Labor ? factors.Wage : factors.Cost;
            decimal was = 0m, becomes = 0m;
            for (int i = 0; i < byBehavior.Length; i++)
            {
                // A fee is a part of the sales: it rises with prices, not with other costs.
                was += costs[(int)line, i];
                becomes += costs[(int)line, i] * byBehavior[i] * (i == byBehavior.Length - 1 ? 1m : factor);
            }

            Cost(item, name, Money.Rounded(was).Amount, Money.Rounded(becomes).Amount);
        }

        internal void Cost(WriteUpItem item, string name, decimal was, decimal becomes)
        {
            Lines.Add(new WriteUpLine(item, name, was, becomes));
            (last, next) = (last - was, next - becomes);
        }

        internal void Left(WriteUpItem item, string name) => Lines.Add(new WriteUpLine(item, name, last, next, IsTotal: true));
    }

    /// <summary>
    /// Cost of each crop by statement line and what it varies with, channels' fees last: direct charges and those of pools.
    /// </summary>
    private static Dictionary<Crop, decimal[,]> CostByLine(SeasonReview season)
    {
        int lines = Enum.GetValues<StatementLine>().Length, behaviors = Enum.GetValues<CostDriver>().Length;
        Dictionary<Crop, decimal[,]> costs = season.Crops.ToDictionary(crop => crop.Crop!, _ => new decimal[lines, behaviors + 1]);
        foreach (Enterprise enterprise in season.Network.Enterprises)
        {
            foreach (Charge charge in season.DirectCharges(enterprise))
            {
                costs[enterprise.Crop][(int)charge.Line, charge.IsFee ? behaviors : (int)charge.VariesWith] += charge.Amount.Amount;
            }
        }

        foreach (PoolCharge charge in season.Pools.SelectMany(pool => pool.Charges))
        {
            if (charge.Enterprise is { } enterprise)
            {
                for (int i = 0; i < behaviors; i++)
                {
                    costs[enterprise.Crop][(int)charge.Line, i] += charge.Amount.Amount * charge.Source.BehaviorShares[i];
                }
            }
        }

        return costs;
    }
}
