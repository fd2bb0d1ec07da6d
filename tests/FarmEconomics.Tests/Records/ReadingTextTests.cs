using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;
using Xunit;

namespace FarmEconomics.Tests.Records;

public class ReadingTextTests
{
    [Theory]
    [InlineData("2025-06-30", null, "2025-06-30")]
    [InlineData("2024-02-29", null, "2024-02-29")]
    [InlineData("2025-02-29", null, null)]
    [InlineData("2025-06-31", null, null)]
    [InlineData("2025-13-01", null, null)]
    [InlineData("2025-6-3", null, null)]
    [InlineData("20250630", null, null)]
    [InlineData("06/30/2025", null, null)]
    [InlineData("06/30/2025", "MM/DD/YYYY", "2025-06-30")]
    [InlineData("6/3/2025", "MM/DD/YYYY", "2025-06-03")]
    [InlineData("30/06/2025", "MM/DD/YYYY", null)]
    [InlineData("30.6.25", "d.m.yy", "2025-06-30")]
    [InlineData("3 Jun 2025", "d mmm yyyy", "2025-06-03")]
    [InlineData("2025-06-30", "MM/DD/YYYY", "2025-06-30")]
    public void DateText_Read_TakesIsoAndTheFarmsFormat(string text, string? format, string? expected)
    {
        string? normal = format is null ? null : DateText.NormalizeFormat(format);
        Assert.Equal(format is null, normal is null);

        bool read = DateText.TryRead(text, normal, out DateOnly date);

        Assert.Equal(expected is not null, read);
        Assert.Equal(expected, read ? $"{date:yyyy-MM-dd}" : null);
    }

    [Theory]
    [InlineData("")]
    [InlineData("m/yyyy")]
    [InlineData("dd/mm/yyyy hh:mm")]
    [InlineData("d/m/y/d")]
    [InlineData("european")]
    public void DateText_NormalizeFormat_RefusesWhatIsNoDate(string format) => Assert.Null(DateText.NormalizeFormat(format));

    [Theory]
    [InlineData("letuce", "lettuce")]
    [InlineData("LETTUCE ", "lettuce")]
    [InlineData("kael", "kale")]
    [InlineData("beets", "beet")]
    [InlineData("saturday market", "market")]
    [InlineData("zucchini", null)]
    public void NearestName_Find_GivesWhatWasProbablyMeant(string name, string? expected) =>
        Assert.Equal(expected, NearestName.Find(name, ["lettuce", "kale", "beet", "market"]));

    [Theory]
    [InlineData("Salad turnips, bunched", "Salad turnips")]
    [InlineData("salad greens 1/2 lb", "Salad")]
    [InlineData("turnips", "Salad turnips")]
    public void NearestName_SeveralHoldTheOther_IsTheOneAlikeInMostLetters(string name, string expected) =>
        Assert.Equal(expected, NearestName.Find(name, ["Salad", "White salad turnips", "Salad turnips"]));

    [Theory]
    [InlineData("Capital Recovery", OwnershipMethod.CapitalRecovery)]
    [InlineData("depreciation_and_interest", OwnershipMethod.DepreciationAndInterest)]
    public void Words_TryParse_IgnoresCaseSpacesAndHyphens(string text, OwnershipMethod expected)
    {
        Assert.True(Words.TryParse(text, out OwnershipMethod value));
        Assert.Equal(expected, value);
        Assert.False(Words.TryParse("1", out OwnershipMethod _));
    }

    [Fact]
    public void Basis_Allowed_IsReadBackAsItStands()
    {
        Assert.All(Basis.Allowed, word => Assert.Equal(word, Basis.Parse(word).ToString()));
        Assert.Equal("labor-hours:harvest", Basis.Parse("Labor Hours: Harvest").ToString());
        Assert.False(Basis.TryParse("bed-feet:harvest", out _));
    }

    private const string Months = "1; 1; 1,5; 2; 3; 4; 5; 4; 3; 2; 1; 1";

    private static MonthFigures TwelveMonths() => new([1m, 1m, 1.5m, 2m, 3m, 4m, 5m, 4m, 3m, 2m, 1m, 1m]);

