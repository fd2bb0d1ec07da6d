-- docs/methods.md 16: what goes with each crop, by driver, and with all crops of a channel together. Refilling the boxes takes a turn for each week of boxes (Turns/refill.sql).

SET VARIABLE buy_in = coalesce((SELECT CAST(value AS DOUBLE) FROM farm WHERE setting = 'buy_in_percent'), 100);

-- Each charge of a pool, split into whole cents by driver.
CREATE TABLE charge_drivers AS
WITH found AS (
    SELECT pool, year, 'cash' AS stream, driver, part FROM pool_drivers
    UNION ALL
    SELECT s.pool, s.year, s.stream, CASE WHEN p.line = 'overhead' THEN 'fixed' ELSE coalesce(g.in_pool, p.varies_with) END, s.part
    FROM pool_stages s JOIN pools p ON p.pool = s.pool LEFT JOIN stages g ON g.stage = s.stage
    UNION ALL
    SELECT DISTINCT pool, year, 'ownership', 'fixed', 1 FROM pool_money WHERE stream = 'ownership')
SELECT pool, year, stream, driver, sum(part) AS part FROM found GROUP BY pool, year, stream, driver;
CREATE TABLE driver_weights AS
SELECT concat_ws('|', c.pool, c.year, c.stream, c.user) AS what, d.driver AS part, list_position(['length', 'quantity', 'units', 'fixed', 'bed-time', 'trips'], d.driver) AS place,
    d.part AS weight, c.units AS total, c.pool, c.year, c.stream, c.user
FROM charges c JOIN charge_drivers d ON d.pool = c.pool AND d.year = c.year AND d.stream = c.stream;
CREATE TABLE charges_by_driver AS
SELECT w.pool, w.year, w.stream, w.user, w.part AS driver, s.units FROM split('driver_weights') s JOIN driver_weights w ON w.what = s.what AND w.part = s.part;

-- What stands on a planting, by driver; fees apart.
CREATE TABLE crop_costs AS
WITH lines AS (
    SELECT planting, year, varies_with AS driver, CAST(units AS BIGINT) AS units FROM direct_money WHERE planting IS NOT NULL
    UNION ALL SELECT l.planting, l.year, g.behavior, l.units FROM labor_money l JOIN stages g ON g.stage = l.stage WHERE l.planting IS NOT NULL
    UNION ALL SELECT user, year, driver, units FROM charges_by_driver)
SELECT y.crop, l.year, l.driver, sum(l.units) AS units FROM lines l JOIN planting_years y ON y.planting = l.planting GROUP BY y.crop, l.year, l.driver;

CREATE TABLE crop_returns AS
WITH parts AS (
    SELECT m.crop, g.year,
        coalesce(sum(g.units) FILTER (g.stream = 'sales'), 0) AS sales, coalesce(sum(g.units) FILTER (g.stream = 'household'), 0) AS household,
        coalesce(sum(g.units) FILTER (g.stream = 'fee' AND m.kind <> 'share'), 0) AS fees
    FROM gone_money g JOIN leaving_money m ON m.row = g.leaving GROUP BY m.crop, g.year
), stock AS (SELECT y.crop, s.year, sum(s.units) AS stock FROM closing_stock s JOIN planting_years y ON y.planting = s.planting GROUP BY y.crop, s.year)
SELECT e.crop, e.year, coalesce(any_value(p.sales), 0) AS sales, coalesce(any_value(p.household), 0) AS household, coalesce(any_value(p.fees), 0) AS fees, coalesce(any_value(s.stock), 0) AS stock
FROM enterprises e LEFT JOIN parts p ON p.crop = e.crop AND p.year = e.year LEFT JOIN stock s ON s.crop = e.crop AND s.year = e.year GROUP BY e.crop, e.year;

-- What is left out: each crop by itself, and all crops of a market, stand or buyer together.
CREATE TABLE sets AS
SELECT DISTINCT e.year, 'crop ' || e.crop AS what, e.crop FROM enterprises e
UNION
SELECT DISTINCT e.year, 'all of ' || l.channel, e.crop FROM leavings l JOIN enterprises e ON e.crop = l.crop AND e.year = l.year WHERE l.kind IN ('market', 'stand', 'wholesale') AND l.quantity > 0;

-- Trips: dates of a channel. It ends when everything that left through it is left out, but for shares that members paid for.
CREATE TABLE trip_dates AS SELECT year, channel, any_value(kind) AS kind, count(DISTINCT date) AS trips FROM leavings WHERE quantity > 0 GROUP BY year, channel;
CREATE TABLE ended AS
SELECT t.year, w.what, t.channel, t.trips, t.kind
FROM trip_dates t JOIN (SELECT DISTINCT year, what FROM sets) w ON w.year = t.year
WHERE NOT EXISTS (FROM leavings l WHERE l.channel = t.channel AND l.year = t.year AND l.quantity > 0 AND NOT EXISTS (FROM sets s WHERE s.year = w.year AND s.what = w.what AND s.crop = l.crop))
  AND NOT (t.kind = 'share' AND EXISTS (FROM share_weights x WHERE x.what = t.channel || ' ' || t.year AND x.total > 0 AND x.weight > 0));
