using Xunit;

namespace FarmEconomics.Tests.DemoFarm;

/// <summary>The records hang together, save for the gaps that demo-data/README.md tells of.</summary>
public sealed class DemoFarmRecordsTests
{
    private static readonly DemoRecords Farm = new();

    [Fact]
    public void Beds_DayByDay_HoldNoMoreThanTheirLengthButOnce()
    {
        var lengths = Farm.Beds.ToDictionary(b => b["bed"], b => b.Number("length_ft"));
        var overfull = new List<(string Bed, int Days)>();
        foreach (var bed in Farm.Plantings.GroupBy(p => p["bed"]))
        {
            var stays = bed.Select(p => (From: p.Date("in_bed")!.Value, To: Farm.Out(p), Feet: p.Number("bed_feet"))).ToList();
            var edges = stays.SelectMany(s => new[] { s.From, s.To }).Distinct().Order().ToList();
            foreach (var (from, to) in edges.Zip(edges.Skip(1)))
            {
                if (stays.Where(s => s.From <= from && from < s.To).Sum(s => s.Feet) > lengths[bed.Key])
                {
                    overfull.Add((bed.Key, to.DayNumber - from.DayNumber));
                }
            }
        }

        Assert.Equal(7, Assert.Single(overfull).Days);
    }

    [Fact]
    public void Stock_FirstInFirstOut_CoversEverySaleButTwo()
    {
        var unmatched = new List<(string Crop, decimal Quantity)>();
        var tooOld = new List<(string Crop, int Age)>();
        foreach (var crop in Farm.Crops.Keys)
        {
            var keeps = (int)Farm.Crops[crop].Number("storage_days");
            var lots = new List<(DateOnly Day, decimal Left)>();
            var moves = Farm.Harvests.Where(h => h["crop"] == crop).Select(h => (Day: h.Date("date")!.Value, In: true, Quantity: h.Number("quantity")))
                .Concat(Farm.Sales.Where(s => s["crop"] == crop).Select(s => (Day: s.Date("date")!.Value, In: false, Quantity: Farm.Quantity(s))))
                .OrderBy(m => m.Day).ThenBy(m => m.In ? 0 : 1);
            foreach (var (day, isIn, quantity) in moves)
            {
                if (isIn)
                {
                    lots.Add((day, quantity));
                    continue;
                }

                var left = quantity;
                foreach (var sound in new[] { true, false })
                {
                    for (var i = 0; i < lots.Count && left > 0m; i++)
                    {
                        var age = day.DayNumber - lots[i].Day.DayNumber;
                        var part = sound && age > keeps ? 0m : Math.Min(lots[i].Left, left);
                        if (part > 0m && age > keeps)
                        {
                            tooOld.Add((crop, age));
                        }

                        lots[i] = (lots[i].Day, lots[i].Left - part);
                        left -= part;
                    }
                }

                if (left > 0m)
                {
                    unmatched.Add((crop, left));
                }
            }
        }

        Assert.Equal(("Peppers", 6m), Assert.Single(unmatched));
        Assert.Equal("Arugula", Assert.Single(tooOld).Crop);
    }

    [Fact]
    public void Harvests_ByDate_FallInsideTheirPlanting()
    {
        var plantings = Farm.Plantings.GroupBy(p => p["planting"]).ToDictionary(g => g.Key, g => g.ToList());
        Assert.All(Farm.Harvests.Where(h => h["planting"].Length > 0), h =>
        {
            var rows = plantings[h["planting"]];
            Assert.All(rows, p => Assert.Equal(h["crop"], p["crop"]));
            Assert.All(rows, p => Assert.InRange(h.Date("date")!.Value, p.Date("in_bed")!.Value, Farm.Out(p).AddDays(-1)));
        });
    }

    [Fact]
    public void Greens_MarchToDecember_AreSoldNearlyEveryWeek()
    {
        foreach (var year in DemoRecords.Years)
        {
            var sold = Farm.Sales.Where(s => DemoRecords.InYear(s, year) && Farm.Crops[s["crop"]]["group"] == "greens" && Farm.ChannelKind[s["channel"]] is "market" or "stand" or "wholesale" or "share")
                .Select(s => s.Date("date")!.Value.DayOfYear / 7).ToHashSet();
            Assert.True(Enumerable.Range(9, 43).Count(week => !sold.Contains(week)) <= 2, $"{year}");
        }
    }

