-- The result tables (RECORDS, "What a result folder holds") from the recount, for every crop year. Money in whole cents as DECIMAL(18, 2); the rest unrounded.

CREATE MACRO money(units) AS CAST(round(units) AS DECIMAL(18, 0)) * CAST(0.01 AS DECIMAL(3, 2));

-- The figures and the break-even of docs/methods.md 8, for one planting or the sum of several. A denominator not above 0: not available.
CREATE MACRO budget_rows(sums) AS TABLE
    WITH lines AS (
        SELECT *, sales + share_income + household + closing AS output FROM query_table(sums)
    ), margins AS (
        SELECT *, output - materials - selling AS gross, output - materials - selling - labor AS after_labor,
            output - materials - selling - labor - infrastructure AS after_infrastructure, output - materials - selling - labor - infrastructure - overhead - establishment AS net,
            CASE WHEN sold > 0 THEN sold_value / sold END AS average, with_bed + with_quantity + with_units + staying AS all_costs FROM lines
    ), even AS (
        -- What wasn't sold comes off the cost at its value; of the costs only the fees follow the price. A better yield brings more of everything, and takes what varies with quantity or sales.
        SELECT *, all_costs - sold_fees - (output - sold_value) AS to_cover, CASE WHEN sold > 0 AND sold_value > 0 THEN sold * (1 - sold_fees / sold_value) END AS kept_units,
            output - with_quantity - with_units AS grown FROM margins
    )
    SELECT planting, bed, even.year AS crop_year, crop, unit, plantings, bed_feet, bed_foot_days / 7 AS bed_foot_weeks,
        harvested, unmatched, sold, other_use, unsold, money(CASE WHEN worth_unknown = 0 THEN output END) AS output, money(CASE WHEN worth_unknown = 0 THEN household END) AS of_which_household,
        money(CASE WHEN worth_unknown = 0 THEN closing END) AS of_which_closing_stock,
        money(CASE WHEN costs_known THEN materials END) AS materials, money(CASE WHEN costs_known THEN selling END) AS selling, money(CASE WHEN costs_known AND worth_unknown = 0 THEN gross END) AS gross_margin, CASE WHEN hours_known THEN hours END AS labor_hours, CASE WHEN hours_known THEN estimated END AS of_which_estimated_hours,
        money(CASE WHEN labor_known THEN labor END) AS labor_cost, money(CASE WHEN labor_known THEN owner_labor END) AS of_which_owner_labor, money(CASE WHEN costs_known AND labor_known AND worth_unknown = 0 THEN after_labor END) AS margin_after_labor,
        money(CASE WHEN costs_known AND ownership_known THEN infrastructure END) AS infrastructure, money(CASE WHEN net_known AND worth_unknown = 0 THEN after_infrastructure END) AS margin_after_infrastructure, money(CASE WHEN overhead_known THEN overhead END) AS overhead, money(CASE WHEN stands_known THEN establishment END) AS establishment,
        money(CASE WHEN full_known THEN net END) AS net_return,
        CASE WHEN costs_known AND worth_unknown = 0 AND bed_feet > 0 THEN gross / 100 / bed_feet END AS gross_margin_per_bed_foot,
        CASE WHEN costs_known AND worth_unknown = 0 AND bed_foot_days > 0 THEN gross / 100 / (bed_foot_days / 7) END AS gross_margin_per_bed_foot_week,
        CASE WHEN costs_known AND worth_unknown = 0 AND hours_known AND hours > 0 THEN gross / 100 / hours END AS gross_margin_per_labor_hour,
        CASE WHEN costs_known AND worth_unknown = 0 AND hours_known AND ownership_known AND stands_known AND hours > 0 THEN (net + labor) / 100 / hours END AS return_to_labor_per_hour,
        CASE WHEN full_known AND bed_feet > 0 THEN net / 100 / bed_feet END AS net_return_per_bed_foot,
        CASE WHEN worth_unknown = 0 THEN average / 100 END AS average_price,
        CASE WHEN full_known AND kept_units > 0 THEN to_cover / kept_units / 100 END AS break_even_price,
        CASE WHEN full_known AND sold > 0 AND sold_value > 0 AND grown > 0 AND bed_feet > 0 THEN (with_bed + staying) / grown * sold / bed_feet END AS break_even_yield_per_bed_foot
    FROM (SELECT e.*, k.* EXCLUDE (year), establishment_unknown = 0 AS stands_known, worth_unknown = 0 AND net_known AND establishment_unknown = 0 AS full_known FROM even e JOIN known k ON k.year = e.year) even;

