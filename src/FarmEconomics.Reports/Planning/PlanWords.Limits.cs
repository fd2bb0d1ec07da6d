using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Planning;

/// <content>What limits the best mix, and what one more of it is worth.</content>
public static partial class PlanWords
{
    private const decimal LeastTold = 0.005m;

    /// <summary>What limits a mix, what is dearest over all its weeks first; as told in <see cref="Limits"/>, each solved again.</summary>
    internal static string Dearest(BestMix mix, Notation notation)
    {
        Worth[] things = [.. Together(mix, notation)];
        HashSet<(PlanLimitKind, int)> told = [.. mix.Together.Select(one => (one.Thing.Kind, one.Thing.Place))];
        Worth[] weeks = [.. Singles(mix, notation).Where(one => !one.IsCash)];
        Worth[] dearest =
        [
            .. things.Concat(weeks.Where(one => !told.Contains((one.Key.Kind, one.Key.Place))))
                .OrderByDescending(one => one.Money).DistinctBy(one => one.What).Where(one => one.Money >= LeastTold).Take(Named),
        ];
        string cash = Cash(mix, notation);
        if (dearest.Length == 0)
        {
            return (weeks.Length == 0 ? "Nothing is short in it."
                : notation.Text($"An hour, a crate or a foot of bed more would bring less than a cent.")) + cash;
        }

        Worth first = dearest[0];
        string week = things.Contains(first) && weeks.FirstOrDefault(one => IsOf(one, first)) is { Money: >= LeastTold } most
            ? $"; in the {most.When} alone, {notation.InWords(most.Money, Look.Rate)}" : "";
        string next = string.Join("; ", dearest.Skip(1).Select(one => one.Say(notation)));
        return $"What limits it most: {first.Said(notation)} would be worth "
            + $"{notation.InWords(first.Money, Look.Rate)}{week}." + (next.Length > 0 ? $" Next: {next}." : "") + cash;
    }

    private static bool IsOf(Worth one, Worth thing) => (one.Key.Kind, one.Key.Place) == (thing.Key.Kind, thing.Key.Place);

    /// <summary>Where cash holds a plan back, in a sentence after others; empty where it doesn't.</summary>
    private static string Cash(BestMix mix, Notation notation) =>
        mix.Worths.Where(one => one.Key.Kind == PlanLimitKind.Cash).MaxBy(one => one.More ?? one.Worth) is { } cash
            ? $" Cash holds it back: {notation.InWords(1m, Look.WholeMoney)} more by the end of {MonthOf(mix.Model, cash.Key.Week)} would "
                + $"be worth {notation.InWords((decimal)(cash.More ?? cash.Worth), Look.Rate)}."
            : "";

    /// <summary>What is short, over all its weeks together and week by week, with what one more adds and one less takes.</summary>
    /// <param name="mix">The mix, with its worths.</param>
    /// <param name="notation">How the farm writes.</param>
    /// <returns>The table.</returns>
    public static ReportTable Limits(BestMix mix, Notation notation)
    {
        ArgumentNullException.ThrowIfNull(mix);
        ArgumentNullException.ThrowIfNull(notation);
        ReportTable table = new ReportTable("What one more would be worth, the dearest of each first", notation).InOrder()
            .Column("What").Column("When").Column("One more is worth", Look.Rate).Column("One less takes", Look.Rate);
        foreach (Worth worth in Together(mix, notation).Concat(Singles(mix, notation)))
        {
            table.Row(worth.What, worth.When, worth.Money,
                worth.Less is { } known ? known : ReportCell.Missing("with one less no plan keeps within your limits"));
        }

        string further = mix.Binding.Count > mix.Worths.Count ? $" Further limits that bind: {mix.Binding.Count - mix.Worths.Count}." : "";
        bool ofHours = mix.Worths.Any(one => one.Key.Kind == PlanLimitKind.Hours);
        table.Note(table.Rows.Count == 0 ? "Nothing is full in this plan: one more of nothing would add to it."
            : (ofHours ? "An hour is told on top of what your own hour is worth. " : "")
            + "First what is full in several weeks, over all of them together; then single weeks. "
            + $"Each is a plan of its own with one more, and one less, of that alone.{further}");
        if (mix.Model.Water is not null)
        {
            table.Note(notation.Text($"Water and power: as if the weather of {mix.Model.CropYear - 1} came again. "
                + $"What drought and the generator then cost is taken off the plan."));
        }

        table.Note(NotKept(mix, notation));
        foreach (string one in mix.Model.NotChecked)
        {
            table.Note($"Not checked: {one}.");
        }

        return table;
    }

