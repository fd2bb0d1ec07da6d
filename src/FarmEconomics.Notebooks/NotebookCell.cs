using System.Text.Json.Nodes;

namespace FarmEconomics.Notebooks;

/// <summary>One cell of a notebook: a view of its JSON, so that whatever is not named here is kept as it was.</summary>
public sealed class NotebookCell
{
    internal NotebookCell(JsonObject json) => Json = json;

    /// <summary>The cell as it stands in the file.</summary>
    public JsonObject Json { get; }

    /// <summary>The cell's id (nbformat 4.5), or null in an older file.</summary>
    public string? Id => (string?)Json["id"];

    /// <summary><c>code</c>, <c>markdown</c> or <c>raw</c>.</summary>
    public string Type => (string?)Json["cell_type"] ?? "";

    /// <summary>Whether this is a code cell with something in it.</summary>
    public bool IsCode => Type == "code" && !string.IsNullOrWhiteSpace(Source);

    /// <summary>The text of the cell.</summary>
    public string Source
    {
        get => MultilineText(Json["source"]);
        set => Json["source"] = Lines(value);
    }

    /// <summary>The cell's tags.</summary>
    public IReadOnlyList<string> Tags => [.. (Json["metadata"]?["tags"] as JsonArray ?? []).Select(tag => (string?)tag ?? "")];

    /// <summary>The outputs of a code cell; never null, empty for other cells.</summary>
    public IReadOnlyList<JsonObject> Outputs => [.. (Json["outputs"] as JsonArray ?? []).OfType<JsonObject>()];

    /// <summary>Puts outputs in the place of those that are there.</summary>
    internal void SetOutputs(IEnumerable<JsonObject> outputs, int? executionCount)
    {
        JsonArray array = [];
        foreach (JsonObject output in outputs)
        {
            array.Add(output);
        }

        Json["execution_count"] = executionCount;
        Json["outputs"] = array;
    }

    /// <summary>Text that nbformat allows as one string or as a list of lines.</summary>
    internal static string MultilineText(JsonNode? node) => node switch
    {
        JsonArray lines => string.Concat(lines.Select(line => (string?)line)),
        JsonValue value when value.TryGetValue(out string? text) => text,
        _ => "",
    };

    /// <summary>A text as nbformat's list of lines, each with its line end.</summary>
    internal static JsonArray Lines(string text)
    {
        JsonArray lines = [];
        for (int start = 0; start < text.Length;)
        {
            int end = text.IndexOf('\n', start);
            end = end < 0 ? text.Length : end + 1;
            lines.Add(text[start..end]);
            start = end;
        }

        return lines;
    }
}
