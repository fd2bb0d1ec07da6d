using System.Reflection;

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
    ];

    static Kit() => Reports.Display.PlotFont.Use();

    /// <summary>The version of the library the notebook runs on.</summary>
    public static string Version => typeof(Kit).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown";

    /// <summary>The assemblies a notebook may use after the one line that refers to this one.</summary>
    public static IReadOnlyList<string> Assemblies => [.. Brought.Select(type => type.Assembly.GetName().Name!)];
}
