-- docs/methods.md 11 and 13: what a unit sold carries alike, what the boxes of a share held and cost, and what a share must cost, at terms the records don't hold.

CREATE TABLE terms(terms VARCHAR, members DOUBLE, half DOUBLE, half_contents DOUBLE, price DOUBLE, margin DOUBLE, fewer DOUBLE, bad DOUBLE, discount DOUBLE, early DOUBLE, months DOUBLE, interest DOUBLE);
INSERT INTO terms VALUES ('by price', NULL, 7, 0.6, 640, 12, 15, 40, 6, 0.3, 5, NULL), ('by members', 41, 0, 0.5, NULL, 10, 10, 50, 5, 0.5, 4, 7.25);

-- A crop's cost without fees, less the own pools of the channels that sold some of it, plus fees of channels that sell nothing, less what wasn't sold at its value; over units sold. In cents.
CREATE TABLE carried AS
WITH through AS (
    SELECT y.crop, g.year, m.channel, m.kind IN ('market', 'stand', 'wholesale', 'share') AS sells, sum(g.quantity) AS quantity
    FROM gone_quantities g JOIN leaving_money m ON m.row = g.leaving JOIN planting_years y ON y.planting = g.planting GROUP BY ALL
), own AS (
    SELECT y.crop, c.year, sum(c.units) AS units FROM charges c JOIN pools p ON p.pool = c.pool JOIN planting_years y ON y.planting = c.user
    JOIN through t ON t.crop = y.crop AND t.year = c.year AND t.channel = p.channel WHERE t.sells AND t.quantity > 0 GROUP BY y.crop, c.year
), fees AS (
    SELECT y.crop, g.year, sum(g.units) AS units FROM gone_money g JOIN leaving_money m ON m.row = g.leaving JOIN planting_years y ON y.planting = g.planting
    WHERE g.stream = 'fee' AND m.kind IN ('market', 'stand', 'wholesale', 'share') GROUP BY y.crop, g.year)
SELECT s.crop, s.year, CASE WHEN k.net_known AND establishment_unknown = 0 AND worth_unknown = 0 AND sold > 0 THEN
    (materials + selling + labor + infrastructure + overhead + establishment - coalesce(o.units, 0) - coalesce(f.units, 0) - household - closing) / sold END AS per_unit
FROM crop_sums s JOIN known k ON k.year = s.year LEFT JOIN own o ON o.crop = s.crop AND o.year = s.year LEFT JOIN fees f ON f.crop = s.crop AND f.year = s.year;

-- Boxes by week: sevens of days from the first delivery. Each lot's produce at the cost of the crop year it belongs to; a part that isn't known leaves the whole unknown.
CREATE TABLE share_weeks AS
WITH first AS (SELECT channel, year, min(date) AS day FROM leavings WHERE kind = 'share' GROUP BY channel, year),
costs AS (
    SELECT g.leaving, sum(g.quantity) AS traced, CASE WHEN count(*) = count(c.per_unit) THEN sum(g.quantity * c.per_unit) END AS cost
    FROM gone_quantities g JOIN planting_years y ON y.planting = g.planting LEFT JOIN carried c ON c.crop = y.crop AND c.year = g.year GROUP BY g.leaving)
SELECT m.channel, m.year, (m.date - f.day) // 7 + 1 AS week, sum(m.list_value) / 100 AS list_value, sum(m.fee) / 100 AS fees,
    CASE WHEN bool_and(m.quantity = 0 OR (c.cost IS NOT NULL AND abs(c.traced - CAST(m.quantity AS DOUBLE)) < 1e-6)) THEN sum(coalesce(c.cost, 0)) / 100 END AS cost
FROM leaving_money m JOIN first f ON f.channel = m.channel AND f.year = m.year LEFT JOIN costs c ON c.leaving = m.row WHERE m.kind = 'share' GROUP BY ALL;

