using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing.Drafts;

/// <summary>Money: what was paid and what came in. Which of the two a sign means is told from the file or asked, never guessed from a
/// few rows.</summary>
internal sealed partial class DraftMaker
{
    private const string CameInNote = "money that came in is no expense; a refund among it you add yourself, below 0";

    // What banks write beside an amount without a sign that came in. Common practice, no source.
    private static readonly string[] CameIn = ["credit", "credits", "cr", "deposit", "deposits", "money in", "in", "received"];

    private void SaleMoney()
    {
        SourceColumn? amount = columns.Of(ColumnRole.Amount);
        if (IsWide)
        {
            rows.RemoveAll(row => row.Column == "quantity");
            rows.Add(new DraftRow("quantity", null)
            {
                Constant = "?",
                Note = "? the table has money only, and a sale needs how much was sold: take the list it was added up from",
            });
            rows.Add(new DraftRow("amount", ImportWords.Cell) { Note = "the money under each heading" });
        }
        else if (amount is not null)
        {
            rows.Add(new DraftRow("amount", amount.Heading)
            {
                Format = Joined(Comma(amount), Round(amount, 2)),
                Note = $"such as {amount.First}"
            });
            if (amount.Values.Any(text => CellKinds.Read(text, amount.Mark(FarmMark)) < 0m))
            {
                rows.Add(new DraftRow("quantity", amount.Heading)
                {
                    When = "0",
                    Match = "below",
                    Becomes = "0",
                    Note = "money given back: a sale of 0 with the amount below 0"
                });
            }
        }
        else if (columns.Of(ColumnRole.UnitPrice) is { } price)
        {
            rows.Add(new DraftRow("unit_price", price.Heading)
            {
                Format = Joined(Comma(price), Round(price, 4)),
                Note = $"such as {price.First}"
            });
        }
    }

    private void Expense()
    {
        SourceColumn? outgoing = columns.Of(ColumnRole.MoneyOut);
        SourceColumn? amount = outgoing ?? columns.Of(ColumnRole.Amount) ?? columns.Of(ColumnRole.UnitPrice);
        SourceColumn? payee = columns.Of(ColumnRole.Payee) ?? columns.All
            .FirstOrDefault(column => column.IsText && column.Role is null or ColumnRole.Kind or ColumnRole.Note);
        if (amount is null)
        {
            rows.Add(new DraftRow("amount", null) { Constant = "?", Note = "? no column of money is seen" });
            return;
        }

        char mark = amount.Mark(FarmMark);
        int below = amount.Values.Count(text => CellKinds.Read(text, mark) < 0m);
        int above = amount.Values.Count(text => CellKinds.Read(text, mark) > 0m);
        bool turned = outgoing is null ? below > 0 && below >= above : below > above;
        if (outgoing is null && below > 0 && above > below)
        {
            SignAsked(amount, mark);
        }
        else
        {
            rows.Add(new DraftRow("amount", amount.Heading)
            {
                Format = Joined(Comma(amount), Round(amount, 2), turned ? ImportWords.Negative : null),
                Note = turned ? "money paid stands below 0 here; the sign is turned" : outgoing is not null ? "the column of money paid"
                    : $"such as {amount.First}",
            });
            MoneyThatCameIn(amount, outgoing is not null, turned);
        }

        Nothing(amount.Heading, amount.Values, text => CellKinds.Read(text, mark) == 0m, "no money");
        Payee(payee, amount, mark, turned);
    }

    // A market's account takes more deposits than it makes payments, a card's statement has payments above 0: both look alike.
    private void SignAsked(SourceColumn amount, char mark)
    {
        string paid = amount.Values.First(text => CellKinds.Read(text, mark) < 0m);
        string came = amount.Values.First(text => CellKinds.Read(text, mark) > 0m);
        rows.Add(new DraftRow("amount", amount.Heading)
        {
            Format = Joined(Comma(amount), Round(amount, 2), $"{ImportWords.PaidBelow} or {ImportWords.PaidAbove}"),
            Readings =
            [
                $"{paid} was paid, and {came} came in: an account's list (what came in is left out)",
                $"{came} was paid, and {paid} came back: a card's list, or one of your own",
            ],
            Note = $"? which was paid, {paid} or {came}? {ImportWords.PaidBelow}: those below 0, and the others are left out; "
                + $"{ImportWords.PaidAbove}: those above 0, and the others came back",
        });
    }

    private void MoneyThatCameIn(SourceColumn amount, bool apart, bool turned)
    {
        if (apart)
        {
            rows.Add(new DraftRow(null, amount.Heading)
            {
                Match = "blank",
                Note = CameInNote,
            });
        }
        else if (turned)
        {
            rows.Add(new DraftRow(null, amount.Heading)
            {
                When = "0",
                Match = "above",
                Note = "money that came in is no expense; take this line out to keep refunds",
            });
        }

        // Amounts without a sign, and a word beside them that says which came in.
        if (!apart && !turned && columns.All
            .Where(column => column != amount && column.Values.Any(SaysCameIn) && !column.Values.All(SaysCameIn))
            .OrderBy(column => column.Role != ColumnRole.Kind).ThenBy(column => column.Values.Distinct().Count())
            .FirstOrDefault() is { } kind)
        {
            Nothing(kind.Heading, kind.Values, SaysCameIn, $"? {CameInNote}");
        }

        static bool SaysCameIn(string text) => CameIn.Contains(HeadingWords.Plain(text));
    }

    private void Payee(SourceColumn? payee, SourceColumn amount, char mark, bool turned)
    {
        if (payee is not null)
        {
            rows.Add(new DraftRow("payee", payee.Heading) { Note = $"such as {payee.First}" });
        }

        if (columns.Of(ColumnRole.Crop) is { } crop && crop != payee)
        {
            rows.Add(new DraftRow("crop", crop.Heading) { Note = Distinct(crop) });
        }

        bool isBanks = turned || columns.Has(ColumnRole.SecondDate) || columns.Has(ColumnRole.Kind);
        if (columns.Of(ColumnRole.Category) is { } category && (payee is null || !isBanks || AreFarms(category)))
        {
            rows.Add(new DraftRow("category", category.Heading) { Note = Distinct(category) });
        }
        else if (payee is null || columns.Has(ColumnRole.Crop))
        {
            rows.Add(new DraftRow("category", null) { Constant = "?", Note = "? one category for all rows, such as seed" });
        }
        else
        {
            DraftRow[] categories = [.. DraftCategories.Rows(payee.Heading,
                [.. block.Rows.Select(row => (row.At(payee.At), Amount: CellKinds.Read(row.At(amount.At), mark) ?? 0m))
                    .Where(row => row.Item1.Length > 0 && (turned ? row.Amount < 0m : row.Amount != 0m))], Records?.Tables)];
            rows.AddRange(categories.DefaultIfEmpty(new DraftRow("category", null)
            {
                Constant = "?",
                Note = "? one category for all rows: no amount is seen to tell them by",
            }));
        }
    }

    // A card's own categories ("Shopping") are the bank's words for its customers; the grower's own are kept, and asked for where unknown.
    private bool AreFarms(SourceColumn category)
    {
        HashSet<string> known = new(Defaults.Categories.Select(row => row.Category), StringComparer.OrdinalIgnoreCase);
        if (Records is { Tables: var tables })
        {
            known.UnionWith(tables.Categories.Select(row => row.Category.Trim()));
            known.UnionWith(tables.Aliases.Where(row => row.Table == "categories").Select(row => row.Alias.Trim()));
        }

        return category.Values.Count(known.Contains) * 2 >= category.Values.Count;
    }
}
