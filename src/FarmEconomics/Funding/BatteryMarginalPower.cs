using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Water.Power;

namespace FarmEconomics.Funding;

/// <summary>
/// By days of shortage, where the records hold the pool's battery and panels: the part of a kWh that sun and battery didn't cover, from the
/// day-by-day balance, times what the generator costs; nothing while they always did. Any other pool, and one whose missing kWh has no
/// price, by a year's use (<see cref="YearlyMarginalPower"/>).
/// </summary>
public sealed class BatteryMarginalPower : IMarginalPower
{
    private readonly YearlyMarginalPower yearly = new();

    /// <inheritdoc/>
    public MarginalPrice Of(SeasonReview season, PoolResult power)
    {
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(power);
        FarmRecords records = season.Records;
        if (records.Settings.Supply.BatteryKwh is null)
        {
            return yearly.Of(season, power);
        }

        PowerSeason supply = PowerSeason.Of(records, season.CropYear);
        if (
            supply.WhyUnknown is not null
            || supply.Pool is not { } pool
            || records.FindPool(pool) != power.Pool
            || !supply.MarginalPerKwh.IsAvailable
        )
        {
            return yearly.Of(season, power);
        }

        Notation notation = records.Settings.Notation;
        return supply.DaysShort == 0
            ? new MarginalPrice(supply.MarginalPerKwh, "sun and battery were enough every day: a kWh more costs nothing")
            : new MarginalPrice(supply.MarginalPerKwh, notation.Text(
                $"sun and battery fell short on {supply.DaysShort} days: {(decimal)supply.PartMissing!.Value * 100m:0.#}% of a kWh more "
                    + $"would be the generator's"));
    }
}
