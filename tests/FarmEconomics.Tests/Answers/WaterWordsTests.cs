using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Supply;
using Xunit;

namespace FarmEconomics.Tests.Answers;

/// <summary>
/// What the page on water and power says of a small farm in meters: leaves stand in one bed of 10 m2 from July 10 to 13, need 8 mm a day of
/// a thin soil, and are picked on the last day. 80 liters a day would do, 20 are put on once.
/// </summary>
public class WaterWordsTests
{
    private const string Weather = "date,et0_mm\n2025-07-10,8\n2025-07-11,8\n2025-07-12,8\n2025-07-13,8\n";

    private static ReviewedFarm Farm(params (string Name, string Text)[] other)
    {
        Dictionary<string, string> files = new(StringComparer.Ordinal)
        {
            ["farm.csv"] = "setting,value\nas_of,2025-12-31\nlength_unit,m\ninterest_percent,5\nowner_wage,20\n",
            ["crops.csv"] = "crop,unit,kc_ini,kc_mid,kc_end,ky\nLeaves,kg,1,1,1,1\n",
            ["beds.csv"] = "bed,length_m,width_cm,block\nA1,10,100,A\n",
            ["plantings.csv"] = "planting,crop,bed,bed_meters,in_bed,out_of_bed\nL,Leaves,A1,10,2025-07-10,2025-07-14\n",
            ["harvests.csv"] = "date,planting,quantity\n2025-07-13,L,10\n",
            ["sales.csv"] = "date,crop,channel,quantity,unit_price\n2025-07-13,Leaves,Stall,10,20\n",
            ["channels.csv"] = "channel,kind\nStall,market\n",
            ["expenses.csv"] = "date,amount,category\n2025-06-01,10,supplies\n",
            ["labor.csv"] = "date,worker,hours,task\n2025-07-13,Ann,1,harvest\n",
            ["workers.csv"] = "worker,kind\nAnn,owner\n",
            ["blocks.csv"] = "block,soil_water_mm_m,efficiency_percent\nA,10,100\n",
            ["weather.csv"] = Weather,
            ["watering.csv"] = "date,block,liters\n2025-07-10,A,20\n",
            ["limits.csv"] = "limit,amount,unit\nwater,50,liters a day\n",
        };
        foreach ((string name, string text) in other)
        {
            files[name] = text;
        }

        return AnswerFarms.Of([.. files.Where(file => file.Value.Length > 0).Select(file => (file.Key, file.Value))]);
    }

    private static WaterWords Words(ReviewedFarm farm) => new(farm.Shorts.WaterAndPower);

    private static string Note(ReviewedFarm farm) => SupplyTables.Crops(farm.Shorts.WaterAndPower).ToPlainText();