-- The season's sums at each set of terms; H, the own money of the channel's pool; B boxes; N full boxes' worth.
CREATE TABLE share_sums AS
WITH seasons AS (
    SELECT channel, year, count(*) AS weeks, sum(list_value) AS list_value, sum(fees) AS fees, CASE WHEN count(*) = count(cost) THEN sum(cost) END AS cost FROM share_weeks GROUP BY channel, year
), paid AS (SELECT channel, year, sum(amount) / 100 AS income FROM income WHERE kind = 'share' GROUP BY channel, year),
pools_own AS (SELECT p.channel, m.year, sum(m.total) / 100 AS total FROM pool_money m JOIN pools p ON p.pool = m.pool WHERE p.channel IS NOT NULL GROUP BY p.channel, m.year)
SELECT s.*, t.* EXCLUDE (interest), coalesce(t.interest, 100 * getvariable('interest')) AS interest, coalesce(p.income, 0) AS income, h.fee_percent / 100.0 AS fee,
    CASE WHEN k.net_known THEN coalesce(o.total, 0) END AS own, coalesce(members, CASE WHEN income > 0 THEN income / price - half * half_contents END) AS full_members
FROM seasons s CROSS JOIN terms t JOIN channels h ON h.channel = s.channel JOIN known k ON k.year = s.year
LEFT JOIN paid p ON p.channel = s.channel AND p.year = s.year LEFT JOIN pools_own o ON o.channel = s.channel AND o.year = s.year;

CREATE VIEW share_prices_result AS
WITH counted AS (SELECT *, CASE WHEN full_members > 0 OR half > 0 THEN full_members + half END AS boxes, CASE WHEN full_members > 0 OR half > 0 THEN full_members + half * half_contents END AS equivalents FROM share_sums),
each AS (SELECT *, cost / equivalents AS g, own / boxes AS h, CASE WHEN price IS NOT NULL THEN price WHEN income > 0 THEN income / equivalents END AS paid, income - fees AS kept FROM counted)
SELECT year AS crop_year, channel, terms, list_value, income, fees, cost, own AS handling, cost + own AS total_cost, equivalents AS full_boxes, paid AS price_paid, g AS contents_cost, h AS handling_per_box,
    (g + h) / (1 - fee) AS cost_price, (g + h) / (1 - fee - margin / 100) AS target_price, (half_contents * g + h) / (1 - fee) AS half_cost_price, (half_contents * g + h) / (1 - fee - margin / 100) AS half_target_price,
    (g + own / 55) / (1 - fee - margin / 100) AS price_for_55, CASE WHEN 900 * (1 - fee) > g THEN ceil(own / (900 * (1 - fee) - g)) END AS members_at_900, ceil((cost + own) / (900 * (1 - fee))) AS members_grown_at_900,
    (cost + own) / (1 - fee) AS income_to_cover, (cost + own) / (1 - fee - margin / 100) AS income_for_target, kept - cost - own AS net_return, -kept * fewer / 100 AS fewer_change,
    CASE WHEN income > 0 THEN list_value / income END AS value_over_price, CASE WHEN income > 0 THEN list_value / income / (1 - fewer / 100) END AS fewer_value_over_price, paid / (1 - fewer / 100) AS fewer_price,
    list_value / weeks * bad / 100 AS bad_week_value, CASE WHEN income > 0 THEN list_value / income * (1 - bad / 100 / weeks) END AS bad_week_value_over_price,
    100 * (1 - 1 / (1 + interest / 100 * months / 12)) AS highest_discount, paid / (1 - discount / 100 * early) AS price_with_discount
FROM each;
CREATE VIEW share_weeks_result AS
SELECT w.year AS crop_year, w.channel, s.terms, w.week, w.list_value, w.cost, w.list_value / s.full_boxes AS box_value, w.cost / s.full_boxes + s.handling_per_box / (SELECT count(*) FROM share_weeks n WHERE n.channel = w.channel AND n.year = w.year) AS box_cost
FROM share_weeks w JOIN share_prices_result s ON s.channel = w.channel AND s.crop_year = w.year;
