using System.Text.RegularExpressions;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Shared;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Reports.Plots;

public class PlotTests
{
    private static IEnumerable<Figure> All(SeasonReview season, FarmReview review) => [FlowPicture.Of(season), .. All(season, review, false)];

    private static IEnumerable<Figure> All(SeasonReview season, FarmReview review, bool onPhone)
    {
        yield return SeasonPlots.HoursByStage(season, onPhone);
        yield return MarginScatter.Of(season, onPhone);
        yield return BedYear.Of(season, onPhone);
        yield return RecordsPlots.HoursByMonth(season, onPhone);
        yield return SharedPlots.OwnershipAgainstRunning(season, onPhone);
        yield return SharedPlots.PowerByMonth(season, onPhone);
        yield return ChoicePlot.Of(SharedTables.Methods(review, season.CropYear), onPhone);
        foreach (string place in BedMap.Places(season))
        {
            yield return BedMap.Of(season, place, onPhone);
        }

        Verdicts verdicts = Verdicts.Of(review, SeasonCosts.Of(season));
        yield return DecisionPlots.Distributions(verdicts, onPhone);
        yield return DecisionPlots.Swings(SeasonCosts.Of(season).Model(season.Farm), season.Notation, onPhone: onPhone);
    }

    [Fact]
    public void EveryFigure_OfEveryDemoYear_HasTitleWordsAndFitsHalfAPage()
    {
        foreach (int year in DemoSeason.Review.CropYears)
        {
            foreach (Figure figure in All(DemoSeason.Review.Season(year), DemoSeason.Review))
            {
                Assert.InRange(figure.Height, 60, 500);
                Assert.InRange(figure.Width, 600, 900);
                Assert.True(figure.Title.Length is > 10 and < 140, figure.Title);
                Assert.True(figure.Alt.Length > 20, figure.Alt);
            }
        }
    }

