namespace FarmEconomics.Funding;

/// <summary>Words by which items of the balance sheet are told apart: whole words, or their beginning.</summary>
public sealed record BalanceWords
{
    internal static IReadOnlyList<AssumptionEntry> Entries { get; } =
    [
        new WordsEntry("cash_items", "Items that are money", "balance-sheet items that are money")
        { Get = a => a.Items.Cash, Set = (a, v) => a with { Items = a.Items with { Cash = v } } },
        new WordsEntry("loan_items", "Items that are borrowed money", "liabilities that are borrowed money")
        { Get = a => a.Items.Loans, Set = (a, v) => a with { Items = a.Items with { Loans = v } } },
        new WordsEntry("supply_items", "Items that are inputs", "current assets that are inputs not used yet: their change is a cost, not a return")
        { Get = a => a.Items.Supplies, Set = (a, v) => a with { Items = a.Items with { Supplies = v } } },
        new WordsEntry("paid_ahead_items", "Items paid ahead", "current liabilities that are customers' money for later produce: their change is a return")
        { Get = a => a.Items.PaidAhead, Set = (a, v) => a with { Items = a.Items with { PaidAhead = v } } },
        new WordsEntry("beside_assets_items", "Items beside the assets table", "longer-term items of the balance sheet that the assets table doesn't hold")
        { Get = a => a.Items.BesideAssets, Set = (a, v) => a with { Items = a.Items with { BesideAssets = v } } },
    ];

    /// <summary>Items that are money.</summary>
    public IReadOnlyList<string> Cash { get; init; } = ["cash", "checking", "savings", "bank"];

    /// <summary>Liabilities that are borrowed money.</summary>
    public IReadOnlyList<string> Loans { get; init; } =
        ["note", "notes", "loan", "loans", "mortgage", "line of credit", "credit line", "due within a year", "due later"];

    /// <summary>Current assets that are inputs not used yet.</summary>
    public IReadOnlyList<string> Supplies { get; init; } = ["seed", "mix", "boxes", "supplies", "fuel", "fertilizer", "feed", "prepaid expense"];

    /// <summary>Current liabilities that are customers' money for later produce.</summary>
    public IReadOnlyList<string> PaidAhead { get; init; } = ["paid ahead", "prepaid share", "deposit", "deferred"];

    /// <summary>Longer-term items the assets table doesn't hold.</summary>
    public IReadOnlyList<string> BesideAssets { get; init; } = ["land"];

    /// <summary>Whether one of the words stands in an item.</summary>
    internal static bool Names(IReadOnlyList<string> words, string item) =>
        words.Any(word => $" {Plain(item)} ".Contains($" {Plain(word)} ", StringComparison.Ordinal));

    private static string Plain(string text) =>
        string.Join(' ', new string([.. text.ToLowerInvariant().Select(c => char.IsLetterOrDigit(c) ? c : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
