-- docs/methods.md 3: what each leaving is worth, and which planting gets it.

-- List value: newest price of the channel in values_from, else of no channel; else the crop's average realized price there in that window,
-- else over all its priced sales; else its value isn't known and it counts 0. What is given or thrown away is worth 0 whatever is written (docs/decisions.md).
CREATE TABLE realized AS
SELECT crop, channel, year, sum(own_value) / 100.0 AS money, sum(quantity) AS quantity
FROM leavings WHERE kind IN ('market', 'stand', 'wholesale') AND own_value IS NOT NULL AND quantity > 0 GROUP BY crop, channel, year;

CREATE TABLE list_prices AS
WITH found AS (
    SELECT l.row, arg_max(p.price, (p.since, p.row)) FILTER (p.channel = l.values_from) AS own, arg_max(p.price, (p.since, p.row)) FILTER (p.channel IS NULL) AS general
    FROM leavings l JOIN prices p ON p.crop = l.crop AND p.since <= l.date GROUP BY l.row)
SELECT l.row, coalesce(f.own, f.general, CAST(r.money AS DOUBLE) / CAST(r.quantity AS DOUBLE), CAST(a.money AS DOUBLE) / CAST(a.quantity AS DOUBLE)) AS price
FROM leavings l LEFT JOIN found f ON f.row = l.row
LEFT JOIN realized r ON r.crop = l.crop AND r.channel = l.values_from AND r.year = l.year AND r.quantity > 0
LEFT JOIN (SELECT crop, sum(money) AS money, sum(quantity) AS quantity FROM realized GROUP BY crop HAVING sum(quantity) > 0) a ON a.crop = l.crop;

CREATE TABLE valued AS
SELECT l.*, CASE WHEN kind IN ('donation', 'waste', 'other') THEN 0 ELSE coalesce(own_value, cents(CAST(quantity AS DOUBLE) * price), 0) END AS list_value,
    kind NOT IN ('donation', 'waste', 'other') AND own_value IS NULL AND price IS NULL AS incomplete FROM leavings l JOIN list_prices p ON p.row = l.row;

-- Share payments of a channel and window: one total, split over what the shares received by list value.
CREATE TABLE share_weights AS
SELECT l.channel || ' ' || l.year AS what, l.row AS part, row_number() OVER (ORDER BY l.date, l.row) AS place, greatest(l.list_value, 0) AS weight, i.total
FROM valued l JOIN (SELECT channel, year, sum(amount) AS total FROM income WHERE kind = 'share' GROUP BY 1, 2) i ON i.channel = l.channel AND i.year = l.year
WHERE l.kind = 'share';
CREATE TABLE allotted AS SELECT part AS row, units AS share_income FROM split('share_weights');

-- Sales count at their amount (without a price: at list value), household use at its price or list value, gifts and waste at 0. Fees on sales and on allotted share income.
CREATE TABLE leaving_money AS
SELECT *, CASE WHEN kind IN ('household', 'donation', 'waste') THEN 0 ELSE cents_of((sales + share_income) * CAST(fee_percent * 10000 AS BIGINT), 100000000) END AS fee
FROM (
    SELECT v.row, v.date, v.year, v.crop, v.channel, v.kind, v.quantity, v.fee_percent, v.list_value, v.own_value IS NOT NULL AS priced, v.incomplete,
        kind IN ('market', 'stand', 'wholesale', 'share') OR (kind = 'other' AND own_value IS NOT NULL) AS for_money,
        CASE WHEN kind IN ('market', 'stand', 'wholesale') THEN list_value WHEN kind = 'other' THEN coalesce(own_value, 0) ELSE 0 END AS sales,
        coalesce(share_income, 0) AS share_income,
        CASE WHEN kind = 'household' THEN list_value ELSE 0 END AS household
    FROM valued v LEFT JOIN allotted a ON a.row = v.row);

-- Each stream of money is split over the lots drawn by quantity, in drawing order; the unmatched part comes last.
CREATE TABLE part_weights AS
SELECT p.leaving || ' ' || stream AS what, p.place AS part, p.place, CASE WHEN p.quantity = 0 THEN 1 ELSE CAST(p.quantity AS DOUBLE) END AS weight, total
FROM parts p JOIN (UNPIVOT (SELECT row, sales, share_income, household, fee, list_value FROM leaving_money) ON sales, share_income, household, fee, list_value INTO NAME stream VALUE total) m
  ON m.row = p.leaving WHERE total <> 0;
CREATE TABLE part_money AS
SELECT CAST(split_part(what, ' ', 1) AS BIGINT) AS leaving, split_part(what, ' ', 2) AS stream, part AS place, units FROM split('part_weights');

-- The unmatched part goes over that window's plantings by quantity picked, else bed-feet, else it is not assigned.
CREATE TABLE unmatched_users AS
SELECT p.leaving, e.planting, e.year, e.place,
    CASE WHEN sum(coalesce(k.quantity, 0)) OVER (PARTITION BY p.leaving) > 0 THEN CAST(coalesce(k.quantity, 0) AS DOUBLE) ELSE e.bed_feet END AS weight
