using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Losses;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>A crop's page in sentences and figures.</summary>
internal sealed class CropWords
{
    private readonly ReviewedFarm farm;
    private readonly EnterpriseBudget crop;
    private readonly Notation notation;
    private readonly Verdict verdict;
    private readonly List<Sowing> sowings;
    private readonly List<PickedPart> picked;

    internal CropWords(ReviewedFarm farm, EnterpriseBudget crop)
    {
        (this.farm, this.crop) = (farm, crop);
        notation = farm.Notation;
        verdict = farm.Verdicts.Crops.First(one => one.Budget == crop);
        sowings = [.. farm.Sowings.All.Where(sowing => sowing.Crop == crop)];
        picked = [.. farm.Picked.Parts.Where(part => part.Crop == crop.Crop)];
    }

    private string Unit => crop.Crop!.Unit;

    internal string Headline => crop.Known.NoFullNetReturn is { } ? crop.Known.Value is null
            ? $"{crop.Name} brought in {Money(crop.Output.Amount)}"
            : $"{crop.Name}: what it brought in isn't known yet"
        : crop.NetReturn.Amount >= 0m
            ? $"{crop.Name} left {Money(crop.NetReturn.Amount)} after every cost{Most()}"
            : $"{crop.Name} fell {BlockNumber.Size(crop.NetReturn.Amount, notation)} short of full cost";

    internal Prose Why => new(Prose.Text(string.Join(' ', new[] { Sold(), Paid() }.Where(sentence => sentence.Length > 0))));

    internal string HowSure
    {
        get
        {
            bool tells = CropOverYears.Tells(crop, farm.Season.Records.AsOf);
            int told = verdict.Seasons.Count(one => tells || one.CropYear != farm.Season.CropYear);
            string seasons =
                $"{(told == 0 ? "no season" : Phrase.Spelled(told, "season"))} and {Phrase.Spelled(sowings.Count, "sowing")} "
                + $"of {farm.Season.CropYear} are on record";
            return verdict.HoursByRule.Value is { } part
                ? $"How sure: {BlockNumber.Percent(part, notation)} of this crop's {notation.Number(crop.LaborHours.Value, Look.Count)} "
                    + $"hours were divided by rule; {seasons}."
                : $"How sure: {verdict.HoursByRule.Reason}; {seasons}.";
        }
    }

    internal FiguresBlock Figures => new(CropBlock.Figures,
    [
        new("brought-in", crop.Known.Value is null ? Money(crop.Output.Amount) : "", crop.Known.Value is null ? crop.Output.Amount : null,
            crop.Known.Value is { } why
                ? $"what it brought in isn't known: {why}"
                : notation.Text($"brought in by {UnitWords.Of(crop.Sums.Harvested, Unit, notation)}; "
                    + $"{notation.Number(crop.Sums.BedFeet.Value, Look.Count)} bed-feet")),
        Known("hour", crop.ReturnToLaborPerHour, "an hour earned, after all other costs", "what an hour earned isn't known"),
        Known(
            "break-even",
            crop.BreakEvenPrice,
            $"break-even price {UnitWords.Per(Unit)}"
                + $"{(crop.AveragePrice.Value is { } price ? $"; it sold for {BlockNumber.Of(price, Look.Rate, notation)}" : "")}",
            "the break-even price isn't known"),
        new("verdict", Title, Title, verdict.WhyUnknown ?? Means()),
    ]);

    internal string LossHeading
    {
        get
        {
            // What is on hand isn't sold or eaten either, and isn't lost: the heading names what its number is of.
            List<PickedPart> lost = picked.FindAll(part => PickedTree.IsLoss(part.Fate));
            decimal quantity = lost.Sum(part => part.Quantity);
            IEnumerable<string> fates = lost.GroupBy(part => part.Fate).OrderByDescending(fate => fate.Sum(part => part.Quantity))
                .Where(fate => fate.Sum(part => part.Quantity) > 0m).Select(fate => FateWords(fate.Key));
            return quantity == 0m
                ? "Nothing picked was lost"
                : notation.Text($"{UnitWords.Of(quantity, Unit, notation)} {Phrase.List([.. fates])}");
        }
    }

