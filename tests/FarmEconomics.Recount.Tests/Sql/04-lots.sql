-- docs/methods.md 2: whatever leaves draws on the crop's lots first in, first out: on those at hand that keep, then on those up to 7 days past keeping,
-- then on those picked up to 3 days later. A row naming a planting draws on all of that planting's first, in this order, and only then on others' (docs/decisions.md).

-- Days on which some lot of a crop can be drawn, one after another without a gap: nothing that leaves in one stretch reaches a lot of
-- another.
CREATE TABLE stretched AS
SELECT * EXCLUDE (opens), count_if(opens) OVER (PARTITION BY crop ORDER BY date, lot) AS stretch
FROM (
    SELECT *, coalesce(date - 3 > 7 + max(kept_until) OVER (
        PARTITION BY crop ORDER BY date, lot ROWS BETWEEN UNBOUNDED PRECEDING AND 1 PRECEDING), true) AS opens
    FROM lots);

CREATE TABLE queue AS
SELECT row AS leaving, x.crop, x.date, planting, quantity, stretch,
    row_number() OVER (PARTITION BY x.crop, stretch ORDER BY x.date, row) AS turn
FROM leavings x
LEFT JOIN (SELECT crop, stretch, min(date) - 3 AS first, max(kept_until) + 7 AS last FROM stretched GROUP BY crop, stretch) s
    ON s.crop = x.crop AND x.date BETWEEN first AND last
WHERE quantity > 0;

-- One turn of the recursion is one leaving of every crop's every stretch; the state is what is left of each lot. A lot that is past drawing
-- stays so: days only go on.
CREATE TABLE draws AS
WITH RECURSIVE stock AS (
    SELECT crop, stretch, CAST(0 AS BIGINT) AS turn, lot, date, kept_until, planting, quantity AS held, CAST(0 AS DECIMAL(24, 8)) AS drawn,
        CAST(NULL AS BIGINT) AS leaving
    FROM stretched
    UNION ALL
    SELECT crop, stretch, turn, lot, date, kept_until, planting, CAST(held - drawn AS DECIMAL(24, 8)), CAST(drawn AS DECIMAL(24, 8)),
        leaving
    FROM (
        SELECT *, CASE WHEN allowed THEN greatest(0, least(held, wanted - (before - held))) ELSE 0 END AS drawn
        FROM (
            SELECT *, sum(CASE WHEN allowed THEN held ELSE 0 END) OVER (
                PARTITION BY crop, stretch ORDER BY stranger, age, date, lot ROWS UNBOUNDED PRECEDING) AS before
            FROM (
                SELECT s.crop, s.stretch, q.turn, s.lot, s.date, s.kept_until, s.planting, s.held, q.leaving, q.quantity AS wanted,
                    s.date <= q.date + 3 AND q.date <= s.kept_until + 7 AS allowed, q.planting IS NOT NULL AND q.planting <> s.planting AS stranger,
                    CASE WHEN s.date > q.date THEN 2 WHEN q.date > s.kept_until THEN 1 ELSE 0 END AS age
                FROM stock s JOIN queue q ON q.crop = s.crop AND q.stretch = s.stretch AND q.turn = s.turn + 1
                WHERE s.held > 0 AND q.date <= s.kept_until + 7)))
)
SELECT leaving, lot, drawn AS quantity FROM stock WHERE drawn > 0;

-- The parts of every leaving in the order they were drawn; what no lot could fill is one last part without a lot.
CREATE TABLE parts AS
SELECT d.leaving, d.lot, l.planting, l.year, d.quantity,
    row_number() OVER (PARTITION BY d.leaving ORDER BY q.planting IS NOT NULL AND q.planting <> l.planting,
        CASE WHEN l.date > q.date THEN 2 WHEN q.date > l.kept_until THEN 1 ELSE 0 END, l.date, d.lot) AS place
FROM draws d JOIN lots l USING (lot) JOIN queue q ON q.leaving = d.leaving
UNION ALL
SELECT q.leaving, NULL, NULL, NULL, q.quantity - coalesce(sum(d.quantity), 0), 1000000
FROM queue q LEFT JOIN draws d ON d.leaving = q.leaving GROUP BY q.leaving, q.quantity HAVING q.quantity > coalesce(sum(d.quantity), 0)
-- A credit is money without goods: it draws on no lot and is spread like what left beyond what was picked.
UNION ALL
SELECT row, NULL, NULL, NULL, 0, 1000000 FROM leavings WHERE quantity = 0;

-- What no row drew: on hand while it keeps at the closing date, else lost.
CREATE TABLE unsold AS
SELECT lot, planting, l.year, l.crop, l.date, kept_until, held AS quantity, getvariable('as_of') <= kept_until AS on_hand
FROM (SELECT lot, l.quantity - coalesce(sum(d.quantity), 0) AS held FROM lots l LEFT JOIN draws d USING (lot) GROUP BY lot, l.quantity)
JOIN lots l USING (lot) WHERE held > 0;
