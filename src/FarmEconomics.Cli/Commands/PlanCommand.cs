using System.CommandLine;
using System.CommandLine.Parsing;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using FarmEconomics.Funding;
using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using FarmEconomics.Planning.Variances;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Reports.Planning;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;
using FarmEconomics.Solver;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>plan FOLDER</c>: next year's plan, the best mix or last year's again, and what it does to cash and hours.</summary>
internal static class PlanCommand
{
    private const decimal UsualPiece = 5m;

    internal static Command Create()
    {
        Options given = new();
        Command command = new(
            "plan",
            "Plan next year: the best mix, last year's again, or what the plan in your records does to cash and hours.")
        {
            given.Folder, given.Year, given.Best, given.Like, given.Careful, given.Ranges, given.Wage, given.Least, given.Most, given.Piece,
            given.Output, given.Set, given.Skip,
        };
        command.SetAction(parsed => Run(
            parsed.GetValue(given.Folder)!, given.AskedIn(parsed), parsed.GetValue(given.Set), parsed.GetValue(given.Skip)));
        return command;
    }

    private sealed class Options
    {
        internal readonly Argument<string> Folder = CommonOptions.Folder();
        internal readonly Option<int?> Year = OptionRules.Whole("--year", "N", 1, 9999,
            "The season to plan from; the plan is for the year after. Default: the season just ended.");
        internal readonly Option<bool> Best = OptionRules.Flag("--best",
            "Look for the mix of sowings that brings most within your beds, hours, stores and what your channels take.");
        internal readonly Option<bool> Like = OptionRules.Flag("--like-last-year",
            "Repeat the season's plantings. Without --best and without a plan on file this is what is planned.");
        internal readonly Option<bool> Careful = OptionRules.Flag("--careful",
            "Look for the mix as --best does, and for steadier ones; plan the one that looks at bad seasons as much as at the average.");
        internal readonly Option<bool> Ranges = OptionRules.Flag("--ranges",
            "With --best or --careful: how far what a little more is worth holds, and how sure each crop's length is.");
        internal readonly Option<NumberOption?> Wage = OptionRules.Number("--own-hour", "X", 0m, 100_000m,
            "What an hour of your own is worth in the plan; 0 counts cash alone. Default: owner_wage.");
        internal readonly Option<string[]> Least = OptionRules.Many("--least", "CROP=LENGTH",
            "Grow at least so much of a crop, for example --least \"Garlic=400\". May be given several times.");
        internal readonly Option<string[]> Most = OptionRules.Many("--most", "CROP=LENGTH", "Grow at most so much of a crop.");
        internal readonly Option<NumberOption?> Piece = OptionRules.Number("--piece", "LENGTH", 0.5m, 10_000m,
            "Lengths are whole multiples of this. Default: 5.");
        internal readonly Option<string?> Output = OptionRules.Text("--out", "DIR",
            "Write the plan as tables into this folder; written whole or not at all.");
        internal readonly Option<string[]> Set = CommonOptions.Set();
        internal readonly Option<bool> Skip = CommonOptions.SkipBadRows();

        internal Asked AskedIn(ParseResult parsed)
        {
            bool looks = parsed.GetValue(Best) || parsed.GetValue(Careful);
            OptionResult? ofMix = parsed.GetResult(Least) ?? parsed.GetResult(Most) ?? parsed.GetResult(Piece);
            RequireFit(looks, parsed.GetValue(Like), parsed.GetValue(Ranges), ofMix);
            return new Asked(parsed.GetValue(Year), looks, parsed.GetValue(Like))
            {
                Solver = looks ? LinearSolvers.Find() ?? throw new WrongUseException(LinearSolvers.Missing) : null,
                Careful = parsed.GetValue(Careful),
                Ranges = parsed.GetValue(Ranges),
                Wage = parsed.GetValue(Wage),
                Least = parsed.GetValue(Least) ?? [],
                Most = parsed.GetValue(Most) ?? [],
                Piece = parsed.GetValue(Piece),
                Output = parsed.GetValue(Output),
            };
        }
    }

