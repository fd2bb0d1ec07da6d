using System.Text.RegularExpressions;

namespace FarmEconomics.Files.Importing.Sources;

/// <summary>What a column of another program's file is likely to hold.</summary>
internal enum ColumnRole
{
    Date,
    SecondDate,
    PeriodEnd,
    Crop,
    Variety,
    Quantity,
    Unit,
    Amount,
    MoneyOut,
    MoneyIn,
    UnitPrice,
    Payee,
    Channel,
    Worker,
    Task,
    Hours,
    GrossHours,
    ClockIn,
    ClockOut,
    Break,
    SourceId,
    Bed,
    Category,
    Note,
    Kind,
    Total,
    Ignored,
}

/// <summary>The headings people and programs write, and what stands under them. Common practice, no source; a heading not listed here is
/// looked at by its values.</summary>
internal static partial class HeadingWords
{
    // In the order in which they are tried: of two columns with one role the one whose word stands first is taken.
    private static readonly (ColumnRole Role, string[] Words)[] Lists =
    [
        (ColumnRole.Date, ["date", "transaction date", "trans date", "booking date", "booked", "date posted", "sale date", "harvest date",
            "date harvested", "picked on", "day", "when", "datum", "week of", "week", "week beginning", "week starting", "week start",
            "week begins", "period start", "pay period start", "period begin", "from date"]),
        (ColumnRole.PeriodEnd, ["week ending", "week end", "week ended", "w e", "period end", "period ending", "pay period end",
            "pay period ending", "to date", "through"]),
        (ColumnRole.SecondDate, ["posting date", "posted date", "post date", "posted", "value date", "settlement date", "effective date"]),
        (ColumnRole.Crop, ["crop", "vegetable", "veg", "veggie", "item", "item name", "product", "produce", "crop name", "product name",
            "plant"]),
        (ColumnRole.Variety, ["variety", "cultivar", "type of crop"]),
        (ColumnRole.Quantity, ["quantity", "qty", "count", "number", "no", "amount harvested", "harvested", "harvest", "weight", "picked",
            "yield", "units sold", "how much", "how many", "sold", "qty sold", "quantity sold", "lbs", "pounds", "lb", "kg", "grams",
            "bunches", "cases"]),
        (ColumnRole.Unit, ["unit", "units", "uom", "measure", "unit of measure", "sold by"]),
        (ColumnRole.Amount, ["net sales", "net amount", "amount", "line total", "amount paid", "paid", "sales", "gross sales",
            "price with tax", "cost", "money", "value", "betrag", "signed amount", "transaction amount", "usd", "debit credit",
            "credit debit", "withdrawals deposits", "deposits withdrawals", "payment"]),
        (ColumnRole.MoneyOut, ["debit", "debits", "withdrawal", "withdrawals", "withdrawal amount", "money out", "out", "paid out",
            "debit amount", "spent", "expense"]),
        (ColumnRole.MoneyIn, ["credit", "credits", "deposit", "deposits", "deposit amount", "money in", "in", "paid in", "credit amount",
            "received"]),
        (ColumnRole.UnitPrice, ["price", "unit price", "price each", "each", "rate", "price per unit"]),
        (ColumnRole.Payee, ["payee", "description", "vendor", "supplier", "merchant", "text", "details of transaction",
            "transaction description", "brand", "store", "paid to", "memo", "narrative", "name of payee"]),
        (ColumnRole.Channel, ["channel", "outlet", "market", "customer", "buyer", "sold to", "sold at", "delivered to", "delivery to",
            "ship to", "where", "account", "restaurant"]),
        (ColumnRole.Worker, ["employee", "employee name", "worker", "name", "who", "crew", "crew member", "person", "staff"]),
        (ColumnRole.Task, ["task", "job", "activity", "work", "what", "department", "doing"]),
        (ColumnRole.Hours, ["net hours", "hours", "hrs", "total hours", "hours worked", "time worked", "duration", "regular hours"]),
        (ColumnRole.GrossHours, ["gross hours"]),
        (ColumnRole.ClockIn, ["clock in", "time in", "start", "start time", "from", "began", "punch in", "in time"]),
        (ColumnRole.ClockOut, ["clock out", "time out", "end", "end time", "finish", "to", "stop", "punch out", "out time"]),
        (ColumnRole.Break, ["break", "lunch", "break deduction", "unpaid break", "break hours", "lunch hours"]),
        (ColumnRole.SourceId, ["transaction id", "transaction number", "transaction no", "reference", "reference number", "ref", "order id",
            "order number", "invoice", "invoice number", "receipt", "receipt number", "check or slip", "check number", "check", "id"]),
        (ColumnRole.Bed, ["bed", "plot", "row", "field", "block", "plot name"]),
        (ColumnRole.Category, ["category", "class", "expense category", "account name"]),
        (ColumnRole.Note, ["note", "notes", "remark", "remarks", "comment", "comments"]),
        (ColumnRole.Kind, ["event type", "type", "transaction type", "status", "details"]),
        (ColumnRole.Total, ["total", "totals", "sum", "grand total", "row total"]),
        (ColumnRole.Ignored, ["balance", "running bal", "running balance", "saldo", "time", "time zone", "tax", "discounts",
            "employee id", "sku", "price point name", "modifiers applied", "payment id", "device name", "location", "dining option",
            "customer id", "customer name", "customer reference id", "gtin", "itemization type", "commission", "fulfillment note",
            "token", "card brand", "pan suffix", "in location", "out location", "source", "edited", "labor cost", "daily ot", "weekly ot",
            "overtime", "flags", "problem"]),
    ];

