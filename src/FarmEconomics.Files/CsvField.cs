namespace FarmEconomics.Files;

/// <summary>A field as a CSV file holds it (RFC 4180). The one place that quotes.</summary>
internal static class CsvField
{
    /// <summary>The field; in quotes, with its own quotes doubled, when it holds a separator, a quote or a line break.</summary>
    /// <param name="field">The field.</param>
    /// <param name="separators">What parts fields, also what a reader might take for it.</param>
    internal static string Of(string field, string separators = ",") =>
        field.AsSpan().IndexOfAny("\"\r\n") < 0 && field.AsSpan().IndexOfAny(separators) < 0
            ? field
            : Quoted(field);

    /// <summary>The field in quotes, with its own quotes doubled.</summary>
    internal static string Quoted(string field) => $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
