-- docs/methods.md 7: each pool's money of one crop year and stream is one total, split once over plantings (by first row in the file),
-- household, unused capacity, not assigned, by the pool's row of F. It stays under the name of the pool it started from.

CREATE TABLE pool_money AS
SELECT pool, year, stream, CASE stream WHEN 'ownership' THEN 'ownership' ELSE 'running' END AS cost, CAST(sum(units) AS BIGINT) AS total
FROM (
    SELECT pool, year, CASE WHEN class = 'labor' THEN 'hired' ELSE 'cash' END AS stream, units FROM pool_books
    UNION ALL SELECT pool, year, 'ownership', amount - household FROM ownership
    UNION ALL SELECT pool, year, stream, units FROM labor_money WHERE pool IS NOT NULL)
GROUP BY pool, year, stream HAVING sum(units) <> 0;

CREATE TABLE charge_weights AS
SELECT concat_ws('|', m.pool, m.year, m.stream) AS what, f.user AS part, m.total, f.share AS weight,
    CASE f.kind WHEN 'household' THEN 1000001 WHEN 'unused' THEN 1000002 WHEN 'not assigned' THEN 1000003 ELSE y.place END AS place
FROM pool_money m JOIN full_effect f ON f.cost = m.cost AND f.origin = m.pool AND f.year = m.year
LEFT JOIN planting_years y ON y.planting = f.user;

CREATE TABLE charges AS
SELECT m.pool, m.year, m.stream, s.part AS user, s.units, p.line, p.varies_with
FROM split('charge_weights') s JOIN pool_money m ON concat_ws('|', m.pool, m.year, m.stream) = s.what JOIN pools p ON p.pool = m.pool;

-- What the cash of a pool varies with: as the pool says; of a channel's own pool as the category says where that is more than fixed, else with its trips.
-- Refunds of one driver larger than its cost leave no parts: the pool's own has it all.
CREATE TABLE pool_drivers AS
WITH rows AS (
    SELECT b.pool, b.year, p.varies_with AS own, b.units,
        CASE WHEN p.channel IS NOT NULL AND coalesce(b.written, 'fixed') <> 'fixed' THEN b.written ELSE p.varies_with END AS driver
    FROM pool_books b JOIN pools p ON p.pool = b.pool WHERE b.class <> 'labor'
), parts AS (SELECT pool, year, own, driver, sum(units) / sum(sum(units)) OVER (PARTITION BY pool, year) AS part FROM rows GROUP BY pool, year, own, driver),
whole AS (SELECT *, min(part) OVER (PARTITION BY pool, year) < 0 AS refunded FROM parts)
SELECT pool, year, driver, part FROM whole WHERE NOT refunded UNION ALL SELECT DISTINCT pool, year, own, 1 FROM whole WHERE refunded;

-- Hours go the same way, stage by stage, in units of 10^-8.
CREATE TABLE pool_hours AS SELECT pool, year, stage, sum(hours) AS hours FROM work_hours WHERE pool IS NOT NULL GROUP BY ALL;
CREATE TABLE hour_shares AS
SELECT concat_ws('|', h.pool, h.year, h.stage) AS what, f.user AS part, round(h.hours, 8) AS total, CAST(CAST(f.share AS DECIMAL(14, 12)) AS DOUBLE) AS weight, h.pool, h.year, h.stage,
    CASE f.kind WHEN 'household' THEN 1000001 WHEN 'unused' THEN 1000002 WHEN 'not assigned' THEN 1000003 ELSE y.place END AS place
FROM pool_hours h JOIN full_effect f ON f.cost = 'running' AND f.origin = h.pool AND f.year = h.year LEFT JOIN planting_years y ON y.planting = f.user;
CREATE TABLE hour_charges AS
SELECT h.pool, h.year, h.stage, s.part AS user, p.line, CAST(s.amount AS DOUBLE) AS hours
FROM split_exactly('hour_shares') s JOIN hour_shares h ON h.what = s.what AND h.part = s.part JOIN pools p ON p.pool = h.pool;

-- What pools hand each other on the way, gross, for information.
CREATE TABLE pool_flows AS
WITH held AS (
    SELECT v.cost, v.year, v.pool, sum(m.total * v.times) AS units
    FROM pool_money m JOIN visits v ON v.cost = m.cost AND v.origin = m.pool AND v.year = m.year GROUP BY ALL)
SELECT h.year, h.pool AS sender, s.user AS receiver, sum(h.units * s.share) AS units
FROM held h JOIN shares s ON s.cost = h.cost AND s.pool = h.pool AND s.year = h.year WHERE s.kind = 'pool' GROUP BY ALL;
