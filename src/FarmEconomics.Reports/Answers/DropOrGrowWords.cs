using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The first screen on what to drop and what to grow.</summary>
internal sealed class DropOrGrowWords(ReviewedFarm farm, Verdicts verdicts)
{
    private readonly Notation notation = farm.Notation;

    private List<Verdict> Drop => VerdictCards.Of(verdicts, Direction.DropOrChange);

    private List<Verdict> Grow => VerdictCards.Of(verdicts, Direction.Grow);

    private List<Verdict> Fix => VerdictCards.Of(verdicts, Direction.Fix);

    private List<Verdict> Close => VerdictCards.Of(verdicts, Direction.TooClose);

    internal string Headline
    {
        get
        {
            List<string> said = [];
            int unknown = verdicts.Crops.Count(verdict => verdict.WhyUnknown is not null);
            Say(Drop, "Drop or change");
            Say(Grow, "grow");
            Say(Fix, "fix");
            return said.Count > 0 ? Phrase.Sentence(string.Join("; ", said))
                : Close.Count > 0 ? $"Nothing to drop or grow; {Crops(Close.Count)} too close to call"
                : unknown == verdicts.Crops.Count ? "The records can't tell yet what to drop or grow"
                : unknown > 0 ? $"Keep {Crops(verdicts.Crops.Count - unknown)}; of {Phrase.Spelled(unknown)} the records can't tell yet"
                : verdicts.Crops.Count == 1 ? $"Keep {verdicts.Crops[0].Budget.Name} as it is"
                : "Keep all crops as they are";

            void Say(List<Verdict> crops, string what)
            {
                if (crops.Count > 0)
                {
                    string which = crops.Count > 2 && said.Count > 0 ? Phrase.Spelled(crops.Count) : NamesOrCount(crops);
                    said.Add($"{what} {which}");
                }
            }
        }
    }

    internal Prose Why
    {
        get
        {
            if (
                verdicts.Crops.FirstOrDefault(verdict => verdict.WhyUnknown is not null) is { } unknown
                && verdicts.Crops.All(verdict => verdict.WhyUnknown is not null)
            )
            {
                return new Prose(Prose.Text($"{Phrase.Sentence(unknown.WhyUnknown!)}."));
            }

            List<Verdict> always = Drop.FindAll(verdict =>
                verdict.Seasons.Count > 1 && verdict.Seasons.All(season => season.Contribution.Amount < 0m)
            );
            List<Verdict> changed = Drop.FindAll(verdict => verdict.WithMix is not null);
            string lost = always.Count == 0
                ? ""
                : $"Without {Few(always)} the farm would have been better off in every year on record: "
                    + $"members' payments stay, and only costs that go away count. ";
            string other = changed.Count == 0
                ? ""
                : $"In the beds of {(changed.Count <= 3 ? Phrase.List(changed.ConvertAll(Link)) : Crops(changed.Count))} other crops "
                    + $"would add more. ";
            string close = Close.Count == 0
                ? ""
                : $"{Phrase.Sentence(Crops(Close.Count))} {(Close.Count == 1 ? "differs" : "differ")} by less than the records can tell.";
            string all = (lost + other + (lost.Length > 0 && other.Length > 0 ? "" : close)).Trim();
            return new Prose(
                all.Length > 0
                    ? all
                    : "Each crop was taken alone, with market days and fixed costs staying and members' boxes filled again."
            );
        }
    }