    /// <summary>Twenty hours of picking at 20 for what brings 200: beds are as thirsty, and the limit costs nothing.</summary>
    [Fact]
    public void CropThatDoesntPayForItsPicking_NeedsItsWaterAllTheSame()
    {
        ReviewedFarm farm = Farm(("labor.csv", "date,worker,hours,task\n2025-07-13,Ann,20,harvest\n"));
        WaterWords words = Words(farm);
        Assert.True(farm.Shorts.WaterAndPower.Water!.Needed > 3 * 80);
        Assert.StartsWith("The limit cost nothing; as you watered, drought cost ", words.Headline, StringComparison.Ordinal);
        Assert.Contains("picking and selling it takes all that it brings", words.Why.ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("More yield of Leaves would have added nothing", Note(farm), StringComparison.Ordinal);
    }

    /// <summary>What stands for years grows next year's crop after its picking; the figures don't hold that, so it is said.</summary>
    [Fact]
    public void Perennial_AfterItsLastPicking_IsToldToBeWateredByEye()
    {
        const string Said = "No water is counted as needed after the last picking of Leaves";

        Assert.Contains(
            Said,
            Note(Farm(("crops.csv", "crop,unit,perennial,kc_ini,kc_mid,kc_end,ky\nLeaves,kg,yes,1,1,1,1\n"))),
            StringComparison.Ordinal);
        Assert.DoesNotContain(Said, Note(Farm()), StringComparison.Ordinal);
    }

    /// <summary>Without the books no crop's gain is known: no amount is told, least of all 0.</summary>
    [Fact]
    public void Drought_WithoutBudgets_CostsNobodyKnowsWhat()
    {
        ReviewedFarm farm = Farm(("expenses.csv", ""));
        WaterWords words = Words(farm);
        Assert.Equal("What drought cost is not known", words.Headline);
        Assert.Contains("no expense records", words.Why.ToPlainText(), StringComparison.Ordinal);
        Assert.DoesNotContain("0", words.Figures.Figures.Single(figure => figure.Name == "lost").Shown, StringComparison.Ordinal);
        Assert.StartsWith("Nothing can be said yet: ", words.ToDo.ToPlainText(), StringComparison.Ordinal);
        Assert.All(farm.Shorts.WaterAndPower.Water!.Weeks, week => Assert.Equal((null, null), (week.LostAtLimit, week.LostAsWatered)));
        Assert.All(farm.Shorts.WaterAndPower.WorthOfMore, worth => Assert.False(worth.Saved.IsAvailable));
    }

    /// <summary>Weather of another season says nothing of this one: its need is not 0, and drought didn't cost 0.</summary>
    [Fact]
    public void Season_WithoutADayOfWeather_IsUnknownAndSaysWhy()
    {
        ReviewedFarm farm = Farm(("weather.csv", Weather.Replace("2025", "2024", StringComparison.Ordinal)));
        WaterWords words = Words(farm);
        const string Why = "the weather table holds 2024-07-10 to 2024-07-13, no day of 2025";
        Assert.Null(farm.Shorts.WaterAndPower.Water);
        Assert.Equal("What is written about water and power is not enough to tell what it cost", words.Headline);
        Assert.StartsWith($"Water: {Why}.", words.Why.ToPlainText(), StringComparison.Ordinal);
        Assert.Contains(Why, words.ToDo.ToPlainText(), StringComparison.Ordinal);
        Assert.Contains(farm.Shorts.NotChecked, thing => thing is { Name: "water", Reason: Why });
        Assert.DoesNotContain(words.Figures.Figures, figure => figure.Name == "days-short");
    }

    /// <summary>A well that is dry is a limit: it is not left out as if there were as much water as wanted.</summary>
    [Fact]
    public void LimitOfNothing_IsALimit()
    {
        ReviewedFarm farm = Farm(("limits.csv", "limit,amount,unit\nwater,0,liters a day\n"));
        WaterWords words = Words(farm);
        Assert.Equal(3, farm.Shorts.WaterAndPower.Water!.DaysShort); // a soil dry the evening before lets nothing be taken up on the last
        Assert.Contains("the limit gives 0 liters.", words.Why.ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("In 1 week you put on more than limits.csv says there is", words.Why.ToPlainText(), StringComparison.Ordinal);
        Assert.Contains(farm.Shorts.NotChecked, thing => thing is { Name: "water", Reason: "its limit is 0" });
    }

    /// <summary>
    /// 320 liters were needed in the week: a limit of 400 on its four days is marked, one of four million would hide the bars.
    /// </summary>
    [Theory]
    [InlineData(100, true)]
    [InlineData(1000000, false)]
    public void Limit_IsMarkedWhereTheBarsCanBeSeenBesideIt(int liters, bool marked)
    {
        ReviewedFarm farm = Farm(("limits.csv", $"limit,amount,unit\nwater,{liters},liters a day\n"));
        Assert.Equal(marked, Words(farm).WeekBars.Mark is not null);
    }

    [Fact]
    public void OwnHoursWithoutAWage_AreSaidToCountForNothing()
    {
        ReviewedFarm farm = Farm(("farm.csv", "setting,value\nas_of,2025-12-31\nlength_unit,m\ninterest_percent,5\n"));
        Assert.Contains("Your own hours count for nothing in these amounts: no owner_wage", Note(farm), StringComparison.Ordinal);
        Assert.DoesNotContain("own hours", Note(Farm()), StringComparison.Ordinal);
    }

    /// <summary>Three days missing are unknown, and weather of the days after the last row is too.</summary>
    [Fact]
    public void DaysWithoutWeather_AreToldBesideTheNeed()
    {
        ReviewedFarm farm = Farm(
            ("plantings.csv", "planting,crop,bed,bed_meters,in_bed,out_of_bed\nL,Leaves,A1,10,2025-07-10,2025-07-24\n"),
            ("harvests.csv", "date,planting,quantity\n2025-07-23,L,10\n"),
            ("sales.csv", "date,crop,channel,quantity,unit_price\n2025-07-23,Leaves,Stall,10,20\n"),
            ("weather.csv", "date,et0_mm\n2025-07-10,8\n2025-07-11,8\n2025-07-15,8\n"));
        WaterWords words = Words(farm);
        Assert.EndsWith("; watering is written for every week; 3 days without weather count as watered full.", words.HowSure,
            StringComparison.Ordinal);
        Assert.EndsWith("The weather is written to Jul 15, 2025, with most of a sowing still to be picked: "
            + "nothing is told of the days after.", words.Why.ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("What the beds needed on 3 days without weather isn't in it.",
            SupplyTables.Weeks(farm.Shorts.WaterAndPower).ToPlainText(), StringComparison.Ordinal);
    }

    /// <summary>A station's figures of another season say nothing of this one's.</summary>
    [Fact]
    public void Sources_AreThoseOfTheSeason()
    {
        string rows = "date,et0_mm,tmin_c,tmax_c\n2024-07-10,8,,\n"
            + string.Concat(Enumerable.Range(10, 4).Select(day => $"2025-07-{day},,14,27\n"));
        ReviewedFarm farm = Farm(("weather.csv", rows),
            ("farm.csv", "setting,value\nas_of,2025-12-31\nlength_unit,m\ninterest_percent,5\nowner_wage,20\nlatitude,45\n"));
        Assert.StartsWith("Crop need from published tables and your temperatures;", Words(farm).HowSure, StringComparison.Ordinal);
    }

    /// <summary>Loads on the grid: nothing is said to be unknown of a battery there isn't.</summary>
    [Fact]
    public void Grid_IsNoBatteryOfUnknownSize()
    {
        ReviewedFarm farm = Farm(("pools.csv", "pool,basis,statement_line\ngrid,measured,infrastructure\n"),
            ("loads.csv", "load,pool,user,watts,hours_per_day,from,to\npump,grid,Leaves,500,2,2025-07-10,2025-07-13\n"));
        WaterWords words = Words(farm);
        Assert.Equal("No panels and no battery are written down", words.PowerHeading);
        Assert.Contains("on the page of shared costs", words.Power.ToPlainText(), StringComparison.Ordinal);
        Assert.DoesNotContain("neither", words.ToDo.ToPlainText(), StringComparison.Ordinal);
        Assert.DoesNotContain("without a reading", words.Method.ToPlainText(), StringComparison.Ordinal);
    }

    /// <summary>Readings of panels and a battery of unknown size: no balance, and no days said to be without a reading.</summary>
    [Fact]
    public void Readings_WithoutABalance_TellNoDaysWithout()
    {
        ReviewedFarm farm = Farm(("pools.csv", "pool,basis,statement_line\npanels,measured,infrastructure\n"),
            ("loads.csv", "load,pool,user,watts,hours_per_day,from,to\nfan,panels,Leaves,500,24,2025-07-31,2025-08-01\n"),
            ("power_made.csv", "date,pool,kwh\n2025-07-31,panels,4\n"));
        WaterWords words = Words(farm);
        Assert.Equal("Whether power was short is not known", words.PowerHeading);
        Assert.DoesNotContain("without a reading", words.Method.ToPlainText(), StringComparison.Ordinal);
    }

    /// <summary>
    /// 12 kWh wanted on each of the days, 4 made, a battery that gives 5 once: on two days sun and battery fell short, in two months alike.
    /// </summary>
    [Fact]
    public void Generator_IsToldAsWorkedOutAndAsLogged()
    {
        ReviewedFarm farm = Farm(("pools.csv", "pool,basis,statement_line\npanels,measured,infrastructure\n"),
            ("loads.csv", "load,pool,user,watts,hours_per_day,from,to\nfan,panels,Leaves,500,24,2025-07-31,2025-08-01\n"),
            ("power_made.csv", "date,pool,kwh,generator_hours\n2025-07-31,panels,4,9\n2025-08-01,panels,4,6\n"),
            ("farm.csv", "setting,value\nas_of,2025-12-31\nlength_unit,m\ninterest_percent,5\nowner_wage,20\npanel_kw,1\n"
                + "panel_yield,4;4;4;4;4;4;4;4;4;4;4;4\nbattery_kwh,10\nbattery_usable_percent,50\ngenerator_kw,2\n"));
        WaterWords words = Words(farm);

        // 12 - 4 - 5 and 12 - 4: 11 kWh at 2 kW are 5.5 hours; the log has 15.
        Assert.StartsWith("That left 11 kWh to the generator: 5.5 hours. By your log it ran 15 hours. ", words.Power.ToPlainText(),
            StringComparison.Ordinal);
        Assert.Equal("Sun and battery fell short on 2 days", words.PowerHeading);
        Assert.DoesNotContain("give way first", words.ToDo.ToPlainText(), StringComparison.Ordinal); // one load alone
        Assert.Contains("On 363 days without a reading in power_made.csv the panels count as making their month's yield",
            words.Method.ToPlainText(), StringComparison.Ordinal);
    }
}
