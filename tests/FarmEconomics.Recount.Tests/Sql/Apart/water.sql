-- docs/methods.md 19: every bed row's balance of water day by day, and its sum by block, as watered. Only temperatures are looked at (Hargreaves), and sowings
-- whose season is over. Not a step of every recount: nothing else rests on it.

CREATE TABLE crop_columns AS
SELECT crop, CAST(kc_ini AS DOUBLE) AS kc_ini, CAST(kc_mid AS DOUBLE) AS kc_mid, CAST(kc_end AS DOUBLE) AS kc_end, CAST(ky AS DOUBLE) AS ky,
    [CAST(ky_ini AS DOUBLE), CAST(ky_dev AS DOUBLE), CAST(ky_mid AS DOUBLE), CAST(ky_late AS DOUBLE)] AS ky_stages
FROM (SELECT * FROM file_of('crops') UNION ALL BY NAME SELECT NULL AS kc_ini, NULL AS kc_mid, NULL AS kc_end, NULL AS ky,
    NULL AS ky_ini, NULL AS ky_dev, NULL AS ky_mid, NULL AS ky_late WHERE false);

-- The demo farm's crops as FAO Irrigation and Drainage Paper 56 (1998) has them: Kc of Table 12, stages of Table 11, root depth and depletion of Table 22, Ky of Table 24
-- or that of a crop of the family. A crop that no table lists: small vegetables, Ky 1.
CREATE TABLE crop_water AS
WITH listed(crop, kc_ini, kc_mid, kc_end, s1, s2, s3, s4, root, p, ky) AS (VALUES
    ('Salad mix', 0.70, 1.00, 0.95, 20, 30, 15, 10, 0.3, 0.30, 1.00), ('Head lettuce', 0.70, 1.00, 0.95, 20, 30, 15, 10, 0.3, 0.30, 1.00),
    ('Spinach', 0.70, 1.00, 0.95, 20, 20, 20, 5, 0.3, 0.20, 1.00), ('Radish', 0.70, 0.90, 0.85, 5, 10, 15, 5, 0.3, 0.30, 0.95),
    ('Winter radish', 0.70, 0.90, 0.85, 5, 10, 15, 5, 0.3, 0.30, 0.95), ('Arugula', 0.70, 1.05, 0.95, 20, 30, 20, 10, 0.5, 0.45, 0.95),
    ('Kale', 0.70, 1.05, 0.95, 20, 30, 20, 10, 0.5, 0.45, 0.95), ('Bok choy', 0.70, 1.05, 0.95, 20, 30, 20, 10, 0.5, 0.45, 0.95),
    ('Kohlrabi', 0.70, 1.05, 0.95, 20, 30, 20, 10, 0.5, 0.45, 0.95), ('Cabbage', 0.70, 1.05, 0.95, 20, 30, 20, 10, 0.5, 0.45, 0.95),
    ('Broccoli', 0.70, 1.05, 0.95, 20, 30, 20, 10, 0.4, 0.45, 0.95), ('Chard', 0.50, 1.05, 0.95, 25, 30, 25, 10, 0.6, 0.50, 1.00),
    ('Beets', 0.50, 1.05, 0.95, 25, 30, 25, 10, 0.6, 0.50, 1.00), ('Salad turnips', 0.50, 1.10, 0.95, 25, 30, 25, 10, 0.5, 0.50, 0.95),
    ('Rutabaga', 0.50, 1.10, 0.95, 25, 30, 25, 10, 0.5, 0.50, 0.95), ('Carrots', 0.70, 1.05, 0.95, 30, 40, 60, 20, 0.5, 0.35, 1.00),
    ('Parsnips', 0.50, 1.05, 0.95, 30, 40, 60, 20, 0.5, 0.40, 1.00), ('Celeriac', 0.70, 1.05, 1.00, 25, 40, 45, 15, 0.3, 0.20, 1.00),
    ('Scallions', 0.70, 1.00, 1.00, 25, 30, 10, 5, 0.3, 0.30, 1.10), ('Leeks', 0.70, 1.00, 1.00, 25, 30, 10, 5, 0.3, 0.30, 1.10),
    ('Onions', 0.70, 1.05, 0.75, 15, 25, 70, 40, 0.3, 0.30, 1.10), ('Garlic', 0.70, 1.00, 0.70, 15, 25, 70, 40, 0.3, 0.30, 1.10),
    ('Potatoes', 0.50, 1.15, 0.75, 30, 35, 50, 30, 0.4, 0.35, 1.10), ('Winter squash', 0.50, 1.00, 0.80, 20, 30, 30, 20, 1.0, 0.35, 1.00),
    ('Zucchini', 0.50, 0.95, 0.75, 25, 35, 25, 15, 0.6, 0.50, 1.00), ('Cucumbers', 0.60, 1.00, 0.75, 20, 30, 40, 15, 0.7, 0.50, 1.00),
    ('Melons', 0.50, 1.05, 0.75, 25, 35, 40, 20, 0.8, 0.40, 1.10), ('Tomatoes', 0.60, 1.15, 0.80, 30, 40, 45, 30, 0.7, 0.40, 1.05),
    ('Cherry tomatoes', 0.60, 1.15, 0.80, 30, 40, 45, 30, 0.7, 0.40, 1.05), ('Peppers', 0.60, 1.05, 0.90, 28, 35, 40, 20, 0.5, 0.30, 1.10),
    ('Eggplant', 0.60, 1.05, 0.90, 30, 45, 40, 25, 0.7, 0.45, 1.10), ('Snap beans', 0.50, 1.05, 0.90, 20, 30, 30, 10, 0.5, 0.45, 1.15),
    ('Snap peas', 0.50, 1.15, 1.10, 15, 25, 35, 15, 0.6, 0.35, 1.15), ('Pea shoots', 0.50, 1.15, 1.10, 15, 25, 35, 15, 0.6, 0.35, 1.15),
    ('Asparagus', 0.50, 0.95, 0.30, 90, 30, 200, 45, 1.2, 0.45, 1.00))
