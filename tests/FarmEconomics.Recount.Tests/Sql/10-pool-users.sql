-- docs/methods.md 7: who uses each pool, by its basis. One row per pool, crop year and user.

-- Crate-days lot by lot: from pick to leaving, unsold lots to the end of their storage life or the closing date. Several stores share equally.
CREATE TABLE stores AS
SELECT crop, trim(unnest(string_split(store, ';'))) AS pool, 1.0 / len(string_split(store, ';')) AS part FROM crops WHERE store IS NOT NULL
UNION ALL -- no store written down: the one there is
SELECT c.crop, p.pool, 1.0 FROM crops c, pools p WHERE c.store IS NULL AND p.basis = 'crate-days' AND (SELECT count(*) FROM pools WHERE basis = 'crate-days') = 1;

CREATE TABLE held AS
SELECT l.planting, l.year, l.crop, CAST(p.quantity AS DOUBLE) * greatest(0, m.date - l.date) AS quantity_days
FROM parts p JOIN lots l ON l.lot = p.lot JOIN leavings m ON m.row = p.leaving
UNION ALL
SELECT planting, year, crop, CAST(quantity AS DOUBLE) * (least(kept_until, getvariable('as_of')) - date) FROM unsold;

-- Units that fill a crate. Not written: as many crates as the crop's sales value times the median of crates per sales value of that year's picked crops that have it written.
CREATE TABLE crate_sizes AS
WITH crop_years AS (
    SELECT crop, year, sum(harvested) AS picked, CAST(sum(sales_value) AS DOUBLE) AS value, units_per_crate > 0 AS known, units_per_crate
    FROM enterprise_output JOIN crops USING (crop) GROUP BY crop, year, units_per_crate
), per_value AS (
    SELECT year, median(picked / units_per_crate / value) AS crates FROM crop_years WHERE known AND picked > 0 AND value > 0 GROUP BY year)
SELECT crop, y.year, coalesce(known, false) AS known, CASE WHEN known THEN units_per_crate WHEN picked > 0 AND value > 0 THEN picked / (crates * value) END AS units
FROM crop_years y LEFT JOIN per_value p ON p.year = y.year;

-- What a pool shared by crates handled, in crates; by sales value where crops with over half of what it handled have no size written: all together then stay the
-- estimated crates, without any they are its money.
CREATE TABLE crate_use AS
WITH handled AS (
    SELECT pool, planting, year, crop, harvested AS quantity FROM pools, enterprise_output WHERE basis LIKE '%quantity-crates' AND harvested > 0
    UNION ALL
    SELECT s.pool, planting, year, h.crop, sum(quantity_days * part)
    FROM held h JOIN stores s ON s.crop = h.crop JOIN pools p ON p.pool = s.pool WHERE basis = 'crate-days' GROUP BY ALL HAVING sum(quantity_days * part) > 0
), valued AS (
    SELECT h.*, z.known, z.units, greatest(0, CAST(o.sales_value AS DOUBLE)) AS value
    FROM handled h JOIN crate_sizes z ON z.crop = h.crop AND z.year = h.year JOIN enterprise_output o ON o.planting = h.planting AND o.year = h.year
), judged AS (
    SELECT *, 2 * sum(CASE WHEN known THEN 0 ELSE value END) OVER (PARTITION BY pool, year) > sum(value) OVER (PARTITION BY pool, year) AS by_value FROM valued)
SELECT pool, planting, year, by_value, known, CASE WHEN by_value
    THEN value * coalesce(sum(quantity / units) OVER (PARTITION BY pool, year) / sum(value) OVER (PARTITION BY pool, year), 0.01) ELSE quantity / units END AS weight
FROM judged;

-- Direct hours, before any pool.
CREATE TABLE direct_hours AS
SELECT planting, year, stage, estimated, sum(hours) AS hours FROM work_hours WHERE planting IS NOT NULL GROUP BY ALL;

-- A channel's pool: its sales value, else its list value, else its crates.
CREATE TABLE channel_use AS
SELECT m.channel, g.planting, g.year,
    coalesce(sum(CASE WHEN g.stream IN ('sales', 'share_income') THEN g.units END), 0) AS sales_value, coalesce(sum(CASE WHEN g.stream = 'list_value' THEN g.units END), 0) AS list_value
