using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace FarmEconomics.Notebooks;

/// <summary>Parameters of a notebook by the papermill convention: the cell tagged <c>parameters</c> declares typed variables, and a
/// cell of assignments tagged <c>injected-parameters</c> follows it.</summary>
/// <remarks>Assignments, not declarations: a name the notebook doesn't have or a value of the wrong type is a compile error.</remarks>
public static partial class NotebookParameters
{
    /// <summary>The tag of the cell with the defaults.</summary>
    public const string Tag = "parameters";

    /// <summary>The tag of the cell the host inserts.</summary>
    public const string InjectedTag = "injected-parameters";

    /// <summary>A value as a C# literal, the same on every machine.</summary>
    /// <param name="value">An int, decimal, double (finite), string, bool or DateOnly.</param>
    public static string Literal(object value) =>
        value switch
        {
            int number => number.ToString(CultureInfo.InvariantCulture),
            decimal number => number.ToString(CultureInfo.InvariantCulture) + "m",
            double number when double.IsFinite(number) => number.ToString("R", CultureInfo.InvariantCulture) + "d",
            bool yes => yes ? "true" : "false",
            DateOnly date => $"new System.DateOnly({date.Year}, {date.Month}, {date.Day})",
            string text => Quote(text),
            _ => throw new NotebookException(
                $"a parameter can be an int, decimal, double, string, bool or date, not {value?.GetType().Name ?? "null"}"
            ),
        };

    /// <summary>Inserts the cell of assignments, or replaces the one that is there.</summary>
    /// <exception cref="NotebookException">The notebook has no cell tagged <c>parameters</c>, or a name is not an identifier.</exception>
    internal static void Inject(NotebookDocument document, IReadOnlyDictionary<string, object> parameters)
    {
        int existing = document.Cells.ToList().FindIndex(cell => cell.Tags.Contains(InjectedTag));
        if (existing >= 0)
        {
            document.RemoveAt(existing);
        }

        if (parameters.Count == 0)
        {
            return;
        }

        int place = document.Cells.ToList().FindIndex(cell => cell.Tags.Contains(Tag));
        if (place < 0)
        {
            throw new NotebookException(
                $"the notebook takes no parameters: it has no cell tagged \"{Tag}\" (given: {string.Join(", ", parameters.Keys)})"
            );
        }

        NotebookCell cell = new(new JsonObject
        {
            ["cell_type"] = "code",
            ["execution_count"] = null,
            ["id"] = InjectedTag,
            ["metadata"] = new JsonObject { ["tags"] = new JsonArray(InjectedTag) },
            ["outputs"] = new JsonArray(),
        })
        { Source = Assignments(parameters) };
        document.Insert(place + 1, cell);
    }

    private static string Assignments(IReadOnlyDictionary<string, object> parameters)
    {
        StringBuilder source = new("// Set by the run");
        foreach ((string name, object value) in parameters.OrderBy(p => p.Key, StringComparer.Ordinal))
        {
            if (!Identifier().IsMatch(name))
            {
                throw new NotebookException($"\"{name}\" can't be the name of a parameter");
            }

            source.Append('\n').Append(name).Append(" = ").Append(Literal(value)).Append(';');
        }

        return source.ToString();
    }

    private static string Quote(string text)
    {
        StringBuilder quoted = new("\"");
        foreach (char c in text)
        {
            quoted.Append(c switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                // Line ends, other control characters and halves of pairs would break the line or the file.
                _ when char.IsControl(c) || char.IsSurrogate(c) || c is '\u2028' or '\u2029' => $"\\u{(int)c:x4}",
                _ => c.ToString(),
            });
        }

        return quoted.Append('"').ToString();
    }

    [GeneratedRegex(@"^[A-Za-z_]\w*\z")]
    private static partial Regex Identifier();
}
