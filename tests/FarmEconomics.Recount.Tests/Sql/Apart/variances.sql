-- docs/methods.md 20: plan against actual, crop by crop. Rests on all steps up to what goes with a crop.

-- The plan counts up to the end of its year, or up to the closing date where that lies in it; of a time begun the part that has passed.
CREATE MACRO passed(since, until, stop) AS CASE WHEN stop >= until THEN 1.0 WHEN stop <= since THEN 0.0 ELSE CAST(stop - since AS DOUBLE) / (until - since) END;
CREATE TABLE plan_years AS
SELECT year, CASE WHEN getvariable('as_of') < window_start(year + 1) - 1 AND window_of(getvariable('as_of')) = year THEN getvariable('as_of') ELSE window_start(year + 1) END AS stop
FROM (SELECT DISTINCT CAST(crop_year AS INTEGER) AS year FROM file_of('plan'));

-- What an hour cost, and the part of a crop that was culled: of the season before, else of the season.
CREATE TABLE hour_costs AS
WITH each AS (SELECT year, sum(CAST(hours AS DOUBLE)) AS hours FROM work WHERE hours > 0 GROUP BY year),
paid AS (SELECT w.year, sum(c.total) AS units FROM work_cost c JOIN work w ON w.row = c.row GROUP BY w.year)
SELECT p.year, CASE WHEN b.hours > 0 THEN coalesce(bp.units, 0) / b.hours WHEN o.hours > 0 THEN coalesce(op.units, 0) / o.hours ELSE 0 END / 100 AS cost
FROM plan_years p LEFT JOIN each b ON b.year = p.year - 1 LEFT JOIN paid bp ON bp.year = p.year - 1 LEFT JOIN each o ON o.year = p.year LEFT JOIN paid op ON op.year = p.year;
CREATE TABLE cull_parts AS
WITH each AS (SELECT crop, year, sum(CAST(quantity AS DOUBLE)) AS picked, sum(culled) AS culled FROM lots GROUP BY crop, year)
SELECT p.year, c.crop, coalesce(b.culled / (b.picked + b.culled), o.culled / (o.picked + o.culled), 0) AS part
FROM plan_years p CROSS JOIN crops c LEFT JOIN each b ON b.crop = c.crop AND b.year = p.year - 1 LEFT JOIN each o ON o.crop = c.crop AND o.year = p.year;

CREATE TABLE planned_crops AS
SELECT p.year, f.crop, sum(CAST(bed_feet AS DOUBLE) * b.wide) AS feet, sum(CAST(yield AS DOUBLE) * passed(CAST(in_bed AS DATE), CAST(out_of_bed AS DATE), stop)) AS picked,
    sum(CAST(coalesce(hours, '0') AS DOUBLE) * passed(CAST(in_bed AS DATE), CAST(out_of_bed AS DATE), stop)) AS hours,
    sum(CAST(coalesce(cost, '0') AS DOUBLE)) AS inputs
FROM file_of('plan') f JOIN plan_years p ON p.year = CAST(f.crop_year AS INTEGER) JOIN beds b ON b.bed = f.bed WHERE CAST(in_bed AS DATE) < stop GROUP BY p.year, f.crop;
CREATE TABLE planned_channels AS
SELECT p.year, s.crop, s.channel, sum(CAST(quantity AS DOUBLE) * CAST(u.base AS DOUBLE) * done) AS units, sum(CAST(quantity AS DOUBLE) * CAST(price AS DOUBLE) * done * (1 - CAST(h.fee_percent AS DOUBLE) / 100)) AS net
FROM (SELECT f.*, p.year, p.stop, passed(CAST("from" AS DATE), CAST(CAST("from" AS DATE) + 7 * CAST(coalesce(weeks, '1') AS INTEGER) AS DATE), p.stop) AS done
    FROM (SELECT * FROM file_of('plan_sales') UNION ALL BY NAME SELECT NULL AS unit WHERE false) f JOIN plan_years p ON p.year = CAST(f.crop_year AS INTEGER)) s
