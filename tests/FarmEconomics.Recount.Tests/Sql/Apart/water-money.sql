-- docs/methods.md 19, loss: what the days as watered cost. Rests on all steps, the boxes filled again, and Apart/water; seasons that are over alone.

-- What the whole yield of a planting adds: sales outside boxes less fees, household use, stock on hand and its part of refilling, less the cost of picking, packing and selling it.
CREATE TABLE grown_costs AS
WITH lines AS (
    SELECT planting, year, varies_with AS driver, units FROM direct_money WHERE planting IS NOT NULL
    UNION ALL SELECT l.planting, l.year, g.behavior, l.units FROM labor_money l JOIN stages g ON g.stage = l.stage WHERE l.planting IS NOT NULL
    UNION ALL SELECT user, year, driver, units FROM charges_by_driver)
SELECT planting, year, sum(units) AS units FROM lines WHERE driver IN ('quantity', 'units') GROUP BY planting, year;
CREATE TABLE grown_returns AS
SELECT g.planting, g.year, coalesce(sum(units) FILTER (stream IN ('sales', 'household')), 0) - coalesce(sum(units) FILTER (stream = 'fee' AND kind <> 'share'), 0) AS units,
    coalesce(sum(greatest(0, units)) FILTER (stream = 'list_value' AND kind = 'share'), 0) AS in_boxes
FROM gone_money g JOIN leaving_money m ON m.row = g.leaving GROUP BY g.planting, g.year;
CREATE TABLE yield_worth AS
WITH refilled AS (SELECT season AS year, what, sum(lost) AS lost FROM fillings GROUP BY season, what),
stock AS (SELECT planting, year, sum(units) AS units FROM closing_stock GROUP BY planting, year)
SELECT e.planting, e.year, coalesce(r.units, 0) + coalesce(s.units, 0) - coalesce(c.units, 0)
    + coalesce(f.lost * r.in_boxes / nullif(sum(coalesce(r.in_boxes, 0)) OVER (PARTITION BY e.crop, e.year), 0), 0) AS units
FROM enterprises e LEFT JOIN grown_returns r ON r.planting = e.planting AND r.year = e.year LEFT JOIN grown_costs c ON c.planting = e.planting AND c.year = e.year
LEFT JOIN stock s ON s.planting = e.planting AND s.year = e.year LEFT JOIN refilled f ON f.what = 'crop ' || e.crop AND f.year = e.year;

-- Of a bed row by its part of the planting's bed-foot-days; of a day what was picked then or later.
CREATE TABLE row_worth AS
SELECT r.row, r.year, r.planting, w.units * r.bed_foot_days / sum(r.bed_foot_days) OVER (PARTITION BY r.planting, r.year) AS units
FROM enterprise_rows r JOIN yield_worth w ON w.planting = r.planting AND w.year = r.year;
CREATE TABLE picks AS SELECT planting, year, date, sum(CAST(quantity AS DOUBLE)) AS quantity FROM lots GROUP BY planting, year, date;
CREATE VIEW water_money_result AS
WITH whole AS (SELECT planting, year, sum(quantity) AS quantity FROM picks GROUP BY planting, year),
lost AS (
    SELECT d.year, d.block, d.day, d.row, d.lost, r.planting, r.units, h.quantity AS whole,
        (SELECT sum(p.quantity) FROM picks p WHERE p.planting = r.planting AND p.year = r.year AND p.date >= d.day) AS still
    FROM water_days d JOIN row_worth r ON r.row = d.row AND r.year = d.year LEFT JOIN whole h ON h.planting = r.planting AND h.year = r.year WHERE d.told)
SELECT year AS crop_year, block, CAST(day AS VARCHAR) AS date, sum(lost * units * coalesce(still / whole, 0)) / 100 AS lost_as_watered
FROM lost WHERE day >= greatest(window_start(year), getvariable('weather_from')) GROUP BY year, block, day;