    internal Prose Losses
    {
        get
        {
            decimal all = picked.Sum(part => part.Quantity);
            List<string> said =
            [
                .. picked
                    .GroupBy(part => part.Fate)
                    .Where(fate => fate.Key != Fate.Sold)
                    .OrderByDescending(fate => fate.Sum(part => part.Quantity))
                    .Select(fate =>
                        notation.Text($"{UnitWords.Of(fate.Sum(part => part.Quantity), Unit, notation)} {FateWords(fate.Key)}")
                    ),
            ];
            decimal worth = picked.Where(part => PickedTree.IsLoss(part.Fate)).Sum(part => part.Value?.Amount ?? 0m);
            string lost = worth > 0m
                ? $" At the average price, after packing and fees, what was lost would have brought {Money(worth)}."
                : "";
            return new Prose(Prose.Text(all == 0m ? "Nothing was picked."
                : said.Count == 0 ? "All of it was sold."
                : $"{Phrase.Sentence(Phrase.List(said))}.{lost}"));
        }
    }

    internal string VerdictHeading => $"Verdict: {Title.ToLowerInvariant()}";

    internal string VerdictText => Prose.Text(verdict.WhyUnknown is { } why ? $"The records can't tell: {why}."
        : $"{Phrase.Sentence(DecisionSentences.Advice(verdict, farm.Settings))} {Phrase.Sentence(Whose().Trim())}: "
            + $"{MeansWords.Of(verdict.Advised, notation)}. {DecisionSentences.Needs(verdict, notation)}");

    private string Title => VerdictCards.Order.First(order => order.Direction == verdict.Direction).Title;

    private string Money(decimal amount) => BlockNumber.Of(amount, Look.WholeMoney, notation);

    private string Means()
    {
        decimal cash = verdict.Advised.Cash.Amount, hours = verdict.Advised.OwnHours;
        string time = notation.Number(Math.Abs(hours), Look.Count);
        string own = time == "0" ? "" : $" and {time} {Phrase.Noun(time, "own hour")} {(hours >= 0m ? "freed" : "more")}";
        return $"{BlockNumber.Size(cash, notation)} {(cash < 0m ? "less" : "more")} cash{own}{Whose()}";
    }

    private string Whose() =>
        verdict.Direction == Direction.Grow && verdict.More is not null ? " with more of it"
        : verdict.WithMix is not null ? " with other crops in its beds"
        : " without it";

    private KeyFigure Known(string name, Units.Result rate, string words, string unknown) => rate.Value is { } value
        ? new(name, BlockNumber.Of(value, Look.Rate, notation), value, words)
        : new(name, "", null, $"{unknown}: {rate.Reason}");

    private string Most()
    {
        // Beside a sowing that lost money, a part of what was left says little: what those that gained left is the measure.
        List<decimal> gains = [.. sowings.Select(sowing => sowing.Budget.NetReturn.Amount).Where(net => net > 0m)];
        decimal most = gains.DefaultIfEmpty(0m).Max();
        return sowings.Count > 1 && most * 2m > gains.Sum() && most <= crop.NetReturn.Amount ? ", most of it from one sowing" : "";
    }

    private string Sold() => (crop.AveragePrice.Value, crop.BreakEvenPrice.Value) switch
    {
        ({ } price, { } even) =>
            $"{SoldFor(price)}; full cost was {BlockNumber.Of(even, Look.Rate, notation)}.",
        ({ } price, null) => $"{SoldFor(price)}.",
        _ => "",
    };

    private string SoldFor(decimal price) =>
        $"{Phrase.Sentence(UnitWords.Per(Unit))} sold for {BlockNumber.Of(price, Look.Rate, notation)}";

    private string Paid()
    {
        int known = sowings.Count(sowing => sowing.Paid is not null),
            paid = sowings.Count(sowing => sowing.Paid == true);
        return known < 2 ? ""
            : paid == known ? $"{Phrase.Sentence(Phrase.AllOf(known))} sowings paid."
            : paid == 0 ? $"{(known == 2 ? "Neither" : "None")} of the {Phrase.Spelled(known)} sowings paid."
            : $"{Phrase.Sentence(Phrase.Spelled(paid))} of {Phrase.Spelled(known)} sowings paid.";
    }

    private static string FateWords(Fate fate) => fate switch
    {
        Fate.OnHand => "on hand",
        Fate.Eaten => "eaten at home",
        Fate.OtherUse => "used otherwise",
        Fate.GivenAway => "given away",
        Fate.ThrownOut => "thrown out",
        Fate.PastKeeping => "past keeping",
        Fate.Culled => "culled",
        _ => "sold",
    };
}