SELECT c.crop, coalesce(o.kc_ini, l.kc_ini, 0.70) AS kc_ini, coalesce(o.kc_mid, l.kc_mid, 1.05) AS kc_mid, coalesce(o.kc_end, l.kc_end, 0.95) AS kc_end,
    CAST(coalesce(s1, 20) AS DOUBLE) AS s1, CAST(coalesce(s2, 30) AS DOUBLE) AS s2, CAST(coalesce(s3, 15) AS DOUBLE) AS s3, CAST(coalesce(s4, 10) AS DOUBLE) AS s4,
    CAST(coalesce(root, 0.30) AS DOUBLE) AS root, CAST(coalesce(p, 0.30) AS DOUBLE) AS p, CAST(coalesce(o.ky, l.ky, 1) AS DOUBLE) AS ky, o.ky_stages
FROM crops c JOIN crop_columns o ON o.crop = c.crop LEFT JOIN listed l ON l.crop = c.crop;

-- Inches, feet, degrees Fahrenheit and gallons, in metric units from here on.
SET VARIABLE latitude = (SELECT radians(CAST(value AS DOUBLE)) FROM farm WHERE setting = 'latitude');
CREATE TABLE read_days AS
SELECT CAST(date AS DATE) AS day, 25.4 * CAST(coalesce(rain_in, '0') AS DOUBLE) AS rain, (CAST(tmin_f AS DOUBLE) - 32) / 1.8 AS low, (CAST(tmax_f AS DOUBLE) - 32) / 1.8 AS high
FROM file_of('weather');

-- Hargreaves from the temperatures (FAO-56, Eq. 52), the sun beyond the air from latitude and day (Eq. 21 to 25).
CREATE TABLE told_days AS
WITH sun AS (
    SELECT *, 2 * pi() / 365 * dayofyear(day) AS turn FROM read_days
), sky AS (
    SELECT *, 1 + 0.033 * cos(turn) AS distance, 0.409 * sin(turn - 1.39) AS declination FROM sun
), lit AS (
    SELECT *, acos(-tan(getvariable('latitude')) * tan(declination)) AS sunset FROM sky)
SELECT day, rain, 0.0023 * ((low + high) / 2 + 17.8) * sqrt(greatest(0, high - low)) * 0.408
    * 24 * 60 / pi() * 0.0820 * distance * (sunset * sin(getvariable('latitude')) * sin(declination) + cos(getvariable('latitude')) * cos(declination) * sin(sunset)) AS et
FROM lit;