JOIN plan_years p ON p.year = s.year JOIN channels h ON h.channel = s.channel JOIN crops c ON c.crop = s.crop JOIN units u ON u.crop = s.crop AND u.unit = coalesce(s.unit, c.unit)
WHERE done > 0 AND CAST(quantity AS DOUBLE) > 0 GROUP BY p.year, s.crop, s.channel;

-- What came: boxes at list value.
CREATE TABLE came_channels AS
WITH goods AS (
    SELECT y.crop, g.year, m.channel, sum(g.quantity) AS units FROM gone_quantities g JOIN leaving_money m ON m.row = g.leaving JOIN planting_years y ON y.planting = g.planting
    WHERE m.kind IN ('market', 'stand', 'wholesale', 'share') AND g.quantity > 0 GROUP BY ALL
), money AS (
    SELECT y.crop, g.year, m.channel, sum(CASE WHEN m.kind = 'share' THEN CASE WHEN stream = 'list_value' THEN units ELSE 0 END
        ELSE CASE stream WHEN 'sales' THEN units WHEN 'fee' THEN -units ELSE 0 END END) / 100 AS net
    FROM gone_money g JOIN leaving_money m ON m.row = g.leaving JOIN planting_years y ON y.planting = g.planting WHERE m.quantity > 0 GROUP BY ALL)
SELECT g.*, coalesce(m.net, 0) AS net FROM goods g LEFT JOIN money m ON m.crop = g.crop AND m.year = g.year AND m.channel = g.channel;
CREATE TABLE came_crops AS
WITH lines AS (
    SELECT planting, year, varies_with AS driver, class = 'labor' AS labor, units FROM direct_money WHERE planting IS NOT NULL
    UNION ALL SELECT l.planting, l.year, g.behavior, true, l.units FROM labor_money l JOIN stages g ON g.stage = l.stage WHERE l.planting IS NOT NULL
    UNION ALL SELECT user, year, driver, stream IN ('hired', 'owner'), units FROM charges_by_driver
), costs AS (
    SELECT y.crop, l.year, sum(units) FILTER (labor) / 100 AS labor, sum(units) FILTER (NOT labor) / 100 AS supplies
    FROM lines l JOIN planting_years y ON y.planting = l.planting WHERE driver NOT IN ('fixed', 'trips') GROUP BY y.crop, l.year
), hours AS (
    SELECT y.crop, h.year, sum(hours) AS hours
    FROM (SELECT planting, year, stage, hours FROM direct_hours UNION ALL SELECT user, year, stage, hours FROM hour_charges WHERE line <> 'overhead') h JOIN planting_years y ON y.planting = h.planting
    WHERE stage IN ('nursery', 'grow', 'harvest', 'pack') GROUP BY y.crop, h.year
), picks AS (SELECT crop, year, sum(CAST(quantity AS DOUBLE)) AS picked, sum(culled) AS culled FROM lots GROUP BY crop, year),
feet AS (SELECT crop, year, sum(bed_feet) AS feet FROM enterprises GROUP BY crop, year)
SELECT f.crop, f.year, f.feet, coalesce(p.picked, 0) AS picked, coalesce(p.culled, 0) AS culled, coalesce(h.hours, 0) AS hours, CASE WHEN h.hours > 0 THEN coalesce(c.labor, 0) / h.hours ELSE 0 END AS cost,
    CASE WHEN h.hours > 0 THEN 0 ELSE coalesce(c.labor, 0) END + coalesce(c.supplies, 0) AS inputs
FROM feet f LEFT JOIN costs c ON c.crop = f.crop AND c.year = f.year LEFT JOIN hours h ON h.crop = f.crop AND h.year = f.year LEFT JOIN picks p ON p.crop = f.crop AND p.year = f.year;

-- Crops of which a row says no hours, or no cost: they count as they came.
CREATE TABLE not_planned AS
SELECT CAST(crop_year AS INTEGER) AS year, crop, bool_or(hours IS NULL) AS hours, bool_or(cost IS NULL) AS cost
FROM file_of('plan') GROUP BY ALL;

