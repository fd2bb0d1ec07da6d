-- docs/methods.md 4: where every logged hour goes, and the hours that time standards fill in.

-- Rows of the books by crop year: a row naming a planting has the planting's.
CREATE TABLE booked AS
SELECT e.*, c.class, c.burden, c.line, c.varies_with, c.written, c.pool AS category_pool, CASE WHEN e.planting IS NULL OR y.perennial THEN e.year ELSE y.year END AS home_year
FROM expenses e JOIN categories c ON c.category = e.category LEFT JOIN planting_years y ON y.planting = e.planting;
CREATE TABLE wage_years AS SELECT DISTINCT home_year AS year FROM booked WHERE class = 'labor' AND NOT burden;

-- Whose hours they are that no log holds: in a year with wages hired ones, which those wages paid; else an owner's where the farm has one; else hired.
SET VARIABLE has_owner = getvariable('unpaid_hours') <> 'none' AND (getvariable('owner_wage') IS NOT NULL OR EXISTS (FROM workers WHERE kind = 'owner'));
CREATE MACRO who_worked(n) AS CASE WHEN getvariable('has_owner') AND n NOT IN (SELECT year FROM wage_years) THEN 'owner' ELSE 'hired' END;

CREATE TABLE work AS
SELECT l.row, l.date, l.year, l.hours, t.stage, l.crop, l.planting, l.channel, l.pool, t.pool AS task_pool,
    (SELECT arg_max(kind, (since, row)) FROM workers w WHERE w.worker = l.worker AND since <= l.date) AS kind,
    (SELECT arg_max(coalesce(wage, -1), (since, row)) FROM workers w WHERE w.worker = l.worker AND since <= l.date) AS wage
FROM labor_rows l JOIN tasks t ON t.task = l.task;

-- Nursery: sown and not yet in the bed, by trays (any blank: by bed-feet). Grow: in the bed, by bed-feet. A perennial's enterprise is the window's.
CREATE TABLE bed_stage AS
SELECT row, planting, year, sum(weight) AS weight
FROM (
    SELECT w.row, s.planting, CASE WHEN s.perennial THEN w.year ELSE s.year END AS year,
        CASE WHEN w.stage = 'grow' OR bool_or(s.trays IS NULL) OVER (PARTITION BY w.row) THEN s.bed_feet ELSE s.trays END AS weight
    FROM work w JOIN stays s ON s.crop = w.crop
        AND ((w.stage = 'nursery' AND s.sown <= w.date AND w.date < s.in_bed) OR (w.stage = 'grow' AND s.in_bed <= w.date AND w.date < s.out_of_bed)))
GROUP BY ALL HAVING sum(weight) > 0;

-- Harvest and pack: by what was picked that day, sell: by what left for money, else on the nearest day within three, the earlier on a tie.
CREATE TABLE day_stage AS
WITH moves AS (
    SELECT 'pick' AS what, crop, date, planting, year, CAST(quantity AS DOUBLE) AS quantity FROM lots
    UNION ALL
    SELECT 'sell', m.crop, m.date, g.planting, g.year, g.quantity FROM gone_quantities g JOIN leaving_money m ON m.row = g.leaving
    WHERE m.for_money
), near AS (
    SELECT w.row, m.planting, m.year, m.date, m.quantity, abs(m.date - w.date) AS off
    FROM work w JOIN moves m ON m.crop = w.crop AND m.what = CASE w.stage WHEN 'sell' THEN 'sell' ELSE 'pick' END AND abs(m.date - w.date) <= 3
    WHERE w.stage IN ('harvest', 'pack', 'sell')
)
SELECT row, planting, year, sum(quantity) AS weight
FROM (FROM near QUALIFY rank() OVER (PARTITION BY row ORDER BY off, date) = 1)
GROUP BY row, planting, year;

-- Else the crop's plantings of the window by bed-foot-weeks, else those of the next later crop year that has one, else nobody.
CREATE TABLE fallback_stage AS
SELECT w.row, e.planting, e.year, e.bed_foot_days AS weight
FROM work w JOIN enterprises e ON e.crop = w.crop
WHERE w.crop IS NOT NULL AND w.row NOT IN (SELECT row FROM bed_stage UNION ALL SELECT row FROM day_stage)
  AND e.year = (SELECT min(year) FROM enterprises n WHERE n.crop = w.crop AND n.year >= w.year);

-- Standard hours of each enterprise and stage, to 8 decimals.
CREATE TABLE standard_hours AS
SELECT e.planting, e.year, s.stage, any_value(e.place) AS place, round(sum(minutes * CASE per WHEN 'bed_foot' THEN bed_feet WHEN 'unit' THEN CAST(coalesce(k.quantity, 0) AS DOUBLE)
    WHEN 'tray' THEN trays ELSE 1 END / 60), 8) AS hours
FROM enterprises e JOIN labor_standards s ON s.crop = e.crop LEFT JOIN picked k ON k.planting = e.planting AND k.year = e.year GROUP BY e.planting, e.year, s.stage;

