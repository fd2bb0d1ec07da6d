-- docs/methods.md 19, the daily list: what each block loses over the days of watering and the six after, with none, with what the program gives it and with the same
-- depth everywhere; and the best of all ways to share what there is out in three hundredths, a set whole. Rests on Apart/water and Apart/water-money; Ky by season.
-- Asked before: lists(list, day, days, amount, in_hours) and given(list, block, amount), amounts in gallons or sprinkler-hours.

-- Days after the weather table are as the mean of the last seven days known, without rain, and count as known.
SET VARIABLE usual_et = (SELECT avg(et) FROM (FROM weather_days ORDER BY day DESC LIMIT 7));
CREATE TABLE ahead_needs AS
SELECT row, year, block, m2, since, n, day, p, ky, days, total, rain, known OR day >= getvariable('weather_until') AS known, CASE WHEN day >= getvariable('weather_until') THEN kc * getvariable('usual_et') ELSE need END AS need
FROM water_needs;

-- What stands on the day: how dry its soil is the evening before, what a mm missed costs it, what it is still to bring.
CREATE TABLE standing_rows AS
WITH whole AS (SELECT row, year, any_value(ky) / (sum(need) * any_value(days) / count(*) FILTER (known)) AS per_mm FROM ahead_needs GROUP BY row, year HAVING count(*) FILTER (known) > 0)
SELECT l.list, n.row, n.year, n.block, coalesce(d.after, 0) AS depletion, w.per_mm,
    r.units / 100 * coalesce((SELECT sum(p.quantity) FILTER (p.date >= l.day) / sum(p.quantity) FROM picks p WHERE p.planting = r.planting AND p.year = r.year), 0) AS worth
FROM lists l JOIN ahead_needs n ON n.day = l.day JOIN whole w ON w.row = n.row AND w.year = n.year JOIN row_worth r ON r.row = n.row AND r.year = n.year
LEFT JOIN water_run d ON d.row = n.row AND d.year = n.year AND d.day = l.day - 1
JOIN water_blocks b ON b.block = n.block WHERE NOT (l.in_hours AND b.gph IS NULL);

-- A unit on a block, in mm at the roots; its whole set, in units.
CREATE TABLE list_blocks AS
SELECT s.list, s.block, any_value(CASE WHEN l.in_hours THEN b.gph ELSE 1 END) * 3.785411784 * any_value(b.efficiency / b.m2) AS mm,
    any_value(CAST(f.set_gallons AS DOUBLE) / CASE WHEN l.in_hours THEN b.gph ELSE 1 END) AS whole_set, row_number() OVER (PARTITION BY s.list ORDER BY any_value(b.place)) AS place
FROM standing_rows s JOIN lists l ON l.list = s.list JOIN water_blocks b ON b.block = s.block JOIN file_of('blocks') f ON f.block = s.block GROUP BY s.list, s.block;
CREATE TABLE choices AS
SELECT b.list, b.block, 'shared' AS kind, unnest(range(0, 301)) AS step, step * l.amount / 300 AS amount FROM list_blocks b JOIN lists l ON l.list = b.list WHERE whole_set IS NULL
UNION ALL SELECT b.list, b.block, 'shared', CAST(ceil(k * whole_set / l.amount * 300 - 1e-9) AS BIGINT), k * whole_set
FROM (SELECT *, unnest(range(0, 15)) AS k FROM list_blocks) b JOIN lists l ON l.list = b.list WHERE k <= l.days AND k * whole_set <= l.amount
UNION ALL SELECT b.list, b.block, 'given', 0, g.amount FROM list_blocks b JOIN given g ON g.list = b.list AND g.block = b.block
UNION ALL SELECT b.list, b.block, 'even', 0, l.amount / b.mm / sum(1 / b.mm) OVER (PARTITION BY b.list) FROM list_blocks b JOIN lists l ON l.list = b.list;

-- The days ahead, in equal parts on the days of watering.
CREATE TABLE choice_losses AS
WITH RECURSIVE run AS (
    SELECT s.list, s.row, s.year, s.block, c.kind, c.step, c.amount * b.mm / l.days AS dose, 0 AS n, s.depletion, CAST(0 AS DOUBLE) AS missed, s.per_mm, s.worth
    FROM standing_rows s JOIN lists l ON l.list = s.list JOIN choices c ON c.list = s.list AND c.block = s.block JOIN list_blocks b ON b.list = s.list AND b.block = s.block
    UNION ALL
    SELECT list, row, year, block, kind, step, dose, n + 1, greatest(0, depletion + used - put), missed + need - used, per_mm, worth
    FROM (
        SELECT r.*, a.need, a.rain + CASE WHEN r.n < l.days THEN r.dose ELSE 0 END AS put,
            least(a.need * CASE WHEN r.depletion <= a.p * a.total THEN 1 ELSE greatest(0, (a.total - r.depletion) / ((1 - a.p) * a.total)) END, greatest(0, a.total - r.depletion + a.rain + CASE WHEN r.n < l.days THEN r.dose ELSE 0 END)) AS used
        FROM run r JOIN lists l ON l.list = r.list JOIN ahead_needs a ON a.row = r.row AND a.year = r.year AND a.day = l.day + r.n WHERE r.n < l.days + 6)
), ends AS (SELECT list, row, year, block, kind, step, arg_max(least(1, per_mm * missed) * worth, n) AS lost FROM run GROUP BY ALL)
SELECT list, block, kind, step, sum(lost) AS lost FROM ends GROUP BY ALL;

CREATE TABLE shared_best AS
WITH RECURSIVE best AS (
    SELECT list, CAST(0 AS BIGINT) AS place, CAST(0 AS BIGINT) AS spent, CAST(0 AS DOUBLE) AS lost FROM lists
    UNION ALL
    SELECT b.list, b.place + 1, b.spent + c.step, min(b.lost + c.lost) FROM best b JOIN list_blocks k ON k.list = b.list AND k.place = b.place + 1
    JOIN choice_losses c ON c.list = b.list AND c.block = k.block AND c.kind = 'shared' WHERE b.spent + c.step <= 300 GROUP BY b.list, b.place, b.spent + c.step)
SELECT list, min(lost) AS lost FROM best WHERE (list, place) IN (SELECT list, max(place) FROM list_blocks GROUP BY list) GROUP BY list;

CREATE VIEW daily_blocks AS
SELECT list, block, max(lost) FILTER (kind = 'shared' AND step = 0) AS unwatered, max(lost) FILTER (kind = 'given') AS lost FROM choice_losses GROUP BY list, block;
CREATE VIEW daily_lists AS
SELECT b.list, b.lost AS best, (SELECT sum(lost) FROM choice_losses c WHERE c.list = b.list AND kind = 'even') AS evenly FROM shared_best b;