    /// <summary>From what the balance sheet counted at the end of 2024, back to the first day and on to the last: the account never stood below nothing.</summary>
    [Fact]
    public void Cash_OnEveryDay_IsThere()
    {
        var moves = DemoFarmMoney.CashMoves(Farm);
        var counted = PlainCsv.Demo("balances").Where(b => b["item"] == "Cash and checking").ToDictionary(b => b.Date("date")!.Value, b => b.Number("amount"));
        var begin = new DateOnly(2022, 12, 31);

        // Sales move the walk on the day they left: what customers still owe is in it, and not in the account.
        foreach (var owed in PlainCsv.Demo("balances").Where(b => b["kind"] == "invoices"))
        {
            counted[owed.Date("date")!.Value] += owed.Number("amount");
        }

        var held = counted[new(2024, 12, 31)] - moves.Where(m => m.Key > begin && m.Key <= new DateOnly(2024, 12, 31)).Sum(m => m.Value);
        var byDay = new Dictionary<DateOnly, decimal>();
        foreach (var (day, move) in moves.Where(m => m.Key > begin))
        {
            held += move;
            byDay[day] = held;
        }

        Assert.All(byDay, day => Assert.True(day.Value >= 0m, $"{day.Key:yyyy-MM-dd}: {day.Value} in the account"));
        Assert.Equal(counted[new(2025, 12, 31)] + 41.29m, byDay.Where(day => day.Key <= new DateOnly(2025, 12, 31)).MaxBy(day => day.Key).Value);
    }

    /// <summary>The board is written new as crops come and go, not once a year.</summary>
    [Fact]
    public void Prices_WithinASeason_Move()
    {
        foreach (var year in DemoRecords.Years)
        {
            var moving = PlainCsv.Demo("prices").Where(p => p["channel"] == "Saturday Market" && p.Date("from") is { } from && from.Year == year && from.Month > 3).Select(p => p["crop"]).Distinct().Count();
            Assert.True(moving >= 15, $"{year}: the price of {moving} crops moves within the season");
        }
    }

    [Fact]
    public void Labor_ByPersonAndDay_IsADaysWork()
    {
        Assert.All(
            Farm.Labor.GroupBy(l => (l["date"], l["worker"])),
            day => Assert.True(day.Sum(l => l.Number("hours")) <= 12m, $"{day.Key}: {day.Sum(l => l.Number("hours"))} hours"));
    }

    [Fact]
    public void Rows_InAll_KeepAReviewShort()
    {
        var rows = Directory.GetFiles(PlainCsv.Folder(), "*.csv").Sum(path => File.ReadLines(path).Count() - 1);

        Assert.InRange(rows, 12_000, 26_000);
        Assert.InRange(Farm.Crops.Count, 30, 41);
    }

    [Fact]
    public void PlannedGaps_InTheRecords_AreThere()
    {
        Assert.DoesNotContain(PlainCsv.Demo("prices"), p => p["crop"] == "Kohlrabi");
        Assert.Contains(Farm.Harvests, h => h["planting"].Length == 0);
        Assert.Contains(Farm.Sales, s => s["unit"].Length == 0);
        Assert.Contains(Farm.Plantings, p => p["sown"].Length > 0 && p["trays"].Length == 0);
        Assert.Contains(Farm.Labor, l => Farm.Stage[l["task"]] == "grow" && l["crop"].Length + l["planting"].Length + l["pool"].Length == 0);
        Assert.Contains(Farm.Plantings, p => Farm.CropYear(p) == 2025 && p.Date("in_bed")!.Value.Year == 2024);
        Assert.Contains(Farm.Sales, s => s.Date("date")!.Value.Year == 2026 && Farm.Crops[s["crop"]].Number("storage_days") > 100m);
    }
}
