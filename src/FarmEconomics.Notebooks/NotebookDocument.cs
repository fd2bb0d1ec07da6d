using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace FarmEconomics.Notebooks;

/// <summary>A notebook file: nbformat 4, read and written as JSON so that nothing unknown is lost.</summary>
/// <remarks>The library's own document type loses raw cells, attachments and JSON outputs; this one keeps every node.</remarks>
public sealed class NotebookDocument
{
    private const string Svg = "image/svg+xml";

    // The form Jupyter itself writes: one space of indentation, letters as they are.
    private static readonly JsonSerializerOptions Format = new()
    {
        WriteIndented = true,
        IndentSize = 1,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private NotebookDocument(JsonObject root) => Root = root;

    /// <summary>The whole file.</summary>
    public JsonObject Root { get; }

    /// <summary>The cells, in order.</summary>
    public IReadOnlyList<NotebookCell> Cells => [.. CellArray.OfType<JsonObject>().Select(json => new NotebookCell(json))];

    /// <summary>The notebook's question: its first heading of the first level; null when it has none.</summary>
    public string? Title => Cells.Where(cell => cell.Type == "markdown").SelectMany(cell => cell.Source.Split('\n'))
        .FirstOrDefault(line => line.StartsWith("# ", StringComparison.Ordinal))?[2..].Trim();

    private JsonArray CellArray => (JsonArray)Root["cells"]!;

    /// <summary>Reads a notebook file.</summary>
    /// <exception cref="NotebookException">The file is not a notebook of nbformat 4.</exception>
    public static NotebookDocument Load(string path)
    {
        try
        {
            return Parse(File.ReadAllText(path));
        }
        catch (NotebookException fault)
        {
            throw new NotebookException($"{path}: {fault.Message}", fault);
        }
    }

    /// <summary>Reads a notebook from its text.</summary>
    /// <exception cref="NotebookException">The text is not a notebook of nbformat 4.</exception>
    public static NotebookDocument Parse(string json)
    {
        JsonNode? root;
        try
        {
            root = JsonNode.Parse(json);
        }
        catch (JsonException fault)
        {
            throw new NotebookException($"not a notebook: {fault.Message}", fault);
        }

        if (root is not JsonObject notebook || notebook["cells"] is not JsonArray || notebook["nbformat"] is not JsonValue format
            || !format.TryGetValue(out int version) || version != 4)
        {
            throw new NotebookException("not a notebook of format 4 (cells and \"nbformat\": 4 are needed)");
        }

        return new NotebookDocument(notebook);
    }

    /// <summary>A copy that shares nothing with this one.</summary>
    public NotebookDocument Clone() => new((JsonObject)Root.DeepClone());

    /// <summary>
    /// A copy for the file beside the page: vector pictures, which viewers of saved notebooks blank out, are left to the page.
    /// </summary>
    public NotebookDocument WithoutSvg()
    {
        NotebookDocument copy = Clone();
        foreach (JsonObject output in copy.Cells.SelectMany(cell => cell.Outputs))
        {
            if (output["data"] is JsonObject data && data.ContainsKey("image/png"))
            {
                data.Remove(Svg);
            }
        }

        return copy;
    }

    /// <summary>The file's text, ending in a line end.</summary>
    public string ToJson() => Root.ToJsonString(Format) + "\n";

    /// <summary>Writes the file whole: a reader sees the old one or the new one, never half.</summary>
    public void Save(string path)
    {
        string full = Path.GetFullPath(path);
        string beside = full + ".writing";
        File.WriteAllText(beside, ToJson(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        File.Move(beside, full, overwrite: true);
    }

    internal void Insert(int index, NotebookCell cell) => CellArray.Insert(index, cell.Json);

    internal void RemoveAt(int index) => CellArray.RemoveAt(index);
}

/// <summary>A notebook that can't be read or run as asked, in words for whoever asked.</summary>
public sealed class NotebookException : Exception
{
    /// <summary>A fault without a message; use another.</summary>
    public NotebookException()
    {
    }

    /// <summary>A fault in words.</summary>
    public NotebookException(string message)
        : base(message)
    {
    }

    /// <summary>A fault in words and what caused it.</summary>
    public NotebookException(string message, Exception inner)
        : base(message, inner)
    {
    }
}
