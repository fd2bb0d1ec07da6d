namespace FarmEconomics.Recount.Tests;

/// <summary>That the changed records reach the rules the recount is there for: a rule nothing reaches would be compared in vain.</summary>
public sealed class CoverageTests
{
    private static readonly Dictionary<string, string> Reached = new()
    {
        ["lots drawn on though too old"] = "FROM parts p JOIN lots l ON l.lot = p.lot JOIN queue q ON q.leaving = p.leaving WHERE q.date > l.kept_until",
        ["lots passed by because they are out of reach"] = "FROM parts p JOIN queue q ON q.leaving = p.leaving WHERE p.lot IS NULL AND EXISTS (FROM unsold u WHERE u.crop = q.crop AND q.date > u.kept_until + 7)",
        ["sales noted before their harvest"] = "FROM parts p JOIN lots l ON l.lot = p.lot JOIN queue q ON q.leaving = p.leaving WHERE l.date > q.date",
        ["lots kept to the end of their crop year"] = "FROM unsold u JOIN crops c ON c.crop = u.crop WHERE storage_days IS NULL",
        ["rows that name a planting and draw on another"] = "FROM parts p JOIN queue q ON q.leaving = p.leaving WHERE q.planting <> p.planting",
        ["more left than was picked"] = "FROM unmatched_users",
        ["and of a crop without a planting that year"] = "FROM loose_money",
        ["crop-only harvests between plantings"] = "FROM harvest_shares s JOIN harvest_shares o ON o.what = s.what AND o.part <> s.part",
        ["crop-only harvests when nothing stood in a bed"] = "FROM harvest_shares WHERE choice IN (2, 4)",
        ["crop-only harvests when only young plantings stood"] = "FROM harvest_shares WHERE choice = 3",
        ["crop-only harvests before their planting"] = "FROM harvest_shares WHERE choice = 5",
        ["crop-only harvests that pass by a young planting"] = "FROM harvest_shares h JOIN harvest_rows r ON r.row = h.what JOIN standing s ON s.crop = r.crop AND s.in_bed <= r.date AND r.date < s.until WHERE r.date - s.in_bed < soonest AND choice IN (1, 2)",
        ["failed plantings whose longest stay is over"] = "FROM stays s JOIN planting_rows p ON p.row = s.row JOIN planting_years y ON y.planting = s.planting WHERE p.out_of_bed IS NULL AND last_harvest IS NULL AND NOT s.perennial AND s.out_of_bed < getvariable('as_of')",
        ["crates estimated"] = "FROM crate_use WHERE NOT known AND NOT by_value AND weight > 0",
        ["priced sales without a price"] = "FROM leaving_money WHERE kind IN ('market', 'stand', 'wholesale') AND NOT priced AND sales > 0",
        ["credits"] = "FROM leaving_money m JOIN unmatched_users u ON u.leaving = m.row WHERE m.quantity = 0 AND m.sales < 0",
        ["fees on shares"] = "FROM leaving_money WHERE kind = 'share' AND fee > 0",
        ["goods through a channel of kind other"] = "FROM leaving_money WHERE kind = 'other' AND sales > 0",
        ["values from average prices"] = "FROM valued v WHERE own_value IS NULL AND list_value > 0 AND NOT EXISTS (FROM prices p WHERE p.crop = v.crop)",
        ["nursery hours with trays of some blank"] = "FROM bed_stage b JOIN work w ON w.row = b.row JOIN stays s ON s.planting = b.planting WHERE w.stage = 'nursery' AND s.trays IS NULL",
        ["hours on a day near a harvest"] = "FROM day_stage d JOIN work w ON w.row = d.row WHERE w.stage IN ('harvest', 'pack') AND NOT EXISTS (FROM lots l WHERE l.crop = w.crop AND l.date = w.date)",
        ["selling hours that name a crop"] = "FROM day_stage d JOIN work w ON w.row = d.row WHERE w.stage = 'sell'",
        ["hours by bed-foot-weeks, for lack of better"] = "FROM fallback_stage",
        ["hours spread by standards"] = "FROM spread_rows WHERE stage = 'harvest'",
        ["hours added to meet a total"] = "FROM added WHERE stage = 'harvest'",
        ["standards of a stage nobody logged"] = "FROM filled",
        ["hired work by wage"] = "FROM work_cost c JOIN work w ON w.row = c.row WHERE c.stream = 'hired' AND c.total > 0 AND w.year NOT IN (SELECT year FROM wage_years)",
        ["and beside it what the books paid on top"] = "FROM work_cost WHERE stream = 'burden' AND total > 0",
        ["what is paid on top of wages, by class"] = "FROM booked WHERE class = 'labor' AND burden AND category = 'workers compensation'",
        ["and by tax line"] = "FROM booked WHERE class = 'labor' AND burden AND category = 'payroll taxes'",
        ["wage times hours without anything in the books"] = "FROM work w WHERE w.kind = 'hired' AND w.year NOT IN (SELECT year FROM labor_books)",
        ["hours added to a year of wages"] = "FROM work w WHERE w.row >= 1000000 AND w.kind = 'hired' AND w.year IN (SELECT year FROM wage_years)",
        ["hours added to a year without"] = "FROM work w WHERE w.row >= 1000000 AND w.kind = 'owner'",
        ["an asset ordered for after the closing date"] = "FROM assets WHERE in_service > getvariable('as_of')",
        ["a year of ownership cut short"] = "FROM ownership WHERE year = 2026",
        ["a load that goes on after the closing date"] = "FROM loads WHERE since <= getvariable('as_of') AND until > getvariable('as_of')",
        ["capacity of a part of a year"] = "FROM capacities c JOIN pools p ON p.pool = c.pool WHERE c.capacity > 0 AND c.capacity < p.capacity",
        ["hours that don't divide evenly"] = "FROM work_hours WHERE round(hours, 6) <> round(hours, 8)",
        ["quantities that don't divide evenly"] = "FROM lots WHERE quantity <> round(quantity, 4)",
        ["wages that name a pool, a channel or a crop"] = "FROM books WHERE class = 'labor' AND (pool IS NOT NULL OR crop IS NOT NULL)",
        ["crop rows by quantity picked"] = "FROM direct_money WHERE varies_with = 'quantity' AND row IN (SELECT row FROM crop_row_users)",
        ["crop rows by sales"] = "FROM direct_money WHERE varies_with = 'units' AND row IN (SELECT row FROM crop_row_users)",
        ["crop rows of a later year's plantings"] = "FROM crop_row_users u JOIN books b ON b.row = u.row WHERE u.year > b.year",
        ["crop rows of a crop that is never planted again"] = "FROM direct_money WHERE planting IS NULL",
        ["hours of a crop that is never planted again"] = "FROM work w WHERE hours > 0 AND NOT EXISTS (FROM work_to d WHERE d.row = w.row)",
        ["refunds"] = "FROM (SELECT units FROM direct_money UNION ALL SELECT units FROM pool_books) WHERE units < 0",
        ["the household's part of ownership"] = "FROM ownership WHERE household > 0",
        ["a pool by days of harvest"] = "FROM users WHERE pool = 'nursery supplies' AND kind = 'planting'",
        ["a pool by hours of a stage"] = "FROM users WHERE pool = 'pack shed' AND kind = 'planting'",
        ["a channel's pool by crates"] = "FROM users WHERE pool = 'Food Shelf (channel)'",
        ["use written for a planting or a crop"] = "FROM planting_use",
        ["use of a crop that has no planting"] = "FROM users WHERE kind = 'not assigned'",
        ["pools in a circle"] = "FROM visits WHERE origin = pool AND times > 1",
        ["unused capacity"] = "FROM charges WHERE user = 'unused' AND units > 0",
        ["a capacity exceeded"] = "FROM (SELECT pool, year, sum(weight) AS used FROM users GROUP BY ALL) u JOIN pools p ON p.pool = u.pool WHERE used > capacity",
        ["stock on hand"] = "FROM closing_stock WHERE units > 0",
        ["produce that was lost"] = "FROM unsold WHERE NOT on_hand",
    };