FROM parts p JOIN leaving_money m ON m.row = p.leaving JOIN enterprises e ON e.crop = m.crop AND e.year = m.year
LEFT JOIN picked k ON k.planting = e.planting AND k.year = e.year WHERE p.lot IS NULL;
CREATE TABLE unmatched_weights AS
SELECT m.leaving || ' ' || m.stream AS what, u.planting AS part, u.place, u.weight, m.units AS total
FROM part_money m JOIN parts p ON p.leaving = m.leaving AND p.place = m.place JOIN unmatched_users u ON u.leaving = m.leaving WHERE p.lot IS NULL;

-- All that left, by enterprise: quantities and money.
CREATE TABLE unmatched_quantities AS
SELECT p.leaving AS what, u.planting AS part, u.place, u.weight, p.quantity AS total, u.year FROM parts p JOIN unmatched_users u ON u.leaving = p.leaving WHERE p.lot IS NULL;
CREATE TABLE gone_quantities AS
SELECT leaving, planting, year, lot, CAST(quantity AS DOUBLE) AS quantity, false AS unmatched FROM parts WHERE lot IS NOT NULL
UNION ALL
SELECT s.what, s.part, q.year, NULL, CAST(s.amount AS DOUBLE), true FROM split_exactly('unmatched_quantities') s JOIN unmatched_quantities q ON q.what = s.what AND q.part = s.part;
CREATE TABLE gone_money AS
SELECT m.leaving, m.stream, p.planting, p.year, m.units FROM part_money m JOIN parts p ON p.leaving = m.leaving AND p.place = m.place WHERE p.lot IS NOT NULL
UNION ALL
SELECT CAST(split_part(what, ' ', 1) AS BIGINT), split_part(what, ' ', 2), part, l.year, units
FROM split('unmatched_weights') s JOIN leaving_money l ON l.row = CAST(split_part(what, ' ', 1) AS BIGINT);

-- What left beyond what was picked, of a crop without a planting in that window.
CREATE TABLE loose_money AS
SELECT m.leaving, m.stream, l.year, m.units FROM part_money m JOIN parts p ON p.leaving = m.leaving AND p.place = m.place JOIN leaving_money l ON l.row = m.leaving
WHERE p.lot IS NULL AND m.leaving NOT IN (SELECT leaving FROM unmatched_users);

CREATE TABLE enterprise_output AS
WITH money AS (
    SELECT g.planting, g.year,
        coalesce(sum(units) FILTER (stream = 'sales'), 0) AS sales, coalesce(sum(units) FILTER (stream = 'share_income'), 0) AS share_income,
        coalesce(sum(units) FILTER (stream = 'household'), 0) AS household, coalesce(sum(units) FILTER (stream = 'fee'), 0) AS fees,
        -- what the units sold brought, and the fees on it
        coalesce(sum(units) FILTER (stream IN ('sales', 'share_income') AND for_money), 0) AS sold_value, coalesce(sum(units) FILTER (stream = 'fee' AND for_money), 0) AS sold_fees
    FROM gone_money g JOIN leaving_money m ON m.row = g.leaving GROUP BY g.planting, g.year
), moved AS (
    SELECT g.planting, g.year,
        sum(CASE WHEN m.for_money THEN g.quantity ELSE 0 END) AS sold, sum(CASE WHEN m.for_money THEN 0 ELSE g.quantity END) AS other_use,
        sum(CASE WHEN unmatched THEN g.quantity ELSE 0 END) AS unmatched
    FROM gone_quantities g JOIN leaving_money m ON m.row = g.leaving GROUP BY g.planting, g.year
), kept AS (
    SELECT planting, year, CAST(sum(quantity) AS DOUBLE) AS unsold, CAST(coalesce(sum(quantity) FILTER (on_hand), 0) AS DOUBLE) AS on_hand FROM unsold GROUP BY planting, year)
SELECT e.planting, e.year, e.crop, e.place, coalesce(CAST(k.quantity AS DOUBLE), 0) AS harvested,
    coalesce(sold, 0) AS sold, coalesce(other_use, 0) AS other_use, coalesce(unmatched, 0) AS unmatched, coalesce(unsold, 0) AS unsold, coalesce(on_hand, 0) AS on_hand,
    coalesce(sales, 0) AS sales, coalesce(share_income, 0) AS share_income, coalesce(household, 0) AS household, coalesce(fees, 0) AS fees,
    coalesce(sold_value, 0) AS sold_value, coalesce(sold_fees, 0) AS sold_fees,
    coalesce(sales, 0) + coalesce(share_income, 0) AS sales_value
FROM enterprises e
LEFT JOIN picked k ON k.planting = e.planting AND k.year = e.year LEFT JOIN money m ON m.planting = e.planting AND m.year = e.year
LEFT JOIN moved v ON v.planting = e.planting AND v.year = e.year LEFT JOIN kept u ON u.planting = e.planting AND u.year = e.year;