    [Theory]
    [InlineData("1;2;3")]
    [InlineData("1;1;1;1;1;1;1;1;1;1;1;1;1")]
    [InlineData("1;1;1;1;1;1;1;1;1;1;1;x")]
    [InlineData("1;1;1;1;1;1;1;1;1;1;1;-1")]
    public void FarmSettings_MonthFigures_AreTwelve(string value)
    {
        FarmSettings settings = new();
        Assert.Same(settings, FarmSettingsReader.Apply(settings, "climate", value, out Problem? problem));
        Assert.Equal("E121", problem!.Code);
    }

    [Fact]
    public void FarmSettings_EverySetting_TakesAValueAndRefusesNonsense()
    {
        (string Name, string Value)[] values =
        [
            ("farm name", "Hill"), ("CURRENCY", "cad"), ("crop-year-start", "10-01"), ("owner_wage", "18.50"), ("payroll_burden_percent", "7.65"),
            ("interest_percent", "5"), ("standard_bed_width_in", "36"), ("closing_stock", "ignore"), ("ownership_method", "depreciation-and-interest"),
            ("idle_capacity", "spread"), ("as_of", "2025-12-31"), ("date_format", "DD/MM/YYYY"), ("decimal_mark", ","),
            ("length_unit", "m"), ("standard_bed_width_cm", "80"), ("unpaid_hours", "none"), ("hired_hours_can_be_cut", "no"), ("buy_in_percent", "120"),
            ("price_change_percent", "3"), ("latitude", "44,5"), ("altitude", "300"), ("climate", Months), ("panel_kw", "3"), ("panel_yield", Months),
            ("battery_kwh", "20"), ("battery_usable_percent", "60"), ("battery_efficiency_percent", "90"), ("generator_kw", "2,5"),
            ("generator_cost_per_kwh", "0,80"), ("land_value", "9000"), ("land_rent", "300"), ("land_area", "1,25"),
        ];
        var settings = new FarmSettings();
        foreach ((string name, string value) in values)
        {
            settings = FarmSettingsReader.Apply(settings, name, value, out Problem? problem);
            Assert.Null(problem);
        }

        Assert.Equal(FarmSettingsReader.Settings.Count, values.Length);
        Assert.Equal(
            new FarmSettings
            {
                FarmName = "Hill",
                Currency = "CAD",
                CropYearStartMonth = 10,
                CropYearStartDay = 1,
                OwnerWage = 18.5m,
                PayrollBurdenPercent = 7.65m,
                InterestPercent = 5m,
                StandardBedWidthIn = 80m,
                LengthUnit = LengthUnit.M,
                ClosingStock = ClosingStock.Ignore,
                OwnershipMethod = OwnershipMethod.DepreciationAndInterest,
                IdleCapacity = IdleCapacity.Spread,
                AsOf = new DateOnly(2025, 12, 31),
                DateFormat = "d/M/yyyy",
                DecimalMark = ',',
                UnpaidHours = UnpaidHours.None,
                HiredHoursCanBeCut = false,
                BuyInPercent = 120m,
                PriceChangePercent = 3m,
                LandValue = 9000m,
                LandRent = 300m,
                LandArea = 1.25m,
                Site = new FarmSite { Latitude = 44.5m, Altitude = 300m, Climate = TwelveMonths() },
                Supply = new PowerSupply
                {
                    PanelKw = 3m,
                    PanelYield = TwelveMonths(),
                    BatteryKwh = 20m,
                    BatteryUsablePercent = 60m,
                    BatteryEfficiencyPercent = 90m,
                    GeneratorKw = 2.5m,
                    GeneratorCostPerKwh = 0.8m,
                },
            },
            settings);
        foreach ((string name, _) in values.Skip(1))
        {
            Assert.Same(settings, FarmSettingsReader.Apply(settings, name, "nonsense", out Problem? problem));
            Assert.Equal("E121", problem!.Code);
        }
    }

    [Theory]
    [InlineData("crop_year_start", "02-29")]
    [InlineData("owner_wage", "-1")]
    [InlineData("interest_percent", "101")]
    [InlineData("standard_bed_width_in", "0")]
    public void FarmSettings_ValueOutOfRange_IsAnError(string name, string value)
    {
        FarmSettingsReader.Apply(new FarmSettings(), name, value, out Problem? problem);

        Assert.Equal("E121", problem!.Code);
    }
}