    /// <summary>Seven users of power had the first one's color again for "others".</summary>
    [Fact]
    public void PowerByMonth_OfManyUsers_HasAColorForEachName()
    {
        string svg = SharedPlots.PowerByMonth(DemoSeason.Latest).Svg();
        Assert.Contains(">others<", svg, StringComparison.Ordinal);
        string[] keys = [.. Enumerable.Range(0, Palette.Count).Select(i => Palette.Of(i).ToHex())];
        Assert.Equal(keys.Length, keys.Distinct().Count());
        Assert.Equal(Palette.Count, Regex.Count(svg, ">(household|cold room|tray room|pellet boiler|seedling house|others)<"));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void EveryFigure_OfTheLatestYear_CutsNoWordAtItsEdges(bool onPhone)
    {
        foreach (Figure figure in All(DemoSeason.Latest, DemoSeason.Review, onPhone))
        {
            AssertNothingCut(figure);
        }
    }

    /// <summary>Names longer than their place are cut themselves, and leave the drawing its room: no bar or range goes without.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void FiguresByCrop_OfLongNames_LeaveRoomAndCutNoWordAtTheirEdges(bool onPhone)
    {
        const string Long = "Winter storage carrots, rainbow mix of the four colors";
        FarmReview review = new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31").Bed("A").Bed("B")
            .Channel("Market", ChannelKind.Market).Worker("me", WorkerKind.Owner).Task("hoe", Stage.Grow).Crop(Long).Crop("Kale")
            .Planting("L", Long, "A", 50, "2025-05-01", "2025-09-01").Planting("K", "Kale", "B", 50, "2025-06-01", "2025-09-01")
            .Pick("2025-07-01", "L", 40).Pick("2025-08-01", "K", 30)
            .Sell("2025-07-01", Long, "Market", 40, price: 3m).Sell("2025-08-01", "Kale", "Market", 30, price: 4m)
            .Work("2025-07-01", "me", 4, "hoe").Spend("2025-06-01", 60, "rent").Review();
        SeasonReview season = review.Season(2025);
        Verdicts verdicts = Verdicts.Of(review, SeasonCosts.Of(season));
        ChangeAnswer answer = new ChangeJudge(SeasonCosts.Of(season)).Judge(new Change(ChangeKind.Drop, Long));
        Figure[] figures =
        [
            SeasonPlots.HoursByStage(season, onPhone),
            DecisionPlots.Distributions(verdicts, onPhone),
            DecisionPlots.BeforeAndAfter(answer, season.Notation, onPhone: onPhone),
        ];
        foreach (Figure figure in figures)
        {
            AssertNothingCut(figure);
            double end = figure.Plot.GetPlottables<ScottPlot.Plottables.Text>()
                .Where(text => text.LabelText.StartsWith("Winter", StringComparison.Ordinal)).Max(text => text.Location.X);
            Assert.InRange(end, 50, figure.Width * 0.55);
        }
    }

    private static void AssertNothingCut(Figure figure) =>
        Assert.All(figure.Plot.GetPlottables<ScottPlot.Plottables.Text>().Where(text => text.LabelRotation == 0), text =>
        {
            double width = Canvas.TextWidth(text.LabelText, text.LabelFontSize);
            double left = text.Location.X - (text.LabelAlignment switch
            {
                ScottPlot.Alignment.MiddleRight => width,
                ScottPlot.Alignment.MiddleCenter => width / 2,
                _ => 0,
            });
            Assert.True(
                left >= -1 && left + width <= figure.Width + 1,
                $"'{text.LabelText}' of '{figure.Title}' goes from {left:0} to {left + width:0}");
        });

    [Fact]
    public void Bars_AllZero_HaveFewTicks()
    {
        Canvas canvas = new("Nothing in any bar of these two", 900, 200);
        new BarColumns(canvas, [new BarItem("a", [0], "0"), new BarItem("b", [0], "0")], [Palette.Dark], 20).Draw(1, "hours", value => value.ToString("0.#"));
        Assert.InRange(canvas.ToFigure("Two bars without any length.").Plot.GetPlottables().Count(), 1, 60);
    }

    [Theory]
    [InlineData(0, 1, 1e-9)]
    [InlineData(1e17, 1e17, 1)]
    [InlineData(-1e12, 1e12, 1e-3)]
    public void Ticks_StepTinyBesideTheRange_AreFew(double min, double max, double step) =>
        Assert.InRange(new Scale(min, max, 0, 100).TicksBy(step).Count(), 0, 100);

    [Fact]
    public void EveryFigure_OfTheLatestYear_CanBeDrawn()
    {
        foreach (Figure figure in All(DemoSeason.Latest, DemoSeason.Review))
        {
            Assert.StartsWith("<svg ", figure.Svg(), StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", figure.Svg(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void BareRecords_WithoutCostsAndHours_SayWhatIsNotAvailable()
    {
        FarmReview review = Bare().Review();
        SeasonReview season = review.Season(2025);
        foreach (Figure figure in All(season, review))
        {
            Assert.DoesNotContain("NaN", figure.Svg(), StringComparison.Ordinal);
        }

        Assert.Contains("not available", SeasonPlots.HoursByStage(season).Alt, StringComparison.Ordinal);
        Assert.Contains("not available", MarginScatter.Of(season).Alt, StringComparison.Ordinal);
    }

    [Fact]
    public void Labels_PlacedAroundACrowd_NeverOverlap()
    {
        Random random = new(7);
        LabelPlacer placer = new(0, 0, 400, 300);
        List<(double X, double Y, double W)> placed = [];
        for (int i = 0; i < 80; i++)
        {
            double width = 20 + (random.NextDouble() * 60);
            if (placer.Place(random.NextDouble() * 400, random.NextDouble() * 300, width) is { } place)
            {
                placed.Add((place.X, place.Y, width));
            }
        }

        Assert.True(placed.Count > 20);
        Assert.All(placed.Index(), a => Assert.All(placed.Index().Where(b => b.Index > a.Index), b =>
            Assert.False(a.Item.X < b.Item.X + b.Item.W && b.Item.X < a.Item.X + a.Item.W && Math.Abs(a.Item.Y - b.Item.Y) < 14)));
    }

    [Fact]
    public void Flow_OfInfrastructure_LosesNoCent()
    {
        SeasonReview season = DemoSeason.Latest;
        List<PoolResult> origins = season.Pools.Where(pool => pool.Total.Amount > 0m).ToList();
        double flows = FlowPicture.Flows(season, origins).Sum(flow => flow.Amount);
        Close.To(origins.Sum(pool => pool.Total.Amount), (decimal)flows, 1m);
    }

    internal static FarmBuilder Bare() => new FarmBuilder().AsOf("2025-12-31").Crop("Kale", "bunch").Crop("Beans").Bed("A").Bed("B")
        .Planting("Kale 1", "Kale", "A", 50, "2025-05-01", "2025-09-01").Planting("Beans 1", "Beans", "B", 50, "2025-06-01", "2025-09-01")
        .Pick("2025-07-01", "Kale 1", 40).Pick("2025-08-01", "Beans 1", 30)
        .Sell("2025-07-01", "Kale", "Market", 40, price: 3m).Sell("2025-08-01", "Beans", "Market", 30, price: 4m);
}
