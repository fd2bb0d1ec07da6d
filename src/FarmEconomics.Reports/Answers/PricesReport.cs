using FarmEconomics.Files;
using FarmEconomics.Pricing;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Pricing;

namespace FarmEconomics.Reports.Answers;

/// <summary>The blocks of the page on prices and shares.</summary>
public enum PricesBlock
{
    /// <summary>The finding.</summary>
    Headline,

    /// <summary>Everything else, by part.</summary>
    Details,
}

/// <summary>What may be asked of it.</summary>
public sealed record PricesParameters : ReportParameters
{
    /// <summary>The channel looked at.</summary>
    [Field("Channel looked at", "a market, stand or wholesale channel; empty = the one with the most sales", Choice = "channel with prices")]
    public string Channel { get; init; } = "";

    /// <summary>Wanted return per labor hour.</summary>
    [Field("Wanted return per labor hour", "0 = a quarter above what an hour cost this season", Unit = "money", Lowest = 0, Highest = 10000)]
    public decimal TargetPerHour { get; init; }

    /// <summary>Wanted net return in percent of the price.</summary>
    [Field("Wanted net return in percent of the price", "above 0 it counts instead of the return per hour", Unit = "%", Lowest = 0, Highest = 99)]
    public decimal TargetMargin { get; init; }

    /// <summary>Price step.</summary>
    [Field("Price step", "the steps your prices go in", Unit = "money", Lowest = 0.01, Highest = 100)]
    public decimal Step { get; init; } = 0.25m;

    /// <summary>Where goods move from.</summary>
    [Field("Goods move from", "empty = where an hour earned least", Choice = "selling channel")]
    public string MoveFrom { get; init; } = "";

    /// <summary>Where goods move to.</summary>
    [Field("Goods move to", "empty = where an hour earned most", Choice = "selling channel")]
    public string MoveTo { get; init; } = "";

    /// <summary>How much of each crop moves.</summary>
    [Field("How much of each crop moves", "in percent of what went through the first channel", Unit = "%", Lowest = 0.01, Highest = 100)]
    public decimal MovePercent { get; init; } = 20m;

    /// <summary>The price there, times.</summary>
    [Field("Price there, times", "0.9 = more goods there bring it down by a tenth", Lowest = 0.01, Highest = 100)]
    public decimal MovePrice { get; init; } = 1m;

    /// <summary>Members with a full box.</summary>
    [Field("Members with a full box", "the records don't hold it; 0 = not known", Lowest = 0, Highest = 100000)]
    public decimal Members { get; init; }

    /// <summary>Members with a half box.</summary>
    [Field("Members with a half box", "beside those with a full one", Lowest = 0, Highest = 100000)]
    public decimal HalfMembers { get; init; }

    /// <summary>The price of a full share.</summary>
    [Field("Price of a full share", "0 = worked out from income and members", Unit = "money", Lowest = 0, Highest = 100000)]
    public decimal SharePrice { get; init; }

    /// <summary>Wanted net return of the share.</summary>
    [Field("Wanted net return of the share", "in percent of its price", Unit = "%", Lowest = 0, Highest = 99)]
    public decimal ShareMargin { get; init; } = 10m;

    /// <summary>A plan of the boxes.</summary>
    [Field("Plan of the boxes", "a CSV file with what one full box is to hold (week, crop, quantity, unit); needs members; empty = none", Unit = "file")]
    public string Plan { get; init; } = "";
}

/// <summary>What to raise, what to keep, and the price of a share.</summary>
public sealed class PricesReport : Report<PricesParameters>
{
    /// <inheritdoc/>
    public override ReportId Id => ReportId.Prices;

    /// <inheritdoc/>
    public override string? Tab => "Prices and shares";

    /// <inheritdoc/>
    public override IReadOnlyList<Block> Make(ReviewedFarm farm, PricesParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(parameters);
        PriceTerms terms = new()
        {
            WantedPerHour = parameters.TargetPerHour > 0m ? parameters.TargetPerHour : null,
            WantedMarginPercent = parameters.TargetMargin > 0m ? parameters.TargetMargin : null,
            Step = parameters.Step,
        };
        PriceBook book = PriceBook.Of(farm.Review, farm.Season.CropYear, terms);
        PriceReport prices = PriceReport.Of(book, parameters.Channel);
        return
        [
            new HeadlineBlock(PricesBlock.Headline, "What each crop must sell for", prices.Answer(), SeasonWords.SureLine(farm)),
            .. Carried.Of(PricesBlock.Details, "prices", prices.Prices()),
            Carried.Fold(PricesBlock.Details, "detail", "Prices, crop by crop", ("figure", prices.Figure()), ("words", prices.FigureInWords()), ("units", prices.Units()), ("normal", prices.NormalYield()), ("months", prices.Months()), ("references", prices.References())),
            Carried.Fold(PricesBlock.Details, "channels", "The channels beside each other", ("table", PriceTables.Channels(book)),
                ("moves-words", prices.MovesInWords(parameters.MoveFrom, parameters.MoveTo, parameters.MovePercent, parameters.MovePrice)),
                ("moves", prices.Moves(parameters.MoveFrom, parameters.MoveTo, parameters.MovePercent, parameters.MovePrice))),
            Shares(book, parameters),
            Carried.Fold(PricesBlock.Details, "rests-on", "What these prices rest on", ("sure", PriceSentences.HowSure(book)), ("assumptions", PriceTables.Assumptions(book))),
        ];
    }

    /// <inheritdoc/>
    public override (string Question, Prose Answer)? InALine(ReviewedFarm farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        return ("What should I charge?", new Prose($"{farm.Season.Crops.Count(crop => crop.BreakEvenPrice.Value is { } even && crop.AveragePrice.Value < even)} crops sold below full cost."));
    }

    private static FoldBlock Shares(PriceBook book, PricesParameters parameters)
    {
        ShareTerms terms = new()
        {
            Members = parameters.Members > 0m ? parameters.Members : null,
            HalfMembers = parameters.HalfMembers,
            Price = parameters.SharePrice > 0m ? parameters.SharePrice : null,
            WantedMarginPercent = parameters.ShareMargin,
        };
        ShareReport shares = ShareReport.Of(book, terms);
        List<(string, object)> shown = [("answer", shares.Answer()), ("weeks", shares.Weeks()), ("weeks-words", shares.WeeksInWords()), ("price", shares.Price()), ("members", shares.Members()), ("week-table", shares.WeekTable()), ("crops", shares.CropTable())];
        if (parameters.Plan.Length > 0 && parameters.Members > 0m)
        {
            shown.Add(("planned", ShareReport.Planned(book, terms, SharePlanFile.Read(parameters.Plan), parameters.Members).Price()));
        }

        return Carried.Fold(PricesBlock.Details, "shares", "Shares", shown);
    }
}