    private static void RequireFit(bool looks, bool likeLastYear, bool ranges, OptionResult? wish)
    {
        if (looks && likeLastYear)
        {
            throw new WrongUseException("Give --best or --careful, or --like-last-year, not both.");
        }

        if (!looks && wish is not null)
        {
            throw new WrongUseException($"{wish.IdentifierToken?.Value} is a wish for the best mix; give --best as well.");
        }

        if (ranges && !looks)
        {
            throw new WrongUseException("--ranges goes with --best or --careful.");
        }
    }

    private static int Run(string folder, Asked asked, string[]? set, bool skip)
    {
        Terminal terminal = new();
        FarmFolder farm = CommonOptions.Open(folder, set, skip, terminal);
        if (CommonOptions.ReviewOrProblems(farm, skip) is not { } review)
        {
            return ExitCode.RecordsInError;
        }

        SeasonReview season = review.Season(CommonOptions.YearOf(review, asked.Year));
        CommonOptions.PrintSkipped(farm, Console.Error);
        using OutputFolder? place = asked.Output is null
            ? null
            : OutputFolder.Start(new OutputPlace(asked.Output, OutputPlace.Plan), folder);
        terminal.Step("Looking at your seasons");
        BalanceSheet? closing = BalanceSheet.At(season.Records, season.Settings.EndOf(season.CropYear).AddDays(-1));
        PlanModel model = PlanFacts.Of(review, SeasonCosts.Of(season), Settings(asked, season, closing));
        terminal.Clear();
        (string Finding, string ToDo)? noPrices = asked.Best ? PlanWords.NoPrices(season) : null;
        if (noPrices is { } told)
        {
            // As on the page: a mix of crops that nothing tells the worth of is no advice.
            Console.Out.WriteLine(TextLines.Of($"{told.Finding}. {told.ToDo}"));
            Console.Out.WriteLine();
        }

        (PlanDraft? draft, bool holds) = noPrices is not null ? (LikeLastYear.Of(season, model), true)
            : asked.Best ? Best(review, season, model, asked, terminal) : (Draft(season, model, asked), true);
        if (draft is null)
        {
            return ExitCode.RecordsInError;
        }

        Tell(season, (model, draft), closing?.Cash, place, asked);
        return holds ? ExitCode.Done : ExitCode.ProgramAtFault;
    }

    private static PlanSettings Settings(Asked asked, SeasonReview season, BalanceSheet? closing) => new()
    {
        OwnWage = asked.Wage?.On(season.Notation),
        OpeningCash = closing?.Cash,
        UnpaidInvoices = closing?.UnpaidInvoices ?? 0m,
        Least = Wishes(asked.Least, season, "--least"),
        Most = Wishes(asked.Most, season, "--most"),
    };

    private static Dictionary<string, decimal> Wishes(string[] given, SeasonReview season, string option)
    {
        Dictionary<string, decimal> wishes = new(StringComparer.OrdinalIgnoreCase);
        foreach (string wish in given)
        {
            int at = wish.LastIndexOf('=');
            if (at <= 0)
            {
                throw new WrongUseException($"{option} takes CROP=LENGTH, for example {option} \"Garlic=400\", not \"{wish}\".");
            }

            string name = wish[..at].Trim();
            if (season.Records.FindCrop(name) is not { } crop)
            {
                string? nearest = NearestName.Find(name, season.Records.Crops.Select(one => one.Name));
                throw new WrongUseException($"There is no crop \"{name}\"." + (nearest is null ? "" : $" Did you mean {nearest}?"));
            }

            wishes[crop.Name] = new NumberOption(option, wish[(at + 1)..], 0m, 1_000_000m).On(season.Notation);
        }

        return wishes;
    }

