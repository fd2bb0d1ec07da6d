using System.Globalization;
using System.Text.RegularExpressions;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Notebooks;

/// <summary>A variable of the cell tagged <c>parameters</c>, with what its comment says of it.</summary>
/// <remarks>
/// The comment reads as a sentence in Jupyter and as a field on a page: <c>// Price step [money; 0.01 to 10]: the steps your prices go
/// in</c>. Before the brackets stands the label, in them the unit, the range or whose names may be chosen, after them the help. All but the
/// help may be missing.
/// </remarks>
public static partial class NotebookParameter
{
    /// <summary>Reads the parameters of a notebook in the order they stand; none when it has no such cell.</summary>
    /// <exception cref="NotebookException">A line of the cell is no declaration this understands; the message holds it.</exception>
    public static IReadOnlyList<ReportField> Of(NotebookDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        NotebookCell? cell = document.Cells.FirstOrDefault(candidate => candidate.Tags.Contains(NotebookParameters.Tag));
        return cell is null
            ? []
            :
            [
                .. cell
                    .Source.Split('\n')
                    .Select(line => line.Trim())
                    .Where(line => line.Length > 0 && !line.StartsWith("//", StringComparison.Ordinal))
                    .Select(Read),
            ];
    }

    private static ReportField Read(string line)
    {
        Match declared = Declaration().Match(line);
        if (!declared.Success || ValueOf(declared.Groups["type"].Value, declared.Groups["value"].Value) is not { } value)
        {
            throw new NotebookException($"the cell tagged \"{NotebookParameters.Tag}\" has a line that is no parameter: {line} (expected: "
                + $"type name = value; // Label [unit; 0 to 10]: help)");
        }

        string name = declared.Groups["name"].Value;
        Match comment = Comment().Match(declared.Groups["comment"].Value.Trim());
        string label = comment.Groups["label"].Success
            ? comment.Groups["label"].Value
            : char.ToUpperInvariant(name[0]) + name[1..].Replace('_', ' ');
        string? unit = null;
        string? choice = null;
        decimal? lowest = null;
        decimal? highest = null;
        foreach (
            string fact in comment.Groups["facts"].Value.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
        )
        {
            if (Range().Match(fact) is { Success: true } range)
            {
                lowest = decimal.Parse(range.Groups["from"].Value, CultureInfo.InvariantCulture);
                highest = decimal.Parse(range.Groups["to"].Value, CultureInfo.InvariantCulture);
            }
            else if (fact.StartsWith("choose a ", StringComparison.Ordinal))
            {
                choice = fact["choose a ".Length..];
            }
            else
            {
                unit = fact;
            }
        }

        return new(name, value.Type, value.Default, label, comment.Groups["help"].Value.Trim())
        { Unit = unit, Lowest = lowest, Highest = highest, Choice = choice };
    }

    private static (ParameterType Type, object Default)? ValueOf(string type, string text) =>
        type switch
        {
            "string" when text.StartsWith('"') => (ParameterType.Text, Regex.Unescape(text[1..^1])),
            "bool" when text is "true" or "false" => (ParameterType.YesNo, text == "true"),
            "int" when int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int whole) => (
                ParameterType.Whole,
                whole
            ),
            "decimal"
                when decimal.TryParse(text.TrimEnd('m', 'M'), NumberStyles.Number, CultureInfo.InvariantCulture, out decimal number) => (
                ParameterType.Number,
                number
            ),
            "double" when double.TryParse(text.TrimEnd('d', 'D'), NumberStyles.Float, CultureInfo.InvariantCulture, out double number) => (
                ParameterType.Approximate,
                number
            ),
            _ => null,
        };

    [GeneratedRegex("""^(?<type>\w+)\s+(?<name>[A-Za-z_]\w*)\s*=\s*(?<value>"(?:[^"\\]|\\.)*"|[^";]+?)\s*;\s*(?://(?<comment>.*))?\z""")]
    private static partial Regex Declaration();

    [GeneratedRegex(@"^(?:(?<label>[^\[\]]+?)(?:\s*\[(?<facts>[^\]]*)\])\s*:\s*)?(?<help>.*)\z")]
    private static partial Regex Comment();

    [GeneratedRegex(@"^(?<from>-?\d+(?:\.\d+)?) to (?<to>-?\d+(?:\.\d+)?)\z")]
    private static partial Regex Range();
}