-- A gap of one or two days is the mean of the days around it, with the rain that is written; longer ones are unknown.
CREATE TABLE weather_days AS
FROM told_days WHERE et IS NOT NULL
UNION ALL
SELECT gap.day, coalesce(r.rain, 0), gap.et
FROM (SELECT CAST(unnest(generate_series(day + 1, next - 1, INTERVAL 1 DAY)) AS DATE) AS day, (et + next_et) / 2 AS et
    FROM (SELECT day, et, lead(day) OVER (ORDER BY day) AS next, lead(et) OVER (ORDER BY day) AS next_et FROM told_days WHERE et IS NOT NULL)
    WHERE next - day IN (2, 3)) gap
LEFT JOIN read_days r ON r.day = gap.day;
SET VARIABLE weather_from = (SELECT min(day) FROM read_days);
SET VARIABLE weather_until = (SELECT max(day) + 1 FROM read_days);

CREATE TABLE water_beds AS
SELECT bed, block, structure IS NOT NULL AS covered, CAST(length_ft AS DOUBLE) * 0.3048 * coalesce(CAST(width_in AS DOUBLE), getvariable('standard_width')) * 0.0254 AS m2,
    0.3048 * coalesce(CAST(width_in AS DOUBLE), getvariable('standard_width')) * 0.0254 AS m2_per_foot
FROM file_of('beds');
CREATE TABLE water_blocks AS
SELECT b.block, any_value(b.row) AS place, CAST(any_value(soil_water_in_ft) AS DOUBLE) * 25.4 / 0.3048 AS mm_per_m, coalesce(CAST(any_value(efficiency_percent) AS DOUBLE), 75) / 100 AS efficiency,
    CAST(any_value(sprinkler_gph) AS DOUBLE) AS gph, sum(w.m2) AS m2
FROM file_of('blocks') b LEFT JOIN water_beds w ON w.block = b.block GROUP BY b.block;

-- What stood in a block in the crop year, with its first day and the first day it was gone; a perennial within its crop year, to its end unless a row says when it was taken out.
CREATE TABLE water_stays AS
SELECT s.row, s.crop, s.bed, b.block, k.covered, year, since, until, CAST(f.bed_feet AS DOUBLE) * k.m2_per_foot AS m2, perennial, until - since AS days
FROM (
    SELECT row, crop, bed, year, in_bed AS since, out_of_bed AS until, perennial FROM stays WHERE NOT perennial
    UNION ALL
    SELECT e.row, e.crop, e.bed, n, greatest(e.in_bed, window_start(n)), least(window_start(n + 1), p.out_of_bed), e.perennial
    FROM (SELECT *, unnest(range(window_of(in_bed), window_of(greatest(out_of_bed - 1, in_bed)) + 1)) AS n FROM stays WHERE perennial) e
    JOIN planting_rows p ON p.row = e.row) s
JOIN water_beds k ON k.bed = s.bed JOIN water_blocks b ON b.block = k.block JOIN file_of('plantings') f ON f.row = s.row
WHERE until > since AND until > getvariable('weather_from');

-- Kc over the sowing's own days, level, rising, level, falling (Eq. 66; the first day is day 1); roots from 0.20 m to their full depth by the end of the second stage.
CREATE TABLE water_needs AS
WITH scaled AS (
    SELECT s.*, c.* EXCLUDE (crop), s1 * days / (s1 + s2 + s3 + s4) AS l1, s2 * days / (s1 + s2 + s3 + s4) AS l2, s3 * days / (s1 + s2 + s3 + s4) AS l3, s4 * days / (s1 + s2 + s3 + s4) AS l4
    FROM water_stays s JOIN crop_water c ON c.crop = s.crop
), each AS (
    SELECT row, year, crop, block, bed, covered, m2, since, days, perennial, p, ky, ky_stages, root, kc_ini, kc_mid, kc_end, l1, l2, l3, l4, unnest(range(1, days + 1)) AS n FROM scaled
), curve AS (
    SELECT *, CAST(since + CAST(n - 1 AS INTEGER) AS DATE) AS day,
        CASE WHEN n <= l1 THEN kc_ini WHEN n < l1 + l2 THEN kc_ini + (n - l1) / l2 * (kc_mid - kc_ini) WHEN n <= l1 + l2 + l3 THEN kc_mid
            WHEN n < l1 + l2 + l3 + l4 THEN kc_mid + (n - l1 - l2 - l3) / l4 * (kc_end - kc_mid) ELSE kc_end END AS kc,
        CASE WHEN n <= l1 THEN 1 WHEN n < l1 + l2 THEN 2 WHEN n <= l1 + l2 + l3 THEN 3 ELSE 4 END AS stage,
        least(0.20, root) + (root - least(0.20, root)) * CASE WHEN perennial THEN least(1, greatest(0, (days - 1) / greatest(1, l1 + l2 - 1))) ELSE least(1, greatest(0, (n - 1) / greatest(1, l1 + l2 - 1))) END AS depth
    FROM each)