CREATE TABLE planting_sums AS SELECT b.*, 1 AS plantings, c.unit FROM budgets b JOIN crops c ON c.crop = b.crop;
CREATE TABLE crop_sums AS
SELECT NULL AS planting, NULL AS bed, b.crop, any_value(c.unit) AS unit, year, count(*) AS plantings,
    sum(COLUMNS(b.* EXCLUDE (planting, bed, year, crop, place)))
FROM budgets b JOIN crops c ON c.crop = b.crop GROUP BY b.crop, year;

CREATE VIEW plantings_result AS FROM budget_rows('planting_sums');
CREATE VIEW crops_result AS SELECT * EXCLUDE (planting, bed) FROM budget_rows('crop_sums');

-- Where a pool's ownership cost isn't known, neither is where it went, nor what it passed to other pools and those received.
CREATE TABLE muddy AS -- pools such money flows through
SELECT DISTINCT v.pool, v.year FROM visits v JOIN unowned o ON o.pool = v.origin AND o.year = v.year WHERE v.cost = 'running' AND v.times > 0;
CREATE TABLE muddy_flows AS
SELECT s.pool AS sender, s.user AS receiver, s.year FROM shares s JOIN muddy m ON m.pool = s.pool AND m.year = s.year WHERE s.cost = 'running' AND s.kind = 'pool' AND s.share > 0;

CREATE VIEW pools_result AS
WITH all_known AS (
SELECT y.year AS crop_year, y.pool,
    money(coalesce(cash, 0)) AS cash_cost, money(coalesce(labor, 0)) AS labor_cost, money(coalesce(ownership, 0)) AS ownership_cost, coalesce(h.hours, 0) AS hours,
    money(coalesce(received, 0)) AS received_from_pools, money(coalesce(passed, 0)) AS passed_to_pools,
    money(coalesce(to_crops, 0)) AS to_crops, money(coalesce(to_household, 0)) AS to_household, money(coalesce(unused, 0)) AS unused, money(coalesce(not_assigned, 0)) AS not_assigned
FROM pool_years y
LEFT JOIN (SELECT pool, year, sum(total) FILTER (stream = 'cash') AS cash, sum(total) FILTER (stream IN ('hired', 'owner')) AS labor,
    sum(total) FILTER (stream = 'ownership') AS ownership FROM pool_money GROUP BY ALL) m ON m.pool = y.pool AND m.year = y.year
LEFT JOIN (SELECT pool, year, sum(hours) AS hours FROM pool_hours GROUP BY ALL) h ON h.pool = y.pool AND h.year = y.year
LEFT JOIN (SELECT receiver, year, sum(units) AS received FROM pool_flows GROUP BY ALL) r ON r.receiver = y.pool AND r.year = y.year
LEFT JOIN (SELECT sender, year, sum(units) AS passed FROM pool_flows GROUP BY ALL) s ON s.sender = y.pool AND s.year = y.year
LEFT JOIN (SELECT pool, year, sum(units) FILTER (user = 'household') AS to_household, sum(units) FILTER (user = 'unused') AS unused,
    sum(units) FILTER (user = 'not assigned') AS not_assigned, sum(units) FILTER (user NOT IN ('household', 'unused', 'not assigned')) AS to_crops
    FROM charges GROUP BY ALL) c ON c.pool = y.pool AND c.year = y.year)
