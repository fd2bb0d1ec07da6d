using FarmEconomics.Budgets;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;

namespace FarmEconomics.Files;

/// <summary>
/// A records folder opened whole: read, checked, and, when nothing stops it, traced and ready for review. One of the two doors a
/// newcomer needs; the other is <see cref="FarmReview.Season"/>.
/// </summary>
public sealed class FarmFolder
{
    private FarmFolder(
        string folder,
        RecordsReading reading,
        IReadOnlyList<Problem> problems,
        IReadOnlyList<SkippedRow> skipped,
        FarmReview? review
    )
    {
        Folder = folder;
        Reading = reading;
        Problems = problems;
        Skipped = skipped;
        Review = review;
    }

    /// <summary>The folder, or the workbook.</summary>
    public string Folder { get; }

    /// <summary>What was read, file by file.</summary>
    public RecordsReading Reading { get; }

    /// <summary>How the farm writes what a person reads.</summary>
    public Notation Notation => Reading.FarmSettings.Notation;

    /// <summary>Every problem of reading, checking and tracing, located in its file, by file and line.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>Rows left out because they are in error and the caller asked to go on without them.</summary>
    public IReadOnlyList<SkippedRow> Skipped { get; }

    /// <summary>The review; null when errors stop it.</summary>
    public FarmReview? Review { get; }

    /// <summary>How many of the problems are errors.</summary>
    public int ErrorCount => Problems.Where(problem => problem.Severity == Severity.Error).Sum(problem => 1 + problem.Further);

    /// <summary>How many of the problems are warnings.</summary>
    public int WarningCount => Problems.Where(problem => problem.Severity == Severity.Warning).Sum(problem => 1 + problem.Further);

    /// <summary>Opens a records folder or a workbook. It is only ever read.</summary>
    /// <param name="folder">The folder, or the path of a workbook (.xlsx) with a sheet per table.</param>
    /// <param name="settings">Settings that go before those of the farm table.</param>
    /// <param name="skipBadRows">True: leave rows in error out and go on; they are listed in <see cref="Skipped"/>.</param>
    /// <param name="progress">Told how far the reading is, or null.</param>
    /// <returns>What was found.</returns>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    /// <exception cref="IOException">The folder or workbook can't be read.</exception>
    public static FarmFolder Open(
        string folder,
        IEnumerable<KeyValuePair<string, string>>? settings = null,
        bool skipBadRows = false,
        IProgress<ReadingProgress>? progress = null)
    {
        RecordsReading reading = RecordsFolder.Read(folder, settings, progress);
        List<Problem> problems =
        [
            .. reading.Problems,
            .. OwnNumbers.Without(RecordChecks.Run(reading.Tables, reading.FarmSettings), reading.Inputs, reading.FarmSettings),
        ];
        RecordTables tables = reading.Tables;
        IReadOnlyList<SkippedRow> skipped = [];
        bool sound = problems.TrueForAll(problem => problem.Severity != Severity.Error);
        if (!sound && skipBadRows)
        {
            SkipResult left = tables.Without(problems, reading.FarmSettings);
            problems.AddRange(left.FollowOn);
            (tables, skipped, sound) = (left.Tables, left.Skipped, left.Unfixable.Count == 0);
        }

        FarmReview? review = sound ? TryReview(tables, reading, problems) : null;
        return new FarmFolder(folder, reading, ProblemLocator.Locate(reading, problems), skipped, review);
    }

    /// <summary>The folder's problems with those that only this season's pools and stock have.</summary>
    /// <param name="season">The season.</param>
    /// <returns>All of them, located, by file and line.</returns>
    public IReadOnlyList<Problem> ProblemsWith(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        HashSet<(string Code, SourceLine Source, string Message)> known = Problems
            .Select(problem => (problem.Code, problem.Source, problem.Message))
            .ToHashSet();
        List<Problem> further = season
            .PoolProblems.Where(problem => !known.Contains((problem.Code, problem.Source, problem.Message)))
            .ToList();
        return further.Count == 0 ? Problems : ProblemLocator.Locate(Folder, [.. Problems, .. further]);
    }

    private static FarmReview? TryReview(RecordTables tables, RecordsReading reading, List<Problem> problems)
    {
        try
        {
            FarmReview review = FarmReview.Of(FarmRecords.Link(tables, reading.FarmSettings));
            var found = new ProblemLog();
            found.AddRange(review.Trace.Problems);
            found.AddRange(review.Charges.Problems);
            problems.AddRange(found.Problems);

            // Pools that serve only each other are found year by year: better told now than at the first figure. A year that has only just
            // begun has nothing to share its first bills by yet; it is told of when it is reviewed.
            List<int> years = [.. review.CropYears.Where(year => year <= review.LatestCropYear)];
            review.Prepare(years);
            foreach (int year in years)
            {
                problems.AddRange(review.Season(year).PoolProblems.Except(problems).ToList());
            }

            return review;
        }
        catch (RecordsException stopped)
        {
            problems.AddRange(stopped.Problems);
            return null;
        }
    }
}