    private static IEnumerable<Worth> Singles(BestMix mix, Notation notation) =>
        mix.Worths
            .Where(one =>
                one.Key.Kind
                    is PlanLimitKind.Hours
                        or PlanLimitKind.Crates
                        or PlanLimitKind.Trays
                        or PlanLimitKind.Beds
                        or PlanLimitKind.Wish
                        or PlanLimitKind.Water
                        or PlanLimitKind.Power
                        or PlanLimitKind.Cash
                        or PlanLimitKind.Rotation
            )
            .Select(one => new Worth(
                one.Key,
                What(mix.Model, one.Key, notation),
                one.Key.Week < 0 ? ("", "all year")
                    : ("in the ", one.Key.Kind == PlanLimitKind.Cash ? $"month of {MonthOf(mix.Model, one.Key.Week)}"
                        : $"week of {mix.Model.Start.AddDays(7 * one.Key.Week):MMM d}"),
                (decimal)(one.More ?? one.Worth),
                (decimal?)one.Less
            ))
            .OrderByDescending(one => one.IsCash);

    private static IEnumerable<Worth> Together(BestMix mix, Notation notation) =>
        mix.Together.Select(one => new Worth(
            one.Thing,
            What(mix.Model, one.Thing, notation),
            one.Thing.Kind is PlanLimitKind.Beds or PlanLimitKind.Crates or PlanLimitKind.Trays
                ? ("", notation.Text($"all year (full in {one.Weeks.Count} weeks)"))
                : ("in ", notation.Text($"each of {one.Weeks.Count} weeks")),
            (decimal)one.More,
            (decimal?)one.Less));

    /// <summary>What one more of a limit is one more of.</summary>
    internal static string WhatOf(PlanModel model, PlanLimitKey key, Notation notation) => What(model, key, notation);

    private static string What(PlanModel model, PlanLimitKey key, Notation notation) => key.Kind switch
    {
        PlanLimitKind.Hours => "an hour",
        PlanLimitKind.Crates => $"a crate in the {model.Stores[key.Place].Name}",
        PlanLimitKind.Trays => "a tray",
        PlanLimitKind.Water => "1,000 gallons",
        PlanLimitKind.Power => "a kWh for the pump",
        PlanLimitKind.Cash => $"{notation.InWords(1m, Look.WholeMoney)} of cash",
        PlanLimitKind.Rotation => notation.Text(
            $"a foot of {model.Covers[model.Rotation[key.Place].Cover].Name} bed free of {model.Rotation[key.Place].Family}"
        ),
        PlanLimitKind.Beds => notation.Text($"a foot of {model.Covers[key.Place].Name} bed"),
        _ => notation.Text($"a foot less of {model.Crops[key.Place].Name} than you asked for"),
    };

    private sealed record Worth(PlanLimitKey Key, string What, (string In, string When) Time, decimal Money, decimal? Less)
    {
        /// <summary>True for money at the end of a month: it can't be set beside hours or lengths.</summary>
        internal bool IsCash => Key.Kind == PlanLimitKind.Cash;

        internal string When => Time.When;

        internal string WhenInWords => Time.In + Time.When;

        internal string Say(Notation notation) => $"{Said(notation)}, {notation.InWords(Money, Look.Rate)}";

        /// <summary>"A foot more of it": the word stands behind what is counted; of a wish it would be one less.</summary>
        internal string Said(Notation notation)
        {
            string what = notation.Label(What);
            int behind = what.IndexOf(' ', what.IndexOf(' ', StringComparison.Ordinal) + 1);
            string more = Key.Kind == PlanLimitKind.Wish ? what
                : behind < 0 ? $"{what} more"
                : $"{what[..behind]} more{what[behind..]}";
            return $"{more} {WhenInWords}";
        }
    }
}