CREATE TABLE trips_freed AS
WITH costs AS (SELECT pool, year, stream, sum(units) AS units FROM charges_by_driver WHERE driver = 'trips' GROUP BY pool, year, stream),
rounds AS (SELECT year, sum(trips) AS trips FROM trip_dates WHERE kind IN ('market', 'stand', 'wholesale', 'share') GROUP BY year)
SELECT e.year, e.what, sum(freed) AS units
FROM (
    SELECT e.year, e.what, c.units AS freed FROM costs c JOIN pools p ON p.pool = c.pool JOIN ended e ON e.channel = p.channel AND e.year = c.year
    UNION ALL
    SELECT e.year, e.what, sign(any_value(c.units)) * cents_of(abs(any_value(c.units)) * sum(e.trips), 100 * any_value(r.trips))
    FROM costs c JOIN pools p ON p.pool = c.pool JOIN ended e ON e.year = c.year JOIN rounds r ON r.year = c.year
    WHERE p.channel IS NULL AND e.kind IN ('market', 'stand', 'wholesale', 'share') GROUP BY e.year, e.what, c.pool, c.stream) e
GROUP BY e.year, e.what;

-- Boxes by delivery week: sevens of days from the first delivery of the crop year; the week's part of the payments.
CREATE TABLE box_starts AS SELECT channel, year, min(date) AS first FROM leavings WHERE kind = 'share' GROUP BY channel, year;
CREATE TABLE box_leavings AS
SELECT m.row, m.channel, m.year, m.date, m.crop, m.quantity, greatest(0, m.list_value) AS list_value, (m.date - s.first) // 7 AS week
FROM leaving_money m JOIN box_starts s ON s.channel = m.channel AND s.year = m.year WHERE m.kind = 'share';
CREATE TABLE box_weeks AS
WITH paid AS (SELECT what, any_value(total) AS total FROM share_weights WHERE weight > 0 GROUP BY what),
counted AS (SELECT channel, year, count(DISTINCT week) AS weeks FROM box_leavings GROUP BY channel, year)
SELECT b.channel, b.year, b.week, min(b.date) AS day, sum(b.list_value) AS worth, cents_of(greatest(0, coalesce(any_value(p.total), 0)), 100 * any_value(c.weeks)) AS paid,
    row_number() OVER (ORDER BY any_value(h.row), b.year, b.week) AS turn
FROM box_leavings b JOIN counted c ON c.channel = b.channel AND c.year = b.year JOIN channels h ON h.channel = b.channel LEFT JOIN paid p ON p.what = b.channel || ' ' || b.year
GROUP BY b.channel, b.year, b.week;
CREATE TABLE box_most AS
SELECT channel, crop, max(quantity) AS most FROM (SELECT channel, year, week, crop, sum(quantity) AS quantity FROM box_leavings GROUP BY ALL) GROUP BY channel, crop;

-- What a set takes out of each week, of the crop year's plantings, and the gap that leaves under what members paid for.
CREATE TABLE box_gaps AS
WITH taken AS (
    SELECT s.year AS season, s.what, b.channel, b.year, b.week, sum(greatest(0, g.units)) AS taken
    FROM gone_money g JOIN box_leavings b ON b.row = g.leaving JOIN sets s ON s.crop = b.crop AND s.year = g.year
    WHERE g.stream = 'list_value' GROUP BY ALL)
SELECT t.season, t.what, w.turn, t.taken, CAST(greatest(0, least(w.worth, w.paid) - (w.worth - t.taken)) AS BIGINT) AS gap
FROM taken t JOIN box_weeks w ON w.channel = t.channel AND w.year = t.year AND w.week = t.week WHERE t.taken > 0;

-- What could go into a week's boxes: of lots picked by then that still keep; what it loses a unit, in cents.
CREATE TABLE packing AS
SELECT c.crop, c.year, coalesce(u.units, 0) / o.sold AS per_unit
FROM (SELECT DISTINCT crop, year FROM enterprises) c JOIN (SELECT crop, year, sum(sold) AS sold FROM enterprise_output GROUP BY crop, year) o ON o.crop = c.crop AND o.year = c.year AND o.sold > 0
LEFT JOIN crop_costs u ON u.crop = c.crop AND u.year = c.year AND u.driver = 'units';
CREATE TABLE box_prices AS
WITH wanted AS (SELECT DISTINCT w.turn, w.channel, w.day, m.crop, h.values_from, window_of(w.day) AS year FROM box_weeks w JOIN box_most m ON m.channel = w.channel JOIN channels h ON h.channel = w.channel),
found AS (
    SELECT n.turn, n.crop, arg_max(p.price, (p.since, p.row)) FILTER (p.channel = n.values_from) AS own, arg_max(p.price, (p.since, p.row)) FILTER (p.channel IS NULL) AS general
    FROM wanted n JOIN prices p ON p.crop = n.crop AND p.since <= n.day GROUP BY n.turn, n.crop)