SELECT c.row, c.year, c.block, c.bed, c.covered, c.m2, c.since, c.n, c.day, c.p, c.ky, c.kc, ky_stages[stage] AS ky_stage, CASE WHEN ky_stages[stage] IS NULL THEN 0 ELSE stage END AS period, c.days, w.et IS NOT NULL AS known, coalesce(c.kc * w.et, 0) AS need, depth * b.mm_per_m AS total,
    CASE WHEN covered THEN 0 ELSE coalesce(w.rain, 0) END AS rain
FROM curve c JOIN water_blocks b ON b.block = c.block LEFT JOIN weather_days w ON w.day = c.day;
CREATE TABLE water_whole AS
SELECT row, year, any_value(ky) / (sum(need) * any_value(days) / count(*) FILTER (known)) AS loss_per_mm FROM water_needs GROUP BY row, year HAVING count(*) FILTER (known) > 0;
-- A stage with Ky of its own, against what the stage needs itself.
CREATE TABLE water_stages AS
SELECT row, year, period, any_value(ky_stage) / (sum(need) * count(*) / count(*) FILTER (known)) AS loss_per_mm
FROM water_needs WHERE period > 0 GROUP BY row, year, period HAVING sum(need) > 0;

-- The log: liters of each row, to the block or to the bed; mm at the roots by area and efficiency.
CREATE TABLE water_log AS
SELECT CAST(l.date AS DATE) AS day, b.block, l.bed, coalesce(CAST(l.gallons AS DOUBLE), CAST(l.sprinkler_hours AS DOUBLE) * b.gph) * 3.785411784 * b.efficiency / coalesce(k.m2, b.m2) AS mm
FROM file_of('watering') l LEFT JOIN water_beds k ON k.bed = l.bed JOIN water_blocks b ON b.block = coalesce(l.block, k.block);
CREATE TABLE put_on AS
SELECT block, bed, day, sum(mm) AS mm FROM water_log WHERE mm IS NOT NULL GROUP BY block, bed, day;

-- Weeks, by their Monday, of which nothing is known: none between two with a row in one crop year, or a row without an amount.
CREATE TABLE silent AS
WITH told AS (SELECT DISTINCT block, CAST(date_trunc('week', day) AS DATE) AS monday FROM water_log),
pairs AS (SELECT block, monday, lead(monday) OVER (PARTITION BY block ORDER BY monday) AS next FROM told)
SELECT block, CAST(unnest(generate_series(monday + 7, next - 7, INTERVAL 7 DAY)) AS DATE) AS monday FROM pairs WHERE next - monday > 7 AND window_of(monday) = window_of(next)
UNION SELECT block, CAST(date_trunc('week', day) AS DATE) FROM water_log WHERE mm IS NULL;
CREATE TABLE log_spans AS SELECT block, window_of(day) AS year, min(day) AS first, max(day) AS last FROM water_log WHERE mm IS NOT NULL GROUP BY ALL;

CREATE TABLE water_inputs AS
SELECT n.row, n.year, n.block, n.m2, n.day, n.need, n.total, n.p, n.rain, coalesce(a.mm, 0) + coalesce(o.mm, 0) AS water, n.period, CASE WHEN n.period = 0 THEN h.loss_per_mm ELSE t.loss_per_mm END AS loss_per_mm,
    n.known AND s.monday IS NULL AND NOT (n.covered AND (g.first IS NULL OR n.day NOT BETWEEN g.first AND g.last)) AS told
FROM water_needs n JOIN water_whole h ON h.row = n.row AND h.year = n.year LEFT JOIN water_stages t ON t.row = n.row AND t.year = n.year AND t.period = n.period
LEFT JOIN put_on a ON a.block = n.block AND a.bed IS NULL AND a.day = n.day LEFT JOIN put_on o ON o.bed = n.bed AND o.day = n.day
LEFT JOIN silent s ON s.block = n.block AND s.monday = CAST(date_trunc('week', n.day) AS DATE)
LEFT JOIN log_spans g ON g.block = n.block AND g.year = window_of(n.day)
WHERE n.day < getvariable('weather_until');

