using System.Text.RegularExpressions;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing.Drafts;

/// <summary>Proposes categories for payees: as the books had them before, else by a word in the name; what isn't known is left blank for
/// the grower.</summary>
internal static partial class DraftCategories
{
    private const int MostPatterns = 60;

    // Words of the trade and the category of the program's own list they point to. Common practice, no source.
    private static readonly (string Word, string Category)[] Words =
    [
        ("seed", "seed"), ("potting", "potting mix"), ("compost", "compost"), ("fertiliz", "fertilizer"), ("lime", "lime"),
            ("row cover", "row cover"), ("mulch", "mulch"), ("irrigation", "irrigation supplies"), ("drip", "irrigation supplies"),
        ("packag", "packaging"), ("box", "boxes and bags"), ("bags", "boxes and bags"), ("clamshell", "packaging"),
            ("market fee", "market fees"), ("stall fee", "market fees"), ("vendor fee", "market fees"), ("farmers market", "market fees"),
        ("insurance", "insurance"), ("electric", "electricity"), ("power co", "electricity"), ("propane", "heating fuel"),
            ("heating", "heating fuel"), ("fuel", "fuel"), ("gas station", "fuel"), ("diesel", "fuel"), ("water", "water"),
        ("internet", "phone and internet"), ("phone", "phone and internet"), ("wireless", "phone and internet"),
            ("certif", "certification"), ("bookkeep", "professional fees"), ("account", "professional fees"), ("vet", "professional fees"),
        ("rent", "rent"), ("lease", "rent"), ("hardware", "supplies"), ("farm supply", "supplies"), ("supply", "supplies"),
            ("tire", "repairs"), ("repair", "repairs"), ("tractor", "repairs"), ("tool", "tools"), ("office", "office"),
            ("print", "office"),
        ("payroll", "wages"), ("wage", "wages"), ("card fee", "card fees"), ("processing fee", "card fees"),
    ];

    /// <summary>A row per kind of payee, those with most money first; shops that differ in a number only are one.</summary>
    public static IEnumerable<DraftRow> Rows(string payee, IReadOnlyList<(string Payee, decimal Amount)> bookings, RecordTables? records)
    {
        Dictionary<string, string> before = records?.Expenses.Where(row => row.Payee is not null)
            .GroupBy(row => Stem(row.Payee!), StringComparer.OrdinalIgnoreCase)
                .ToDictionary(group => group.Key, group => group.GroupBy(row => row.Category).MaxBy(same => same.Count())!.Key,
                StringComparer.OrdinalIgnoreCase) ?? [];
        IGrouping<string, (string Payee, decimal Amount)>[] groups = [.. bookings
            .GroupBy(booking => Stem(booking.Payee), StringComparer.OrdinalIgnoreCase)
            .OrderByDescending(group => group.Sum(booking => Math.Abs(booking.Amount))).Take(MostPatterns)];

        // The first rule that holds counts: a name within another one comes after it.
        foreach (IGrouping<string, (string Payee, decimal Amount)> group in groups
            .OrderByDescending(group => groups.Count(other => group.Key.Contains(other.Key, StringComparison.OrdinalIgnoreCase))))
        {
            string? known = before.GetValueOrDefault(group.Key);
            string? guess = known ?? Words
                .FirstOrDefault(word => group.Key.Contains(word.Word, StringComparison.OrdinalIgnoreCase)).Category;
            bool one = group.All(booking => booking.Payee.Equals(group.Key, StringComparison.OrdinalIgnoreCase));
            yield return new DraftRow("category", payee)
            {
                When = group.Key,
                Match = one ? null
                    : group.All(booking => booking.Payee.StartsWith(group.Key, StringComparison.OrdinalIgnoreCase)) ? "starts" : "contains",
                Becomes = guess,
                Note = known is not null ? "as in your books" : guess is not null ? $"? guessed from the name, {Count(group)}"
                    : $"? which category? {Count(group)}",
            };
        }

        static string Count(IGrouping<string, (string, decimal Amount)> group) => group.Count() == 1 ? "1 row" : $"{group.Count()} rows";
    }

    /// <summary>A payee without how it was paid before it, and without the number of the shop, the card and what follows.</summary>
    private static string Stem(string payee)
    {
        string plain = HowPaid().Replace(Spaces().Replace(payee.Trim(), " "), "");
        int digit = plain.AsSpan().IndexOfAnyInRange('0', '9');
        string stem = digit < 4 ? plain : plain[..digit].TrimEnd(' ', '#', '*', '-', '/', ',', '.');
        return stem.Length < 4 ? plain : stem;
    }

    // Common practice, no source.
    [GeneratedRegex(
        @"^((check ?card|debit ?card|dbt crd|pos|point of sale|purchase( authorized on)?|ach( debit)?)\b[\s:#*.-]+"
            + @"|(?<!^)[0-9][0-9/.x*#-]*\s+)+(?=\p{L}.*\p{L}{3})",
        RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex HowPaid();

    [GeneratedRegex(@"\s{2,}", RegexOptions.CultureInvariant)]
    private static partial Regex Spaces();
}
