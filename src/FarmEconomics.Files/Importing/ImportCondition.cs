using System.Text.RegularExpressions;
using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing;

/// <summary>What a value of the source must be for a row of a mapping to hold.</summary>
internal sealed class ImportCondition
{
    private readonly string when;
    private readonly ImportMatch match;
    private readonly Regex? pattern;
    private readonly decimal? limit;
    private readonly char mark;

    public ImportCondition(ImportRow row, char mark)
    {
        this.mark = mark;
        when = (row.When ?? "").Trim();
        match = row.Match ?? ImportMatch.Is;
        limit = match is ImportMatch.Above or ImportMatch.Below ? CellKinds.Read(when, '.') : null;
        pattern = match == ImportMatch.Pattern ? PatternOf(when) : null;
        Source = row.SourceColumn;
    }

    public ImportCondition(string source, ImportMatch match, decimal limit, char mark)
    {
        (Source, this.match, this.limit, this.mark, when) = (source, match, limit, mark, "");
    }

    /// <summary>The heading it looks under; null: that of the row it belongs to.</summary>
    public string? Source { get; }

    public bool Holds(string text)
    {
        text = text.Trim();
        return match switch
        {
            ImportMatch.Contains => text.Contains(when, StringComparison.OrdinalIgnoreCase),
            ImportMatch.Starts => text.StartsWith(when, StringComparison.OrdinalIgnoreCase),
            ImportMatch.Ends => text.EndsWith(when, StringComparison.OrdinalIgnoreCase),
            ImportMatch.Pattern => pattern!.IsMatch(text),
            ImportMatch.Above => CellKinds.Read(text, mark) > limit,
            ImportMatch.Below => CellKinds.Read(text, mark) < limit,
            ImportMatch.Blank => text.Length == 0,
            _ => text.Equals(when, StringComparison.OrdinalIgnoreCase),
        };
    }

    /// <summary>A pattern in words: <c>#</c> is a number of any length, <c>*</c> any text; a run of spaces is one.</summary>
    public static Regex PatternOf(string text)
    {
        string[] parts = Regex.Split(text.Trim(), @"(#|\*|\s+)");
        string body = string.Concat(parts
            .Select(part => part switch
            {
                "#" => "[0-9]+",
                "*" => ".*",
                _ when part.Length > 0 && part.Trim().Length == 0 => @"\s+",
                _ =>
            Regex.Escape(part)
            }));
        return new Regex($"^{body}$",
            RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking | RegexOptions.Singleline);
    }
}
