-- docs/methods.md 4 and 9: what the hours cost. One row of work is rounded once; its cents then follow its hours.

-- Money of class labor in the books that names nothing, by crop year, with what is paid on top of wages. Wages rule out counting by wage; the latter doesn't.
CREATE TABLE labor_books AS
SELECT home_year AS year, bool_or(NOT burden) AS wages,
    coalesce(sum(cents_of(amount * CAST(farm_percent * 10000 AS BIGINT), 100000000)) FILTER (crop IS NULL AND planting IS NULL AND channel IS NULL AND pool IS NULL), 0) AS total
FROM booked WHERE class = 'labor' GROUP BY home_year;

CREATE TABLE wage_weights AS
SELECT w.year AS what, w.row AS part, w.row AS place, CAST(hours AS DOUBLE) AS weight, total FROM work w JOIN labor_books g ON g.year = w.year WHERE w.kind = 'hired';
CREATE TABLE paid AS SELECT part AS row, units FROM split('wage_weights');

-- The percent on top of wages stands in for rows of the books: where those are there, it isn't added.
CREATE TABLE work_cost AS
SELECT w.row, 'hired' AS stream, coalesce(p.units, 0) AS total FROM work w LEFT JOIN paid p ON p.row = w.row WHERE w.kind = 'hired' AND w.year IN (SELECT year FROM wage_years)
UNION ALL
SELECT w.row, 'hired', CAST(round(CAST(hours AS DECIMAL(20, 8)) * CAST(wage AS DECIMAL(9, 4)) * CAST(100 + CASE WHEN g.year IS NULL THEN getvariable('burden') ELSE 0 END AS DECIMAL(9, 4)), 0) AS BIGINT)
FROM work w LEFT JOIN labor_books g ON g.year = w.year WHERE kind = 'hired' AND wage >= 0 AND w.year NOT IN (SELECT year FROM wage_years)
UNION ALL
SELECT row, 'owner', exact_cents(CAST(hours AS DECIMAL(24, 8)) * CASE WHEN wage >= 0 THEN wage ELSE getvariable('owner_wage') END) FROM work WHERE kind = 'owner'
UNION ALL -- beside it what the books paid on top
SELECT p.row, 'burden', p.units FROM paid p JOIN work w ON w.row = p.row WHERE w.year NOT IN (SELECT year FROM wage_years);

-- Money of a row goes over its destinations by the weights of its hours.
CREATE TABLE labor_weights AS
SELECT c.row || ' ' || c.stream AS what, row_number() OVER (ORDER BY d.row, d.planting, d.year, d.pool) AS part,
    coalesce(y.place, 0) * 10000 + d.year AS place, d.weight, c.total, c.row, c.stream, d.planting, d.year, d.pool
FROM work_cost c JOIN work_to d ON d.row = c.row LEFT JOIN planting_years y ON y.planting = d.planting WHERE c.total <> 0;

CREATE TABLE labor_money AS
SELECT l.row, CASE l.stream WHEN 'burden' THEN 'hired' ELSE l.stream END AS stream, l.planting, l.year, l.pool, w.stage, s.units
FROM split('labor_weights') s JOIN labor_weights l ON l.what = s.what AND l.part = s.part JOIN work w ON w.row = l.row
UNION ALL -- wages without an hour of hired work
SELECT NULL, 'hired', NULL, year, 'unlogged labor', NULL, total FROM labor_books g WHERE total <> 0 AND year NOT IN (SELECT year FROM work WHERE kind = 'hired');
