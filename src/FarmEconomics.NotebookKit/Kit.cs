
namespace FarmEconomics.NotebookKit;

/// <summary>What a notebook starts from: the line <c>#r "../artifacts/notebooks/FarmEconomics.NotebookKit.dll"</c> brings this class
/// and everything it uses.</summary>
public static class Kit
{
    // A kernel resolves the assemblies this one names, and an assembly is only named when one of its types is used.
    private static readonly Type[] Brought =
    [
        typeof(Records.Problem),
        typeof(Files.FarmFolder),
        typeof(CsvHelper.CsvReader),
        typeof(Reports.Display.Figure),
        typeof(Microsoft.Data.Analysis.DataFrame),
        typeof(ScottPlot.Plot),
        typeof(MathNet.Numerics.Constants),
        typeof(Solver.LinearSolvers),
    ];

    private static ((string Folder, string Content, string Settings, bool SkipBadRows) Of, OpenFarm Farm)? last;

    static Kit()
    {
        Reports.Display.PlotFont.Use();
        Reports.Answers.NextYearReport.FindSolver = Solver.LinearSolvers.Find;
    }

    /// <summary>Opens a folder of records. The folder is only ever read.</summary>
    /// <param name="folder">The folder, relative to the notebook or absolute.</param>
    /// <param name="settings">Settings that go before those of farm.csv, as <c>name=value; name=value</c>.</param>
    /// <param name="skipBadRows">Leave rows in error out and go on; they are listed.</param>
    /// <param name="evenWithErrors">Come back also when errors stop every figure, so that they can be shown.</param>
    /// <exception cref="Records.RecordsException">Errors stop every figure; the message lists them.</exception>
    public static OpenFarm Open(string folder, string settings = "", bool skipBadRows = false, bool evenWithErrors = false)
    {
        OpenFarm farm = OpenOnce(folder, settings, skipBadRows);
        Reports.Blocks.FrameViews.Notation = farm.Folder.Notation;
        if (!evenWithErrors)
        {
            _ = farm.Review; // says what stops it
        }

        return farm;
    }

    // A process that runs one notebook after the other on the same records reads them once; a changed file is read again.
    private static OpenFarm OpenOnce(string folder, string settings, bool skipBadRows)
    {
        string full = Path.GetFullPath(folder);
        bool there = Directory.Exists(full) || File.Exists(full);
        (string, string, string, bool) now = (full, there ? Files.RecordsFingerprint.Of(full) : "", settings, skipBadRows);
        lock (Brought)
        {
            if (last is not { } kept || kept.Of != now)
            {
                kept = (now, new(Files.FarmFolder.Open(folder, Files.SettingText.Pairs(settings), skipBadRows)));
                last = there ? kept : null;
            }

            return kept.Farm;
        }
    }

    /// <summary>The assemblies a notebook may use after the one line that refers to this one.</summary>
    public static IReadOnlyList<string> Assemblies => [.. Brought.Select(type => type.Assembly.GetName().Name!)];
}
