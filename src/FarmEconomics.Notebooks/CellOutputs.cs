using System.Buffers.Binary;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;
using InteractiveDiagnosticSeverity = Microsoft.CodeAnalysis.DiagnosticSeverity;

namespace FarmEconomics.Notebooks;

/// <summary>Collects what a cell published, as nbformat outputs.</summary>
internal sealed partial class CellOutputs(int executionCount)
{
    private readonly Lock gate = new();
    private readonly List<JsonObject> outputs = [];
    private readonly Dictionary<string, JsonObject> displayed = [];
    private readonly List<string> warnings = [];

    /// <summary>Why the cell failed, or null.</summary>
    public string? Failure { get; private set; }

    public IReadOnlyList<string> Warnings
    {
        get
        {
            lock (gate)
            {
                return [.. warnings];
            }
        }
    }

    /// <summary>A copy of what is there, so that a cell that was given up on can't change it later.</summary>
    public IReadOnlyList<JsonObject> Snapshot()
    {
        lock (gate)
        {
            return [.. outputs.Select(output => (JsonObject)output.DeepClone())];
        }
    }

    public void Add(KernelEvent published)
    {
        lock (gate)
        {
            switch (published)
            {
                case StandardOutputValueProduced text:
                    Stream("stdout", Text(text));
                    break;
                case StandardErrorValueProduced text:
                    Stream("stderr", Text(text));
                    break;
                case ReturnValueProduced value:
                    Bundle("execute_result", value);
                    break;
                case DisplayedValueUpdated update when update.ValueId is { } id && displayed.TryGetValue(id, out JsonObject? shown):
                    shown["data"] = Data(update);
                    break;
                case DisplayedValueProduced value:
                    Bundle("display_data", value);
                    break;
                case DiagnosticsProduced diagnostics:
                    Warn(diagnostics);
                    break;
                case CommandFailed failed:
                    Fail(failed.Exception?.GetType().Name ?? "Error", Clean(Message(failed)), Clean(failed.Exception?.StackTrace ?? ""));
                    break;
                default:
                    break;
            }
        }
    }

    /// <summary>Records why the cell failed.</summary>
    public void Fail(string name, string message, string trace = "")
    {
        lock (gate)
        {
            if (Failure is not null)
            {
                return;
            }

            Failure = message;
            outputs.Add(Error(name == "CodeSubmissionCompilationErrorException" ? "CompilationError" : name, message, trace));
        }
    }

    /// <summary>An error as nbformat has it.</summary>
    public static JsonObject Error(string name, string message, string trace = "")
    {
        JsonArray lines = [$"{name}: {message}"];
        foreach (string line in trace.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            lines.Add(line.TrimEnd());
        }

        return new JsonObject { ["output_type"] = "error", ["ename"] = name, ["evalue"] = message, ["traceback"] = lines };
    }

    // The kernel's message of an exception is the whole stack; what went wrong is the exception's own, and its cause's.
    private static string Message(CommandFailed failed)
    {
        if (failed.Exception is null or CodeSubmissionCompilationErrorException)
        {
            return failed.Message;
        }

        List<string> chain = [];
        for (Exception? fault = failed.Exception; fault is not null; fault = fault.InnerException)
        {
            chain.Add(fault.Message);
        }

        return string.Join("\n", chain.Distinct());
    }

    // Colors of a terminal, and where the library was built, have no place in a saved notebook.
    private static string Clean(string text) => SourcePlace().Replace(Ansi().Replace(text, ""), "").ReplaceLineEndings("\n");

    private static string Text(DisplayEvent text) => string.Concat(text.FormattedValues.Select(value => value.Value));

    private void Warn(DiagnosticsProduced diagnostics)
    {
        foreach ((Diagnostic diagnostic, FormattedValue text) in diagnostics.Diagnostics.Zip(diagnostics.FormattedDiagnostics))
        {
            if (diagnostic.Severity == InteractiveDiagnosticSeverity.Warning)
            {
                warnings.Add(text.Value);
                Stream("stderr", text.Value + "\n");
            }
        }
    }

    private void Stream(string name, string text)
    {
        text = Ansi().Replace(text, "").ReplaceLineEndings("\n");
        if (outputs.LastOrDefault() is { } last && (string?)last["output_type"] == "stream" && (string?)last["name"] == name)
        {
            last["text"] = NotebookCell.Lines(NotebookCell.MultilineText(last["text"]) + text);
            return;
        }

        outputs.Add(new JsonObject { ["output_type"] = "stream", ["name"] = name, ["text"] = NotebookCell.Lines(text) });
    }

    private void Bundle(string type, DisplayEvent value)
    {
        if (value.FormattedValues.Count == 0)
        {
            return;
        }

        JsonObject data = Data(value);
        JsonObject output = new() { ["output_type"] = type, ["data"] = data, ["metadata"] = Metadata(data) };
        if (type == "execute_result")
        {
            output["execution_count"] = executionCount;
        }

        outputs.Add(output);
        if (value.ValueId is { } id)
        {
            displayed[id] = output;
        }
    }

    private static JsonObject Data(DisplayEvent value)
    {
        JsonObject data = [];
        foreach (FormattedValue formatted in value.FormattedValues)
        {
            string mime = formatted.MimeType;
            bool isJson = mime == "application/json" || mime.EndsWith("+json", StringComparison.Ordinal);
            bool isText = mime.StartsWith("text/", StringComparison.Ordinal) || mime.EndsWith("+xml", StringComparison.Ordinal);
            data[mime] = isJson ? JsonNode.Parse(formatted.Value)
                : isText ? NotebookCell.Lines(formatted.Value.ReplaceLineEndings("\n"))
                : JsonValue.Create(formatted.Value);
        }

        return data;
    }

    // Pictures have two pixels for each one of the page: without this Jupyter shows them at double size.
    private static JsonObject Metadata(JsonObject data)
    {
        Span<byte> header = stackalloc byte[24];
        if (
            (string?)data["image/png"] is not { Length: >= 32 } png
            || !Convert.TryFromBase64Chars(png.AsSpan(0, 32), header, out int read)
            || read != 24
        )
        {
            return [];
        }

        return new JsonObject
        {
            ["image/png"] = new JsonObject
            {
                ["width"] = BinaryPrimitives.ReadInt32BigEndian(header[16..]) / 2,
                ["height"] = BinaryPrimitives.ReadInt32BigEndian(header[20..]) / 2,
            },
        };
    }

    [GeneratedRegex(@"\x1b\[[0-9;?]*[ -/]*[@-~]")]
    private static partial Regex Ansi();

    [GeneratedRegex(@"(?<=\)) in \S.*?:line \d+")]
    private static partial Regex SourcePlace();
}
