using System.Text.Json.Nodes;
using FarmEconomics.Files;

namespace FarmEconomics.Notebooks;

/// <summary>An executed notebook is passed on: of folders and files it was given in full, it keeps the names alone.</summary>
internal static class PrivatePaths
{
    /// <summary>The run without the full paths among its parameters.</summary>
    internal static NotebookRun Without(NotebookRun run, IReadOnlyDictionary<string, object> parameters)
    {
        string[] paths = [.. parameters.Values.OfType<string>().Where(Path.IsPathFullyQualified).OrderByDescending(path => path.Length)];
        if (paths.Length == 0)
        {
            return run;
        }

        foreach (NotebookCell cell in run.Document.Cells)
        {
            Replace(cell.Json, paths);
        }

        return run with
        {
            Failure = run.Failure is { } failure ? failure with { Message = Hidden(failure.Message, paths) } : null,
            Warnings = [.. run.Warnings.Select(warning => Hidden(warning, paths))],
        };
    }

    private static void Replace(JsonNode? node, string[] paths)
    {
        switch (node)
        {
            case JsonObject branch:
                foreach ((string key, JsonNode? value) in branch.ToArray())
                {
                    // A picture is no text: what looks like a path in it is none.
                    if (key != "image/png")
                    {
                        if (Changed(value, paths) is { } text)
                        {
                            branch[key] = text;
                        }

                        Replace(value, paths);
                    }
                }

                break;
            case JsonArray list:
                for (int i = 0; i < list.Count; i++)
                {
                    if (Changed(list[i], paths) is { } text)
                    {
                        list[i] = text;
                    }

                    Replace(list[i], paths);
                }

                break;
            default:
                break;
        }
    }

    private static string? Changed(JsonNode? node, string[] paths) =>
        node is JsonValue value && value.TryGetValue(out string? text) && Hidden(text, paths) is { } hidden && hidden != text
            ? hidden
            : null;

    private static string Hidden(string text, string[] paths) => paths.Aggregate(text, PathWords.Hidden);
}
