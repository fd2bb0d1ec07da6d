-- docs/methods.md 7: pools feed pools, in circles too. With Q the shares pools pass to pools and R those they pass to plantings, household, unused capacity and
-- not assigned, F = (I - Q)^-1 R: here the series (I + Q + Q^2 + ...) R, added up until what is still on its way is below 1e-18.

CREATE TABLE pool_years AS
SELECT p.*, y.year FROM pools p, (SELECT DISTINCT year FROM enterprises UNION SELECT DISTINCT year FROM books UNION SELECT DISTINCT year FROM work) y;

-- A capacity is that of twelve months; it counts for those, begun by the closing date, in which any asset of the pool stood (a pool without assets: all of them).
CREATE TABLE capacities AS
SELECT y.pool, y.year, y.capacity * CASE WHEN y.pool IN (SELECT pool FROM assets)
    THEN (SELECT count(DISTINCT m) FROM (SELECT unnest(range(month_number(window_start(y.year)), month_number(window_start(y.year)) + months_passed(y.year))) AS m) months
        JOIN assets a ON a.pool = y.pool AND a.in_service <= getvariable('as_of') AND month_number(a.in_service) <= m AND m < coalesce(month_number(a.retired), 1000000))
    ELSE months_passed(y.year) END / 12 AS capacity
FROM pool_years y;

-- The part of its ownership cost a pool passes on: used / capacity, at most 1. The rest is unused capacity, unless the farm spreads it.
-- A capacity in crates can't be held against sales value.
CREATE TABLE passed_on AS
SELECT y.pool, y.year, CASE WHEN y.capacity > 0 AND getvariable('idle_capacity') <> 'spread' AND NOT coalesce(v.by_value, false) THEN least(1, coalesce(used, 0) / y.capacity) ELSE 1 END AS factor
FROM capacities y LEFT JOIN (SELECT pool, year, sum(weight) AS used FROM users GROUP BY ALL) u ON u.pool = y.pool AND u.year = y.year
LEFT JOIN (SELECT DISTINCT pool, year, by_value FROM crate_use WHERE by_value) v ON v.pool = y.pool AND v.year = y.year;

-- Running cost and hours pass in full; ownership cost, a pool's own and what it received, passes in part. So there are two networks.
CREATE TABLE shares AS
WITH full_shares AS (
    SELECT pool, year, kind, user, weight / sum(weight) OVER (PARTITION BY pool, year) AS share FROM users
    UNION ALL -- nobody uses it
    SELECT pool, year, 'not assigned', 'not assigned', 1 FROM pool_years y WHERE NOT EXISTS (FROM users u WHERE u.pool = y.pool AND u.year = y.year)
)
SELECT 'running' AS cost, * FROM full_shares
UNION ALL SELECT 'ownership', pool, s.year, kind, user, share * factor FROM full_shares s JOIN passed_on p USING (pool, year) WHERE factor > 0
UNION ALL SELECT 'ownership', pool, year, 'unused', 'unused', 1 - factor FROM passed_on WHERE factor < 1;

-- How often one unit put into `origin` comes by at `pool`: (I - Q)^-1.
CREATE TABLE visits AS
WITH RECURSIVE under_way AS (
    SELECT cost, year, pool AS origin, pool, 0 AS round, CAST(1 AS DOUBLE) AS amount FROM pool_years, (VALUES ('running'), ('ownership')) c(cost)
    UNION ALL
    SELECT u.cost, u.year, u.origin, s.user, u.round + 1, sum(u.amount * s.share)
    FROM under_way u JOIN shares s ON s.cost = u.cost AND s.pool = u.pool AND s.year = u.year AND s.kind = 'pool'
    WHERE u.round < 5000 GROUP BY u.cost, u.year, u.origin, s.user, u.round HAVING sum(u.amount * s.share) > 1e-18
)
SELECT cost, year, origin, pool, sum(amount) AS times FROM under_way GROUP BY ALL;

CREATE TABLE full_effect AS
SELECT v.cost, v.year, v.origin, s.kind, s.user, sum(v.times * s.share) AS share
FROM visits v JOIN shares s ON s.cost = v.cost AND s.pool = v.pool AND s.year = v.year WHERE s.kind <> 'pool' GROUP BY ALL;
