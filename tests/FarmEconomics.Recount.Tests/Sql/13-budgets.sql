-- docs/methods.md 8: every cost of an enterprise as one line, with what it varies with; then closing stock, which rests on them.

-- What the labor money of a pool varies with: the stages of the work in it; money without a stage varies as the pool does.
CREATE TABLE pool_stages AS
WITH staged AS (
    SELECT pool, year, stream, stage, units FROM labor_money WHERE pool IS NOT NULL
    UNION ALL SELECT pool, year, 'hired', NULL, units FROM pool_books WHERE class = 'labor')
SELECT pool, year, stream, stage, sum(units) / sum(sum(units)) OVER (PARTITION BY pool, year, stream) AS part FROM staged GROUP BY pool, year, stream, stage;

CREATE TABLE costs AS
-- Rows of the books that name a planting or a crop; class labor is labor money without hours.
SELECT planting, year, CASE class WHEN 'labor' THEN 'labor' ELSE line END AS line, 'direct' AS source, NULL AS stage, varies_with, CAST(units AS DOUBLE) AS units FROM direct_money WHERE planting IS NOT NULL
UNION ALL SELECT planting, year, 'selling', 'fees', NULL, 'units', fees FROM enterprise_output WHERE fees <> 0
UNION ALL SELECT planting, year, 'labor', stream, l.stage, behavior, units FROM labor_money l JOIN stages g ON g.stage = l.stage WHERE planting IS NOT NULL
-- Charges of pools: their own money on the pool's line, varying as its rows do; labor on the labor line, but that of overhead pools. Ownership and the labor of overhead pools vary with nothing.
UNION ALL SELECT user, year, line, 'pool', NULL, 'fixed', units FROM charges WHERE stream = 'ownership'
UNION ALL SELECT c.user, c.year, c.line, 'pool', NULL, d.driver, c.units * d.part FROM charges c JOIN pool_drivers d ON d.pool = c.pool AND d.year = c.year WHERE stream = 'cash'
UNION ALL SELECT c.user, c.year, CASE WHEN c.line = 'overhead' THEN 'overhead' ELSE 'labor' END, c.stream, s.stage,
    CASE WHEN c.line = 'overhead' THEN 'fixed' ELSE coalesce(g.in_pool, c.varies_with) END, c.units * s.part
FROM charges c JOIN pool_stages s ON s.pool = c.pool AND s.year = c.year AND s.stream = c.stream LEFT JOIN stages g ON g.stage = s.stage
WHERE c.stream IN ('hired', 'owner');

CREATE TABLE cost_sums AS
SELECT e.planting, e.year,
    coalesce(sum(units) FILTER (line = 'materials'), 0) AS materials, coalesce(sum(units) FILTER (line = 'selling'), 0) AS selling,
    coalesce(sum(units) FILTER (line = 'labor'), 0) AS labor, coalesce(sum(units) FILTER (line = 'labor' AND source = 'owner'), 0) AS owner_labor,
    coalesce(sum(units) FILTER (line = 'infrastructure'), 0) AS infrastructure, coalesce(sum(units) FILTER (line = 'overhead'), 0) AS overhead,
    coalesce(sum(units) FILTER (line = 'labor' AND stage = 'sell'), 0) AS selling_labor,
    coalesce(sum(units) FILTER (varies_with IN ('length', 'bed-time')), 0) AS with_bed, coalesce(sum(units) FILTER (varies_with = 'quantity'), 0) AS with_quantity,
    coalesce(sum(units) FILTER (varies_with = 'units'), 0) AS with_units, coalesce(sum(units) FILTER (varies_with IN ('fixed', 'trips')), 0) AS staying
FROM enterprises e LEFT JOIN costs c ON c.planting = e.planting AND c.year = e.year GROUP BY e.planting, e.year;

CREATE TABLE hour_sums AS
SELECT planting, year, sum(hours) AS hours, sum(CASE WHEN estimated THEN hours ELSE 0 END) AS estimated
FROM (SELECT planting, year, hours, estimated FROM direct_hours UNION ALL SELECT user, year, hours, false FROM hour_charges WHERE line <> 'overhead')
GROUP BY ALL;

-- What a unit on hand is worth where none was sold: the newest price of no channel, else of the first channel with prices that has one, else the average over all priced sales.
CREATE TABLE stock_prices AS
WITH known_prices AS (FROM prices WHERE since <= getvariable('as_of')),
general AS (SELECT crop, arg_max(price, (since, row)) AS price FROM known_prices WHERE channel IS NULL GROUP BY crop),
by_channel AS (
    SELECT p.crop, h.row AS place, arg_max(p.price, (p.since, p.row)) AS price FROM known_prices p JOIN channels h ON h.channel = p.channel
    WHERE h.kind IN ('market', 'stand', 'wholesale') GROUP BY p.crop, h.row),
