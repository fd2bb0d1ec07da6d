using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>
/// Term-debt coverage, and how far sales may fall before it drops under a ratio. Capacity / service; with sales lower by a share d,
/// capacity falls by d x (sales - fees): all other costs stay as they were. In currency; ratios are plain numbers.
/// </summary>
/// <param name="Name">Which debt.</param>
/// <param name="Capacity">Capital debt repayment capacity.</param>
/// <param name="Service">Scheduled principal and interest of a year; not available where nobody knows what fell due.</param>
/// <param name="Sales">Sales and share payments of the year.</param>
/// <param name="Fees">Channels' fees on them.</param>
/// <param name="Wanted">The ratio that must be kept.</param>
public sealed record DebtCoverage(string Name, Result Capacity, Result Service, decimal Sales, decimal Fees, decimal Wanted)
{
    /// <summary>Capacity over service.</summary>
    public Result Coverage => Capacity.Value is not { } capacity ? Capacity
        : Service.Value is not { } service ? Service
        : Result.Of(capacity, service, "no payments due in the year");

    /// <summary>
    /// The share (0 to 1) by which sales may fall until coverage is the wanted ratio; below 0 when it is under it already; 1 when even no
    /// sales would do.
    /// </summary>
    public Result SalesMayFall => Capacity.Value is not { } capacity ? Capacity
        : Service.Value is not { } service ? Service
        : Sales - Fees <= 0m ? Result.NotAvailable("no sales")
        : service == 0m ? Result.NotAvailable("no payments due in the year")
        : Result.Known(Math.Min(1m, (capacity - (Wanted * service)) / (Sales - Fees)));
}