-- Day after day (Eq. 84 to 88): stress from the evening before, then what comes in; a day that isn't told ends full.
CREATE TABLE water_run AS
WITH RECURSIVE run AS (
    SELECT row, year, CAST(getvariable('weather_from') - 1 AS DATE) AS day, CAST(0 AS DOUBLE) AS after, CAST(0 AS DOUBLE) AS before, CAST(0 AS DOUBLE) AS used
    FROM water_stays
    UNION ALL
    SELECT row, year, day, CASE WHEN told THEN greatest(0, before + used - water) ELSE 0 END, before, used
    FROM (
        SELECT r.row, r.year, r.next AS day, r.after AS before, coalesce(i.told, false) AS told, i.rain + i.water AS water,
            CASE WHEN i.told THEN least(i.need * CASE WHEN r.after <= i.p * i.total THEN 1 ELSE greatest(0, (i.total - r.after) / ((1 - i.p) * i.total)) END, greatest(0, i.total - r.after + i.rain + i.water)) ELSE 0 END AS used
        FROM (SELECT row, year, CAST(day + 1 AS DATE) AS next, after FROM run WHERE day < getvariable('weather_until') - 1) r
        LEFT JOIN water_inputs i ON i.row = r.row AND i.year = r.year AND i.day = r.next))
SELECT i.*, r.before, r.used, r.after, CASE WHEN i.told THEN coalesce(i.loss_per_mm, 0) * (i.need - r.used) ELSE 0 END AS by_itself FROM run r JOIN water_inputs i ON i.row = r.row AND i.year = r.year AND i.day = r.day;

-- What the days lost: each period, the season's and four stages, at most all of itself; what is left of the yield is their product, and a day lost what it took of that.
CREATE TABLE water_days AS
WITH periods AS (
    SELECT *, [greatest(0, 1 - sum(CASE WHEN period = 0 THEN by_itself ELSE 0 END) OVER so_far), greatest(0, 1 - sum(CASE WHEN period = 1 THEN by_itself ELSE 0 END) OVER so_far),
        greatest(0, 1 - sum(CASE WHEN period = 2 THEN by_itself ELSE 0 END) OVER so_far), greatest(0, 1 - sum(CASE WHEN period = 3 THEN by_itself ELSE 0 END) OVER so_far),
        greatest(0, 1 - sum(CASE WHEN period = 4 THEN by_itself ELSE 0 END) OVER so_far)] AS parts
    FROM water_run WINDOW so_far AS (PARTITION BY row, year ORDER BY day)
), together AS (
    SELECT * EXCLUDE (parts), list_product(parts) AS remains FROM periods)
SELECT * EXCLUDE (remains), lag(remains, 1, 1) OVER (PARTITION BY row, year ORDER BY day) - remains AS lost FROM together;

-- Gallons at the roots of all that stood in the block. In = used + stored + drained, by what happened to each.
CREATE VIEW water_days_result AS
SELECT d.year AS crop_year, d.block, CAST(d.day AS VARCHAR) AS date, count(*) FILTER (told) AS sowings, count(*) FILTER (NOT told) AS not_told,
    sum(rain * m2) FILTER (told) / 3.785411784 AS gallons_rain, sum(water * m2) FILTER (told) / 3.785411784 AS gallons_watering, sum(used * m2) FILTER (told) / 3.785411784 AS gallons_used,
    sum((before - after) * m2) FILTER (told) / 3.785411784 AS gallons_stored, sum((rain + water - used - (before - after)) * m2) FILTER (told) / 3.785411784 AS gallons_drained,
    sum((need - used) * m2) FILTER (told) / 3.785411784 AS gallons_missed, CASE WHEN sum(need * m2) FILTER (told) > 0 THEN sum(used * m2) FILTER (told) / sum(need * m2) FILTER (told) END AS stress,
    sum(lost * m2) FILTER (told) / sum(m2) FILTER (told) AS yield_lost
FROM water_days d WHERE d.day >= greatest(window_start(d.year), getvariable('weather_from')) GROUP BY d.year, d.block, d.day;