-- Rows that name nothing and whose task has no pool of its own are spread by the standards of their window and stage, where there are any.
CREATE TABLE spread_rows AS
SELECT w.row, w.year, w.stage FROM work w
WHERE crop IS NULL AND planting IS NULL AND channel IS NULL AND pool IS NULL AND task_pool IS NULL
  AND EXISTS (FROM standard_hours s WHERE s.year = w.year AND s.stage = w.stage AND s.hours > 0);

-- Every row's destinations with their weights. `planting` or `pool` or neither (not assigned).
CREATE TABLE work_to AS
SELECT w.row, w.planting, CASE WHEN y.perennial THEN w.year ELSE y.year END AS year, NULL AS pool, 1.0 AS weight, false AS estimated
FROM work w JOIN planting_years y ON y.planting = w.planting
UNION ALL SELECT row, planting, year, NULL, weight, false FROM bed_stage
UNION ALL SELECT row, planting, year, NULL, weight, false FROM day_stage
UNION ALL SELECT row, planting, year, NULL, weight, false FROM fallback_stage
UNION ALL SELECT r.row, s.planting, s.year, NULL, s.hours, true
FROM spread_rows r JOIN standard_hours s ON s.year = r.year AND s.stage = r.stage AND s.hours > 0
UNION ALL
SELECT row, NULL, w.year, coalesce(w.pool, w.channel || ' (channel)', task_pool, work_pool), 1.0, false
FROM work w JOIN stages g ON g.stage = w.stage
WHERE w.crop IS NULL AND w.planting IS NULL AND row NOT IN (SELECT row FROM spread_rows);

-- A control total above the hours logged at a stage that has standards: the rest is added by them.
CREATE TABLE added AS
SELECT t.year, substr(t.measure, 7) AS stage, t.amount - coalesce(sum(w.hours), 0) AS hours, 1000000 + row_number() OVER (ORDER BY t.year, t.measure) AS row
FROM totals t LEFT JOIN work w ON w.year = t.year AND 'hours:' || w.stage = t.measure
WHERE t.about = 'labor' AND t.measure LIKE 'hours:%'
  AND EXISTS (FROM standard_hours s WHERE s.year = t.year AND 'hours:' || s.stage = t.measure AND s.hours > 0)
GROUP BY t.year, t.measure, t.amount HAVING t.amount > coalesce(sum(w.hours), 0);

-- A stage without such rows and without a total takes the standard itself, for the plantings that have no hours logged at it, less what of the stage stands in pools.
-- On a farm where nobody works unpaid that holds for years with wages alone.
CREATE TABLE filled AS
WITH pooled AS (SELECT w.year, w.stage, CAST(sum(w.hours) AS DOUBLE) AS hours FROM work_to d JOIN work w ON w.row = d.row WHERE d.pool IS NOT NULL GROUP BY ALL),
missing AS (
SELECT s.planting, s.year, s.stage, s.hours, s.place, sum(s.hours) OVER (PARTITION BY s.year, s.stage) AS all_hours
FROM standard_hours s
WHERE s.hours > 0
  AND (getvariable('unpaid_hours') <> 'none' OR s.year IN (SELECT year FROM wage_years))
  AND NOT EXISTS (FROM spread_rows r WHERE r.year = s.year AND r.stage = s.stage)
  AND NOT EXISTS (FROM totals t WHERE t.year = s.year AND t.about = 'labor' AND t.measure = 'hours:' || s.stage)
  AND NOT EXISTS (FROM work_to d JOIN work w ON w.row = d.row WHERE d.planting = s.planting AND d.year = s.year AND w.stage = s.stage)
)
SELECT m.planting, m.year, m.stage, round(m.hours * (all_hours - coalesce(p.hours, 0)) / all_hours, 8) AS hours, 2000000 + row_number() OVER (ORDER BY m.year, m.stage, m.place) AS row
FROM missing m LEFT JOIN pooled p ON p.year = m.year AND p.stage = m.stage WHERE coalesce(p.hours, 0) < all_hours;

INSERT INTO work_to
SELECT a.row, s.planting, s.year, NULL, s.hours, true FROM added a JOIN standard_hours s ON s.year = a.year AND s.stage = a.stage AND s.hours > 0
UNION ALL SELECT row, planting, year, NULL, 1.0, true FROM filled;
INSERT INTO work BY NAME
SELECT row, year, CAST(hours AS DECIMAL(18, 8)) AS hours, stage, who_worked(year) AS kind FROM added
UNION ALL BY NAME
SELECT row, year, CAST(hours AS DECIMAL(18, 8)) AS hours, stage, who_worked(year) AS kind FROM filled;

-- A row's hours are split over its destinations in units of 10^-8.
CREATE TABLE hour_weights AS
SELECT d.row AS what, row_number() OVER (ORDER BY d.row, d.planting, d.year, d.pool) AS part, coalesce(y.place, 0) * 10000 + d.year AS place, d.weight, w.hours AS total,
    d.planting, d.year, d.pool, d.estimated, w.stage
FROM work_to d JOIN work w ON w.row = d.row LEFT JOIN planting_years y ON y.planting = d.planting;
CREATE TABLE work_hours AS
SELECT h.what AS row, h.planting, h.year, h.pool, h.estimated, h.stage, CAST(s.amount AS DOUBLE) AS hours
FROM split_exactly('hour_weights') s JOIN hour_weights h ON h.what = s.what AND h.part = s.part;