    private static (PlanDraft? Draft, bool Holds) Best(
        FarmReview review, SeasonReview season, PlanModel model, Asked asked, Terminal terminal)
    {
        terminal.Step("Looking for the best mix");
        BestMix mix = BestMix.Of(model, asked.Solver!, BestMix.LimitsTold);
        PlanLengths? lengths = mix.Simpler();
        bool isSteady = false;
        if (asked.Careful && mix.Best is not null && Steady(review, season, mix, asked, terminal) is { } steady)
        {
            (lengths, isSteady) = (steady, true);
        }

        PlanLengths? chosen = lengths is null ? null : mix.Rounded(lengths, (double)(asked.Piece?.On(season.Notation) ?? UsualPiece));
        terminal.Clear();
        Console.Out.WriteLine(TextLines.Of(PlanWords.Headline(mix, chosen, season.Notation, isSteady)));

        if (chosen is null || mix.QuantitiesOf(chosen.Feet) is not { } quantities)
        {
            return (null, true);
        }

        PrintMix(mix, chosen, season, asked, terminal);
        PlanDraft draft = DraftMaker.Of(season.Records, model, chosen.Feet, quantities);
        // Of a year that is on record its own plantings, sales and stores stand in the way.
        PlanProof? proof = season.Settings.IsOver(model.CropYear, season.Records.AsOf)
            ? null
            : PlanProof.Of(season.Records, model, draft, quantities, chosen.Feet);
        Console.Out.WriteLine(Proof(season, proof, model.CropYear));
        Console.Out.WriteLine();
        return (draft, proof is null or { Holds: true });
    }

    /// <summary>Tells the steadier plans; gives the steady one where it does better in bad seasons than the best mix.</summary>
    private static PlanLengths? Steady(FarmReview review, SeasonReview season, BestMix mix, Asked asked, Terminal terminal)
    {
        terminal.Step("Looking at bad seasons");
        PlanSeasons seasons = PlanSeasons.Of(review, SeasonCosts.Of(season), mix.Model);
        CarefulPlans plans = CarefulPlans.Of(mix, asked.Solver!, seasons);
        terminal.Clear();
        Console.Out.WriteLine(TextLines.Of(CarefulWords.Headline(plans, seasons, season.Notation) ?? "No steadier plan was found."));
        Console.Out.WriteLine();
        Console.Out.WriteLine(CarefulWords.Plans(mix, plans, seasons, season.Notation).ToPlainText());
        return plans.Of(PlanStance.Steady) is { } steady && steady.WorstFifth > plans.Of(PlanStance.MeanSeason)!.WorstFifth
            ? mix.Score(steady.Feet)
            : null;
    }

    private static void PrintMix(BestMix mix, PlanLengths chosen, SeasonReview season, Asked asked, Terminal terminal)
    {
        Console.Out.WriteLine();
        Console.Out.WriteLine(PlanWords.Crops(mix, chosen, season.Notation).ToPlainText());
        Console.Out.WriteLine(PlanWords.Limits(mix, season.Notation).Top(20).ToPlainText());
        Console.Out.WriteLine(PlanWords.LeftOut(mix, season.Notation).ToPlainText());
        if (asked.Ranges)
        {
            terminal.Step("Looking how far that holds");
            PlanRanges ranges = PlanRanges.Of(mix, asked.Solver!);
            terminal.Clear();
            Console.Out.WriteLine(CarefulWords.Limits(mix, ranges, season.Notation).ToPlainText());
            Console.Out.WriteLine(CarefulWords.Crops(mix, ranges, season.Notation).ToPlainText());
        }
    }

    /// <summary>Whether the plan holds as records.</summary>
    private static string Proof(SeasonReview season, PlanProof? proof, int year) =>
        proof is null ? $"{year} is on record already, so the plan wasn't worked through as records of it."
        : proof.Holds
            ? season.Notation.Text(
                $"Worked through as records of {year}, the plan brings the same to the cent: {proof.Reviewed.Amount:#,0.00}."
            )
        : proof.Produce.FirstOrDefault(one => !one.AddsUp) is { } crop ? season.Notation.Text(
            $"Worked through as records of {year}, the plan sells {crop.Beyond:#,0.##} {season.Records.Crop(crop.Crop).Row.Unit} of "
                + $"{crop.Crop} that it hasn't picked{(crop.First is { } day ? $" by {day:MMMM d}" : "")}: a fault of this program."
        )
        : season.Notation.Text(
            $"Worked through as records of {year}, the plan brings {proof.Reviewed.Amount:#,0.00}, "
                + $"not {proof.Planned.Amount:#,0.00}: a fault of this program."
        );