first_channel AS (SELECT crop, arg_min(price, place) AS price FROM by_channel GROUP BY crop),
anywhere AS (SELECT crop, CAST(sum(money) AS DOUBLE) / CAST(sum(quantity) AS DOUBLE) AS price FROM realized GROUP BY crop HAVING sum(quantity) > 0)
SELECT c.crop, coalesce(g.price, f.price, a.price) AS price
FROM crops c LEFT JOIN general g ON g.crop = c.crop LEFT JOIN first_channel f ON f.crop = c.crop LEFT JOIN anywhere a ON a.crop = c.crop;

-- Closing stock = units on hand x max(0, average realized price - (selling line + labor of stage sell) / quantity sold), split by quantity.
CREATE TABLE realized_lots AS
SELECT l.crop, p.year, CAST(sum(coalesce(m.units, 0)) AS DOUBLE) / CAST(sum(p.quantity) AS DOUBLE) AS price -- in cents
FROM parts p JOIN leaving_money l ON l.row = p.leaving LEFT JOIN part_money m ON m.leaving = p.leaving AND m.place = p.place AND m.stream = 'sales'
WHERE p.lot IS NOT NULL AND l.priced AND l.kind IN ('market', 'stand', 'wholesale') GROUP BY l.crop, p.year;

CREATE TABLE stock_weights AS
WITH crop_years AS (
    SELECT o.crop, o.year, sum(on_hand) AS on_hand, sum(sold) AS sold, sum(c.selling) + sum(c.selling_labor) AS selling_cost
    FROM enterprise_output o JOIN cost_sums c ON c.planting = o.planting AND c.year = o.year GROUP BY ALL)
SELECT o.crop || '|' || o.year AS what, o.planting AS part, o.place, o.on_hand AS weight,
    cents(y.on_hand * greatest(0, coalesce(r.price / 100, p.price) - CASE WHEN y.sold > 0 THEN y.selling_cost / y.sold / 100 ELSE 0 END)) AS total
FROM enterprise_output o JOIN crop_years y ON y.crop = o.crop AND y.year = o.year LEFT JOIN realized_lots r ON r.crop = o.crop AND r.year = o.year JOIN stock_prices p ON p.crop = o.crop
WHERE getvariable('closing_stock') = 'count' AND y.on_hand > 0 AND coalesce(r.price, p.price) IS NOT NULL;
CREATE TABLE closing_stock AS
SELECT part AS planting, CAST(split_part(what, '|', 2) AS INTEGER) AS year, units FROM split('stock_weights');

-- What the produce was worth isn't known where a part of it has no price: something that left, stock that counts, or a crop picked of which no row tells what became of it.
CREATE TABLE worth_unknown AS
WITH crop_years AS (
    SELECT o.crop, o.year, sum(harvested) AS harvested, sum(on_hand) AS on_hand, sum(sold) AS sold, sum(other_use) AS other_use, max(abs(sales_value) + abs(household)) AS worth
    FROM enterprise_output o GROUP BY ALL)
SELECT DISTINCT g.planting, g.year FROM gone_quantities g JOIN leaving_money m ON m.row = g.leaving WHERE m.incomplete
UNION
SELECT o.planting, o.year FROM enterprise_output o JOIN crop_years y ON y.crop = o.crop AND y.year = o.year JOIN stock_prices p ON p.crop = o.crop
LEFT JOIN realized_lots r ON r.crop = o.crop AND r.year = o.year
WHERE p.price IS NULL AND r.price IS NULL
  AND ((getvariable('closing_stock') = 'count' AND y.on_hand > 0) OR (y.harvested > 0 AND y.sold = 0 AND y.other_use = 0 AND y.worth = 0));

CREATE TABLE budgets AS
SELECT e.planting, e.bed, e.year, e.crop, e.place, e.bed_feet, e.bed_foot_days, o.* EXCLUDE (planting, year, crop, place),
    coalesce(s.units, 0) AS closing, CASE WHEN w.planting IS NULL THEN 0 ELSE 1 END AS worth_unknown,
    c.* EXCLUDE (planting, year), coalesce(h.hours, 0) AS hours, coalesce(h.estimated, 0) AS estimated
FROM enterprises e JOIN enterprise_output o ON o.planting = e.planting AND o.year = e.year JOIN cost_sums c ON c.planting = e.planting AND c.year = e.year
LEFT JOIN closing_stock s ON s.planting = e.planting AND s.year = e.year LEFT JOIN worth_unknown w ON w.planting = e.planting AND w.year = e.year LEFT JOIN hour_sums h ON h.planting = e.planting AND h.year = e.year;