-- Both sides of a crop and their sums; then the plan with one factor after another actual.
CREATE TABLE sides AS
WITH sold AS (
    SELECT 'plan' AS side, year, crop, sum(units) AS units, sum(net) AS net FROM planned_channels GROUP BY year, crop
    UNION ALL SELECT 'came', year, crop, sum(units), sum(net) FROM came_channels GROUP BY year, crop)
SELECT y.year, c.crop, p.crop IS NOT NULL AS was_planned, a.crop IS NOT NULL AS was_grown, coalesce(p.feet, 0) AS p_feet, coalesce(a.feet, 0) AS a_feet,
    p.picked AS p_picked, p.picked * k.part / (1 - k.part) AS p_culled, a.picked AS a_picked, a.culled AS a_culled,
    CASE WHEN p.crop IS NULL THEN 0 ELSE coalesce(ps.units, 0) END AS p_sold, coalesce(sa.units, 0) AS a_sold, CASE WHEN p.crop IS NULL THEN 0 ELSE coalesce(ps.net, 0) END AS p_net, coalesce(sa.net, 0) AS a_net,
    CASE WHEN l.hours AND a.crop IS NOT NULL THEN
        a.hours * CASE WHEN p.picked > 0 AND a.picked > 0 THEN p.picked / a.picked WHEN a.feet > 0 THEN p.feet / a.feet ELSE 0 END
    ELSE p.hours END AS p_hours, a.hours AS a_hours,
    h.cost AS p_cost, a.cost AS a_cost,
    CASE WHEN l.cost AND a.crop IS NOT NULL THEN a.inputs * CASE WHEN a.feet > 0 THEN p.feet / a.feet ELSE 0 END
    ELSE p.inputs END AS p_inputs, a.inputs AS a_inputs
FROM plan_years y CROSS JOIN crops c LEFT JOIN planned_crops p ON p.year = y.year AND p.crop = c.crop LEFT JOIN came_crops a ON a.year = y.year AND a.crop = c.crop
LEFT JOIN sold ps ON ps.side = 'plan' AND ps.year = y.year AND ps.crop = c.crop LEFT JOIN sold sa ON sa.side = 'came' AND sa.year = y.year AND sa.crop = c.crop
LEFT JOIN not_planned l ON l.year = y.year AND l.crop = c.crop JOIN hour_costs h ON h.year = y.year
JOIN cull_parts k ON k.year = y.year AND k.crop = c.crop
WHERE p.crop IS NOT NULL OR a.crop IS NOT NULL;

-- Mean price of what was sold where the plan says, or where it really was, at planned or actual prices.
CREATE TABLE mean_prices AS
WITH channel_rows AS (
    SELECT 'plan' AS side, * FROM planned_channels UNION ALL BY NAME SELECT 'came' AS side, * FROM came_channels
), mixes AS (
    SELECT s.year, s.crop, m.mix, m.priced, CASE WHEN m.mix = 'came' AND a_sold > 0 THEN 'came' WHEN p_sold > 0 THEN 'plan' ELSE 'came' END AS mix_side,
        CASE WHEN (m.priced = 'came' AND a_sold > 0) OR p_sold <= 0 THEN 'came' ELSE 'plan' END AS price_side, p_sold, a_sold, p_net, a_net
    FROM sides s, (VALUES ('plan', 'plan'), ('came', 'plan'), ('came', 'came')) m(mix, priced))
SELECT m.year, m.crop, m.mix, m.priced, sum(c.units * coalesce(t.net / t.units, CASE m.price_side WHEN 'came' THEN a_net / greatest(a_sold, 1e-8) ELSE p_net / greatest(p_sold, 1e-8) END)) / sum(c.units) AS price
FROM mixes m JOIN channel_rows c ON c.side = m.mix_side AND c.year = m.year AND c.crop = m.crop
LEFT JOIN channel_rows t ON t.side = m.price_side AND t.year = m.year AND t.crop = m.crop AND t.channel = c.channel GROUP BY m.year, m.crop, m.mix, m.priced HAVING sum(c.units) > 0;