    /// <summary>The plan on file for the year, unless last year's again is asked for.</summary>
    private static PlanDraft Draft(SeasonReview season, PlanModel model, Asked asked)
    {
        PlanDraft? onFile = asked.Like ? null : PlanOnFile.Of(season.Records, model.CropYear);
        Console.Out.WriteLine(onFile is null
            ? $"{model.CropYear} planned like {season.CropYear}: the same sowings a year later, at the yields your seasons let expect."
            : $"The plan in your records for {model.CropYear}.");
        Console.Out.WriteLine();
        return onFile ?? LikeLastYear.Of(season, model);
    }

    private static void Tell(
        SeasonReview season, (PlanModel Model, PlanDraft Draft) plan, decimal? opening, OutputFolder? place, Asked asked)
    {
        (PlanModel model, PlanDraft draft) = plan;
        PlanOutlook outlook = PlanOutlook.Of(season, model, draft);
        CreditLine credit = PlanWords.Credit(outlook, season.Settings, opening ?? 0m);
        if (PlanVariances.Of(season) is { } variances)
        {
            Console.Out.WriteLine(TextLines.Of(VarianceWords.Headline(variances)));
            Console.Out.WriteLine();
            Console.Out.WriteLine(VarianceWords.Crops(variances).ToPlainText());
        }

        bool isOwn = asked is { Best: false, Like: false } && PlanOnFile.Of(season.Records, model.CropYear) is not null;
        TellCash(season, outlook, credit, isOwn, isOpeningKnown: opening is not null);
        foreach (string problem in PlanWords.Problems(outlook, season.Notation))
        {
            Console.Out.WriteLine(problem);
        }

        if (place is not null)
        {
            PlanTables.Write(season.Settings, draft, outlook, credit, place.Path);
            place.SwapIn();
            Console.Out.WriteLine($"Wrote {season.Notation.Count(PlanTables.All.Count, "table")} into {asked.Output}. "
                + $"To keep the plan, put plan.csv and plan_sales.csv into your records; change them in a spreadsheet and run plan again.");
        }

        Console.Out.WriteLine(TextLines.Of(ProofTables.Cautions));
    }

    /// <summary>Cash month by month, with what is to be said of it; a plan of the grower's own has its own lengths and prices.</summary>
    private static void TellCash(SeasonReview season, PlanOutlook outlook, CreditLine credit, bool isOwn, bool isOpeningKnown)
    {
        string?[] cautions = outlook.SalesUnknown is { } why ? [$"Cash isn't known: {why}."]
            : isOwn ? [outlook.CostsUnknown is { } cash ? $"Cash isn't known: {cash}." : null]
            : [PlanWords.SalesAlone(outlook), PlanWords.WithoutPrice(season)];
        foreach (string caution in cautions.OfType<string>())
        {
            Console.Out.WriteLine(TextLines.Of(caution));
        }

        if (outlook.SalesUnknown is null)
        {
            Console.Out.WriteLine(PlanWords.Cash(outlook, credit, season.Notation).ToPlainText());
            if (!isOpeningKnown && outlook.CostsUnknown is null)
            {
                Console.Out.WriteLine("Cash at the beginning isn't in balances.csv and is taken as 0.");
            }

            if (outlook.CostsUnknown is null && PlanWords.InterestUnknown(season.Settings, credit) is { } interest)
            {
                Console.Out.WriteLine(TextLines.Of(interest));
            }
        }
    }

    /// <summary>What the options ask for.</summary>
    private sealed record Asked(int? Year, bool Best, bool Like)
    {
        /// <summary>The solver; null where no best mix is asked for.</summary>
        internal ILinearSolver? Solver { get; init; }

        internal bool Careful { get; init; }

        internal bool Ranges { get; init; }

        internal NumberOption? Wage { get; init; }

        internal string[] Least { get; init; } = [];

        internal string[] Most { get; init; } = [];

        internal NumberOption? Piece { get; init; }

        internal string? Output { get; init; }
    }
}