SELECT p.* REPLACE (
    CASE WHEN o.pool IS NULL THEN ownership_cost END AS ownership_cost, CASE WHEN o.pool IS NULL THEN to_crops END AS to_crops,
    CASE WHEN o.pool IS NULL THEN to_household END AS to_household, CASE WHEN o.pool IS NULL THEN unused END AS unused, CASE WHEN o.pool IS NULL THEN not_assigned END AS not_assigned,
    CASE WHEN NOT EXISTS (FROM muddy_flows f WHERE f.receiver = p.pool AND f.year = p.crop_year) THEN received_from_pools END AS received_from_pools,
    CASE WHEN NOT EXISTS (FROM muddy_flows f WHERE f.sender = p.pool AND f.year = p.crop_year) THEN passed_to_pools END AS passed_to_pools)
FROM all_known p LEFT JOIN unowned o ON o.pool = p.pool AND o.year = p.crop_year;

CREATE VIEW charges_result AS
SELECT c.year AS crop_year, c.pool, y.crop, money(CASE WHEN o.pool IS NULL THEN sum(units) END) AS amount
FROM charges c JOIN planting_years y ON y.planting = c.user LEFT JOIN unowned o ON o.pool = c.pool AND o.year = c.year GROUP BY c.year, c.pool, y.crop, o.pool;

-- Costs (before labor) and hours of a channel are those that name it; sales are those of the crop year's lots and, beyond what was picked, of the window.
CREATE VIEW channels_result AS
WITH sold AS (
    SELECT m.channel, g.year, sum(CASE WHEN g.stream IN ('sales', 'share_income', 'household') THEN g.units ELSE 0 END) AS value,
        sum(CASE WHEN g.stream = 'fee' THEN g.units ELSE 0 END) AS fees
    FROM (SELECT leaving, stream, year, units FROM gone_money UNION ALL SELECT leaving, stream, year, units FROM loose_money) g
    JOIN leaving_money m ON m.row = g.leaving GROUP BY ALL
), named AS (
    SELECT channel, year, sum(amount - household) AS costs FROM books WHERE channel IS NOT NULL AND class = 'operating' GROUP BY ALL
), worked AS (
    SELECT channel, year, sum(CAST(hours AS DOUBLE)) AS hours FROM work WHERE channel IS NOT NULL GROUP BY ALL
), unpriced AS (
    SELECT DISTINCT m.channel, g.year FROM gone_quantities g JOIN leaving_money m ON m.row = g.leaving WHERE m.incomplete
    UNION SELECT m.channel, m.year FROM leaving_money m JOIN parts p ON p.leaving = m.row WHERE m.incomplete AND p.lot IS NULL AND m.row NOT IN (SELECT leaving FROM unmatched_users)
), joined AS (
    SELECT u.channel IS NULL AS worth_known, y.year, h.channel, h.kind, coalesce(value, 0) AS value, coalesce(fees, 0) AS fees, coalesce(costs, 0) AS costs, coalesce(w.hours, 0) AS hours
    FROM channels h CROSS JOIN (SELECT DISTINCT year FROM pool_years) y
    LEFT JOIN sold s ON s.channel = h.channel AND s.year = y.year LEFT JOIN named n ON n.channel = h.channel AND n.year = y.year
    LEFT JOIN worked w ON w.channel = h.channel AND w.year = y.year LEFT JOIN unpriced u ON u.channel = h.channel AND u.year = y.year
)
SELECT j.year AS crop_year, channel, kind, money(CASE WHEN worth_known THEN value END) AS quantity_value, money(CASE WHEN worth_known THEN fees END) AS fees, money(CASE WHEN costs_known THEN costs END) AS direct_costs, CASE WHEN hours_known THEN hours END AS hours,
    money(CASE WHEN costs_known AND worth_known THEN value - fees - costs END) AS margin, CASE WHEN costs_known AND worth_known AND hours_known AND hours > 0 THEN (value - fees - costs) / 100 / hours END AS margin_per_hour
FROM joined j JOIN known k ON k.year = j.year;
