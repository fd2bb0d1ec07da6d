using System.Text.Json;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Results;
using FarmEconomics.Records;

namespace FarmEconomics.Cli.Many;

/// <summary>
/// What stands in <c>farm.json</c> of a farm's results: from which records, by which program and with which options they were made, the
/// farm's rows of the tables over all farms, and a checksum of every file. By it a later run tells whether the work is done already.
/// </summary>
/// <param name="Key">Fingerprint of the records, program and options; empty when the farm is to be tried again in any case.</param>
/// <param name="Farm">The values of <see cref="SummaryColumns.Farms"/>.</param>
/// <param name="Crops">The values of <see cref="SummaryColumns.Crops"/>, a row per crop and year.</param>
internal sealed record FarmRecord(string Key, object?[] Farm, IReadOnlyList<object?[]> Crops)
{
    internal const string FileName = "farm.json";

    private static readonly JsonWriterOptions Indented = new() { Indented = true, NewLine = "\n" };

    /// <summary>The farm's status.</summary>
    internal string Status => (string)Farm[Array.FindIndex(SummaryColumns.Farms, column => column.Name == SummaryColumns.Status)]!;

    /// <summary>Why the farm isn't done, or null.</summary>
    internal string? Reason => (string?)Farm[Array.FindIndex(SummaryColumns.Farms, column => column.Name == SummaryColumns.Reason)];

    /// <summary>Makes the record of a farm.</summary>
    internal static FarmRecord Of(string key, FarmResult result)
    {
        List<object?[]> crops = [];
        if (result.Season is { } season)
        {
            // The seasons before the reviewed one were worked out when the farm was opened.
            foreach (int year in result.Farm!.Review!.CropYears.Where(year => year <= season.CropYear))
            {
                Budgets.SeasonReview one = result.Farm.Review.Season(year);
                crops.AddRange(
                    one.Crops.Select(budget => Values(SummaryColumns.Crops, new CropOfYear(one, year == season.CropYear, budget)))
                );
            }
        }

        return new FarmRecord(key, Values(SummaryColumns.Farms, result), crops);
    }

    /// <summary>Writes it as the last file of a result folder, with the checksums of the others.</summary>
    internal void Write(string folder)
    {
        using FileStream file = File.Create(Path.Combine(folder, FileName));
        using Utf8JsonWriter json = new(file, Indented);
        json.WriteStartObject();
        json.WriteString("made_from", Key);
        json.WriteStartObject("files");
        foreach ((string name, string sum) in Others(folder))
        {
            json.WriteString(name, sum);
        }

        json.WriteEndObject();
        json.WritePropertyName("farm");
        WriteRow(json, Farm);
        json.WriteStartArray("crops");
        foreach (object?[] crop in Crops)
        {
            WriteRow(json, crop);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>Reads it, if it is there and can be read.</summary>
    /// <param name="folder">A farm's results.</param>
    /// <param name="verify">True: only if every file beside it is there and as it was written, and no other.</param>
    internal static FarmRecord? Read(string folder, bool verify)
    {
        try
        {
            string path = Path.Combine(folder, FileName);
            if (!PlainFile.IsPlain(path))
            {
                return null;
            }

            using FileStream file = File.OpenRead(path);
            using JsonDocument json = JsonDocument.Parse(file);
            JsonElement root = json.RootElement;
            if (verify && !FilesOf(root).SequenceEqual(Others(folder)))
            {
                return null;
            }

            return new FarmRecord(
                root.GetProperty("made_from").GetString()!,
                ReadRow(root.GetProperty("farm"), SummaryColumns.Farms),
                [.. root.GetProperty("crops").EnumerateArray().Select(row => ReadRow(row, SummaryColumns.Crops))]);
        }
        catch (Exception fault)
            when (fault
                    is IOException
                        or UnauthorizedAccessException
                        or JsonException
                        or KeyNotFoundException
                        or InvalidOperationException
                        or FormatException
            )
        {
            return null;
        }
    }

    private static IEnumerable<(string Name, string Sum)> FilesOf(JsonElement root) =>
        root.GetProperty("files").EnumerateObject().Select(one => (one.Name, one.Value.GetString()!));

    private static object?[] Values<T>(ResultColumn<T>[] columns, T of) =>
        [.. columns.Select(column => Fitting(column.Name, ResultValue.Rounded(column.Kind, column.Value(of))))];

    // Eighteen digits, four of them after the point, are what the typed columns hold.
    private static object? Fitting(string column, object? value) =>
        value is decimal number && Math.Abs(number) >= 100_000_000_000_000m
            ? throw new WrongUseException(
                Notation.Default.Text($"{column} comes to {number}, more than a table over farms can hold; look for a mistyped figure.")
            )
            : value;

    private static void WriteRow(Utf8JsonWriter json, object?[] row)
    {
        json.WriteStartArray();
        foreach (object? value in row)
        {
            switch (value)
            {
                case null: json.WriteNullValue(); break;
                case int whole: json.WriteNumberValue(whole); break;
                case decimal number: json.WriteNumberValue(number); break;
                default: json.WriteStringValue((string)value); break;
            }
        }

        json.WriteEndArray();
    }

    private static object?[] ReadRow<T>(JsonElement row, ResultColumn<T>[] columns) => row.GetArrayLength() != columns.Length
        ? throw new FormatException("another number of columns")
        : [.. row.EnumerateArray().Select((value, i) => value.ValueKind == JsonValueKind.Null ? null : columns[i].Kind switch
        {
            ResultKind.Text => value.GetString(),
            ResultKind.Whole => value.GetInt32(),
            _ => (object)value.GetDecimal(),
        })];

    private static IEnumerable<(string Name, string Sum)> Others(string folder) =>
        ResultMark.Checksums(folder).Where(file => file.Name != FileName);
}