SELECT n.turn, n.crop, coalesce(f.own, f.general, CAST(r.money AS DOUBLE) / CAST(r.quantity AS DOUBLE), CAST(a.money AS DOUBLE) / CAST(a.quantity AS DOUBLE)) AS price
FROM wanted n LEFT JOIN found f ON f.turn = n.turn AND f.crop = n.crop
LEFT JOIN realized r ON r.crop = n.crop AND r.channel = n.values_from AND r.year = n.year AND r.quantity > 0
LEFT JOIN (SELECT crop, sum(money) AS money, sum(quantity) AS quantity FROM realized GROUP BY crop HAVING sum(quantity) > 0) a ON a.crop = n.crop;
CREATE TABLE goods AS
SELECT row_number() OVER () AS good, * FROM (
    SELECT l.lot, l.crop, l.date, l.kept_until, p.leaving, m.date AS left_on, p.place, CAST(p.quantity AS DOUBLE) AS quantity,
        CASE WHEN m.kind IN ('donation', 'waste') THEN 'not sold' WHEN m.kind = 'household' THEN 'household' ELSE 'sold' END AS source,
        CASE m.kind WHEN 'donation' THEN 0 WHEN 'waste' THEN 0 WHEN 'household' THEN coalesce(h.units, 0) ELSE coalesce(s.units, 0) - coalesce(f.units, 0) END AS brought
    FROM parts p JOIN lots l ON l.lot = p.lot JOIN leaving_money m ON m.row = p.leaving
    LEFT JOIN part_money s ON s.leaving = p.leaving AND s.place = p.place AND s.stream = 'sales' LEFT JOIN part_money f ON f.leaving = p.leaving AND f.place = p.place AND f.stream = 'fee'
    LEFT JOIN part_money h ON h.leaving = p.leaving AND h.place = p.place AND h.stream = 'household'
    WHERE m.kind IN ('donation', 'waste', 'household', 'market', 'stand', 'wholesale') AND p.quantity > 0
    UNION ALL SELECT lot, crop, date, kept_until, NULL, NULL, 0, CAST(quantity AS DOUBLE), 'not sold', 0 FROM unsold WHERE NOT on_hand);

CREATE TABLE fillings(season INTEGER, what VARCHAR, turn BIGINT, good BIGINT, crop VARCHAR, source VARCHAR, quantity DOUBLE, worth BIGINT, lost BIGINT);

CREATE VIEW avoidable_result AS
WITH costs AS (
    SELECT s.year, s.what,
        coalesce(sum(c.units) FILTER (driver = 'length'), 0) AS length, coalesce(sum(c.units) FILTER (driver = 'bed-time'), 0) AS bed_time,
        coalesce(sum(c.units) FILTER (driver = 'quantity'), 0) AS quantity, coalesce(sum(c.units) FILTER (driver = 'units'), 0) AS units
    FROM sets s LEFT JOIN crop_costs c ON c.crop = s.crop AND c.year = s.year GROUP BY s.year, s.what
), returns AS (
    SELECT s.year, s.what, sum(r.sales) AS sales, sum(r.household) AS household, sum(r.stock) AS stock, sum(r.fees) AS fees
    FROM sets s JOIN crop_returns r ON r.crop = s.crop AND r.year = s.year GROUP BY s.year, s.what
), filled AS (
    SELECT season AS year, what, sum(worth) AS filled, sum(lost) AS lost, sum(worth) FILTER (source = 'not sold') AS from_unsold, sum(worth) FILTER (source = 'bought') AS bought FROM fillings GROUP BY season, what
), gaps AS (SELECT season AS year, what, sum(taken) AS taken FROM box_gaps GROUP BY season, what)
SELECT c.year AS crop_year, c.what, money(r.sales) AS sales, money(r.household) AS household, money(r.stock) AS stock, money(r.fees) AS fees, money(c.length) AS length, money(c.bed_time) AS bed_time,
    money(c.quantity) AS quantity, money(c.units) AS units, money(coalesce(t.units, 0)) AS trips, money(coalesce(g.taken, 0)) AS taken_out, money(coalesce(f.filled, 0)) AS filled,
    money(coalesce(f.from_unsold, 0)) AS from_unsold, money(coalesce(f.bought, 0)) AS bought, money(coalesce(f.lost, 0)) AS refill,
    money(c.length + c.bed_time + c.quantity + c.units + r.fees + coalesce(t.units, 0) - r.sales - r.household - r.stock - coalesce(f.lost, 0)) AS change
FROM costs c JOIN returns r ON r.year = c.year AND r.what = c.what LEFT JOIN trips_freed t ON t.year = c.year AND t.what = c.what
LEFT JOIN filled f ON f.year = c.year AND f.what = c.what LEFT JOIN gaps g ON g.year = c.year AND g.what = c.what;
