using System.Security.Cryptography;
using System.Text;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing;

/// <summary>A row of a source file: its line, its fields, and what it is known by.</summary>
internal sealed record SourceRow(int Line, string[] Fields, string Id);

/// <summary>
/// The rows of a file that is not the farm's own. What stands above the headings is passed over: exports of banks begin with the account.
/// </summary>
internal sealed class SourceRows
{
    private const int RowsSearchedForHeadings = 40;

    public string[] Headings { get; private set; } = [];

    public List<SourceRow> Rows { get; } = [];

    /// <summary>Opens a CSV file.</summary>
    public static InputReading Open(string path) =>
        new CsvInput(path, Path.GetFileName(path), "imports").Open(options => options with { HasHeader = false }, new FarmSettings());

    /// <summary>Reads a file, or a sheet.</summary>
    /// <returns>The rows, or null when no row holds all the headings.</returns>
    public static SourceRows? Read(InputReading reading, IReadOnlyList<string> headings)
    {
        var source = new SourceRows();
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        bool found = false;
        for (int at = 0; reading.Reader.Read(); at++)
        {
            string[] fields = reading.Reader.Current.ToArray();
            if (!found)
            {
                found = headings.All(heading => Array.Exists(fields, field => Same(field, heading)));
                source.Headings = found ? fields : [];
                if (!found && at == RowsSearchedForHeadings)
                {
                    return null;
                }
            }
            else if (Array.Exists(fields, field => !string.IsNullOrWhiteSpace(field)))
            {
                // The same row twice in one file is two things that happened; the same row in the next export is not.
                string content = string.Join('\u001F', fields.Select(field => field.Trim()));
                int occurrence = seen[content] = seen.GetValueOrDefault(content) + 1;
                byte[] hash = SHA256.HashData(Encoding.UTF8.GetBytes($"{content}\u001E{occurrence}"));
                source.Rows.Add(new SourceRow(reading.Line, fields, Convert.ToHexStringLower(hash.AsSpan(0, 8))));
            }
        }

        reading.Finish();
        return found ? source : null;
    }

    /// <summary>The field of a row under a heading; blank where the row is shorter.</summary>
    public string Field(SourceRow row, string heading)
    {
        int at = Array.FindIndex(Headings, known => Same(known, heading));
        return at >= 0 && at < row.Fields.Length ? row.Fields[at] : "";
    }

    private static bool Same(string left, string right) => left.Trim().TrimStart('\uFEFF').Equals(right.Trim(), StringComparison.OrdinalIgnoreCase);
}
