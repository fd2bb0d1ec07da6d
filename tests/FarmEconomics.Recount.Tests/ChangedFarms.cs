namespace FarmEconomics.Recount.Tests;

/// <summary>Ways to change the demo farm's records, so that the comparison doesn't rest on one set of data. Each goes where the demo doesn't.</summary>
internal static class ChangedFarms
{
    /// <summary>Changes that leave so much out that others would have nothing left to change.</summary>
    internal static readonly string[] Alone =
    [
        "no closing stock, earlier close", "an early close with stock on hand", "no owner wage and no interest", "nobody works unpaid", "wages and standards without a log", "land of a value without interest",
        "plantings nobody named", "stands of unknown cost",
    ];

    /// <summary>All changes that go together.</summary>
    internal static IEnumerable<string> Together => Changes.Where(change => !Alone.Contains(change.Key)).SelectMany(change => change.Value);

    internal static readonly Dictionary<string, string[]> Changes = new()
    {
        // More sold than picked, old lots, prices of four decimals, sales that name their planting, sales of a priced channel without a price.
        ["sales"] =
        [
            "UPDATE sales SET quantity = round(CAST(quantity AS DOUBLE) * (60 + chance(row, 1)) / 100, 2) WHERE chance(row, 2) < 40 AND amount IS NULL AND CAST(quantity AS DOUBLE) > 1",
            "UPDATE sales SET unit_price = CAST(unit_price AS DECIMAL(12, 4)) + 0.0001 * chance(row, 3) WHERE chance(row, 4) < 50 AND unit_price IS NOT NULL",
            "UPDATE sales SET unit_price = NULL WHERE chance(row, 5) < 3 AND amount IS NULL",
            "ALTER TABLE sales ADD COLUMN planting VARCHAR",
            "UPDATE sales SET planting = (SELECT arg_max(planting, (date, h.row)) FROM harvests h WHERE h.crop = sales.crop AND h.date <= sales.date AND planting IS NOT NULL) WHERE chance(row, 6) < 20",
            "UPDATE sales SET date = CAST(CAST(date AS DATE) + chance(row, 7) % 4 AS VARCHAR) WHERE chance(row, 8) < 20 AND date < '2025-12-01'",
        ],
        ["settings"] =
        [
            "UPDATE farm SET value = CASE setting WHEN 'owner_wage' THEN '18.7525' WHEN 'interest_percent' THEN '6.35' WHEN 'crop_year_start' THEN '03-01' WHEN 'standard_bed_width_in' THEN '28' ELSE value END",
            "INSERT INTO farm (row, setting, value) VALUES (101, 'ownership_method', 'depreciation-and-interest'), (102, 'idle_capacity', 'spread'), (103, 'land_value', '41237.55'), (104, 'land_area', '1.3725')",
            "UPDATE totals SET \"from\" = '2025-03-01', \"to\" = '2026-02-28' WHERE measure = 'hours:grow'",
            "UPDATE plantings SET crop_year = NULL",
        ],
        ["no closing stock, earlier close"] =
        [
            "UPDATE farm SET value = '2025-10-15' WHERE setting = 'as_of'",
            "INSERT INTO farm (row, setting, value) VALUES (101, 'closing_stock', 'ignore'), (102, 'land_rent', '612.35'), (103, 'land_area', '0.875')",
        ],
        // The charge for own land can't be told from its value alone.
        ["land of a value without interest"] = ["DELETE FROM farm WHERE setting = 'interest_percent'", "INSERT INTO farm (row, setting, value) VALUES (103, 'land_value', '41237.55')"],
        // A stand cleared in its bearing years, one that has borne longer than its years, one cleared before it bore, one that never bears.
        ["stands"] =
        [
            "UPDATE plantings SET out_of_bed = '2025-10-01' WHERE planting = 'Rhubarb bed'",
            "UPDATE crops SET bearing_years = '1.5' WHERE crop = 'Asparagus'",
            "INSERT INTO beds (row, bed, length_ft) VALUES (1002, 'Canes', '300')",
            "UPDATE crops SET bearing_years = '3', establishment_cost = NULL WHERE crop = 'Raspberries'",
            "INSERT INTO plantings (row, planting, crop, bed, bed_feet, in_bed, out_of_bed) VALUES (700001, 'Gave up', 'Raspberries', 'Canes', '40', '2023-05-05', '2025-03-20'), (700002, 'Young', 'Raspberries', 'Canes', '60', '2024-05-05', NULL)",
            "UPDATE harvests SET planting = 'Raspberry row' WHERE crop = 'Raspberries' AND planting IS NULL",
        ],
        // The records begin after it was set out, and nothing says what it took.
        ["stands of unknown cost"] = ["UPDATE crops SET establishment_cost = NULL WHERE crop = 'Asparagus'"],
        ["an early close with stock on hand"] = ["UPDATE farm SET value = '2024-11-20' WHERE setting = 'as_of'"],
        // What nobody knows stays blank: own hours without a value, assets without an interest rate, in overhead pools and others; pools that pass it on.
        ["no owner wage and no interest"] =
        [
            "DELETE FROM farm WHERE setting IN ('owner_wage', 'interest_percent')", "UPDATE workers SET wage = NULL WHERE kind = 'owner'",
            "UPDATE tasks SET pool = NULL WHERE stage = 'overhead'", "DELETE FROM labor WHERE date LIKE '2024%' AND task IN (SELECT task FROM tasks WHERE stage = 'overhead')",
            "UPDATE assets SET pool = 'general overhead', retired = '2024-12-31' WHERE asset = 'Truck'", "UPDATE assets SET life_years = '1' WHERE pool = 'pack shed'",
        ],
        // A year without hours and wages took no labor; one with wages has unknown hours; standards add nothing of their own.
        ["nobody works unpaid"] =
        [
            "INSERT INTO farm (row, setting, value) VALUES (101, 'unpaid_hours', 'none')", "DELETE FROM workers WHERE kind = 'owner'", "UPDATE labor SET worker = 'Isolde' WHERE worker IN ('Maren', 'Tobit')",
            "DELETE FROM labor WHERE date LIKE '2023%' OR date LIKE '2024%'", "DELETE FROM expenses WHERE category = 'wages' AND date LIKE '2024%'", "DELETE FROM totals WHERE measure = 'hours' OR \"table\" = 'expenses'",
        ],
        // Hours nobody logged share in the wages of a year that paid some, and are the owner's in one that didn't.
        ["wages and standards without a log"] =
        [
            "DELETE FROM labor WHERE (date LIKE '2023%' OR date LIKE '2024%') AND chance(row, 1) < 97", "DELETE FROM expenses WHERE category = 'wages' AND date LIKE '2023%'",
            "INSERT INTO labor_standards (row, crop, stage, minutes, per) SELECT 100 + row, crop, 'harvest', CAST(1 + chance(row, 8) / 7.0 AS DECIMAL(9, 3)), 'unit' FROM crops",
            "INSERT INTO labor_standards (row, crop, stage, minutes, per) SELECT 200 + row, crop, 'grow', '0.7', 'bed_foot' FROM crops WHERE chance(row, 2) < 30", "DELETE FROM totals WHERE measure = 'hours' OR \"table\" = 'expenses'",
        ],
        // Every basis, users of every kind, capacities that are exceeded and not, a second circle.
        ["pools"] =
        [
            "UPDATE pools SET basis = CASE pool WHEN 'pack shed' THEN 'labor-hours:pack' WHEN 'seedling house' THEN 'bed-feet' WHEN 'small tools' THEN 'labor-hours' WHEN 'truck' THEN 'quantity-crates' WHEN 'well and sprinklers' THEN 'bed-foot-days' WHEN 'general overhead' THEN 'water' WHEN 'fertility and crop supplies' THEN 'sales-value' WHEN 'nursery supplies' THEN 'harvest-days' ELSE basis END",
            "UPDATE pools SET capacity = CASE pool WHEN 'cold room' THEN '9000' WHEN 'pack shed' THEN '120' WHEN 'root cellar' THEN '100' WHEN 'ridge tunnel' THEN '100000' ELSE capacity END",
            "INSERT INTO use (row, pool, user, quantity, crop_year) VALUES (101, 'cold room', 'pellet boiler', '700', NULL), (102, 'cold room', 'Carrots', '450.5', '2024'), (103, 'grid power', 'Tomatoes 2025-01', '88.25', '2025'), (104, 'root cellar', 'Potatoes', '2100', NULL), (105, 'long tunnel', 'household', '3000', NULL), (106, 'pack shed', 'cold room', '12', NULL)",
            "DELETE FROM input_rates WHERE pool = 'packaging'",
            "UPDATE crops SET store = CASE chance(row, 1) % 4 WHEN 0 THEN 'cold room; root cellar' WHEN 1 THEN 'root cellar;cold room' ELSE store END, water_need = CASE WHEN chance(row, 2) < 20 THEN NULL ELSE water_need END",
        ],
        // Rows naming crops by every behavior, refunds, household parts, wages that name something, a year without wages, uneven assets.
        ["books"] =
        [
            "UPDATE categories SET varies_with = 'sales' WHERE category = 'small tools'", "UPDATE categories SET varies_with = 'bed-time' WHERE category = 'office and bookkeeping'",
            "UPDATE expenses SET crop = (SELECT crop FROM crops c WHERE c.row = 1 + chance(expenses.row, 1) % 40) WHERE chance(row, 2) < 30 AND channel IS NULL AND planting IS NULL AND pool IS NULL AND category IN ('packaging', 'seed', 'fuel', 'truck upkeep', 'market supplies', 'small tools', 'compost and minerals', 'office and bookkeeping')",
            "UPDATE expenses SET farm_percent = CAST(35 + chance(row, 3) / 2.0 AS DECIMAL(9, 2)) WHERE chance(row, 4) < 25 AND category NOT IN ('wages', 'payroll taxes')",
            "UPDATE expenses SET amount = -CAST(amount AS DECIMAL(18, 2)) / 2 WHERE chance(row, 5) < 4 AND CAST(CAST(amount AS DECIMAL(18, 2)) * 100 AS INTEGER) % 2 = 0",
            "UPDATE expenses SET pool = 'cold room' WHERE category = 'wages' AND chance(row, 6) < 8", "UPDATE expenses SET channel = 'Porch Pickup' WHERE category = 'wages' AND pool IS NULL AND chance(row, 7) < 8",
            "UPDATE expenses SET crop = 'Tomatoes' WHERE category = 'payroll taxes' AND chance(row, 8) < 20",
            "UPDATE expenses SET crop_year = NULL WHERE crop = 'Garlic'",
            "DELETE FROM expenses WHERE category = 'wages' AND date LIKE '2024%'", "DELETE FROM expenses WHERE category IN ('wages', 'payroll taxes') AND date LIKE '2023%'",
            "INSERT INTO categories (row, category, class, statement_line, tax_line) VALUES (101, 'workers compensation', 'labor-burden', 'labor', NULL)",
            "UPDATE expenses SET category = 'workers compensation' WHERE category = 'payroll taxes' AND chance(row, 14) < 30",
            "INSERT INTO assets (row, asset, pool, in_service, cost, life_years) VALUES (101, 'Ordered', 'pack shed', '2026-03-10', '5000', '10'), (102, 'New', 'pellet boiler', '2026-02-20', '777.77', '7'), (103, 'Later', 'tray room', '2025-05-05', '640', '3')",
            "UPDATE assets SET in_service = '2025-04-15' WHERE pool = 'pellet boiler' AND row < 101", "UPDATE loads SET \"to\" = '2026-09-30' WHERE \"to\" = '2026-02-28'",
            "INSERT INTO loads (row, load, pool, user, watts, hours_per_day, \"from\", \"to\") VALUES (901, 'Not yet', 'grid power', 'cold room', '900', '9', '2026-04-01', '2026-11-30')",
            "UPDATE assets SET farm_percent = CAST(60 + chance(row, 9) / 3.0 AS DECIMAL(9, 1)), repairs_percent = CAST(chance(row, 10) / 40.0 AS DECIMAL(9, 2)), \"grant\" = CASE WHEN chance(row, 11) < 30 THEN '333.33' ELSE \"grant\" END",
            "UPDATE assets SET retired = '2024-09-10' WHERE chance(row, 12) < 12 AND in_service < '2024-01-01' AND retired IS NULL", "UPDATE assets SET life_years = '5' WHERE chance(row, 13) < 20",
        ],
        // Crop rows at every stage, tasks without crops, standards at every stage, totals, blank trays, volunteers and owners in turns.
        ["hours"] =
        [
            "UPDATE labor SET hours = CAST(CAST(hours AS DOUBLE) * (50 + chance(row, 1)) / 100 + 0.01 AS DECIMAL(9, 2))",
            "UPDATE labor SET crop = NULL WHERE chance(row, 2) < 12 AND crop IS NOT NULL",
            "UPDATE labor SET channel = NULL, crop = (SELECT crop FROM crops c WHERE c.row = 1 + chance(labor.row, 3) % 40) WHERE channel IS NOT NULL AND chance(row, 4) < 30",
            "UPDATE labor SET worker = CASE chance(row, 5) % 5 WHEN 0 THEN 'Maren' WHEN 1 THEN 'Aldous' ELSE worker END",
            "UPDATE labor SET date = CAST(CAST(date AS DATE) + chance(row, 6) % 5 AS VARCHAR) WHERE date < '2026-02-20' AND chance(row, 7) < 30 AND planting IS NULL",
            "INSERT INTO labor_standards (row, crop, stage, minutes, per) SELECT 100 + row, crop, 'harvest', CAST(1 + chance(row, 8) / 10.0 AS DECIMAL(9, 1)), 'unit' FROM crops WHERE chance(row, 9) < 70",
            "INSERT INTO labor_standards (row, crop, stage, minutes, per) SELECT 200 + row, crop, 'nursery', '4.5', CASE WHEN chance(row, 10) < 50 THEN 'tray' ELSE 'planting' END FROM crops",
            "INSERT INTO totals (row, \"table\", measure, amount, \"from\", \"to\", tolerance) VALUES (101, 'labor', 'hours:harvest', '900.5', '2024-01-01', '2024-12-31', '1000'), (102, 'labor', 'hours:pack', '700.25', '2025-01-01', '2025-12-31', '1000')",
            "UPDATE plantings SET trays = CASE chance(row, 11) % 3 WHEN 0 THEN NULL ELSE '0' END WHERE chance(row, 12) < 10 AND sown IS NOT NULL",
            "UPDATE tasks SET pool = NULL WHERE task = 'Water seedlings'",
        ],
        // Sales noted before their harvest, harvests lost, crops without storage_days: what is out of reach, covered, kept to the year's end.
        ["late and early notes"] =
        [
            "UPDATE sales SET date = CAST(CAST(date AS DATE) - 1 - chance(row, 21) % 4 AS VARCHAR) WHERE chance(row, 22) < 15 AND date > '2023-06-01'",
            "DELETE FROM harvests WHERE chance(row, 23) < 8",
            "UPDATE crops SET storage_days = NULL WHERE chance(row, 24) < 20",
        ],
        // Failed plantings without an end (in a bed of their own, so that none was needed for another), harvests soon after planting and before it.
        ["plantings without an end"] =
        [
            "INSERT INTO beds (row, bed, length_ft) VALUES (1001, 'Spare', '99999')",
            "UPDATE plantings SET bed = 'Spare', out_of_bed = NULL, crop_year = NULL WHERE chance(planting, 25) < 8 AND in_bed > '2023-06-01' AND crop NOT IN (SELECT crop FROM crops WHERE perennial = 'yes')",
            "DELETE FROM harvests WHERE planting IN (SELECT planting FROM plantings WHERE bed = 'Spare' AND chance(planting, 26) < 70)",
            "INSERT INTO harvests (row, date, crop, quantity) SELECT 2000000 + row, CAST(CAST(in_bed AS DATE) + 4 AS VARCHAR), crop, '6.25' FROM plantings WHERE chance(row, 27) < 12 AND in_bed > '2023-06-01' AND in_bed < '2025-11-01'",
            "INSERT INTO harvests (row, date, crop, quantity) SELECT 3000000 + row, CAST(CAST(in_bed AS DATE) - 9 AS VARCHAR), crop, '3.5' FROM plantings p WHERE chance(row, 28) < 25 AND in_bed > '2023-06-01' AND substr(in_bed, 6, 2) BETWEEN '04' AND '09' AND CAST(in_bed AS DATE) > (SELECT min(CAST(f.in_bed AS DATE)) + 9 FROM plantings f WHERE f.crop = p.crop)",
        ],
        // Known by crop, year and number, by which rows name them; one of the names that would be given is somebody's already.
        ["plantings nobody named"] =
        [
            "CREATE TABLE nameless AS SELECT planting, crop || ' ' || in_bed[1:4] || ', sowing ' || (row_number() OVER (PARTITION BY crop, in_bed[1:4] ORDER BY in_bed, row) + CASE WHEN crop = 'Carrots' AND in_bed LIKE '2024%' THEN 1 ELSE 0 END) AS name FROM plantings WHERE crop IN ('Carrots', 'Radish', 'Beets', 'Spinach') "
                + "AND planting IN (SELECT planting FROM plantings GROUP BY planting HAVING count(*) = 1) AND planting NOT IN (SELECT planting FROM expenses WHERE planting IS NOT NULL) AND planting NOT IN (SELECT \"user\" FROM use)",
            "UPDATE plantings SET planting = 'carrots 2024, Sowing 1' WHERE planting = 'Carrots 2024-06'",
            "UPDATE harvests SET planting = 'carrots 2024, Sowing 1' WHERE planting = 'Carrots 2024-06'",
            "UPDATE labor SET planting = 'carrots 2024, Sowing 1' WHERE planting = 'Carrots 2024-06'",
            "UPDATE harvests SET planting = n.name FROM nameless n WHERE n.planting = harvests.planting",
            "UPDATE labor SET planting = n.name FROM nameless n WHERE n.planting = labor.planting",
            "UPDATE plantings SET planting = NULL WHERE planting IN (SELECT planting FROM nameless)",
        ],
        // Some plantings are named by no harvest at all: they make room where another needs their bed.
        ["harvests of plantings nobody named"] =
        [
            "CREATE TABLE nameless AS SELECT planting, any_value(crop) AS crop FROM plantings WHERE planting NOT IN (SELECT planting FROM expenses WHERE planting IS NOT NULL) "
                + "AND planting NOT IN (SELECT \"user\" FROM use) GROUP BY planting HAVING count(*) = 1 AND chance(planting, 31) < 40",
            "UPDATE harvests SET crop = n.crop, planting = NULL FROM nameless n WHERE n.planting = harvests.planting",
        ],
        ["crates"] =
        [
            "UPDATE crops SET units_per_crate = NULL WHERE chance(row, 29) < 25 OR store = 'root cellar'",
            "UPDATE pools SET capacity = '500' WHERE pool = 'root cellar'",
        ],
        // Half of the harvests name no planting; of each planting the first and the last stay.
        ["harvests"] =
        [
            "CREATE TABLE ends AS SELECT planting, min(date) AS first, max(date) AS last FROM harvests GROUP BY planting",
            "UPDATE harvests SET planting = NULL FROM ends e WHERE e.planting = harvests.planting AND date <> e.first AND (date <> e.last OR chance(row, 1) < 50) AND chance(row, 2) < 50",
            "UPDATE harvests SET quantity = round(CAST(quantity AS DOUBLE) * (70 + chance(row, 3) / 2) / 100, 3) WHERE chance(row, 4) < 50",
            "UPDATE plantings SET bed_feet = CAST(CAST(bed_feet AS DOUBLE) - 1.37 AS DECIMAL(9, 2)) WHERE chance(row, 5) < 30",
        ],
        ["channels and prices"] =
        [
            "UPDATE channels SET fee_percent = CASE channel WHEN 'Harvest Share' THEN '2.75' WHEN 'Juniper Shop' THEN '1.115' ELSE fee_percent END, values_from = CASE WHEN channel IN ('Porch Pickup', 'Our Table') THEN NULL ELSE values_from END",
            "DELETE FROM prices WHERE chance(row, 1) < 40", "UPDATE prices SET channel = NULL WHERE chance(row, 2) < 20",
            "UPDATE sales SET unit_price = CAST(2 + chance(row, 3) / 33.0 AS DECIMAL(9, 4)) WHERE channel = 'Our Table' AND chance(row, 4) < 20 AND amount IS NULL",
            "UPDATE sales SET channel = 'Workshops', unit_price = '3.1' WHERE channel = 'Food Shelf' AND chance(row, 5) < 10 AND amount IS NULL",
            "UPDATE labor SET channel = 'Food Shelf', crop = NULL, planting = NULL, pool = NULL WHERE chance(row, 6) < 2",
            "UPDATE income SET crop_year = '2023' WHERE chance(row, 7) < 10 AND channel = 'Harvest Share'",
            "INSERT INTO sales (row, date, crop, channel, quantity, amount) SELECT 900000 + row, date, crop, channel, '0', CAST(-1.25 - chance(row, 9) / 10.0 AS DECIMAL(9, 2)) FROM sales WHERE chance(row, 10) < 2 AND channel <> 'Harvest Share'",
            "UPDATE units SET base_units = '0.3' WHERE unit = 'bag' AND chance(row, 8) < 50",
        ],
        // Last, because others pick rows by their place: ties and queues go by the order of the file.
        ["order of rows"] =
        [
            "UPDATE sales SET row = hash(row, 'sales') >> 8", "UPDATE harvests SET row = hash(row, 'harvests') >> 8", "UPDATE plantings SET row = hash(row, 'plantings') >> 8",
            "UPDATE labor SET row = hash(row, 'labor') >> 8", "UPDATE expenses SET row = hash(row, 'expenses') >> 8", "UPDATE income SET row = hash(row, 'income') >> 8",
            "UPDATE crops SET row = hash(row, 'crops') >> 8", "UPDATE assets SET row = hash(row, 'assets') >> 8", "UPDATE channels SET row = hash(row, 'channels') >> 8",
        ],
    };
}
