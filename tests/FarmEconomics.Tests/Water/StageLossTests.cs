using CsCheck;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>Yield lost where the crops table has Ky by stage of growth, and where it hasn't.</summary>
public class StageLossTests
{
    private static readonly FarmWater Unset = DryFarm.Farm(DryFarm.With(5));
    private static readonly FarmWater Staged = DryFarm.Farm(WithStages());

    [Theory]
    [InlineData(1, GrowthStage.Initial)]
    [InlineData(20, GrowthStage.Initial)]
    [InlineData(21, GrowthStage.Development)]
    [InlineData(44, GrowthStage.Development)]
    [InlineData(45, GrowthStage.Mid)]
    [InlineData(70, GrowthStage.Mid)]
    [InlineData(71, GrowthStage.Late)]
    [InlineData(80, GrowthStage.Late)]
    public void Stage_OfADay_FollowsTheCurve(int day, GrowthStage stage) => Assert.Equal(stage, new StageDays(20, 25, 25, 10).On(day));

    [Fact]
    public void Unset_AnyDaysMissed_AddUpAndStopAtAllAsTheyDid() => Gen.Double[0, 60].Array[104].Sample(missed =>
    {
        foreach (SowingWater sowing in Unset.Sowings)
        {
            double before = 0;
            double[] lost = sowing.Loss.None();
            for (int day = 0; day < missed.Length; day++)
            {
                double part = Math.Min(1 - before, sowing.Crop.Response / sowing.PotentialMm * missed[day]);
                before += part;
                Assert.Equal(part, sowing.Loss.On(day, missed[day], lost));
            }
        }
    });

    [Fact]
    public void Staged_AnyDaysMissed_LoseWhatTheStagesLoseTogetherAndNeverMoreThanAll() => Gen.Double[0, 60].Array[104].Sample(missed =>
    {
        foreach (SowingWater sowing in Staged.Sowings)
        {
            double[] lost = sowing.Loss.None();
            double[] byPeriod = new double[SowingLoss.MostPeriods];
            double all = 0;
            for (int day = 0; day < missed.Length; day++)
            {
                double part = sowing.Loss.On(day, missed[day], lost);
                Assert.InRange(part, 0, 1);
                all += part;
                byPeriod[sowing.Loss.PeriodOf(day)] += missed[day];
            }

            Assert.InRange(all, 0, 1 + 1e-9);
            Assert.Equal(YieldLoss.Together(lost), all, 1e-9);
            Assert.Equal(all, sowing.Loss.Of(byPeriod), 1e-9);
        }
    });

    [Fact]
    public void Season_WithoutWater_LosesTheProductOfItsStages()
    {
        double expected = Staged.Sowings.Sum(sowing => DryFarm.Worth(sowing, DryFarm.Morning)!.Value * LostBy(sowing, new(2025, 8, 1)));
        WaterSeason season = WaterSeason.Of(Staged, 2025, _ => new WaterLimit(0, null), DryFarm.Worth);

        Assert.Equal(expected, season.LostAtLimit!.Value, 1e-6);
        Assert.NotEqual(WaterSeason.Of(Unset, 2025, _ => new WaterLimit(0, null), DryFarm.Worth).LostAtLimit!.Value, expected, 1.0);
    }

    [Fact]
    public void Triage_ByStage_NeverWorseThanEvenlyAndMoreNeverCosts() =>
        Gen.Select(Gen.Double[0, 6000], Gen.Double[0, 2000], Gen.Int[1, 5])
            .Sample(
                (liters, more, days) =>
                {
                    WaterTriage triage = WaterTriage.Of(Staged, new WaterAtHand(DryFarm.Morning, days, liters, false), DryFarm.Worth);
                    Assert.True(triage.Lost <= triage.LostEvenly + 1e-9);
                    Assert.True(triage.SavedWith(liters + more) >= triage.SavedWith(liters) - 1e-6);
                    Assert.All(triage.Lines, line => Assert.InRange(line.Unwatered, 0, 400));
                }
            );

    [Fact]
    public void Assumed_OnlyWhileADayStillTakesTheSeasonsOfACropNoTableLists()
    {
        Assert.True(Unset.Sowings.Single(sowing => sowing.Planting.Crop.Name == "Basil").Crop.IsResponseAssumed);
        Assert.False(Staged.Sowings.Single(sowing => sowing.Planting.Crop.Name == "Basil").Crop.IsResponseAssumed);
    }

    // Straight from the rule, by the stage of each day, without SowingLoss.
    private static double LostBy(SowingWater sowing, DateOnly end)
    {
        WaterBalance balance = WaterBalance.Of(sowing, Staged.Log, sowing.Span.End);
        CropRow row = sowing.Planting.Crop.Row;
        decimal?[] own = [row.KyIni, row.KyDev, row.KyMid, row.KyLate];
        StageDays stages = sowing.Crop.Stages.Over(balance.Days.Count);
        int Stage(int day) => day + 1 <= stages.Initial ? 0 : day + 1 < stages.Initial + stages.Development ? 1
            : day + 1 <= stages.Initial + stages.Development + stages.Mid ? 2 : 3;
        double Sum(Func<int, bool> of, Func<int, double> what) =>
            Enumerable.Range(0, balance.Days.Count).Where(of).Sum(what);
        double Missed(int day) => sowing.Span.From.AddDays(day) < end ? balance.Missed(day) : 0;
        double Need(int day) => sowing.Need(sowing.Span.From.AddDays(day));
        IEnumerable<double> stagesLost = Enumerable.Range(0, 4).Where(stage => own[stage] is not null).Select(stage =>
            YieldLoss.Of((double)own[stage]!.Value, Sum(day => Stage(day) == stage, Missed), Sum(day => Stage(day) == stage, Need)));
        double others = YieldLoss.Of(sowing.Crop.Response, Sum(day => own[Stage(day)] is null, Missed), Sum(_ => true, Need));
        return YieldLoss.Together(stagesLost.Append(others));
    }

    // All four for tomatoes and basil (Ky of tomatoes as in the FAO program CROPWAT 4, second hand), one for potatoes, none for the rest.
    private static FarmBuilder WithStages()
    {
        FarmBuilder farm = DryFarm.With(5);
        (NumberColumn Column, decimal Value)[] stages =
            [(CropRow.KyIniColumn, 0.5m), (CropRow.KyDevColumn, 0.6m), (CropRow.KyMidColumn, 1.1m), (CropRow.KyLateColumn, 0.8m)];
        foreach (CropRow crop in farm.Tables.Crops)
        {
            foreach ((NumberColumn column, decimal value) in stages.Where((_, i) =>
                crop.Crop is "Tomatoes" or "Basil" || (crop.Crop == "Potatoes" && i == 2)))
            {
                farm.Set(crop, column, value);
            }
        }

        return farm;
    }
}
