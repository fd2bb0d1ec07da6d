using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Pricing;

/// <summary>
/// What a crop sold through one channel, and what that channel's own pool (the stand, driving, hours there) charged it.
/// </summary>
public sealed class CropChannel
{
    private readonly List<DispositionPart> parts = [];

    internal CropChannel(Channel channel)
    {
        Channel = channel;
    }

    /// <summary>The channel.</summary>
    public Channel Channel { get; }

    /// <summary>What left through it, part by part, in the order of the sales table.</summary>
    public IReadOnlyList<DispositionPart> Parts => parts;

    /// <summary>Quantity in the crop's unit.</summary>
    public decimal Quantity { get; private set; }

    /// <summary>The part of it that was sold: all but what left through a channel of kind other without money of its own.</summary>
    internal decimal SoldQuantity { get; private set; }

    /// <summary>True where something was sold through it, or money alone went through it: a refund.</summary>
    internal bool IsSold => SoldQuantity > 0m || Amount != Money.Zero || Fees != Money.Zero;

    /// <summary>Money that came in for it: sale amounts, or its part of the share income.</summary>
    public Money Amount { get; private set; }

    /// <summary>The channel's fee on it.</summary>
    public Money Fees { get; private set; }

    /// <summary>The crop's part of the channel's own pool, spread by the pool's basis (its sales value).</summary>
    public CostBlock ChannelCost { get; } = new();

    internal void Add(DispositionPart part)
    {
        parts.Add(part);
        Quantity += part.Quantity;
        SoldQuantity += part.Disposition.IsSold ? part.Quantity : 0m;
        Amount += part.Amount;
        Fees += part.Fee;
    }
}

/// <summary>
/// A crop's cost of one crop year, split into what every unit carries alike (growing, picking, packing, its part of shared costs) and what
/// only the units of one channel carry. Both together, with the fees, are the total cost of the crop's enterprise budget, to the cent.
/// </summary>
public sealed class CropCost
{
    private readonly Dictionary<Channel, CropChannel> channels = [];

    private CropCost(EnterpriseBudget budget)
    {
        Budget = budget;
    }

    /// <summary>The crop's enterprise budget.</summary>
    public EnterpriseBudget Budget { get; }

    /// <summary>The crop.</summary>
    public Crop Crop => Budget.Crop!;

    /// <summary>Cost that doesn't depend on where a unit is sold; fees left out.</summary>
    public CostBlock Production { get; } = new();

    /// <summary>
    /// The channels the crop went through, in the order of the channels table; also one that saw money of it alone, a refund.
    /// </summary>
    public IReadOnlyList<CropChannel> Channels { get; private set; } = [];

    /// <summary>
    /// What the units sold must cover wherever they are sold: production and the pools of channels that sell nothing, less what else the
    /// crop gave at its value (household use and stock).
    /// </summary>
    public CostBlock CostOfSold { get; } = new();

    /// <summary>Cost of what was sold per unit, before the channel's own.</summary>
    /// <param name="yieldFactor">Times the season's yield, above 0; 1: as it was.</param>
    /// <returns>The cost of a unit, or null when nothing was sold.</returns>
    public UnitCost? PerUnit(decimal yieldFactor = 1m) =>
        Budget.Sums.Sold is > 0m and var sold ? CostOfSold.PerUnit(sold, yieldFactor) : null;

    /// <summary>The crop's dealings with one channel; null when nothing went through it.</summary>
    /// <param name="channel">The channel.</param>
    /// <returns>Quantity, money and channel cost.</returns>
    public CropChannel? Through(Channel channel) => Channels.FirstOrDefault(item => item.Channel == channel && item.Quantity > 0m);

    /// <summary>Splits the cost of every crop of a season.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="cropYear">The season.</param>
    /// <returns>One per crop, in the order of the crops table.</returns>
    public static IReadOnlyList<CropCost> Of(FarmReview review, int cropYear)
    {
        ArgumentNullException.ThrowIfNull(review);
        SeasonReview season = review.Season(cropYear);
        List<CropCost> costs = season.Crops.Select(budget => new CropCost(budget)).ToList();
        Dictionary<Crop, CropCost> byCrop = costs.ToDictionary(cost => cost.Crop);
        foreach (DispositionPart part in season.DispositionParts)
        {
            if (part.Enterprise is { } enterprise)
            {
                byCrop[enterprise.Crop].At(part.Disposition.Channel).Add(part);
            }
        }

        foreach (Charge charge in review.Charges.ByYear[cropYear])
        {
            if (charge.Enterprise is { } enterprise && enterprise.CropYear == cropYear && !charge.IsFee)
            {
                byCrop[enterprise.Crop].Production.AddMoney(charge.Line == StatementLine.Labor, charge.VariesWith, charge.Amount.Amount);
            }
        }

        foreach (PoolResult pool in season.Pools)
        {
            foreach (PoolCharge charge in pool.Charges.Where(charge => charge.Enterprise is not null))
            {
                byCrop[charge.Enterprise!.Crop].BlockOf(pool.Pool).Add(charge);
            }
        }

        costs.ForEach(cost => cost.Production.AddMoney(isLabor: false, CostDriver.Fixed, cost.Budget.Sums.Establishment.Amount));
        AddHours(season, byCrop);
        foreach (CropCost cost in costs)
        {
            cost.KeepSold();
            cost.SumCostOfSold();
        }

        return costs;
    }

