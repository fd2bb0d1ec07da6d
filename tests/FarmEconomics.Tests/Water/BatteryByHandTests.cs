using FarmEconomics.Water.Power;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>Five days of a battery of 4 kWh, four fifths stored of what goes in, with a generator of 1 kWh a day, by hand.</summary>
public class BatteryByHandTests
{
    // Worked out for every test: a mutation tester sees only what happens while a test runs.
    private PowerDay[] Days { get; } = BatteryBalance.Run(
        [5, 4, 1, 0, 1, 2], [2, 1, 3, 5, 1, 0], day => new Battery(day < 4 ? 4 : 3, 0.8, GeneratorKwhPerDay: 1));

    [Fact]
    public void Load_BeyondTheSun_DrawsOnTheFullBattery() => Same(new(5, 2, 2, 3, 0, 0, 0, 0, 0, 1), Days[0]);

    /// <summary>Of 3 kWh missing the battery has 1, the generator makes 1, and 1 is short.</summary>
    [Fact]
    public void Load_BeyondTheBattery_IsGeneratedAndThenShort()
    {
        Same(new(4, 1, 1, 1, 0, 0, 0, 1, 1, 0), Days[1]);
        Assert.Equal(2, Days[1].Missing);
    }

    /// <summary>Of 2 kWh beyond the load 1.6 are stored.</summary>
    [Fact]
    public void Sun_BeyondTheLoad_ChargesWithALoss() => Same(new(1, 3, 1, 0, 1.6, 0.4, 0, 0, 0, 1.6), Days[2]);

    /// <summary>2.4 kWh are to be filled, which takes 3; 2 of 5 are spilled.</summary>
    [Fact]
    public void Sun_BeyondAFullBattery_IsSpilled() => Same(new(0, 5, 0, 0, 2.4, 0.6, 2, 0, 0, 4), Days[3]);

    [Fact]
    public void Battery_SmallerThanTheDayBefore_SpillsWhatItHeldBeyond() => Same(new(1, 1, 1, 0, 0, 0, 1, 0, 0, 3), Days[4]);

    [Fact]
    public void Load_WithoutSun_DrawsOnTheSmallerBattery() => Same(new(2, 0, 0, 2, 0, 0, 0, 0, 0, 1), Days[5]);

    [Fact]
    public void NoDays_AreNoBalance() => Assert.Empty(BatteryBalance.Run([], [], _ => throw new InvalidOperationException()));

    private static void Same(PowerDay expected, PowerDay day) => Assert.Equal(Values(expected), Values(day));

    private static double[] Values(PowerDay day) =>
        [
            .. new[]
            {
                day.Load,
                day.Made,
                day.Direct,
                day.FromBattery,
                day.Stored,
                day.ChargeLoss,
                day.Spilled,
                day.Generated,
                day.Short,
                day.Held,
            }.Select(kwh => Math.Round(kwh, 9)),
        ];
}
