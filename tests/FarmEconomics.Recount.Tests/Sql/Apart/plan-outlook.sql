-- docs/methods.md 20, the outlook of a plan on file: cash by month, what to buy, hours there are and what they cost. Rests on all steps and
-- on plan-weeks.sql, with what is asked there.

CREATE OR REPLACE MACRO month_of(day) AS least(11, greatest(0, month_number(day) - month_number(getvariable('start'))
    - CASE WHEN day(day) < day(getvariable('start')) THEN 1 ELSE 0 END));
CREATE OR REPLACE TABLE draft_sales AS
WITH rows AS (
    SELECT CAST("from" AS DATE) AS day, CAST(coalesce(weeks, '1') AS INTEGER) AS weeks, CAST(quantity AS DOUBLE) * CAST(price AS DOUBLE) * (1 - fee_percent / 100) AS net
    FROM file_of('plan_sales') s JOIN channels h ON h.channel = s.channel WHERE kind <> 'share' AND crop_year = (SELECT year FROM outlook)
), weekly AS (SELECT CAST(day + CAST(7 * unnest(range(weeks)) AS INTEGER) AS DATE) AS day, net / weeks AS net FROM rows)
FROM weekly WHERE window_of(day) = getvariable('before') + 1;

-- What boxes lack of what they must hold, bought in: by week the smaller of the season's list value and of payments over its weeks with
-- boxes; half a percent is what rounding leaves.
CREATE OR REPLACE TABLE bought_in AS
WITH delivered AS (
    SELECT channel, week_in(date, year) AS week, sum(greatest(0, list_value)) / 100 AS value
    FROM leaving_money WHERE kind = 'share' AND year = getvariable('before') GROUP BY ALL
), paid AS (
    SELECT what, any_value(total) / 100 AS total FROM share_weights GROUP BY what
), owed AS (
    SELECT d.week, sum(greatest(0, least(d.value, coalesce(p.total, 0) / n.weeks))) AS value
    FROM delivered d JOIN (SELECT channel, count(*) AS weeks FROM delivered GROUP BY channel) n ON n.channel = d.channel
    LEFT JOIN paid p ON p.what = d.channel || ' ' || getvariable('before') GROUP BY d.week
), planned AS (
    SELECT CAST("from" AS DATE) AS day, CAST(coalesce(weeks, '1') AS INTEGER) AS weeks, CAST(quantity AS DOUBLE) * CAST(price AS DOUBLE) AS value
    FROM file_of('plan_sales') s JOIN channels h ON h.channel = s.channel WHERE kind = 'share' AND crop_year = (SELECT year FROM outlook)
), packed AS (
    SELECT week_of(day) AS week, sum(value) AS value
    FROM (SELECT CAST(day + CAST(7 * unnest(range(weeks)) AS INTEGER) AS DATE) AS day, value / weeks AS value FROM planned)
    WHERE window_of(day) = getvariable('before') + 1 GROUP BY ALL)
SELECT CAST(getvariable('start') + CAST(7 * o.week AS INTEGER) AS DATE) AS day, (o.value - coalesce(p.value, 0)) * getvariable('buy_in') / 100 AS money
FROM owed o LEFT JOIN packed p ON p.week = o.week WHERE o.value - coalesce(p.value, 0) > 0.005 * o.value;

-- Rows of the season before, by their day, that don't vary with what is grown: not through a planting or a crop, nor through a pool whose cost varies. Wages of a season in
-- which no hired hour is on record come again as they were.
CREATE OR REPLACE TABLE running AS
WITH dated AS (SELECT b.*, e.date FROM books b JOIN expenses e ON e.row = b.row WHERE window_of(e.date) = getvariable('before'))
SELECT CAST(date + INTERVAL 1 YEAR AS DATE) AS day, class IN ('tax', 'personal') AS drawn, CAST(d.amount AS DOUBLE) / 100 * CAST(e.farm_percent AS DOUBLE) / 100 AS money
FROM dated d JOIN (SELECT row, farm_percent FROM expenses) e ON e.row = d.row LEFT JOIN pools p ON p.pool = d.pool
WHERE class IN ('operating', 'interest', 'principal', 'tax', 'personal')
  AND NOT (class = 'operating' AND CASE WHEN d.crop IS NOT NULL OR d.planting IS NOT NULL THEN d.varies_with
        WHEN p.channel IS NOT NULL AND coalesce(d.written, 'fixed') <> 'fixed' THEN d.written ELSE p.varies_with END NOT IN ('fixed', 'trips'))
  OR class = 'labor' AND NOT EXISTS (FROM work w WHERE w.year = getvariable('before') AND w.kind = 'hired' AND CAST(w.hours AS DOUBLE) > 0);
CREATE OR REPLACE TABLE came_in AS
SELECT CAST(CAST(date AS DATE) + INTERVAL 1 YEAR AS DATE) AS day, kind = 'share' AS shares, CAST(amount AS DOUBLE) AS money
FROM file_of('income') JOIN channels USING (channel) WHERE window_of(CAST(date AS DATE)) = getvariable('before') AND CAST(date AS DATE) <= getvariable('as_of');