    private static void AddHours(SeasonReview season, Dictionary<Crop, CropCost> byCrop)
    {
        foreach (CropCost cost in byCrop.Values)
        {
            foreach (Stage stage in Enum.GetValues<Stage>())
            {
                cost.Production.AddHours(StageBehavior.Of(stage, namesCrop: true), cost.Budget.Sums.HoursByStage[(int)stage]);
            }
        }

        // Hours of a pool vary as its labor does: those of selling are trips. A channel's follow below.
        foreach (PoolHours hours in season.Pools.Where(pool => pool.Pool.Channel is null && !pool.Pool.IsOverhead)
            .SelectMany(pool => pool.HoursCharged).Where(hours => hours.Enterprise is not null))
        {
            CostBlock production = byCrop[hours.Enterprise!.Crop].Production;
            production.AddHours(StageBehavior.Of(hours.Stage, namesCrop: true), -hours.Hours);
            production.AddHours(StageBehavior.Of(hours.Stage, namesCrop: false), hours.Hours);
        }

        AddChannelHours(season, byCrop);
    }

    /// <summary>A channel's hours reach the crops by the same shares as its money; they come out of what all units carry.</summary>
    private static void AddChannelHours(SeasonReview season, Dictionary<Crop, CropCost> byCrop)
    {
        foreach (PoolResult pool in season.Pools.Where(pool => pool.Pool.Channel is not null && pool.Hours > 0m))
        {
            for (int j = 0; j < season.Network.Enterprises.Count; j++)
            {
                decimal share = season.Network.Running.Shares[pool.Pool.Index, j];
                if (share == 0m)
                {
                    continue;
                }

                CropCost cost = byCrop[season.Network.Enterprises[j].Crop];
                foreach (Charge row in pool.Rows.Where(row => row.Hours > 0m))
                {
                    Stage stage = row.Stage ?? Stage.Overhead;
                    cost.BlockOf(pool.Pool).AddHours(StageBehavior.Of(stage, namesCrop: false), row.Hours * share);
                    cost.Production.AddHours(StageBehavior.Of(stage, namesCrop: true), -row.Hours * share);
                }
            }
        }
    }

    /// <summary>A measured use can charge a channel's pool to a crop that sold nothing there: then all its units carry it.</summary>
    private void KeepSold()
    {
        foreach (CropChannel empty in channels.Values.Where(channel => channel.Quantity <= 0m))
        {
            Production.Add(empty.ChannelCost);
        }

        Channels =
        [
            .. channels.Values.Where(channel => channel.Quantity > 0m)
                .Concat(channels.Values.Where(channel => channel.Quantity <= 0m && channel.IsSold).Select(MoneyAlone))
                .OrderBy(channel => channel.Channel.Index),
        ];
    }

    /// <summary>A channel without the cost that all units carry now.</summary>
    private static CropChannel MoneyAlone(CropChannel refunded)
    {
        CropChannel money = new(refunded.Channel);
        foreach (DispositionPart part in refunded.Parts)
        {
            money.Add(part);
        }

        return money;
    }

    private void SumCostOfSold()
    {
        CostOfSold.Add(Production);
        foreach (CropChannel unsold in Channels.Where(channel => channel.SoldQuantity <= 0m))
        {
            CostOfSold.Add(unsold.ChannelCost);
        }

        // Household use and stock grow with the yield, as picking does.
        CostOfSold.AddMoney(isLabor: false, CostDriver.Quantity, -Budget.OutputNotSold.Amount);
    }

    private CropChannel At(Channel channel)
    {
        if (!channels.TryGetValue(channel, out CropChannel? found))
        {
            channels[channel] = found = new CropChannel(channel);
        }

        return found;
    }

    private CostBlock BlockOf(Pool pool) => pool.Channel is { } channel ? At(channel).ChannelCost : Production;
}
