using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace FarmEconomics.Notebooks;

/// <summary>A notebook to run, as the parent writes it to the worker: one line of JSON.</summary>
internal sealed record WorkerJob(
    string Notebook,
    string Output,
    IReadOnlyList<WorkerParameter> Parameters,
    string? WorkingDirectory,
    double CellSeconds,
    double TotalSeconds
)
{
    public string ToLine() => JsonSerializer.Serialize(this, WorkerJson.Default.WorkerJob);

    public static WorkerJob FromLine(string line) =>
        JsonSerializer.Deserialize(line, WorkerJson.Default.WorkerJob) ?? throw new NotebookException("an empty job");
}

/// <summary>A parameter with its type in words.</summary>
internal sealed record WorkerParameter(string Name, string Type, string Value)
{
    public static WorkerParameter From(string name, object value) => value switch
    {
        int number => new(name, "int", number.ToString(CultureInfo.InvariantCulture)),
        decimal number => new(name, "decimal", number.ToString(CultureInfo.InvariantCulture)),
        double number => new(name, "double", number.ToString("R", CultureInfo.InvariantCulture)),
        bool yes => new(name, "bool", yes ? "true" : "false"),
        DateOnly date => new(name, "date", date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
        string text => new(name, "string", text),
        _ => throw new NotebookException(NotebookParameters.Literal(value)),
    };

    public object ToValue() => Type switch
    {
        "int" => int.Parse(Value, CultureInfo.InvariantCulture),
        "decimal" => decimal.Parse(Value, CultureInfo.InvariantCulture),
        "double" => double.Parse(Value, CultureInfo.InvariantCulture),
        "bool" => Value == "true",
        "date" => DateOnly.ParseExact(Value, "yyyy-MM-dd", CultureInfo.InvariantCulture),
        _ => Value,
    };
}

/// <summary>What the worker says, one line of JSON each: a cell starts, or the notebook is done.</summary>
internal sealed record WorkerReport
{
    public const string CellStarts = "cell";
    public const string IsDone = "done";

    public string Event { get; init; } = "";

    public int Cell { get; init; }

    public int Of { get; init; }

    public NotebookFailure? Failure { get; init; }

    public IReadOnlyList<string> Warnings { get; init; } = [];

    public double Seconds { get; init; }

    public string ToLine() => JsonSerializer.Serialize(this, WorkerJson.Default.WorkerReport);

    /// <summary>The report on a line, or null when something else wrote to the worker's output.</summary>
    public static WorkerReport? FromLine(string line)
    {
        try
        {
            return line.StartsWith('{') ? JsonSerializer.Deserialize(line, WorkerJson.Default.WorkerReport) : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(WorkerJob))]
[JsonSerializable(typeof(WorkerReport))]
internal sealed partial class WorkerJson : JsonSerializerContext;