FROM gone_money g JOIN leaving_money m ON m.row = g.leaving GROUP BY ALL;
CREATE TABLE channel_crates AS
SELECT m.channel, g.planting, g.year, sum(g.quantity / z.units) AS crates
FROM gone_quantities g JOIN leaving_money m ON m.row = g.leaving JOIN crate_sizes z ON z.crop = m.crop AND z.year = g.year GROUP BY ALL;

-- "X, else Y": Y where the rate table doesn't know the pool, or nothing of X is there.
CREATE TABLE computed_weights AS
WITH inside AS (
    SELECT p.pool, e.planting, e.year, sum(e.bed_feet) AS bed_feet, sum(e.bed_foot_days) AS bed_foot_days
    FROM pools p JOIN enterprise_rows e ON p.structure IS NULL OR p.structure = e.structure GROUP BY ALL
), each AS (
    SELECT p.pool, p.basis, p.channel, e.*, c.water_need, o.harvested, k.weight AS crates, o.sales_value,
        coalesce(i.bed_feet, 0) AS feet_inside, coalesce(i.bed_foot_days, 0) AS days_inside
    FROM pools p CROSS JOIN enterprises e JOIN crops c ON c.crop = e.crop JOIN enterprise_output o ON o.planting = e.planting AND o.year = e.year
    LEFT JOIN inside i ON i.pool = p.pool AND i.planting = e.planting AND i.year = e.year
    LEFT JOIN crate_use k ON k.pool = p.pool AND k.planting = e.planting AND k.year = e.year
), rated AS (
    SELECT e.pool, e.planting, e.year, sum(rate * CASE per WHEN 'bed_foot' THEN bed_feet WHEN 'unit' THEN harvested WHEN 'tray' THEN trays ELSE 1 END) AS weight
    FROM each e JOIN input_rates r ON r.pool = e.pool AND r.crop = e.crop GROUP BY ALL
), worked AS (
    SELECT e.pool, e.planting, e.year, sum(hours) AS hours
    FROM each e JOIN direct_hours h ON h.planting = e.planting AND h.year = e.year AND (basis = 'labor-hours' OR basis = 'labor-hours:' || h.stage) GROUP BY ALL
), harvest_days AS (
    SELECT planting, year, count(DISTINCT date) AS days FROM lots WHERE quantity > 0 GROUP BY ALL
), measured AS (
    SELECT e.pool, e.planting, e.year, 1 AS choice, CASE
        WHEN basis = 'bed-foot-days' THEN days_inside
        WHEN basis = 'bed-feet' THEN feet_inside
        WHEN basis LIKE 'tray-days%' THEN tray_days
        WHEN basis = 'harvest-days' THEN d.days
        WHEN basis IN ('quantity-crates', 'crate-days') THEN crates
        WHEN basis = 'water' THEN days_inside * water_need
        WHEN basis = 'sales-value' AND e.channel IS NULL THEN CAST(e.sales_value AS DOUBLE)
        WHEN basis = 'sales-value' THEN CAST(u.sales_value AS DOUBLE)
        WHEN basis LIKE 'input-rates%' THEN r.weight
        WHEN basis LIKE 'labor-hours%' THEN h.hours
        END AS weight
    FROM each e
    LEFT JOIN rated r ON r.pool = e.pool AND r.planting = e.planting AND r.year = e.year
    LEFT JOIN worked h ON h.pool = e.pool AND h.planting = e.planting AND h.year = e.year
    LEFT JOIN channel_use u ON u.channel = e.channel AND u.planting = e.planting AND u.year = e.year
    LEFT JOIN harvest_days d ON d.planting = e.planting AND d.year = e.year
    UNION ALL
    SELECT e.pool, e.planting, e.year, 2, CASE WHEN basis LIKE '%else bed-feet' THEN feet_inside WHEN basis LIKE '%else quantity-crates' THEN crates
        WHEN e.channel IS NOT NULL THEN CAST(list_value AS DOUBLE) END
    FROM each e LEFT JOIN channel_use u ON u.channel = e.channel AND u.planting = e.planting AND u.year = e.year
    UNION ALL
    SELECT e.pool, e.planting, e.year, 3, x.crates FROM each e JOIN channel_crates x ON x.channel = e.channel AND x.planting = e.planting AND x.year = e.year
)
SELECT pool, planting, year, weight FROM measured WHERE weight > 0 QUALIFY choice = min(choice) OVER (PARTITION BY pool, year);