    private static readonly Dictionary<string, (ColumnRole Role, int Rank)> Known = Lists
        .SelectMany(list => list.Words.Select((word, rank) => (word, list.Role, rank))).GroupBy(entry => entry.word)
            .ToDictionary(group => group.Key, group => (group.First().Role, group.First().rank));

    /// <summary>The role of a heading; null for one that isn't known.</summary>
    public static ColumnRole? RoleOf(string heading) => Known.TryGetValue(Plain(heading), out (ColumnRole Role, int Rank) known)
        ? known.Role : IsQuantityWithUnit(heading) ? ColumnRole.Quantity : heading.Trim() is "$" or "€" or "£" ? ColumnRole.Amount : null;

    /// <summary>The unit a heading of quantities states: that of "Picked (lb)", of "Quantity kg", of "kg"; blank without one.</summary>
    public static string UnitOf(string heading) => InParentheses(heading) is { Length: > 0 } inside ? inside
        : Plain(heading).Split(' ')[^1] is var last && UnitNames.IsOne(last)
            && (last == Plain(heading) || IsQuantityWithUnit(heading)) ? last : "";

    private static bool IsQuantityWithUnit(string heading) => Plain(heading) is var plain && plain.LastIndexOf(' ') is > 0 and var at
        && UnitNames.IsOne(plain[(at + 1)..]) && Known.TryGetValue(plain[..at], out (ColumnRole Role, int Rank) known)
        && known.Role == ColumnRole.Quantity;

    /// <summary>How likely a heading is the one meant for its role: 0 is the likeliest.</summary>
    public static int RankOf(string heading) => Known.TryGetValue(Plain(heading), out (ColumnRole Role, int Rank) known) ? known.Rank
        : int.MaxValue;

    /// <summary>True for a heading of days that each begin a week.</summary>
    public static bool BeginsAWeek(string heading) =>
        Plain(heading) is "week of" or "week" or "week beginning" or "week starting" or "week start" or "week begins";

    /// <summary>A heading without what stands in parentheses, signs and case.</summary>
    public static string Plain(string heading) =>
        Spaces().Replace(Signs().Replace(Parentheses().Replace(heading.ToLowerInvariant(), " "), " "), " ").Trim();

    /// <summary>What stands in parentheses at the end of a heading: the unit of "Beans (lb)".</summary>
    public static string InParentheses(string heading) => Parentheses().Match(heading) is { Success: true } match
        ? match.Groups[1].Value.Trim() : "";

    /// <summary>The heading without it.</summary>
    public static string BeforeParentheses(string heading) => Parentheses().Replace(heading, "").Trim();

    /// <summary>True for the first text of a row of totals.</summary>
    public static bool IsTotal(string text) => Totals().IsMatch(text.Trim());

    /// <summary>True when nothing else stands there: Total, Season totals:, Sum (lb).</summary>
    public static bool IsBareTotal(string text) =>
        Totals().Replace(Parentheses().Replace(text.Trim(' ', ':', '.', '='), "").Trim(), "").Trim(' ', ':', '-').Length == 0;

    [GeneratedRegex(@"\s*[(\[]([^)\]]*)[)\]]\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex Parentheses();

    [GeneratedRegex(@"[^\p{L}\p{Nd}]+", RegexOptions.CultureInvariant)]
    private static partial Regex Signs();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Spaces();

    [GeneratedRegex(
        @"^((grand|sub|season|week|weekly|month|monthly|year)[ -]?)?totals?\b|^sum\b",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase
    )]
    private static partial Regex Totals();
}