-- What customers owe on the sheet the year begins with, where it says what cash there is and the season has expenses: of its last day, at
-- most 31 days back, else of the first day of the year. It comes in in the first month, and as much comes off the last.
CREATE OR REPLACE TABLE unpaid AS
WITH near AS (
    SELECT CAST(date AS DATE) AS day, kind, CAST(amount AS DOUBLE) AS amount FROM file_of('balances')
    WHERE CAST(date AS DATE) <= getvariable('start') AND CAST(date AS DATE) > getvariable('start') - 32
), sheet AS (
    SELECT * FROM near WHERE day = (SELECT coalesce(max(day) FILTER (day < getvariable('start')), getvariable('start')) FROM near))
SELECT CASE WHEN bool_or(kind = 'cash') AND EXISTS (FROM expenses WHERE window_of(date) = getvariable('before'))
    THEN coalesce(sum(amount) FILTER (kind = 'invoices'), 0) ELSE 0 END AS money FROM sheet;

-- Hours there are: by limits, which hold a year later as well; else own hours at the 90th percentile of that half year's weeks, at most the
-- limit, and hired ones up to it, else the most ever. The seasons are those of plan-weeks.sql.
CREATE OR REPLACE TABLE logged_weeks AS
SELECT year, least(51, (date - window_start(year)) // 7) AS week, kind, sum(CAST(hours AS DOUBLE)) AS hours
FROM work WHERE date IS NOT NULL AND year IN (SELECT year FROM seasons) GROUP BY ALL;
CREATE OR REPLACE TABLE weekly_limits AS
SELECT w.week, min(CAST(amount AS DOUBLE)) AS hours
FROM (SELECT unnest(range(52)) AS week) w JOIN file_of('limits') l ON lower("limit") = 'labor' AND lower(unit) LIKE '%week%'
    AND ((getvariable('start') + CAST(7 * w.week AS INTEGER) BETWEEN CAST("from" AS DATE) AND CAST("to" AS DATE)) OR (CAST(getvariable('start') + CAST(7 * w.week AS INTEGER) + INTERVAL 1 YEAR AS DATE) BETWEEN CAST("from" AS DATE) AND CAST("to" AS DATE)))
GROUP BY w.week;
CREATE OR REPLACE TABLE hours_there AS
WITH usual AS (SELECT week // 26 AS half, quantile_cont(hours, 0.9) AS hours FROM logged_weeks WHERE kind = 'owner' GROUP BY half)
SELECT w.week, least(coalesce(u.hours, 0), coalesce(l.hours, 1e12)) AS own, coalesce(l.hours - least(coalesce(u.hours, 0), l.hours), (SELECT max(hours) FROM logged_weeks WHERE kind = 'hired'), 0) AS hired
FROM (SELECT CAST(unnest(range(52)) AS BIGINT) AS week) w LEFT JOIN usual u ON u.half = w.week // 26 LEFT JOIN weekly_limits l ON l.week = w.week;

-- What a hired hour cost in the last of them that paid wages for some; else the wage of the last hired worker in the file that has one,
-- with what is paid on top; else what an own hour is worth.
SET VARIABLE hired_hour = coalesce((
    SELECT arg_max(units / hours, year) / 100 FROM (
        SELECT w.year, sum(c.total) AS units, (SELECT sum(CAST(hours AS DOUBLE)) FROM work h WHERE h.year = w.year AND h.kind = 'hired') AS hours
        FROM work_cost c JOIN work w ON w.row = c.row
        WHERE c.stream IN ('hired', 'burden') AND w.kind = 'hired' AND w.year IN (SELECT year FROM seasons)
        GROUP BY w.year HAVING sum(c.total) FILTER (c.stream = 'hired') > 0)),
    (SELECT arg_max(CAST(wage AS DOUBLE), row) FROM workers WHERE kind = 'hired' AND wage IS NOT NULL)
        * (1 + CAST(getvariable('burden') AS DOUBLE) / 100),
    CAST(getvariable('owner_wage') AS DOUBLE), 0);

-- The day seed and supplies are needed: the day of sowing; of a perennial that stands from before the day its picking begins, of the
-- nearest that stands; of all else that stands they were paid for.
CREATE OR REPLACE TABLE paid AS
WITH begins AS (
    SELECT s.sowing, min(week_in(l.date, window_of(l.date))) AS week
    FROM stands s JOIN known_sowings k ON k.crop = s.crop AND k.cover = s.cover
    JOIN lots l ON l.planting = k.planting AND l.year = k.year AND CAST(l.quantity AS DOUBLE) > 0
    WHERE week_in(l.date, window_of(l.date)) < s.weeks GROUP BY s.sowing)
SELECT d.row, c.perennial AND d.in_bed < getvariable('start') AS stays,
    CASE WHEN d.in_bed >= getvariable('start') THEN coalesce(d.sown, d.in_bed)
    WHEN c.perennial THEN CAST(getvariable('start') + CAST(7 * coalesce(b.week, 0) AS INTEGER) AS DATE) END AS day
FROM draft d JOIN crops c ON c.crop = d.crop LEFT JOIN near n ON n.row = d.row LEFT JOIN begins b ON b.sowing = n.sowing;

CREATE OR REPLACE VIEW outlook_months AS
WITH lines AS (
    SELECT 'sales' AS line, month_of(day) AS month, net AS money FROM draft_sales
    UNION ALL SELECT CASE WHEN shares THEN 'shares' ELSE 'other income' END, month_of(day), money FROM came_in
    UNION ALL SELECT 'supplies', month_of(p.day), CAST(d.cost AS DOUBLE) FROM draft d JOIN paid p ON p.row = d.row WHERE p.day IS NOT NULL
    UNION ALL SELECT 'wages', month_of(getvariable('start') + CAST(7 * h.week AS INTEGER)), greatest(0, h.hours - t.own) * getvariable('hired_hour') FROM week_hours h JOIN hours_there t ON t.week = h.week
        WHERE EXISTS (FROM hours_there WHERE own > 0 OR hired > 0) -- where nobody's hours are on record nothing tells what of them is hired
    UNION ALL SELECT 'bought in', month_of(day), money FROM bought_in
    UNION ALL SELECT 'invoices', 0, money FROM unpaid UNION ALL SELECT 'invoices', 11, -money FROM unpaid
    UNION ALL SELECT CASE WHEN drawn THEN 'drawn' ELSE 'running' END, month_of(day), money FROM running)
SELECT l.line, m.month, coalesce(sum(money), 0) AS money
FROM (SELECT unnest(['sales', 'shares', 'other income', 'invoices', 'supplies', 'wages', 'bought in', 'running', 'drawn']) AS line) l
CROSS JOIN (SELECT unnest(range(12)) AS month) m
LEFT JOIN lines d ON d.line = l.line AND d.month = m.month GROUP BY l.line, m.month;
CREATE OR REPLACE VIEW outlook_sums AS
WITH y AS (SELECT sum(money) FILTER (line IN ('sales', 'shares')) AS came, sum(money) FILTER (line IN ('supplies', 'wages', 'bought in')) AS varies, sum(money) FILTER (line = 'running') AS running, sum(money) FILTER (line = 'other income') AS other FROM outlook_months)
SELECT CASE WHEN came > varies THEN (running - other) / (came - varies) * came END AS break_even, greatest(0.01, came - varies) AS left_of_it,
    coalesce((SELECT sum(hours) FROM fixed_hours), 0)
        + (SELECT sum(r.hours) FROM row_weeks r JOIN draft d ON d.row = r.row WHERE d.year = getvariable('before') + 1) AS hours
FROM y;
CREATE OR REPLACE VIEW outlook_weeks AS
SELECT t.week, h.hours, t.own, t.hired, coalesce((SELECT sum(net) FROM draft_sales WHERE week_of(day) = t.week), 0) AS sales
FROM hours_there t JOIN week_hours h ON h.week = t.week;
CREATE OR REPLACE VIEW outlook_supplies AS
SELECT crop, count(DISTINCT planting) FILTER (NOT stays) AS sowings, sum(standard_feet) AS feet, sum(trays) AS trays,
    CAST(min(coalesce(p.day, sown, in_bed)) AS VARCHAR) AS first, CASE WHEN NOT bool_or(no_cost) THEN CAST(sum(cost) AS DOUBLE) END AS cost
FROM draft d JOIN paid p ON p.row = d.row WHERE p.day IS NOT NULL OR sown >= getvariable('start') GROUP BY crop;

-- What can be told: a row that says no hours leaves hours unknown, and with them wages; one for the year after takes those of a sowing of a
-- crop under a cover that a season with hours grew. One that says no cost and is paid for in the year leaves costs unknown.
CREATE OR REPLACE VIEW outlook_known AS
WITH lacks AS (
    SELECT EXISTS (FROM draft d LEFT JOIN near n ON n.row = d.row LEFT JOIN sowings s ON s.sowing = n.sowing
            LEFT JOIN growing g ON g.crop = s.crop AND g.cover = s.cover
            WHERE CASE WHEN d.year > getvariable('before') + 1 AND n.row IS NOT NULL THEN g.crop IS NULL ELSE d.no_hours END) AS hours,
        EXISTS (FROM draft d JOIN paid p ON p.row = d.row WHERE d.no_cost AND p.day IS NOT NULL) AS cost,
        EXISTS (FROM hours_there WHERE own > 0 OR hired > 0) AS logged, EXISTS (FROM week_hours WHERE hours > 0) AS works,
        EXISTS (FROM expenses WHERE window_of(date) = getvariable('before')) AS billed)
SELECT logged AND works AND NOT hours AS hours, billed AND NOT cost AND NOT (logged AND hours) AS costs FROM lacks;
