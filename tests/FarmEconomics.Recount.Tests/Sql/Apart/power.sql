-- docs/methods.md 19: panels, battery and loads day by day, month by month, and with one kWh of battery or one kW of panels more or less in each month alone.
-- Not a step of every recount: nothing else rests on it.

SET VARIABLE battery = (SELECT CAST(value AS DOUBLE) FROM farm WHERE setting = 'battery_kwh');
SET VARIABLE usable = coalesce((SELECT CAST(value AS DOUBLE) FROM farm WHERE setting = 'battery_usable_percent'), 50) / 100;
SET VARIABLE charging = coalesce((SELECT CAST(value AS DOUBLE) FROM farm WHERE setting = 'battery_efficiency_percent'), 80) / 100;
SET VARIABLE panels = (SELECT CAST(value AS DOUBLE) FROM farm WHERE setting = 'panel_kw');
SET VARIABLE generator = coalesce((SELECT CAST(value AS DOUBLE) FROM farm WHERE setting = 'generator_kw'), 0) * 24;
CREATE TABLE panel_yield AS SELECT i AS month, CAST(trim(split_part(value, ';', i)) AS DOUBLE) AS kwh FROM farm, range(1, 13) t(i) WHERE setting = 'panel_yield';
CREATE TABLE power_logged AS SELECT CAST(date AS DATE) AS day, trim(pool) AS pool, CAST(kwh AS DOUBLE) AS kwh FROM file_of('power_made');
SET VARIABLE power_pool = (SELECT any_value(pool) FROM power_logged);

-- The days of every crop year up to the closing date: what was wanted, what panels made, what a kW of them makes.
CREATE TABLE power_days AS
WITH days AS (
    SELECT year, CAST(unnest(generate_series(window_start(year), least(getvariable('as_of'), window_start(year + 1) - 1), INTERVAL 1 DAY)) AS DATE) AS day
    FROM (SELECT DISTINCT year FROM enterprises) WHERE window_start(year) <= getvariable('as_of'))
SELECT d.year, d.day, CAST(coalesce((SELECT sum(watts * hours_per_day / 1000) FROM loads l WHERE l.pool = getvariable('power_pool') AND d.day BETWEEN l.since AND l.until), 0) AS DOUBLE) AS load,
    coalesce(g.kwh, y.kwh * getvariable('panels')) AS made, CASE WHEN g.kwh IS NOT NULL THEN g.kwh / getvariable('panels') ELSE y.kwh END AS per_kw
FROM days d LEFT JOIN power_logged g ON g.day = d.day AND g.pool = getvariable('power_pool') LEFT JOIN panel_yield y ON y.month = month(d.day);

-- Ways to run a year: as it is, and with one more or one less in one month.
CREATE TABLE power_ways AS
SELECT DISTINCT year, 'as it is' AS way, 0 AS month, 0 AS kwh, 0 AS kw FROM power_days
UNION ALL SELECT DISTINCT year, 'battery ' || s, month(day), s, 0 FROM power_days, (VALUES (1), (-1)) t(s)
UNION ALL SELECT DISTINCT year, 'panels ' || s, month(day), 0, s FROM power_days, (VALUES (1), (-1)) t(s);
CREATE TABLE power_inputs AS
SELECT w.year, w.way, w.month AS changed, d.day, d.load, greatest(0, d.made + CASE WHEN month(d.day) = w.month THEN w.kw * d.per_kw ELSE 0 END) AS made,
    greatest(0, getvariable('battery') + CASE WHEN month(d.day) = w.month THEN w.kwh ELSE 0 END) * getvariable('usable') AS size
FROM power_ways w JOIN power_days d ON d.year = w.year;

-- Panels to the load, then the battery, then the generator; what is over is stored with a loss, and above full it is spilled. Full before the first day.
CREATE TABLE power_run AS
WITH RECURSIVE run AS (
    SELECT year, way, changed, CAST(day - 1 AS DATE) AS day, size AS held, CAST(0 AS DOUBLE) AS load, CAST(0 AS DOUBLE) AS made, CAST(0 AS DOUBLE) AS spilled, CAST(0 AS DOUBLE) AS missing
    FROM power_inputs WHERE day = window_start(year)
    UNION ALL
    SELECT year, way, changed, day, there - drawn + stored, load, made, over - stored / getvariable('charging') + fell, load - direct - drawn
    FROM (
        SELECT *, least(over * getvariable('charging'), size - there + drawn) AS stored
        FROM (
            SELECT i.year, i.way, i.changed, i.day, i.load, i.made, i.size, least(r.held, i.size) AS there, r.held - least(r.held, i.size) AS fell, least(i.load, i.made) AS direct,
                i.made - least(i.load, i.made) AS over, least(i.load - least(i.load, i.made), least(r.held, i.size)) AS drawn
            FROM run r JOIN power_inputs i ON i.year = r.year AND i.way = r.way AND i.changed = r.changed AND i.day = r.day + 1)))
FROM run WHERE day >= window_start(year);
CREATE TABLE power_missing AS SELECT year, way, changed, sum(missing) AS missing FROM power_run GROUP BY ALL;

CREATE VIEW power_months_result AS
WITH base AS (SELECT year, missing FROM power_missing WHERE way = 'as it is'),
moved AS (SELECT m.year, m.way, m.changed, b.missing - m.missing AS saved FROM power_missing m JOIN base b ON b.year = m.year)
SELECT r.year AS crop_year, strftime(any_value(r.day), '%Y-%m') AS month, sum(load) AS kwh_wanted, sum(made) AS kwh_made, sum(spilled) AS kwh_spilled,
    CAST(count(*) FILTER (missing > 1e-6) AS DOUBLE) AS days_short, sum(least(missing, getvariable('generator'))) AS kwh_generated, sum(missing - least(missing, getvariable('generator'))) AS kwh_short,
    any_value(a.saved) AS kwh_saved_by_1_kwh_more_battery, -any_value(b.saved) AS kwh_lost_by_1_kwh_less_battery, any_value(c.saved) AS kwh_saved_by_1_kw_more_panels, -any_value(d.saved) AS kwh_lost_by_1_kw_less_panels
FROM power_run r
LEFT JOIN moved a ON a.year = r.year AND a.way = 'battery 1' AND a.changed = month(r.day) LEFT JOIN moved b ON b.year = r.year AND b.way = 'battery -1' AND b.changed = month(r.day)
LEFT JOIN moved c ON c.year = r.year AND c.way = 'panels 1' AND c.changed = month(r.day) LEFT JOIN moved d ON d.year = r.year AND d.way = 'panels -1' AND d.changed = month(r.day)
WHERE r.way = 'as it is' GROUP BY r.year, month(r.day);