CREATE TABLE flexed AS
WITH steps AS (
    SELECT s.*, n.step, CASE WHEN step >= 2 THEN a_picked + a_culled ELSE (p_picked + p_culled) * a_feet / p_feet END AS grown,
        CASE WHEN (step >= 3 AND a_picked + a_culled > 0) OR p_picked + p_culled <= 0 THEN CASE WHEN a_picked + a_culled > 0 THEN a_picked / (a_picked + a_culled) ELSE 0 END ELSE p_picked / (p_picked + p_culled) END AS kept
    FROM sides s, range(1, 10) n(step) WHERE was_planned AND was_grown AND p_feet > 0 AND a_feet > 0
), picks AS (SELECT *, grown * kept AS picked FROM steps),
sold AS (
    SELECT *, CASE WHEN step >= 4 THEN CASE WHEN a_picked > 0 THEN picked * a_sold / a_picked ELSE a_sold END ELSE CASE WHEN p_picked > 0 THEN picked * p_sold / p_picked ELSE p_sold END END AS sold FROM picks)
SELECT s.year, s.crop, s.step, cents(sold * coalesce(m.price, 0) - CASE WHEN step >= 7 THEN a_hours WHEN p_picked > 0 THEN p_hours * picked / p_picked ELSE p_hours * a_feet / p_feet END
    * CASE WHEN step >= 8 THEN a_cost ELSE p_cost END - CASE WHEN step >= 9 THEN a_inputs ELSE p_inputs * a_feet / p_feet END) AS units
FROM sold s LEFT JOIN mean_prices m ON m.year = s.year AND m.crop = s.crop AND m.mix = CASE WHEN step >= 5 THEN 'came' ELSE 'plan' END AND m.priced = CASE WHEN step >= 6 THEN 'came' ELSE 'plan' END;

CREATE VIEW plan_against_actual_result AS
WITH ends AS (
    SELECT year, crop, was_planned, was_grown, was_planned AND was_grown AND p_feet > 0 AND a_feet > 0 AS matched, CASE WHEN was_planned THEN cents(p_net - p_hours * p_cost - p_inputs) ELSE 0 END AS planned,
        CASE WHEN was_grown THEN cents(a_net - a_hours * a_cost - a_inputs) ELSE 0 END AS came FROM sides
), steps AS (
    SELECT year, crop, list(units ORDER BY step) AS after FROM flexed GROUP BY year, crop)
SELECT e.year AS crop_year, e.crop, strftime(CASE WHEN stop < window_start(e.year + 1) THEN stop ELSE stop - 1 END, '%Y-%m-%d') AS up_to, money(planned) AS planned, money(came) AS came, money(came - planned) AS difference,
    money(CASE WHEN matched THEN after[1] - planned WHEN was_planned AND NOT was_grown THEN came - planned ELSE 0 END) AS length, money(CASE WHEN matched THEN after[2] - after[1] ELSE 0 END) AS "yield",
    money(CASE WHEN matched THEN after[3] - after[2] ELSE 0 END) AS culls, money(CASE WHEN matched THEN after[4] - after[3] ELSE 0 END) AS part_sold, money(CASE WHEN matched THEN after[5] - after[4] ELSE 0 END) AS where_sold,
    money(CASE WHEN matched THEN after[6] - after[5] ELSE 0 END) AS price, money(CASE WHEN matched THEN after[7] - after[6] ELSE 0 END) AS hours, money(CASE WHEN matched THEN after[8] - after[7] ELSE 0 END) AS cost_of_an_hour,
    money(CASE WHEN matched THEN after[9] - after[8] ELSE 0 END) AS supplies, money(CASE WHEN matched THEN came - after[9] WHEN was_planned AND NOT was_grown THEN 0 ELSE came - planned END) AS rest
FROM ends e JOIN plan_years p ON p.year = e.year LEFT JOIN steps s ON s.year = e.year AND s.crop = e.crop;