    /// <summary>What some changes alone must reach, looked at where the farm changed so is recounted.</summary>
    private static readonly Dictionary<string, string[]> ReachedAlone = new()
    {
        ["no owner wage and no interest"] =
        [
            "FROM known WHERE NOT labor_known AND overhead_labor_known",
            "FROM known WHERE NOT ownership_known AND overhead_ownership_known",
            "FROM known WHERE NOT overhead_ownership_known",
            "FROM pools_result WHERE ownership_cost IS NULL",
            "FROM pools_result WHERE ownership_cost IS NOT NULL AND received_from_pools IS NULL",
            "FROM charges_result WHERE amount IS NULL",
        ],
        ["crates"] =
        [
            "FROM crate_use WHERE by_value",
        ],
        ["settings"] =
        [
            "FROM ownership WHERE pool = 'land' AND year = 2025 AND amount > 0",
        ],
        ["no closing stock, earlier close"] =
        [
            "FROM ownership WHERE pool = 'land' AND year = 2025 AND amount > 0 AND amount < 61235",
        ],
        ["land of a value without interest"] =
        [
            "FROM unowned WHERE pool = 'land'",
        ],
        ["stands"] =
        [
            "FROM stands WHERE units < 0",
            "FROM stands WHERE planting = 'Gave up' AND units = 0 AND is_unknown = 0",
            "FROM stands WHERE planting = 'Young' AND year = 2025 AND units < 0",
            "FROM stands WHERE planting = 'Rhubarb bed' AND year = 2025 AND units > 0",
            "FROM stands s JOIN budgets b ON b.planting = s.planting AND b.year = s.year WHERE b.harvested > 0 AND s.units = 0",
        ],
        ["stands of unknown cost"] =
        [
            "FROM crops_result WHERE crop = 'Asparagus' AND crop_year = 2025 AND net_return IS NULL AND gross_margin IS NOT NULL",
        ],
        ["nobody works unpaid"] =
        [
            "FROM known WHERE hours_known AND NOT hours_logged AND labor_known",
            "FROM standard_hours s WHERE s.hours > 0 AND s.year NOT IN (SELECT year FROM wage_years)",
        ],
        ["wages and standards without a log"] =
        [
            "FROM filled f JOIN work w ON w.row = f.row WHERE w.kind = 'hired'",
            "FROM filled f JOIN work w ON w.row = f.row WHERE w.kind = 'owner'",
        ],
    };

    /// <summary>Rules that a change is there for and that the recount of the farm changed so doesn't reach.</summary>
    internal static IEnumerable<string> Missed(string change, Recount recount) =>
        ReachedAlone.GetValueOrDefault(change, []).Where(rule => recount.Count(rule) == 0);

    [Fact]
    public void RulesOfAChange_AreThoseOfOneThatIsMade() =>
        Assert.Subset(ChangedFarms.Changes.Keys.ToHashSet(), ReachedAlone.Keys.ToHashSet());

    [Fact]
    public void ChangedFarm_ReachesTheRules()
    {
        using RecordsCopy copy = new(1, ChangedFarms.Changes.Where(change => change.Key != "settings" && !ChangedFarms.Alone.Contains(change.Key)).SelectMany(change => change.Value));
        using Recount recount = new(copy.Folder);

        Assert.Empty(Reached.Where(rule => recount.Count(rule.Value) == 0).Select(rule => rule.Key));
    }
}
