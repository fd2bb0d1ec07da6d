using FarmEconomics.ProvingGround.Folders;
using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.Recount.Tests;

/// <summary>
/// Records of farms that the proving ground invents (three seasons, a few crops of them each), changed by chance so that they reach what it doesn't write.
/// The same seed, the same records.
/// </summary>
internal static class InventedFarms
{
    /// <summary>Writes the records of a farm.</summary>
    /// <param name="seed">The farm.</param>
    /// <param name="more">What is changed last.</param>
    internal static RecordsCopy Make(int seed, params IEnumerable<string> more)
    {
        string folder = Directory.CreateTempSubdirectory("farm-invented-").FullName;
        try
        {
            RecordsWriter.Write(FarmMaker.Make(seed), folder);
            IEnumerable<string> chosen = Chosen(seed).SelectMany(change => Changes[change].Statements);
            return new RecordsCopy(folder, seed, [.. Ground, .. chosen, .. Last, .. more]);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>The changes that a seed makes, in their order.</summary>
    internal static List<string> Chosen(int seed)
    {
        using Database dice = new();
        return [.. Changes.Where(change => Roll(dice, seed, change.Key) < change.Value.Percent).Select(change => change.Key)];
    }

    private static int Roll(Database dice, int seed, string change) =>
        (int)dice.Rows($"SELECT CAST(hash(concat_ws(' ', {Database.Quoted(change)}, {seed})) % 100 AS INTEGER) AS roll")[0]["roll"]!;

    /// <summary>Three to eight crops, one to three seasons, and what ships with the program written out: the recount knows none of it.</summary>
    private static readonly string[] Ground =
    [
        "CREATE TABLE kept AS SELECT crop FROM crops ORDER BY chance(crop, 901), crop LIMIT (SELECT 3 + chance(0, 902) % 6)",
        "DELETE FROM crops WHERE crop NOT IN (FROM kept)",
        "DELETE FROM plantings WHERE crop NOT IN (FROM kept) OR in_bed < CAST(2023 + chance(0, 903) % 3 AS VARCHAR)",
        "DELETE FROM harvests WHERE coalesce(crop, '') NOT IN (FROM kept) AND coalesce(planting, '') NOT IN (SELECT planting FROM plantings) OR date < CAST(2023 + chance(0, 903) % 3 AS VARCHAR)",
        "DELETE FROM sales WHERE crop NOT IN (FROM kept) OR date < CAST(2023 + chance(0, 903) % 3 AS VARCHAR)",
        "DELETE FROM labor WHERE crop NOT IN (FROM kept) OR date < CAST(2023 + chance(0, 903) % 3 AS VARCHAR)",
        "DELETE FROM expenses WHERE crop NOT IN (FROM kept) OR date < CAST(2023 + chance(0, 903) % 3 AS VARCHAR)",
        "DELETE FROM income WHERE date < CAST(2023 + chance(0, 903) % 3 AS VARCHAR)",
        "DELETE FROM prices WHERE crop NOT IN (FROM kept)",
        "DELETE FROM limits",
        "INSERT INTO tasks (row, task, stage) VALUES (1, 'grow', 'grow'), (2, 'harvest', 'harvest'), (3, 'pack', 'pack'), (4, 'sell', 'sell'), (5, 'overhead', 'overhead'), (6, 'nursery', 'nursery')",
        """
        INSERT INTO categories (row, category, class, statement_line, tax_line, pool, varies_with) VALUES
            (11, 'seed', 'operating', 'materials', 'Seeds and plants', 'seed and plants', 'length'), (12, 'compost', 'operating', 'materials', 'Fertilizers and lime', 'fertility and crop supplies', 'length'),
            (13, 'packaging', 'operating', 'selling', 'Supplies', 'packaging', 'quantity'), (14, 'delivery', 'operating', 'selling', 'Freight and trucking', 'selling general', 'units'),
            (15, 'wages', 'labor', 'labor', 'Labor hired (less employment credits)', NULL, NULL), (16, 'payroll taxes', 'labor-burden', 'labor', 'Taxes', NULL, NULL),
            (17, 'insurance', 'operating', 'overhead', 'Insurance (other than health)', 'general overhead', 'fixed'), (18, 'repairs', 'operating', 'overhead', 'Repairs and maintenance', 'general overhead', 'fixed'),
            (19, 'utilities', 'operating', 'infrastructure', 'Utilities', 'general overhead', 'fixed'), (20, 'fuel', 'operating', 'materials', 'Gasoline, fuel, and oil', 'general overhead', 'fixed'),
            (21, 'equipment', 'capital', NULL, NULL, NULL, NULL), (22, 'household draw', 'personal', NULL, NULL, NULL, NULL), (23, 'loan interest', 'interest', NULL, NULL, NULL, NULL)
        """,
    ];

    /// <summary>What else happens on small farms: in percent of the farms, and how. The first word says which rules it is there for.</summary>
    internal static readonly Dictionary<string, (int Percent, string[] Statements)> Changes = new()
    {
        ["settings: another crop year"] = (
            40,
            [
                "INSERT INTO farm (row, setting, value) VALUES (101, 'crop_year_start', ['03-01', '11-01', '07-15', '02-15'][1 + chance(0, 1) % 4])",
            ]
        ),
        ["settings: no owner wage"] = (
            12,
            ["DELETE FROM farm WHERE setting = 'owner_wage'", "UPDATE workers SET wage = NULL WHERE kind = 'owner'"]
        ),
        ["settings: no interest"] = (10, ["DELETE FROM farm WHERE setting = 'interest_percent'"]),
        ["settings: other interest"] = (
            40,
            ["UPDATE farm SET value = CASE WHEN chance(0, 2) < 30 THEN '0' ELSE '6.35' END WHERE setting = 'interest_percent'"]
        ),
        ["settings: depreciation"] = (
            30,
            ["INSERT INTO farm (row, setting, value) VALUES (102, 'ownership_method', 'depreciation-and-interest')"]
        ),
        ["settings: spread"] = (25, ["INSERT INTO farm (row, setting, value) VALUES (103, 'idle_capacity', 'spread')"]),
        ["settings: no stock"] = (15, ["INSERT INTO farm (row, setting, value) VALUES (104, 'closing_stock', 'ignore')"]),
        ["settings: nobody unpaid"] = (12, ["INSERT INTO farm (row, setting, value) VALUES (105, 'unpaid_hours', 'none')"]),
        ["settings: bed width"] = (
            20,
            [
                "INSERT INTO farm (row, setting, value) VALUES (106, 'standard_bed_width_in', '28')",
                "UPDATE beds SET width_in = '36' WHERE chance(bed, 3) < 40",
            ]
        ),
        ["settings: buying in"] = (30, ["INSERT INTO farm (row, setting, value) VALUES (107, 'buy_in_percent', '87.5')"]),
        ["land: rent or value"] = (
            45,
            [
                "INSERT INTO farm (row, setting, value) VALUES (108, CASE WHEN chance(0, 4) < 50 THEN 'land_value' ELSE 'land_rent' END, CAST(CAST(300 + 517.37 * chance(0, 5) AS DECIMAL(9, 2)) AS VARCHAR)), (109, 'land_area', '1.3725')",
                "DELETE FROM farm WHERE setting = 'land_area' AND chance(0, 6) < 50",
                "INSERT INTO pools (row, pool, basis, statement_line) SELECT 100, 'land', 'bed-feet', 'overhead' WHERE chance(0, 7) < 30",
            ]
        ),
        ["close: early"] = (
            30,
            ["UPDATE farm SET value = '2025-' || lpad(CAST(6 + chance(0, 8) % 6 AS VARCHAR), 2, '0') || '-17' WHERE setting = 'as_of'"]
        ),
        ["close: late"] = (20, ["UPDATE farm SET value = '2026-03-20' WHERE setting = 'as_of'"]),
        ["wages: a percent on top"] = (
            25,
            [
                "INSERT INTO farm (row, setting, value) VALUES (110, 'payroll_burden_percent', '8.25')",
                "DELETE FROM expenses WHERE category = 'wages' AND chance(date[1:4], 9) < 60",
                "DELETE FROM expenses WHERE category = 'payroll taxes' AND chance(date[1:4], 10) < 50",
            ]
        ),
        ["harvests: units"] = (
            50,
            [
                "INSERT INTO units (row, crop, unit, base_units) SELECT row, crop, 'case', CAST(CAST(2 + chance(crop, 11) / 7.0 AS DECIMAL(9, 3)) AS VARCHAR) FROM crops WHERE chance(crop, 12) < 60",
                "UPDATE harvests SET unit = 'case' WHERE crop IN (SELECT crop FROM units) AND chance(row, 13) < 20",
                "UPDATE sales SET unit = 'case', unit_price = CAST(CAST(CAST(unit_price AS DOUBLE) * 3.3 AS DECIMAL(12, 4)) AS VARCHAR) WHERE crop IN (SELECT crop FROM units) AND chance(row, 14) < 15",
                "UPDATE prices SET unit = 'case', price = CAST(CAST(CAST(price AS DOUBLE) * 3.1 AS DECIMAL(12, 4)) AS VARCHAR) WHERE crop IN (SELECT crop FROM units) AND chance(row, 15) < 30",
            ]
        ),
        ["harvests: of a crop"] = (
            50,
            [
                "UPDATE harvests SET crop = p.crop, planting = NULL FROM plantings p WHERE p.planting = harvests.planting AND chance(harvests.row, 16) < 50",
                "UPDATE harvests SET culled = '1.25' WHERE chance(row, 17) < 20",
            ]
        ),
        ["harvests: thirds"] = (
            40,
            [
                "UPDATE harvests SET quantity = CAST(CAST(CAST(quantity AS DOUBLE) * (70 + chance(row, 18)) / 99.0 + 0.01 AS DECIMAL(12, 3)) AS VARCHAR)",
            ]
        ),
        ["crops: keep how long"] = (
            40,
            [
                "UPDATE crops SET storage_days = CASE WHEN chance(crop, 19) < 40 THEN NULL WHEN chance(crop, 19) < 60 THEN '0' ELSE '45' END WHERE chance(crop, 20) < 60",
            ]
        ),
        ["crops: no crates"] = (35, ["UPDATE crops SET units_per_crate = NULL WHERE chance(crop, 21) < 45"]),
        ["plantings: no end"] = (40, ["UPDATE plantings SET out_of_bed = NULL WHERE chance(planting, 22) < 60"]),
        ["plantings: failed"] = (
            30,
            [
                "DELETE FROM harvests WHERE planting IN (SELECT planting FROM plantings WHERE chance(planting, 23) < 10)",
                "UPDATE plantings SET out_of_bed = NULL WHERE chance(planting, 23) < 10 AND chance(planting, 24) < 60",
            ]
        ),
        ["plantings: nursery"] = (
            50,
            [
                "UPDATE plantings SET sown = CAST(CAST(in_bed AS DATE) - 20 - chance(planting, 25) % 30 AS VARCHAR), trays = CASE WHEN chance(planting, 26) < 70 THEN CAST(1 + chance(planting, 27) % 9 AS VARCHAR) END WHERE chance(crop, 28) < 60",
                "INSERT INTO labor (row, date, worker, hours, task, crop) SELECT 500000 + row, CAST(CAST(in_bed AS DATE) - 9 AS VARCHAR), 'Owner', '0.75', 'nursery', CASE WHEN chance(row, 29) < 60 THEN crop END FROM plantings WHERE sown IS NOT NULL AND chance(row, 30) < 60",
                "INSERT INTO pools (row, pool, basis, statement_line, varies_with) VALUES (101, 'hot bench', 'tray-days, else bed-feet', 'infrastructure', 'length')",
                "UPDATE pools SET basis = 'tray-days' WHERE pool = 'hot bench'",
                "INSERT INTO assets (row, asset, pool, in_service, cost, life_years, salvage) VALUES (101, 'Bench', 'hot bench', '2024-02-11', '811.11', '7.5', '50')",
            ]
        ),
        ["plantings: a crop year of their own"] = (
            20,
            [
                "UPDATE plantings SET crop_year = CAST(CAST(in_bed[1:4] AS INTEGER) + CASE WHEN chance(planting, 31) < 50 THEN 1 ELSE 0 END AS VARCHAR) WHERE chance(planting, 32) < 20",
            ]
        ),
        ["perennials: a stand"] = (
            60,
            [
                "INSERT INTO crops (row, crop, unit, storage_days, units_per_crate, perennial, bearing_years, establishment_cost) VALUES (901, 'Rhubarb', 'lb', '5', '20', 'yes', CASE WHEN chance(0, 33) < 70 THEN CAST(1.5 + chance(0, 34) % 8 AS VARCHAR) END, CASE WHEN chance(0, 35) < 40 THEN '1.8755' END)",
                "INSERT INTO beds (row, bed, length_ft) VALUES (901, 'Side', '300')",
                "INSERT INTO plantings (row, planting, crop, bed, bed_feet, in_bed, out_of_bed) VALUES (900001, 'Old stand', 'Rhubarb', 'Side', '61.5', CASE WHEN chance(0, 36) < 50 THEN '2022-05-05' ELSE '2023-05-05' END, CASE WHEN chance(0, 37) < 25 THEN '2025-09-20' END), (900002, 'Young stand', 'Rhubarb', 'Side', '40', '2024-04-20', CASE WHEN chance(0, 38) < 30 THEN '2025-08-20' END)",
                "INSERT INTO harvests (row, date, planting, quantity) SELECT 900000 + y, y || '-06-1' || chance(y, 39) % 9, 'Old stand', CAST(20 + chance(y, 40) / 3.0 AS DECIMAL(9, 2)) FROM (VALUES (2024), (2025)) v(y) WHERE chance(y, 41) < 80",
                "INSERT INTO sales (row, date, crop, channel, quantity, unit_price) SELECT 900000 + y, y || '-06-20', 'Rhubarb', 'Farm Stand', '18', '3.35' FROM (VALUES (2024), (2025)) v(y)",
                "INSERT INTO expenses (row, date, amount, category, planting) VALUES (900001, '2023-05-06', '95.55', 'seed', 'Old stand'), (900002, '2024-04-21', '61.17', 'compost', 'Young stand'), (900003, '2025-04-21', '33.33', 'compost', 'Old stand')",
            ]
        ),
        ["sales: own table"] = (
            60,
            [
                "INSERT INTO channels (row, channel, kind, values_from) VALUES (91, 'Own Table', 'household', CASE WHEN chance(0, 42) < 60 THEN 'Saturday Market' END)",
                "UPDATE sales SET channel = 'Own Table', unit_price = CASE WHEN chance(row, 43) < 20 THEN unit_price END WHERE chance(row, 44) < 8",
            ]
        ),
        ["sales: other"] = (
            40,
            [
                "INSERT INTO channels (row, channel, kind, fee_percent) VALUES (92, 'Workshops', 'other', '2.5')",
                "UPDATE sales SET channel = 'Workshops', unit_price = CASE WHEN chance(row, 45) < 50 THEN '3.125' END WHERE chance(row, 46) < 4",
                "INSERT INTO income (row, date, channel, amount) VALUES (91, '2025-03-05', 'Workshops', '140.50'), (92, '2024-03-05', 'Workshops', '-10.25')",
            ]
        ),
        ["sales: fees and values"] = (
            50,
            [
                "UPDATE channels SET fee_percent = CASE kind WHEN 'share' THEN '2.75' WHEN 'wholesale' THEN '11.1155' ELSE fee_percent END, values_from = CASE WHEN chance(channel, 47) < 50 THEN NULL ELSE values_from END",
            ]
        ),
        ["sales: no price"] = (
            40,
            [
                "UPDATE sales SET unit_price = NULL WHERE chance(row, 48) < 5",
                "DELETE FROM prices WHERE chance(row, 49) < 30",
                "UPDATE prices SET channel = NULL WHERE chance(row, 50) < 20",
                "DELETE FROM prices WHERE chance(crop, 51) < 10",
            ]
        ),
        ["sales: more than picked"] = (
            40,
            [
                "UPDATE sales SET quantity = CAST(CAST(CAST(quantity AS DOUBLE) * (60 + chance(row, 52)) / 90.0 + 0.001 AS DECIMAL(12, 3)) AS VARCHAR) WHERE chance(row, 53) < 50",
            ]
        ),
        ["sales: amounts"] = (
            40,
            [
                "UPDATE sales SET amount = CAST(CAST(CAST(quantity AS DOUBLE) * CAST(unit_price AS DOUBLE) * (90 + chance(row, 54) % 20) / 100 AS DECIMAL(12, 2)) AS VARCHAR), unit_price = CASE WHEN chance(row, 55) < 50 THEN unit_price END WHERE unit_price IS NOT NULL AND chance(row, 56) < 25",
            ]
        ),
        ["sales: other days"] = (
            40,
            [
                "UPDATE sales SET date = CAST(CAST(date AS DATE) - 4 + chance(row, 57) % 12 AS VARCHAR) WHERE chance(row, 58) < 25 AND date[6:7] BETWEEN '02' AND '11'",
            ]
        ),
        ["sales: of a planting"] = (
            30,
            [
                "ALTER TABLE sales ADD COLUMN planting VARCHAR",
                "UPDATE sales SET planting = (SELECT arg_max(h.planting, (h.date, h.row)) FROM harvests h JOIN plantings p ON p.planting = h.planting WHERE p.crop = sales.crop AND h.date <= sales.date) WHERE chance(row, 59) < 25",
            ]
        ),
        ["sales: credits"] = (
            40,
            [
                "INSERT INTO sales (row, date, crop, channel, quantity, amount) SELECT 700000 + row, date, crop, channel, '0', CAST(CAST(-1.25 - chance(row, 60) / 10.0 AS DECIMAL(9, 2)) AS VARCHAR) FROM sales WHERE chance(row, 61) < 3 AND channel IN ('Saturday Market', 'Farm Stand', 'Shop and Kitchens')",
            ]
        ),
        ["shares: payments"] = (
            60,
            [
                "INSERT INTO income (row, date, channel, amount, crop_year) VALUES (81, '2025-04-02', 'Boxes', '410.35', NULL), (82, '2025-06-02', 'Boxes', '-55.10', NULL), (83, '2024-12-12', 'Boxes', '333.33', '2025'), (84, '2023-04-02', 'Boxes', '95', NULL)",
                "DELETE FROM income WHERE row IN (82, 84) AND chance(row, 62) < 50",
            ]
        ),
        ["shares: nobody paid"] = (10, ["DELETE FROM income WHERE channel = 'Boxes' AND chance(date[1:4], 63) < 60"]),
        ["store: crate-days and power"] = (60,
        [
            "INSERT INTO pools (row, pool, basis, statement_line, capacity, varies_with) VALUES (111, 'cold room', 'crate-days', 'infrastructure', CASE WHEN chance(0, 64) < 60 THEN CAST(40 * (1 + chance(0, 65)) AS VARCHAR) END, CASE WHEN chance(0, 66) < 50 THEN 'quantity' END), (112, 'cellar', 'crate-days', 'infrastructure', NULL, NULL), (113, 'power', 'measured', 'infrastructure', '3500', 'fixed')",
            "DELETE FROM pools WHERE pool = 'cellar' AND chance(0, 67) < 50",
            "UPDATE crops SET store = CASE WHEN chance(crop, 68) < 40 THEN 'cold room' WHEN chance(crop, 68) < 60 AND 'cellar' IN (SELECT pool FROM pools) THEN 'cold room; cellar' WHEN chance(crop, 68) < 70 AND 'cellar' IN (SELECT pool FROM pools) THEN 'cellar' END",
            "UPDATE assets SET pool = 'cold room' WHERE asset = 'Cooler'",
            "INSERT INTO assets (row, asset, pool, in_service, cost, life_years, \"grant\", farm_percent) VALUES (111, 'Panels', 'power', '2024-05-20', '5123.45', '20', '1500', CASE WHEN chance(0, 69) < 50 THEN '85' END)",
            "INSERT INTO loads (row, load, pool, user, watts, hours_per_day, \"from\", \"to\") VALUES (111, 'Compressor', 'power', 'cold room', '780', '7.5', '2023-05-01', '2025-11-15'), (112, 'Lights', 'power', 'household', '90', '4', '2024-01-01', '2026-12-31'), (113, 'Wash pump', 'power', 'pack work', '300', '2', '2023-06-01', '2025-09-30')",
            "INSERT INTO use (row, pool, user, quantity, crop_year) SELECT 111, 'power', crop, '88.25', '2025' FROM kept WHERE chance(crop, 70) < 20",
        ]),
        ["tunnel: a pool inside"] = (55,
        [
            "INSERT INTO pools (row, pool, basis, statement_line, structure, capacity, varies_with) VALUES (121, 'tunnel', ['bed-foot-days', 'bed-feet', 'water'][1 + chance(0, 71) % 3], 'infrastructure', 'Tunnel', CASE WHEN chance(0, 72) < 50 THEN '60000' END, 'bed-time')",
            "UPDATE assets SET pool = 'tunnel' WHERE asset = 'Tunnel'",
            "INSERT INTO expenses (row, date, amount, category, pool, farm_percent) VALUES (910001, '2025-04-03', '187.43', 'fuel', 'tunnel', NULL), (910002, '2024-04-03', '133.07', 'fuel', 'tunnel', '60'), (910003, '2025-02-03', '-13.05', 'fuel', 'tunnel', NULL)",
        ]),
        ["truck: trips"] = (55,
        [
            "INSERT INTO pools (row, pool, basis, statement_line, varies_with) VALUES (131, 'van', CASE WHEN chance(0, 73) < 50 THEN 'sales-value' ELSE 'quantity-crates' END, 'selling', 'trips')",
            "UPDATE assets SET pool = 'van' WHERE asset = 'Van'",
            "INSERT INTO expenses (row, date, amount, category, pool, farm_percent) SELECT 920000 + 12 * y + m, y || '-' || lpad(CAST(m AS VARCHAR), 2, '0') || '-28', CAST(CAST(31.17 + chance(12 * y + m, 74) / 3.0 AS DECIMAL(9, 2)) AS VARCHAR), 'fuel', 'van', CASE WHEN chance(m, 75) < 50 THEN '66.67' END FROM range(2023, 2026) a(y), range(4, 12) b(m)",
        ]),
        ["pools: other bases"] = (45,
        [
            "INSERT INTO pools (row, pool, basis, statement_line, varies_with) VALUES (141, 'well', 'water', 'infrastructure', 'bed-time'), (142, 'packing shed', ['labor-hours:pack', 'labor-hours', 'harvest-days'][1 + chance(0, 76) % 3], 'infrastructure', 'quantity'), (143, 'office', 'labor-hours', 'overhead', NULL)",
            "UPDATE crops SET water_need = CASE WHEN chance(crop, 77) < 30 THEN NULL ELSE CAST(CAST(0.5 + chance(crop, 78) / 60.0 AS DECIMAL(9, 2)) AS VARCHAR) END",
            "INSERT INTO assets (row, asset, pool, in_service, cost, life_years, repairs_percent, insurance_tax_percent, retired) VALUES (141, 'Well', 'well', '2015-01-01', '6200', '30', '1.25', '0.6', NULL), (142, 'Washer', 'packing shed', '2023-08-09', '950.50', '2', NULL, NULL, CASE WHEN chance(0, 79) < 50 THEN '2025-03-03' END)",
            "UPDATE expenses SET pool = ['well', 'packing shed', 'office'][1 + chance(row, 80) % 3] WHERE category IN ('repairs', 'utilities', 'insurance') AND pool IS NULL AND chance(row, 81) < 60",
            "INSERT INTO labor (row, date, worker, hours, task, pool) VALUES (510001, '2025-05-05', 'Owner', '3.25', 'overhead', 'packing shed'), (510002, '2024-05-05', 'Hand', '2.5', 'grow', 'well')",
        ]),
        ["pools: a circle"] = (30,
        [
            "INSERT INTO pools (row, pool, basis, statement_line) VALUES (151, 'workshop', 'measured', 'overhead'), (152, 'heater', 'measured', 'infrastructure')",
            "INSERT INTO use (row, pool, user, quantity, crop_year) VALUES (151, 'workshop', 'heater', '12', NULL), (152, 'heater', 'workshop', '30', NULL), (153, 'heater', 'household', '41.5', NULL), (154, 'workshop', 'general overhead', '33', NULL), (155, 'heater', 'seed and plants', '10', '2025')",
            "INSERT INTO expenses (row, date, amount, category, pool) VALUES (930001, '2025-01-09', '210.01', 'fuel', 'heater'), (930002, '2024-01-09', '97.77', 'repairs', 'workshop')",
            "INSERT INTO assets (row, asset, pool, in_service, cost, life_years) VALUES (151, 'Boiler', 'heater', '2022-10-10', '2600', '12')",
        ]),
        ["pools: rates"] = (40, ["INSERT INTO input_rates (row, pool, crop, rate, per) SELECT row, CASE WHEN chance(row, 82) < 60 THEN 'seed and plants' ELSE 'packaging' END, crop, CAST(CAST(0.05 + chance(row, 83) / 50.0 AS DECIMAL(9, 4)) AS VARCHAR), ['bed_foot', 'unit', 'tray', 'planting'][1 + chance(row, 84) % 4] FROM crops WHERE chance(row, 85) < 70"]),
        ["assets: uneven"] = (50,
        [
            "UPDATE assets SET salvage = CASE WHEN chance(row, 86) < 50 THEN '120.5' END, farm_percent = CASE WHEN chance(row, 87) < 40 THEN '72.5' END, \"grant\" = CASE WHEN chance(row, 88) < 30 THEN '333.33' END, repairs_percent = CASE WHEN chance(row, 89) < 40 THEN '2.35' END",
            "UPDATE assets SET retired = '2024-09-10' WHERE chance(row, 90) < 15 AND in_service < '2024' AND retired IS NULL",
            "INSERT INTO assets (row, asset, pool, in_service, cost, life_years) VALUES (161, 'Ordered', 'general overhead', '2026-02-10', '900', '10')",
        ]),
        ["work: who and what"] = (60,
        [
            "INSERT INTO workers (row, worker, kind, wage) VALUES (91, 'Friend', 'volunteer', NULL), (92, 'Trainee', 'hired', CASE WHEN chance(0, 91) < 50 THEN '12.345' END)",
            "UPDATE labor SET worker = CASE WHEN chance(row, 92) < 50 THEN 'Friend' ELSE 'Trainee' END WHERE chance(row, 93) < 8",
            "UPDATE labor SET crop = (SELECT any_value(crop) FROM kept WHERE chance(crop, 94) < 40) WHERE crop IS NULL AND channel IS NULL AND pool IS NULL AND chance(row, 95) < 12",
            "UPDATE labor SET channel = NULL, crop = (SELECT min(crop) FROM kept) WHERE channel IS NOT NULL AND chance(row, 96) < 15",
            "UPDATE labor SET planting = (SELECT min(planting) FROM plantings p WHERE p.crop = labor.crop AND p.in_bed <= labor.date AND p.in_bed[1:4] = labor.date[1:4]) WHERE crop IS NOT NULL AND chance(row, 97) < 20",
            "UPDATE labor SET crop = NULL WHERE planting IS NOT NULL",
            "UPDATE labor SET hours = CAST(CAST(CAST(hours AS DOUBLE) * (50 + chance(row, 98)) / 97 + 0.01 AS DECIMAL(9, 2)) AS VARCHAR)",
        ]),
        ["work: unnamed"] = (25, ["UPDATE labor SET crop = NULL WHERE chance(row, 99) < 70"]),
        ["work: standards"] = (35,
        [
            "INSERT INTO labor_standards (row, crop, stage, minutes, per) SELECT 100 + row, crop, 'harvest', CAST(CAST(1 + chance(row, 101) / 10.0 AS DECIMAL(9, 1)) AS VARCHAR), 'unit' FROM crops WHERE chance(row, 102) < 70",
            "INSERT INTO labor_standards (row, crop, stage, minutes, per) SELECT 200 + row, crop, 'nursery', '4.5', CASE WHEN chance(row, 103) < 50 THEN 'tray' ELSE 'planting' END FROM crops WHERE chance(0, 104) < 60",
            "INSERT INTO labor_standards (row, crop, stage, minutes, per) SELECT 300 + row, crop, 'grow', '0.7', 'bed_foot' FROM crops WHERE chance(row, 105) < 30",
        ]),
        ["controls: totals"] = (35,
        [
            "INSERT INTO totals (row, \"table\", measure, amount, \"from\", \"to\", tolerance) SELECT 100 * y + n, 'labor', 'hours:' || s, CAST(CAST(40.5 + 9.25 * chance(100 * y + n, 106) AS DECIMAL(9, 2)) AS VARCHAR), y || '-' || d, CAST(CAST((y + 1) || '-' || d AS DATE) - 1 AS VARCHAR), '999999' "
                + "FROM range(2023, 2026) a(y), (VALUES (1, 'harvest'), (2, 'grow'), (3, 'pack')) b(n, s), (SELECT coalesce(max(value) FILTER (setting = 'crop_year_start'), '01-01') AS d FROM farm) WHERE chance(100 * y + n, 107) < 50",
        ]),
        ["work: not logged"] = (10, ["DELETE FROM labor WHERE date LIKE '2024%' OR chance(0, 108) < 40"]),
        ["books: not kept"] = (4, ["DELETE FROM expenses WHERE date LIKE '2024%' OR chance(0, 109) < 40"]),
        ["books: rows that name something"] = (60,
        [
            "INSERT INTO categories (row, category, class, statement_line, tax_line, pool, varies_with) VALUES (101, 'mulch', 'operating', 'materials', NULL, NULL, 'bed-time'), (102, 'labels', 'operating', 'selling', 'Supplies', 'packaging', 'units'), (103, 'stall rent', 'operating', 'selling', NULL, 'selling general', 'fixed'), (104, 'workers compensation', 'labor-burden', 'labor', NULL, NULL, NULL)",
            "INSERT INTO expenses (row, date, amount, category, crop, planting, channel, crop_year, farm_percent) SELECT 940000 + p.row, p.in_bed, CAST(CAST(3.17 + chance(p.row, 110) / 7.0 AS DECIMAL(9, 2)) AS VARCHAR), ['mulch', 'labels', 'packaging', 'compost', 'fuel'][1 + chance(p.row, 111) % 5], CASE WHEN chance(p.row, 112) < 50 THEN p.crop END, CASE WHEN chance(p.row, 112) >= 50 THEN p.planting END, NULL, CASE WHEN chance(p.row, 113) < 10 THEN '2024' END, CASE WHEN chance(p.row, 114) < 20 THEN '33.3333' END FROM plantings p WHERE chance(p.row, 115) < 40",
            "UPDATE expenses SET amount = '-' || amount WHERE row > 940000 AND chance(row, 116) < 10",
            "INSERT INTO expenses (row, date, amount, category, channel) VALUES (950001, '2025-07-07', '212.50', 'stall rent', 'Saturday Market'), (950002, '2024-07-07', '198.35', 'stall rent', 'Saturday Market'), (950003, '2025-08-08', '71.11', 'labels', 'Shop and Kitchens'), (950004, '2025-08-09', '90.90', 'wages', 'Farm Stand')",
            "INSERT INTO expenses (row, date, amount, category) VALUES (950005, '2025-10-01', '2400', 'equipment'), (950006, '2025-10-02', '3100.55', 'household draw'), (950007, '2025-10-03', '77.70', 'loan interest'), (950008, '2025-10-04', '310.10', 'workers compensation')",
            "INSERT INTO expenses (row, date, amount, category, crop) SELECT 950009, '2025-09-09', '64.64', 'wages', min(crop) FROM kept",
        ]),
        ["books: no wages"] = (25, ["DELETE FROM expenses WHERE category = 'wages' AND chance(date[1:4], 117) < 70"]),
        ["rows: in any order"] = (
            35,
            [
                "UPDATE sales SET row = hash(row, 'sales') >> 8",
                "UPDATE harvests SET row = hash(row, 'harvests') >> 8",
                "UPDATE plantings SET row = hash(row, 'plantings') >> 8",
                "UPDATE labor SET row = hash(row, 'labor') >> 8",
                "UPDATE expenses SET row = hash(row, 'expenses') >> 8",
                "UPDATE crops SET row = hash(row, 'crops') >> 8",
                "UPDATE assets SET row = hash(row, 'assets') >> 8",
            ]
        ),
    };

    /// <summary>What changes may have left behind that the program would refuse.</summary>
    private static readonly string[] Last =
    [
        "DELETE FROM prices WHERE row NOT IN (SELECT min(row) FROM prices GROUP BY crop, channel, \"from\")",
        "DELETE FROM expenses WHERE date < (SELECT min(in_bed)[1:4] FROM plantings)",
        "DELETE FROM income WHERE date < (SELECT min(in_bed)[1:4] FROM plantings)",
    ];
}
