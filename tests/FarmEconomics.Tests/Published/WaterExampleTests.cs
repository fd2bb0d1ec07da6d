using System.Text.Json;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Published;

/// <summary>Published figures of reference evapotranspiration, crop coefficients, the balance of the root zone and yield lost.</summary>
public class WaterExampleTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void ReferenceEt_FaoExamples_EveryStepAsPrinted(int place)
    {
        JsonElement example = Fixture.Load("Water/reference-et").List("cases").ElementAt(place);
        JsonElement given = example.GetProperty("inputs");
        JsonElement printed = example.GetProperty("published");
        (double high, double low, double altitude) = (given.Double("tmax_C"), given.Double("tmin_C"), given.Double("altitude_m"));
        Sky sky = ReferenceEt.SkyOf(given.Double("latitude_deg"), (int)given.Double("day_of_year"));
        double vapor = given.TryGetProperty("ea_kPa", out JsonElement told) ? told.GetDouble()
            : ReferenceEt.VaporOfHumidity(high, low, given.Double("rh_max_pct"), given.Double("rh_min_pct"));
        double wind = given.TryGetProperty("u2_m_s", out JsonElement low2) ? low2.GetDouble()
            : ReferenceEt.WindAt2M(given.Double("wind_10m_km_h") / 3.6, 10);
        double solar = ReferenceEt.SolarOfSunshine(given.Double("sunshine_hours"), sky);
        double soilHeat = given.TryGetProperty("tmonth_C", out JsonElement month)
            ? 0.14 * (month.GetDouble() - given.Double("tmonth_previous_C")) : 0;
        EtDay day = new(high, low, solar, vapor, wind);

        Near(printed, "Ra", sky.ExtraterrestrialMj, 0.03);
        Near(printed, "daylight_h", sky.DaylightHours, 0.02);
        Near(printed, "Rs", solar, 0.03);
        Near(printed, "Rso", ReferenceEt.ClearSky(sky, altitude), 0.03);
        Near(printed, "Rn", ReferenceEt.NetRadiation(day, sky, altitude), 0.03);
        Near(printed, "gamma_kPa_C", ReferenceEt.PsychrometricKpa(altitude), 0.0001);
        Near(printed, "pressure_kPa", ReferenceEt.PressureKpa(altitude), 0.06);
        Near(printed, "slope_kPa_C", ReferenceEt.SlopeKpa((high + low) / 2), 0.001);
        Near(printed, "es_kPa", ReferenceEt.MeanSaturationKpa(high, low), 0.006);
        Near(printed, "eto_mm_day", ReferenceEt.PenmanMonteith(day, sky, altitude, soilHeat), 0.006);
    }

    [Fact]
    public void ReferenceEt_DailyVectors_WithinTolerance()
    {
        JsonElement fixture = Fixture.Load("Water/daily-et");
        double altitude = fixture.Double("altitude_m");
        JsonElement[] rows = [.. fixture.List("rows")];
        Assert.Equal(24, rows.Length);
        foreach (JsonElement row in rows)
        {
            double[] of = [.. row.EnumerateArray().Skip(1).Select(cell => cell.GetDouble())];
            Sky sky = ReferenceEt.SkyOf(fixture.Double("latitude_deg"), (int)of[0]);
            EtDay day = new(of[1], of[2], of[3], ReferenceEt.SaturationKpa(of[5]),
                ReferenceEt.WindAt2M(of[4], fixture.Double("wind_height_m")));
            Assert.Equal(of[6], ReferenceEt.PenmanMonteith(day, sky, altitude), fixture.Double("tolerance_mm"));
        }
    }

    [Fact]
    public void KcCurve_FaoExample28_OnSingleDays()
    {
        JsonElement example = Fixture.Load("Water/kc-curve").List("cases").ElementAt(1);
        JsonElement given = example.GetProperty("inputs");
        double[] stages = [.. given.List("stage_days").Select(days => days.GetDouble())];
        CropCurve curve = new(new(given.Double("kc_ini"), given.Double("kc_mid"), given.Double("kc_end")),
            new(stages[0], stages[1], stages[2], stages[3]));
        foreach (JsonProperty day in example.GetProperty("published").EnumerateObject())
        {
            Assert.Equal(day.Value.GetDouble(), curve.On(int.Parse(day.Name)), example.Double("tolerance"));
        }
    }

    [Fact]
    public void KcForClimate_FaoExample27AndBox15_AsPrinted()
    {
        JsonElement[] cases = [.. Fixture.Load("Water/kc-curve").List("cases")];
        foreach (JsonElement place in cases[0].List("cases"))
        {
            Assert.Equal(place.Double("published_kc_mid"), CropCoefficients.ForClimate(
                place.Double("kc_table"), place.Double("height_m"), place.Double("u2_m_s"), place.Double("rh_min_pct")), 0.006);
        }

        JsonElement bean = cases[2].GetProperty("inputs");
        JsonElement printed = cases[2].GetProperty("published");
        double Moved(string table) =>
            CropCoefficients.ForClimate(bean.Double(table), bean.Double("height_m"), bean.Double("u2_m_s"), bean.Double("rh_min_pct"));
        Assert.Equal(printed.Double("kc_mid"), Moved("kc_mid_table"), 0.006);
        Assert.Equal(printed.Double("kc_end"), Moved("kc_end_table"), 1e-12);
    }

    [Fact]
    public void RootZone_FaoExample36_TotalAndReadilyAvailable()
    {
        JsonElement example = Fixture.Load("Water/root-zone").List("cases").First();
        JsonElement[] soils = [.. example.List("soils")];
        foreach (JsonElement crop in example.List("crops"))
        {
            double[] total = [.. example.GetProperty("published_taw_mm").List(crop.Text("name")).Select(cell => cell.GetDouble())];
            double[] readily = [.. example.GetProperty("published_raw_mm").List(crop.Text("name")).Select(cell => cell.GetDouble())];
            for (int i = 0; i < soils.Length; i++)
            {
                SoilWater soil = new(1000 * (soils[i].Double("fc") - soils[i].Double("wp")) * crop.Double("zr_m"), crop.Double("p"));
                Assert.Equal(total[i], soil.Total, example.Double("tolerance_mm"));
                Assert.Equal(readily[i], soil.ReadilyMm, example.Double("tolerance_mm"));
            }
        }
    }

    [Fact]
    public void RootZone_FaoExample37_TenDryDaysOfTomato()
    {
        JsonElement example = Fixture.Load("Water/root-zone").List("cases").ElementAt(1);
        JsonElement given = example.GetProperty("inputs");
        JsonElement tolerance = example.GetProperty("tolerance");
        SoilWater soil = new(1000 * (given.Double("fc") - given.Double("wp")) * given.Double("zr_m"), given.Double("p"));
        double depletion = given.Double("dr_start_mm");
        double used = 0;
        foreach (JsonElement row in example.GetProperty("published").List("rows"))
        {
            double[] of = [.. row.EnumerateArray().Select(cell => cell.GetDouble())];
            RootZoneDay day = RootZone.Next(depletion, soil, given.Double("eto_mm_day") * given.Double("kc"), 0, 0);
            Assert.Equal(of[2], day.Stress, tolerance.Double("ks"));
            Assert.Equal(of[3], day.Used, tolerance.Double("etc_adj"));
            Assert.Equal(of[4], day.After, tolerance.Double("dr"));
            (depletion, used) = (day.After, used + day.Used);
        }

        JsonElement chain = Fixture.Load("Water/root-zone").List("cases").ElementAt(2);
        Assert.Equal(chain.GetProperty("computed").Double("yield_loss_fraction"),
            YieldLoss.Of(chain.GetProperty("inputs").Double("ky_tomato"), 60 - used, 60), 0.0005);
    }

    [Fact]
    public void RootZone_CornSeasonAtGreeley_DayByDay()
    {
        JsonElement fixture = Fixture.Load("Water/corn-greeley");
        JsonElement[] rows = [.. fixture.List("rows")];
        Assert.Equal(171, rows.Length);
        double depletion = 0;
        foreach (JsonElement row in rows)
        {
            double[] of = [.. row.EnumerateArray().Skip(1).Select(cell => cell.GetDouble())];
            double stress = RootZone.Stress(depletion, of[0], of[1]);
            RootZoneDay day = RootZone.Next(depletion, of[0], stress, of[3], of[4] + of[5]);
            Assert.Equal(of[2], stress, fixture.Double("tolerance_ks"));
            Assert.Equal(of[6], day.Drained, fixture.Double("tolerance_mm") + 0.001);
            Assert.Equal(of[7], day.After, fixture.Double("tolerance_mm") + 0.001);
            Assert.Equal(0, day.NotAccountedFor, 1e-9);
            depletion = of[7];
        }
    }

    [Fact]
    public void RootZone_CheckbookInInches_DeficitsAsPrinted()
    {
        JsonElement fixture = Fixture.Load("Water/checkbook");
        double deficit = 0;
        foreach (JsonElement row in fixture.List("rows"))
        {
            double[] of = [.. row.EnumerateArray().Skip(1).Select(cell => cell.GetDouble())];
            deficit = RootZone.Next(deficit, 100, 1, of[0], of[1]).After;
            Assert.Equal(of[2], deficit, fixture.Double("tolerance_in"));
        }
    }

    [Fact]
    public void YieldLoss_Examples_NeverMoreThanAll()
    {
        foreach (JsonElement example in Fixture.Load("Water/yield-loss").List("cases"))
        {
            JsonElement given = example.GetProperty("inputs");
            JsonElement answer = example.TryGetProperty("published", out JsonElement published) ? published
                : example.GetProperty("computed");
            double lost = given.TryGetProperty("ky", out JsonElement stages)
                ? YieldLoss.Together(stages.EnumerateArray()
                    .Select((ky, i) => YieldLoss.Of(ky.GetDouble(), given.List("deficit_fraction").ElementAt(i).GetDouble(), 1)))
                : given.TryGetProperty("ky_season", out JsonElement season)
                    ? YieldLoss.Of(season.GetDouble(), given.Double("etc_mm") - given.Double("eta_mm"), given.Double("etc_mm"))
                    : YieldLoss.Of(given.Double("ky_flowering"), given.Double("deficit_fraction"), 1);
            Assert.Equal(answer.TryGetProperty("relative_yield", out JsonElement left) ? 1 - left.GetDouble()
                : answer.Double("loss_fraction"), lost, 1e-9);
        }
    }

    [Fact]
    public void CropTable_EveryListedCrop_IsThePublishedRow()
    {
        JsonElement fixture = Fixture.Load("Water/crop-figures");
        Dictionary<string, double[]> published = fixture.List("rows")
            .ToDictionary(row => Key(row[0].GetString()!), row => row.EnumerateArray().Skip(1).Select(cell => cell.GetDouble()).ToArray());
        foreach ((_, CropWater row) in CropWaterTable.All)
        {
            double[] of = published[Key(row.ListedAs!)];
            Assert.Equal((of[0], of[1]), (row.Coefficients.Initial, row.Coefficients.Mid));
            Assert.InRange(row.Coefficients.End, of[2], of[3]);
            Assert.Equal((of[4], of[6]), (row.RootDepthM, row.Readily));
        }

        Dictionary<string, double> ky = fixture.List("ky").ToDictionary(row => row[0].GetString()!, row => row[1].GetDouble());
        (string Crop, string Listed)[] same = [("Cabbage", "Cabbage"), ("Onions", "Onion"), ("Peppers", "Pepper"), ("Potatoes", "Potato"),
            ("Tomatoes", "Tomato"), ("Watermelon", "Watermelon"), ("Snap beans", "Beans"), ("Snap peas", "Peas"), ("Sweet corn", "Maize")];
        Assert.All(same, crop => Assert.Equal((ky[crop.Listed], WaterFigure.Published),
            (CropWaterTable.Find(crop.Crop).Response, CropWaterTable.Find(crop.Crop).ResponseFrom)));
    }

    /// <summary>Each crop's four stages are one row of the table, its own or that of the crop named as its nearest.</summary>
    [Fact]
    public void StageLengths_OfEveryListedCrop_AreAPublishedRow()
    {
        JsonElement fixture = Fixture.Load("Water/stage-lengths");
        Dictionary<string, string> nearest = fixture.GetProperty("nearest").List("rows")
            .ToDictionary(row => row[0].GetString()!, row => row[1].GetString()!, StringComparer.OrdinalIgnoreCase);
        foreach ((_, CropWater row) in CropWaterTable.All)
        {
            string crop = Key(row.ListedAs!);
            string of = nearest.GetValueOrDefault(crop, crop);
            StageDays stages = row.Stages;
            Assert.Contains(fixture.List("rows"), one => of.Equals(one[0].GetString(), StringComparison.OrdinalIgnoreCase)
                && stages.Initial >= one[1].GetDouble() && stages.Initial <= one[2].GetDouble() && stages.Development == one[3].GetDouble()
                && stages.Mid >= one[4].GetDouble() && stages.Mid <= one[5].GetDouble() && stages.Late == one[6].GetDouble());
        }
    }

    private static string Key(string crop) => crop switch
    {
        "dry onion" => "onion, dry",
        "green onion" => "onion, green",
        "sweet corn" => "sweet corn, fresh",
        "sweet pepper" => "pepper, sweet (bell)",
        "sweet melon" => "melon, sweet",
        "cucumber" => "cucumber, fresh market",
        "winter squash" => "pumpkin, winter squash",
        "zucchini" => "squash, zucchini",
        "table beet" => "beet, table",
        "green bean" => "bean, green",
        "fresh pea" => "pea, fresh",
        _ => crop.ToLowerInvariant(),
    };

    private static void Near(JsonElement printed, string name, double actual, double tolerance)
    {
        if (printed.TryGetProperty(name, out JsonElement expected))
        {
            Assert.True(Math.Abs(expected.GetDouble() - actual) <= tolerance,
                $"{name}: {expected.GetDouble()} printed, {actual} worked out");
        }
    }
}
