using System.Globalization;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Water;

namespace FarmEconomics.Recount.Tests;

/// <summary>
/// Holds the lists of blocks to water on days of a season that is over against the recount: what each loses, and that no other way to share
/// saves more.
/// </summary>
internal static class DailyList
{
    private const double LitersPerGallon = 3.785411784;

    // Whole sets are laid out for three hundredths of what there is; a part of one of them may be lost in each block.
    private const double PartOfBest = 0.002;

    private static readonly (string Name, WaterAtHand Hand)[] Lists =
    [
        ("a day's water", new(new DateOnly(2025, 7, 8), 1, 1500 * LitersPerGallon, InSprinklerHours: false)),
        ("water for three days", new(new DateOnly(2025, 7, 22), 3, 6000 * LitersPerGallon, InSprinklerHours: false)),
        ("sprinklers", new(new DateOnly(2025, 8, 12), 2, 60, InSprinklerHours: true)),
    ];

    internal static List<string> Differences(Reviewed reviewed, Recount recount)
    {
        WaterAndPower supply = WaterAndPower.Of(SeasonCosts.Of(reviewed.Review.Season(2025)));
        Dictionary<string, WaterTriage> lists = Lists.ToDictionary(list => list.Name, list => supply.Triage(list.Hand));
        Ask(recount, lists);
        recount.RunApart("daily");
        Assert.Equal(0, recount.Count("FROM standing_rows WHERE year <> 2025"));
        List<string> differences = [];
        foreach (Dictionary<string, object?> row in recount.Rows("FROM daily_blocks"))
        {
            TriageLine line = lists[(string)row["list"]!].Lines.Single(one => one.Block.Name == (string)row["block"]!);
            Compare(differences, $"{row["list"]}, {row["block"]}, without water", line.Unwatered, (double)row["unwatered"]!, 1e-5);
            Compare(differences, $"{row["list"]}, {row["block"]}, with {line.Amount}", line.Lost, (double)row["lost"]!, 1e-5);
        }

        foreach (Dictionary<string, object?> row in recount.Rows("FROM daily_lists"))
        {
            WaterTriage list = lists[(string)row["list"]!];
            Compare(differences, $"{row["list"]}, the same everywhere", list.LostEvenly, (double)row["evenly"]!, 1e-5);
            Compare(differences, $"{row["list"]}, the best way", list.Lost, (double)row["best"]!, PartOfBest * list.Unwatered / list.Lost);
            Assert.True(
                list.Lost > 1.0 && list.Unwatered > list.Lost + 1.0,
                $"{row["list"]}: {list.Unwatered} lost without, {list.Lost} with"
            );
        }

        Assert.Equal(lists.Values.Sum(list => list.Lines.Count), recount.Count("FROM daily_blocks"));
        Assert.Contains(lists.Values, list => list.Lines.Any(line => line.Sets > 0));
        return differences;
    }

    private static void Ask(Recount recount, Dictionary<string, WaterTriage> lists)
    {
        string Text(IFormattable value) => value.ToString(null, CultureInfo.InvariantCulture);
        IEnumerable<string> asked = Lists.Select(list =>
            $"('{list.Name.Replace("'", "''", StringComparison.Ordinal)}', DATE '{list.Hand.From:yyyy-MM-dd}', {list.Hand.Days}, {Text(list.Hand.Amount / Unit(list.Hand))}, {list.Hand.InSprinklerHours})"
        );
        IEnumerable<string> given = Lists.SelectMany(list =>
            lists[list.Name]
                .Lines.Select(line =>
                    $"('{list.Name.Replace("'", "''", StringComparison.Ordinal)}', '{line.Block.Name}', {Text(line.Amount / Unit(list.Hand))})"
                )
        );
        recount.Ask(
            "CREATE TABLE lists(list VARCHAR, day DATE, days INTEGER, amount DOUBLE, in_hours BOOLEAN); INSERT INTO lists VALUES "
                + string.Join(", ", asked)
        );
        recount.Ask("CREATE TABLE given(list VARCHAR, block VARCHAR, amount DOUBLE); INSERT INTO given VALUES " + string.Join(", ", given));
    }

    private static double Unit(WaterAtHand hand) => hand.InSprinklerHours ? 1 : LitersPerGallon;

    private static void Compare(List<string> differences, string what, double theirs, double ours, double part)
    {
        if (Math.Abs(theirs - ours) > 1e-6 + (part * Math.Abs(theirs)))
        {
            differences.Add(FormattableString.Invariant($"{what}: {theirs} / {ours}"));
        }
    }
}