-- Whose a name is: a pool's, else a crop's, else a planting's.
CREATE MACRO is_pool(named) AS named IN (SELECT pool FROM pools);
CREATE MACRO is_crop(named) AS NOT is_pool(named) AND named IN (SELECT crop FROM crops);
CREATE MACRO is_planting(named) AS NOT is_pool(named) AND NOT is_crop(named) AND named IN (SELECT planting FROM planting_rows);

-- A planting's use without a year counts in the years it stands. Written use, and kWh of loads = watts x hours a day x days in the window up to the closing date (both ends included) / 1000.
CREATE TABLE written_use AS
SELECT u.pool, coalesce(u.year, y.n) AS year, user, quantity
FROM uses u JOIN (SELECT DISTINCT year AS n FROM ownership UNION SELECT DISTINCT year FROM enterprises) y ON u.year IS NULL OR u.year = y.n
WHERE u.year IS NOT NULL OR NOT is_planting(user) OR EXISTS (FROM enterprises e WHERE e.planting = user AND e.year = y.n)
UNION ALL
SELECT pool, n, user, watts * hours_per_day * (least(until, window_start(n + 1) - 1) - greatest(since, window_start(n)) + 1) / 1000
FROM (SELECT * EXCLUDE until, least(until, getvariable('as_of')) AS until, unnest(range(window_of(since), window_of(least(until, getvariable('as_of'))) + 1)) AS n FROM loads WHERE since <= getvariable('as_of'));

CREATE TABLE named_use AS
SELECT *, CASE WHEN is_pool(user) THEN 'pool' WHEN is_crop(user) THEN 'crop' WHEN is_planting(user) THEN 'planting' END AS whose FROM written_use;

-- A crop's written use goes over its plantings by bed-foot-days; planting or crop, it takes the place of the computed weight.
CREATE TABLE planting_use AS
SELECT pool, w.year, e.planting, sum(quantity * CASE WHEN w.whose = 'crop' THEN CASE WHEN total > 0 THEN e.bed_foot_days / total ELSE e.bed_feet / feet END ELSE 1 END) AS weight
FROM named_use w
JOIN (SELECT *, sum(bed_foot_days) OVER (PARTITION BY crop, year) AS total, sum(bed_feet) OVER (PARTITION BY crop, year) AS feet FROM enterprises) e
  ON e.year = w.year AND ((w.whose = 'crop' AND w.user = e.crop) OR (w.whose = 'planting' AND w.user = e.planting))
GROUP BY pool, w.year, e.planting;

CREATE TABLE users AS
SELECT pool, year, 'planting' AS kind, planting AS user, weight FROM computed_weights c
WHERE NOT EXISTS (FROM planting_use u WHERE u.pool = c.pool AND u.year = c.year AND u.planting = c.planting)
UNION ALL SELECT pool, year, 'planting', planting, weight FROM planting_use WHERE weight > 0
UNION ALL SELECT pool, year, 'pool', user, sum(quantity) FROM written_use WHERE user IN (SELECT pool FROM pools) GROUP BY pool, year, user HAVING sum(quantity) > 0
UNION ALL -- a crop that has no planting that year, a planting that isn't of that year
SELECT pool, year, 'not assigned', 'not assigned', sum(quantity) FROM named_use w
WHERE (whose = 'crop' AND NOT EXISTS (FROM enterprises e WHERE e.crop = w.user AND e.year = w.year))
   OR (whose = 'planting' AND NOT EXISTS (FROM enterprises e WHERE e.planting = w.user AND e.year = w.year)) GROUP BY pool, year HAVING sum(quantity) > 0
UNION ALL SELECT pool, year, 'household', 'household', sum(quantity) FROM written_use WHERE lower(user) = 'household' GROUP BY pool, year HAVING sum(quantity) > 0;
