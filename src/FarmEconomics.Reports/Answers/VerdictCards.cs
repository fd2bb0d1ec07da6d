using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>What to do next season: a card per verdict, with its crops, and the cash and own hours in it.</summary>
internal static class VerdictCards
{
    private const int Named = 3;

    /// <summary>The verdicts in the order of the page, losses first.</summary>
    internal static readonly (Direction Direction, string Title, CardTone Tone, string Words)[] Order =
    [
        (Direction.DropOrChange, "Drop or change", CardTone.Loss, "the farm is better off without it, or with other crops in its beds"),
        (Direction.TooClose, "Too close to call", CardTone.Pale, "the difference is smaller than the records can tell"),
        (Direction.Fix, "Fix", CardTone.Third, "short of full cost, but the farm is better off with it"),
        (Direction.Keep, "Keep", CardTone.Soft, "pays every cost"),
        (Direction.Grow, "Grow", CardTone.Gain, "more of it clearly adds to the farm"),
        (Direction.Unknown, "Can't tell", CardTone.Pale, "the records don't say enough"),
    ];

    /// <summary>What a verdict means for these crops: one short of full cost may be no gain for the farm either.</summary>
    internal static (string Title, string Words) Said(Direction direction, IEnumerable<Verdict> crops)
    {
        (_, string title, _, string words) = Order.First(order => order.Direction == direction);
        return (title, direction == Direction.Fix && crops.Any(verdict => verdict.Mean.Amount < 0m)
            ? "short of full cost, but not clearly worth dropping" : words);
    }

    internal static CardsBlock Of(ReviewedFarm farm) => new(SeasonBlock.ToDo, "What to do next season",
        [.. Order.Select(order => Card(farm, order.Direction, order.Title, order.Tone)).OfType<Card>()]);

    /// <summary>The verdicts of one direction, what they move most first.</summary>
    internal static List<Verdict> Of(Verdicts verdicts, Direction direction) =>
        [
            .. verdicts
                .Crops.Where(verdict => verdict.Direction == direction)
                .OrderByDescending(verdict => direction == Direction.Unknown ? 0m : Math.Abs(verdict.Advised.Net.Amount)),
        ];

    private static Card? Card(ReviewedFarm farm, Direction direction, string title, CardTone tone)
    {
        List<Verdict> crops = Of(farm.Verdicts, direction);
        if (crops.Count == 0)
        {
            return null;
        }

        string names = string.Join(
            ", ",
            crops
                .Take(crops.Count == Named + 1 ? Named + 1 : Named)
                .Select(verdict => PageTarget.Link(verdict.Budget.Name, PageTarget.Crop(farm.Slugs[verdict.Budget.Name])))
        );
        string more = crops.Count > Named + 1 ? $" and {crops.Count - Named} more" : "";
        return new Card(
            BlockKey.Kebab(direction.ToString()),
            $"{title}: {crops.Count}",
            tone,
            [new Prose($"{names}{more}.{Why(direction, crops)}"), .. Means(farm.Notation, direction, crops)]
        );
    }

    private static string Why(Direction direction, List<Verdict> crops) =>
        direction switch
        {
            Direction.DropOrChange when crops.TrueForAll(verdict => verdict.BetterMix is not null) =>
                " Other crops in their beds would add more.",
            Direction.Fix => $" {(crops.Count == 1 ? "It" : "They")} fell short.",
            Direction.Unknown => $" {Phrase.Sentence(Prose.Text(crops[0].WhyUnknown))}.",
            _ => "",
        };

    private static IEnumerable<Prose> Means(Notation notation, Direction direction, List<Verdict> crops)
    {
        if (direction == Direction.Unknown)
        {
            yield break;
        }

        // What crops in the place of others bring stands with those they replace: counted here it would be counted twice.
        List<Verdict> own = direction == Direction.Grow ? crops.FindAll(verdict => verdict.More is not null) : crops;
        int instead = crops.Count - own.Count;
        decimal cash = own.Sum(verdict => verdict.Advised.Cash.Amount);
        decimal hours = own.Sum(verdict => verdict.Advised.OwnHours);
        if (instead > 0)
        {
            yield return new Prose($"{Phrase.Sentence(Phrase.Spelled(instead))} in the beds of crops that go.");
        }

        if (own.Count == 0)
        {
            yield break;
        }

        string size = BlockNumber.Size(cash, notation), time = notation.Number(Math.Abs(hours), Look.Count);
        bool withOthers = direction == Direction.DropOrChange && crops.Exists(verdict => verdict.WithMix is not null);
        string ownHours = Phrase.Noun(time, "own hour");
        bool several = own.Count > 1;
        string how = !withOthers ? $"Without {(several ? "them" : "it")}:" : crops.Count > 1 ? "One by one that brings" : "That brings";
        yield return new Prose(direction switch
        {
            Direction.Keep => $"{(several ? "They bring" : "It brings")} **{size}** {(cash <= 0m ? "cash" : "less cash")} "
                + $"for **{time}** {ownHours}.",
            Direction.Grow => $"{(instead > 0 ? "The rest" : "That brings")}: **{size}** {(cash < 0m ? "less" : "more")} cash, "
                + $"**{time}** {(hours > 0m ? $"{ownHours} freed" : $"more {ownHours}")}.",
            _ => $"{how} **{size} {(cash < 0m ? "less" : "more")}** cash, "
                + $"**{time}** {(hours >= 0m ? $"{ownHours} freed" : $"more {ownHours}")}.",
        });
    }
}
