-- What the records of a year can tell (docs/methods.md 4, 5, 6 and 8).

-- Unknown is not 0: the cost of a year without a row of the books; hours of a year nobody logged, unless nobody works unpaid and no wages were paid; labor
-- money of such a year (wages in the books tell that of hired hours, not what anybody worked unpaid),
-- or of one with hired hours nobody knows the wage of, or with own hours nobody gives a value.
CREATE TABLE known AS
WITH logged AS (
    SELECT y.year, EXISTS (FROM work w WHERE w.year = y.year) AS hours, y.year IN (SELECT year FROM wage_years) AS wages FROM (SELECT DISTINCT year FROM pool_years) y
), unpriced AS (
    -- hours without money, and whether an overhead pool holds them
    SELECT w.year, w.kind, EXISTS (FROM work_to d JOIN pools p ON p.pool = d.pool WHERE d.row = w.row AND p.line = 'overhead') AS overhead
    FROM work w WHERE w.hours <> 0 AND coalesce(w.wage, -1) < 0
        AND CASE WHEN w.kind = 'hired' THEN w.year NOT IN (SELECT year FROM wage_years) ELSE getvariable('owner_wage') IS NULL END
), facts AS (
    SELECT l.year, l.hours OR (getvariable('unpaid_hours') = 'none' AND NOT l.wages) AS hours_known, l.hours AS hours_logged,
        EXISTS (FROM books b WHERE b.year = l.year) OR EXISTS (FROM direct_money d WHERE d.year = l.year AND d.planting IS NOT NULL) AS costs_known,
        (l.hours OR getvariable('unpaid_hours') = 'none') AND NOT EXISTS (FROM unpriced u WHERE u.year = l.year) AS labor_known,
        (l.hours OR l.wages OR getvariable('unpaid_hours') = 'none') AND NOT EXISTS (FROM unpriced u WHERE u.year = l.year AND u.kind = 'hired') AS hired_known,
        (l.hours OR l.wages OR getvariable('unpaid_hours') = 'none') AND NOT EXISTS (FROM unpriced u WHERE u.year = l.year AND u.overhead) AS overhead_labor_known,
        NOT EXISTS (FROM unowned o WHERE o.year = l.year) AS ownership_known,
        NOT EXISTS (FROM unowned o JOIN pools p ON p.pool = o.pool WHERE o.year = l.year AND p.line = 'overhead') AS overhead_ownership_known
    FROM logged l
)
SELECT *, costs_known AND labor_known AND ownership_known AS net_known, costs_known AND overhead_labor_known AND overhead_ownership_known AS overhead_known FROM facts;