    internal FiguresBlock Figures
    {
        get
        {
            List<KeyFigure> figures = [];
            if (verdicts.Crops.Count > 0 && verdicts.Crops.All(verdict => verdict.WhyUnknown is not null))
            {
                return new FiguresBlock(
                    DropOrGrowBlock.Figures,
                    [new("known", "", null, $"no crop can be judged: {verdicts.Crops[0].WhyUnknown}")]
                );
            }

            Means(figures, "drop", Drop, $"cash a year from the {(Drop.Count == 1 ? "change" : "changes")} to {Crops(Drop.Count)}");
            List<Verdict> more = Grow.FindAll(verdict => verdict.More is not null);
            Means(figures, "grow", more, $"cash a year from more of {Crops(more.Count)}");
            figures.Add(new("close", $"{Close.Count}", (decimal)Close.Count, $"{(Close.Count == 1 ? "crop" : "crops")} too close to call"));
            List<Verdict> below = [.. verdicts.Crops.Where(verdict => verdict.WhyUnknown is null && verdict.Budget.NetReturn.Amount < 0m)];
            string title = $"{(below.Count == 1 ? "crop" : "crops")} short of {verdicts.Season.Farm.Known.FullCostLabel}";
            figures.Add(new("below", $"{below.Count}", (decimal)below.Count, title));
            return new FiguresBlock(DropOrGrowBlock.Figures, figures);
        }
    }

    internal string MeansHeading
    {
        get
        {
            List<Verdict> clear = MeansPlot.Nearest(verdicts, verdicts.Crops.Count)
                .FindAll(verdict => verdict.Mean.Amount < -verdict.Noise.Amount);
            List<Verdict> inCash = clear.FindAll(verdict => LosesWithoutIdleHours(verdict.Mean, verdict.Without));
            return clear.Count == 0 ? "No crop clearly lowers what the farm earns"
                : inCash.Count > 0 ? $"{Names(inCash)} clearly lowered what the farm kept"
                : $"{Names(clear)} lowered what the farm kept only at what the hours in {(clear.Count == 1 ? "it" : "them")} are worth";
        }
    }

    /// <summary>A loss, too, with hours at nothing that no money is saved on: else going without the crop lowers cash.</summary>
    private static bool LosesWithoutIdleHours(Units.Money mean, MeansChange without) =>
        (mean + without.OwnHoursValue + without.PaidAnyway).Amount < 0m;

    private static string Names(List<Verdict> crops) => crops.Count <= 2 ? NamesOrCount(crops) : Phrase.Sentence(NamesOrCount(crops));

    internal string MeansCaption => $"What the farm would lose without the crop, {notation.Sign} a year at today's prices. "
        + $"Rings: seasons on record. Diamond: their mean. Band: smaller than your records can tell."
        + (MeansPlot.Nearest(verdicts).Count is > 1 and var shown ? $" The {shown} crops nearest to dropping." : "");

    private static string NamesOrCount(List<Verdict> crops) =>
        crops.Count <= 2 ? Phrase.List(crops.ConvertAll(verdict => verdict.Budget.Name)) : Crops(crops.Count);

    // The table has them all: a sentence that names forty can't be read.
    private string Few(List<Verdict> crops) =>
        crops.Count <= 4
            ? Phrase.List(crops.ConvertAll(Link))
            : Phrase.List([.. crops.Take(3).Select(Link), $"{Phrase.Spelled(crops.Count - 3)} more"]);

    private static string Crops(int count) => Phrase.Spelled(count, "crop");

    private string Link(Verdict verdict) => PageTarget.Link(verdict.Budget.Name, PageTarget.Crop(farm.Slugs[verdict.Budget.Name]));

    private void Means(List<KeyFigure> figures, string name, List<Verdict> crops, string words)
    {
        if (crops.Count > 0)
        {
            decimal cash = crops.Sum(verdict => verdict.Advised.Cash.Amount),
                hours = crops.Sum(verdict => verdict.Advised.OwnHours);
            figures.Add(
                new(
                    name,
                    (cash > 0m ? "+" : "") + BlockNumber.Of(cash, Look.WholeMoney, notation),
                    cash,
                    $"{words}; {notation.Number(Math.Abs(hours), Look.Count)} {(hours >= 0m ? "own hours freed" : "more own hours")}"
                        + $"{(crops.Count > 1 ? ". Added up one by one: what fits the hours together is next year's plan" : "")}"
                )
            );
        }
    }
}
