-- docs/methods.md 4 and 9: what the hours cost. One row of work is rounded once; its cents then follow its hours.

-- Wages in the books that name nothing, by window; any row of class labor in a window rules out reckoning by wage.
CREATE TABLE wages AS
SELECT year, coalesce(sum(amount) FILTER (e.crop IS NULL AND e.planting IS NULL AND e.channel IS NULL AND e.pool IS NULL), 0) AS total
FROM expenses e JOIN categories c ON c.category = e.category WHERE class = 'labor' GROUP BY year;

CREATE TABLE wage_weights AS
SELECT w.year AS what, w.row AS part, w.row AS place, CAST(hours AS DOUBLE) AS weight, total FROM work w JOIN wages g ON g.year = w.year WHERE w.kind = 'hired';

CREATE TABLE work_cost AS
SELECT w.row, 'hired' AS stream, coalesce(s.units, 0) AS total FROM work w LEFT JOIN split('wage_weights') s ON s.part = w.row WHERE w.kind = 'hired' AND w.year IN (SELECT year FROM wages)
UNION ALL
SELECT row, 'hired', cents(CAST(hours AS DOUBLE) * CAST(wage AS DOUBLE) * (1 + CAST(getvariable('burden') AS DOUBLE) / 100))
FROM work WHERE kind = 'hired' AND wage >= 0 AND year NOT IN (SELECT year FROM wages)
UNION ALL
SELECT row, 'owner', cents(hours * CASE WHEN wage >= 0 THEN wage ELSE getvariable('owner_wage') END) FROM work WHERE kind = 'owner';

CREATE TABLE labor_weights AS
SELECT c.row || ' ' || c.stream AS what, row_number() OVER (ORDER BY d.row, d.planting, d.year, d.pool) AS part,
    coalesce(y.place, 0) * 10000 + d.year AS place, d.weight, c.total, c.row, c.stream, d.planting, d.year, d.pool
FROM work_cost c JOIN work_to d ON d.row = c.row LEFT JOIN planting_years y ON y.planting = d.planting WHERE c.total <> 0;

CREATE TABLE labor_money AS
SELECT l.row, l.stream, l.planting, l.year, l.pool, w.stage, s.units
FROM split('labor_weights') s JOIN labor_weights l ON l.what = s.what AND l.part = s.part JOIN work w ON w.row = l.row
UNION ALL -- wages without an hour of hired work
SELECT NULL, 'hired', NULL, year, 'unlogged labor', NULL, total FROM wages g WHERE total <> 0 AND year NOT IN (SELECT year FROM work WHERE kind = 'hired');
