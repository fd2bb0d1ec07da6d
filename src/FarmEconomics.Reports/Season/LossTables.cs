using FarmEconomics.Decisions.Losses;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Season;

/// <summary>Where the harvest went, in money: tables by crop, week, channel and days held, and a sentence that reads them.</summary>
public static class LossTables
{
    private const string Worth =
        "Worth = what was paid for it where it was sold, else the crop's average price; "
            + "less the channels' fees, packing hours and packaging.";

    private static readonly Fate[] Fates = Enum.GetValues<Fate>();

    private static readonly (int From, int To)[] Held = [(0, 0), (1, 1), (2, 2), (3, 3), (4, 7), (8, 14), (15, 30), (31, int.MaxValue)];

    /// <summary>What was lost, how, and of which crops most.</summary>
    public static Prose Answer(PickedTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        Notation notation = tree.Season.Notation;
        string Money(decimal amount) => notation.InWords(amount, Look.WholeMoney);
        decimal all = tree.Value(_ => true).Amount;
        decimal lost = tree.Value(part => PickedTree.IsLoss(part.Fate)).Amount;
        if (all <= 0m)
        {
            return new Prose($"What became of the harvest of {tree.Season.CropYear} can't be told in "
                + $"money{(tree.WithoutValue.Count > 0 ? $" ({Prose.Text(tree.WithoutValue[0].Reason)})" : "")}.");
        }

        List<string> ways = [.. Fates.Where(PickedTree.IsLoss)
            .Select(fate => (Fate: fate, Amount: tree.Value(part => part.Fate == fate).Amount)).Where(way => way.Amount != 0m)
            .OrderByDescending(way => way.Amount).Select(way => $"{Money(way.Amount)} {Name(way.Fate).ToLowerInvariant()}")];
        List<(string Crop, decimal Amount)> worst = [.. tree.Parts.Where(part => PickedTree.IsLoss(part.Fate) && part.Value is not null)
            .GroupBy(part => part.Crop)
            .Select(crop => (crop.Key.Name, crop.Sum(part => part.Value!.Value.Amount))).Where(crop => crop.Item2 > 0m)
                .OrderByDescending(crop => crop.Item2).Take(3)];
        string text = lost == 0m && ways.Count == 0 ? $"Of {Money(all)} worth picked nothing was lost."
            : $"Of {Money(all)} worth picked, {Money(lost)} ({Phrase.Percent(lost / all)}) earned nothing"
                + (ways.Count > 0 ? $": {Phrase.List(ways)}." : ".");
        text += worst.Count > 0
            ? $" {(worst.Sum(crop => crop.Amount) * 2m > lost ? "Most of it" : "Most of all")}: "
                + $"{Phrase.List(worst, crop => crop.Crop, crop => Money(crop.Amount))}." : "";
        return new Prose(text
            + (tree.WithoutValue.Count > 0
            ? $" Not in these sums, because nothing tells their price or packing: "
                + $"{Phrase.List([.. tree.WithoutValue.Select(crop => Prose.Text(crop.Crop.Name)).Distinct()])}."
            : ""));
    }

    /// <summary>All of it by where it went.</summary>
    public static ReportTable ByFate(PickedTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        ReportTable table = new ReportTable($"Where the harvest of {tree.Season.CropYear} went", tree.Season.Notation).InOrder()
            .Column("Where").Column("At price", Look.Money).Column("Packing and fees", Look.Money).Column("Worth", Look.Money).Note(Worth);
        foreach (Fate fate in Fates)
        {
            Row(Name(fate), part => part.Fate == fate);
        }

        table.Total(Cells("All that was picked", _ => true));
        string unpicked = tree.Season.Notation.InWords(Math.Abs(tree.SoldUnpicked.Amount), Look.Money);
        return table.Note(tree.SoldUnpicked.Amount == 0m ? null
            : tree.SoldUnpicked.Amount > 0m ? $"Beside it {unpicked} was sold of what no harvest stands behind."
            : $"Beside it customers were given back {unpicked} more than was sold of what no harvest stands behind.");

        void Row(string name, Func<PickedPart, bool> which)
        {
            if (tree.Parts.Any(which))
            {
                table.Row(Cells(name, which));
            }
        }

        ReportCell[] Cells(string name, Func<PickedPart, bool> which)
        {
            List<PickedPart> parts = [.. tree.Parts.Where(which)];
            return [name, Of(part => part.Amount), Of(part => part.Deducted), Of(part => part.Value)];

            ReportCell Of(Func<PickedPart, Units.Money?> amount) => Known(parts, amount, null);
        }
    }

    /// <summary>By crop, most lost first.</summary>
    public static ReportTable ByCrop(PickedTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        ReportTable table = Columns(new ReportTable($"Where the harvest of {tree.Season.CropYear} went, by crop", tree.Season.Notation)
            .Opens().Column("Crop"), tree).Column("Lost of all", Look.Percent);
        foreach (IGrouping<Crop, PickedPart> crop in tree.Parts.GroupBy(part => part.Crop).OrderByDescending(Lost)
            .ThenBy(crop => crop.Key.Index))
        {
            string? why = crop.Select(part => part.WhyUnknown).FirstOrDefault(reason => reason is not null);
            decimal all = Sum(crop);
            table.Row([.. Cells(crop.Key.Name, tree, crop, why), why is not null ? ReportCell.Missing(why) : all > 0m ? Lost(crop) / all
                : ReportCell.Missing("worth nothing")]);
        }

        decimal total = Sum(tree.Parts);
        return table.Total([.. Cells("All crops", tree, tree.Parts, null), total > 0m ? Lost(tree.Parts) / total
            : ReportCell.Missing("worth nothing")])
            .Note(Worth).Note("Lost = given away, thrown out, past keeping and culled.");
    }

