using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using FarmEconomics.Files.Workbooks;
using FarmEconomics.Records;
using FarmEconomics.Records.Completeness;
using FarmEconomics.Records.Names;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Funding;
using FarmEconomics.Reports.Season;

namespace FarmEconomics.WholeWay.Tests.Fuzz;

/// <summary>
/// Everything a grower may ask of a folder, in this process: check, review with every season's proof and tables, and by chance one of the
/// commands and one of the pages. An exception that a command turns into a message is no fault; every other one is.
/// </summary>
internal sealed class WholeWay(Random random, string results)
{
    // A drawn picture takes as long as ten folders.
    private const int PicturesOneIn = 40;

    // The library that draws is not asked by two threads at once, as no page does.
    private static readonly Lock Drawing = new();

    internal void Go(string folder)
    {
        FarmFolder farm = FarmFolder.Open(folder);
        Check(farm);
        if (farm.Review is null)
        {
            RecordsCheckPage(farm);
            farm = FarmFolder.Open(folder, skipBadRows: true);
            Check(farm);
        }

        if (farm.Review is { CropYears.Count: > 0 } review)
        {
            List<int> told = [];
            foreach (int year in review.CropYears)
            {
                SeasonReview season;
                try
                {
                    season = review.Season(year);
                }
                catch (RecordsException) when (year > review.LatestCropYear)
                {
                    // A year that has only just begun is told of when it is asked for; the command says the error.
                    continue;
                }

                told.Add(year);
                _ = ProofTables.RequireProof(season);
                ResultTables.Write(season, farm.ProblemsWith(season), results, year == review.LatestCropYear ? new Workbook() : null);
            }

            int chosen = random.Next(3) > 0 ? review.LatestCropYear : told[random.Next(told.Count)];
            new Questions(random, review, chosen).Ask();
            IReport report = ReportCatalog.All[random.Next(ReportCatalog.All.Count)];
            lock (Drawing)
            {
                Show(report.Make(ReviewedFarm.Of(farm, chosen), Given(report, review, chosen), CancellationToken.None));
            }
        }
    }

    private static void Check(FarmFolder farm)
    {
        foreach (Problem problem in farm.Problems)
        {
            _ = ProblemText.Format(problem, farm.Notation, farm.Folder);
        }

        _ = ControlTotals.Of(farm.Reading.Tables, farm.Reading.FarmSettings);
        _ = AliasFile.Text(AliasProposal.Of(farm.Problems, farm.Reading.Tables));
    }

    // The page on the records is shown for records in error as well.
    private void RecordsCheckPage(FarmFolder farm)
    {
        foreach (IReport report in ReportCatalog.All.Where(report => report.TakesAnyRecords))
        {
            Show(report.Make(ReviewedFarm.Of(farm), new Dictionary<string, object>(), CancellationToken.None));
        }
    }

    // Some are made into a page, with its pictures; the others into data.
    private void Show(IReadOnlyList<Block> blocks)
    {
        if (random.Next(PicturesOneIn) == 0)
        {
            _ = BlockHtml.Of(blocks);
        }
        else
        {
            _ = BlockJson.Of(blocks).ToJsonString();
        }
    }

    private Dictionary<string, object> Given(IReport report, FarmReview review, int year) => report.Fields.Where(field => field.Name is not ("year" or "settings" or "skip_bad_rows"))
        .ToDictionary(field => field.Name, field => random.Next(3) > 0 ? field.Default : Value(field, review, year));

    // What the page would refuse beside its field, the report never gets.
    private static string Readable(string text, Func<string, bool> reads)
    {
        try
        {
            return reads(text) ? text : "";
        }
        catch (ArgumentException)
        {
            return "";
        }
    }

    private object Value(ReportField parameter, FarmReview review, int year)
    {
        string[] names = [.. parameter.Choice switch
        {
            "crop" => review.Season(year).Crops.Select(crop => crop.Name),
            "pool" => review.Records.Pools.Select(pool => pool.Name),
            "store" => review.Records.Pools.Where(pool => pool.Basis.Kind == BasisKind.CrateDays).Select(pool => pool.Name),
            "project" => review.Records.Tables.Funding.Select(row => row.Project),
            _ => [],
        }];
        if (names.Length > 0)
        {
            return names[random.Next(names.Length)];
        }

        return (parameter.Name, parameter.Type, parameter.Lowest, parameter.Highest) switch
        {
            ("changes", _, _, _) => Readable(Questions.Change(random, review.Records), text =>
                ScenarioText.Read(text, review.Records, out IReadOnlyList<ScenarioFault> faults) is not null && faults.Count == 0),
            ("assumptions", _, _, _) => Readable(Questions.Assumptions(random), text =>
                WriteUpReport.Make(review, year, "", text) is not null),
            (_, ParameterType.Whole, { } low, { } high) => (int)(random.Next(2) == 0 ? low : high),
            (_, ParameterType.Number, { } low, { } high) => random.Next(2) == 0 ? low : high,
            (_, ParameterType.Approximate, { } low, { } high) => decimal.ToDouble(random.Next(2) == 0 ? low : high),
            _ => parameter.Default,
        };
    }
}
