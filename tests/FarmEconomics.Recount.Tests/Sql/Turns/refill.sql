-- docs/methods.md 16: one week of boxes filled again, for all sets at once (variable `turn`). What loses least per dollar of list value goes first, of no crop more than the most a week's boxes ever held
-- of it, nothing that an earlier week took, nor what isn't worth a cent; what no produce fills is bought in.
INSERT INTO fillings
WITH gaps AS (SELECT season, what, turn, gap FROM box_gaps WHERE turn = getvariable('turn') AND gap > 0),
weeks AS (FROM box_weeks WHERE turn = getvariable('turn')),
has AS (SELECT b.crop, sum(b.quantity) AS quantity FROM box_leavings b JOIN weeks w ON w.channel = b.channel AND w.year = b.year AND w.week = b.week GROUP BY b.crop),
offered AS (
    SELECT g.good, g.crop, g.source, g.quantity, g.date, g.lot, g.left_on, g.leaving, g.brought, p.price * 100 AS price, greatest(0, m.most - coalesce(h.quantity, 0)) AS room
    FROM goods g JOIN weeks w ON g.date <= w.day AND w.day <= g.kept_until JOIN box_prices p ON p.turn = w.turn AND p.crop = g.crop AND p.price > 0
    JOIN box_most m ON m.channel = w.channel AND m.crop = g.crop LEFT JOIN has h ON h.crop = g.crop
), supplies AS (
    SELECT s.season, s.what, s.gap, o.*, greatest(0, o.brought / o.quantity - CASE o.source WHEN 'sold' THEN coalesce(k.per_unit, 0) ELSE 0 END) AS lost_each,
        o.quantity - coalesce((SELECT sum(f.quantity) FROM fillings f WHERE f.season = s.season AND f.what = s.what AND f.good = o.good), 0) AS free
    FROM gaps s CROSS JOIN offered o LEFT JOIN packing k ON k.crop = o.crop AND k.year = s.season
    WHERE NOT EXISTS (FROM sets x WHERE x.year = s.season AND x.what = s.what AND x.crop = o.crop)
), ordered AS (
    SELECT *, row_number() OVER (PARTITION BY season, what ORDER BY round(lost_each / price, 12), date, lot, coalesce(left_on, DATE '9999-12-31'), coalesce(leaving, 9000000000000000)) AS place FROM supplies WHERE free > 0 AND fine_cents(free * price / 100) > 0
), within_room AS (
    SELECT *, greatest(0, least(free, room - coalesce(sum(free) OVER (PARTITION BY season, what, crop ORDER BY place ROWS BETWEEN UNBOUNDED PRECEDING AND 1 PRECEDING), 0))) AS most_here FROM ordered
), valued AS (
    SELECT *, fine_cents(most_here * price / 100) AS worth_here FROM within_room WHERE most_here > 0
), running AS (
    SELECT *, coalesce(sum(worth_here) OVER (PARTITION BY season, what ORDER BY place ROWS BETWEEN UNBOUNDED PRECEDING AND 1 PRECEDING), 0) AS before FROM valued WHERE worth_here > 0
), taken AS (
    -- the last one in part, in units of 10^-8
    SELECT *, CASE WHEN worth_here > gap - before THEN round((gap - before) / price, 8) ELSE most_here END AS take, least(worth_here, gap - before) AS worth FROM running WHERE before < gap
), filled AS (
    SELECT season, what, good, crop, source, take, worth, fine_cents(take * lost_each / 100) AS lost FROM taken)
SELECT season, what, getvariable('turn'), good, crop, source, take, worth, lost FROM filled
UNION ALL
SELECT g.season, g.what, g.turn, NULL, NULL, 'bought', 0, g.gap - coalesce(f.worth, 0), cents((g.gap - coalesce(f.worth, 0)) * getvariable('buy_in') / 10000)
FROM gaps g LEFT JOIN (SELECT season, what, sum(worth) AS worth FROM filled GROUP BY season, what) f ON f.season = g.season AND f.what = g.what WHERE g.gap > coalesce(f.worth, 0);