    /// <summary>By the week it was picked in.</summary>
    public static ReportTable ByWeek(PickedTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        ReportTable table = Columns(new ReportTable("The same by week of picking", tree.Season.Notation).InOrder()
            .Column("Week of", Look.Date), tree);
        foreach (IGrouping<DateOnly, PickedPart> week in tree.Parts.GroupBy(part => part.Week).OrderBy(week => week.Key))
        {
            table.Row(Cells(week.Key, tree, week, null));
        }

        return table.Total(Cells("All weeks", tree, tree.Parts, null));
    }

    /// <summary>By channel it left through.</summary>
    public static ReportTable ByChannel(PickedTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        ReportTable table = Columns(new ReportTable("The same by channel", tree.Season.Notation).Column("Channel"), tree);
        foreach (IGrouping<Channel?, PickedPart> channel in tree.Parts.GroupBy(part => part.Channel)
            .OrderBy(channel => channel.Key?.Index ?? int.MaxValue))
        {
            table.Row(Cells(channel.Key?.Name ?? "never left", tree, channel, null));
        }

        return table.Total(Cells("All", tree, tree.Parts, null));
    }

    /// <summary>By the days it was held; culled at the harvest stands apart.</summary>
    public static ReportTable ByDaysHeld(PickedTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        ReportTable table = Columns(new ReportTable("The same by days held", tree.Season.Notation).InOrder().Column("Days held"), tree);
        foreach ((int from, int to) in Held)
        {
            List<PickedPart> parts = [.. tree.Parts.Where(part => part.DaysHeld >= from && part.DaysHeld <= to)];
            if (parts.Count > 0)
            {
                table.Row(Cells(to == int.MaxValue ? $"{from} or more" : from == to ? $"{from}" : $"{from} to {to}", tree, parts, null));
            }
        }

        if (tree.Parts.Any(part => part.DaysHeld is null))
        {
            table.Row(Cells("culled at once", tree, tree.Parts.Where(part => part.DaysHeld is null), null));
        }

        return table.Total(Cells("All", tree, tree.Parts, null));
    }

    /// <summary>
    /// The check of the tree: of every crop all that was picked and culled is in it once, and what was sold of it brought what its sales
    /// say.
    /// </summary>
    /// <exception cref="InvalidOperationException">A sum doesn't hold.</exception>
    public static ReportTable RequireProof(PickedTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        ReportTable table = new ReportTable("Where the harvest went: both sides must be equal", tree.Season.Notation)
            .Column("Check").Column("Left", Look.Exact).Column("Right", Look.Exact).Column("Difference", Look.Exact);
        List<string> broken = [];
        decimal picked = tree.Parts.Sum(part => part.Quantity);
        Check("everything picked and culled, all units added up", picked,
            tree.Season.Crops.Sum(crop => crop.Sums.Harvested + crop.Sums.Culled));
        HashSet<Crop> unknown = [.. tree.WithoutValue.Select(crop => crop.Crop)];
        decimal unpicked = tree.Season.DispositionParts.Where(part => part.Lot is null && part.Enterprise is { } one
            && !unknown.Contains(one.Crop)).Sum(part => part.Amount.Amount);
        Check("money for what was sold", tree.Parts.Where(part => part.Fate == Fate.Sold).Sum(part => part.Amount?.Amount ?? 0m) + unpicked,
            tree.Season.Crops.Where(crop => !unknown.Contains(crop.Crop!)).Sum(crop => crop.SalesValue.Amount));
        return broken.Count == 0 ? table : throw new InvalidOperationException($"These checks fail: {string.Join("; ", broken)}.");

        void Check(string what, decimal left, decimal right)
        {
            table.Row(what, left, right, left - right);
            if (Math.Abs(left - right) > 0.0000001m)
            {
                broken.Add(tree.Season.Notation.Text($"{what} ({left} and {right})"));
            }
        }
    }

    /// <summary>A fate in words.</summary>
    public static string Name(Fate fate) => fate switch
    {
        Fate.Sold => "Sold",
        Fate.OnHand => "On hand",
        Fate.Eaten => "Eaten",
        Fate.OtherUse => "Other use",
        Fate.GivenAway => "Given away",
        Fate.ThrownOut => "Thrown out",
        Fate.PastKeeping => "Past keeping",
        _ => "Culled",
    };

    private static ReportTable Columns(ReportTable table, PickedTree tree)
    {
        foreach (Fate fate in Seen(tree))
        {
            table.Column(Name(fate), Look.Money);
        }

        return table.Column("All", Look.Money);
    }

    private static ReportCell[] Cells(ReportCell name, PickedTree tree, IEnumerable<PickedPart> parts, string? why)
    {
        List<PickedPart> own = [.. parts];
        return [name, .. Seen(tree)
            .Select(fate => Known(own.FindAll(part => part.Fate == fate), part => part.Value, why)), Known(own, part => part.Value, why)];
    }

    // Of parts none of which has a value nothing is known: no sum of theirs is 0.
    private static ReportCell Known(List<PickedPart> parts, Func<PickedPart, Units.Money?> amount, string? why) => ReportCell.Known(
        parts.Sum(part => part.Value is null ? 0m : amount(part)!.Value.Amount),
        why ?? (parts.Count > 0 && parts.TrueForAll(part => part.Value is null) ? parts[0].WhyUnknown : null));

    private static IEnumerable<Fate> Seen(PickedTree tree) => Fates.Where(fate => tree.Parts.Any(part => part.Fate == fate));

    private static decimal Sum(IEnumerable<PickedPart> parts) => parts.Sum(part => part.Value?.Amount ?? 0m);

    private static decimal Lost(IEnumerable<PickedPart> parts) => Sum(parts.Where(part => PickedTree.IsLoss(part.Fate)));
}
