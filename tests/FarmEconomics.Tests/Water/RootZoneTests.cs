using CsCheck;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>What holds of the balance whatever the weather.</summary>
public class RootZoneTests
{
    private static readonly Gen<double[]> Depths = Gen.Double[0, 40].Array[1, 60];

    [Fact]
    public void Days_Always_WaterInIsUsedStoredOrDrained() =>
        Gen.Select(Depths, Gen.Double[5, 200], Gen.Double[0.1, 0.8], Gen.Double[0, 12]).Sample((water, total, readily, need) =>
    {
        double depletion = 0;
        foreach (double put in water)
        {
            RootZoneDay day = RootZone.Next(depletion, new SoilWater(total, readily), need, put / 2, put / 2);
            Assert.Equal(0, day.NotAccountedFor, 1e-9);
            Assert.InRange(day.After, 0, total + 1e-9);
            Assert.InRange(day.Used, 0, need + 1e-9);
            Assert.InRange(day.Stress, 0, 1);
            Assert.True(day.Drained == 0 || day.After == 0);
            depletion = day.After;
        }
    });

    [Fact]
    public void MoreWater_OnAnyDay_NeverMeansMoreMissed() => Gen.Select(Depths, Gen.Double[5, 200], Gen.Double[0, 30], Gen.Int[0, 59])
        .Sample((water, total, more, at) =>
    {
        double Missed(bool plus)
        {
            double depletion = 0;
            double missed = 0;
            for (int i = 0; i < water.Length; i++)
            {
                RootZoneDay day = RootZone.Next(depletion, new SoilWater(total, 0.4), 6, 0, (water[i] / 8)
                    + (plus && i == at % water.Length ? more : 0));
                missed += 6 - day.Used;
                depletion = day.After;
            }

            return missed;
        }

        Assert.True(Missed(true) <= Missed(false) + 1e-9);
    });

    [Fact]
    public void YieldLoss_Always_BetweenNothingAndAll() => Gen.Select(Gen.Double[0, 3], Gen.Double[0, 900], Gen.Double[0, 900])
        .Sample((ky, missed, potential) =>
        Assert.InRange(YieldLoss.Of(ky, missed, potential), 0, 1));

    [Fact]
    public void CropTable_WordsWithinOthers_FindTheRightCrop()
    {
        Assert.Equal("sweet potato", CropWaterTable.Find("Sweet potatoes").ListedAs);
        Assert.Equal("potato", CropWaterTable.Find("New Potatoes").ListedAs);
        Assert.Equal("tomato", CropWaterTable.Find("Cherry tomatoes").ListedAs);
        Assert.Equal("winter squash", CropWaterTable.Find("winter-squash").ListedAs);
        Assert.Equal("winter squash", CropWaterTable.Find("Butternut squash").ListedAs); // not the zucchini of its second word
        Assert.Equal("green onion", CropWaterTable.Find("Bunching onions").ListedAs);
        Assert.Null(CropWaterTable.Find("Peaches").ListedAs);
        Assert.Equal((1.0, WaterFigure.NotListed), (CropWaterTable.Find("Basil").Response, CropWaterTable.Find("Basil").ResponseFrom));
        Assert.Equal(WaterFigure.Similar, CropWaterTable.Find("Kale").ResponseFrom);
    }
}
