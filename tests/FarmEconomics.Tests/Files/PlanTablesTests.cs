using FarmEconomics.Budgets;
using FarmEconomics.Files.Results;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Reports.Planning;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Planning;
using Xunit;

namespace FarmEconomics.Tests.Files;

/// <summary>The tables that a plan is written as.</summary>
public class PlanTablesTests
{
    /// <summary>
    /// A farm of the five tables alone: neither hours nor costs are on record. The tables that a plan writes leave them blank, as its page
    /// says that they aren't known; 100 carrots at 2 are known.
    /// </summary>
    [Fact]
    public void Tables_OfAPlan_LeaveBlankWhatIsNotKnown()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 15m }).AsOf("2025-12-31").Bed("A").Crop("Carrots")
            .Channel("Market", ChannelKind.Market)
            .Planting("C25", "Carrots", "A", 100m, "2025-05-01", "2025-07-31").Pick("2025-07-10", "C25", 100m)
            .Sell("2025-07-12", "Carrots", "Market", 100m, price: 2m);
        SeasonReview season = farm.Season(2025);
        PlanModel model = PlanByHandTests.ModelOf(farm);
        PlanDraft draft = LikeLastYear.Of(season, model);
        PlanOutlook outlook = PlanOutlook.Of(season, model, draft);
        string written = TestFolders.Make();
        PlanTables.Write(season.Settings, draft, outlook, PlanWords.Credit(outlook, season.Settings), written);
        Assert.Contains("2026-07-09,,,,,0.0000,,200.00", File.ReadAllLines(Path.Combine(written, "weeks.csv")));
        Assert.Equal("2026-04-30,Carrots,1,100.0000,0.0000,", File.ReadAllLines(Path.Combine(written, "supplies.csv"))[1]);
    }
}
