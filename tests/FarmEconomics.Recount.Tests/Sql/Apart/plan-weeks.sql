-- docs/methods.md 20: how the hours of a plan on file fall over the weeks of its year. Rests on all steps.
-- Asked before: outlook(year), the year planned; another year may be asked after it.

SET VARIABLE start = (SELECT window_start(year) FROM outlook);
SET VARIABLE before = (SELECT year - 1 FROM outlook);
-- Weeks of seven days from the first day of the crop year, the last one with the days left over; below 0 before that day.
CREATE OR REPLACE MACRO week_in(day, n) AS least(51, greatest(0, (day - window_start(n)) // 7));
CREATE OR REPLACE MACRO week_since(day, n) AS CAST(floor((day - window_start(n)) / 7.0) AS INTEGER);
CREATE OR REPLACE MACRO since_start(day) AS week_since(day, getvariable('before') + 1);
CREATE OR REPLACE MACRO week_of(day) AS week_in(day, getvariable('before') + 1);

-- The plan's rows, and those for the year after that come into their beds in it.
CREATE OR REPLACE TABLE draft AS
SELECT p.row, CAST(crop_year AS INTEGER) AS year, planting, crop, CAST(bed_feet AS DOUBLE) AS feet,
    CAST(bed_feet AS DOUBLE) * wide AS standard_feet,
    CAST(in_bed AS DATE) AS in_bed, CAST(out_of_bed AS DATE) AS out_of_bed, CAST(sown AS DATE) AS sown,
    CAST(coalesce(trays, '0') AS DOUBLE) AS trays, CAST(coalesce(hours, '0') AS DOUBLE) AS hours,
    CAST(coalesce(cost, '0') AS DECIMAL(18, 4)) AS cost, hours IS NULL AS no_hours, cost IS NULL AS no_cost
FROM file_of('plan') p JOIN beds USING (bed)
WHERE crop_year = (SELECT year FROM outlook)
    OR (crop_year = (SELECT year + 1 FROM outlook) AND CAST(in_bed AS DATE) < window_start(getvariable('before') + 2));

-- Seasons recorded whole (section 15) up to the one before, and that one; those of them whose hours are known, be it by standards alone.
CREATE OR REPLACE TABLE seasons AS
WITH noted AS (
    SELECT date, true AS picked FROM harvest_rows UNION ALL SELECT date, false FROM leavings
), each AS (
    SELECT window_of(date) AS year, count(*) AS rows, min(date) FILTER (picked) - window_start(window_of(date)) AS first,
        max(date) FILTER (picked) - window_start(window_of(date)) AS last
    FROM noted WHERE window_of(date) <= getvariable('before') AND window_of(date) IN (SELECT year FROM enterprises)
    GROUP BY window_of(date) HAVING bool_or(picked)
), usual AS (SELECT median(first) AS first, median(last) AS last, median(rows) AS rows FROM each),
begun AS (SELECT least((SELECT min(date) FROM noted), (SELECT min(date) FROM labor_rows)) AS day)
SELECT e.year FROM each e, usual u, begun b
WHERE NOT (window_of(b.day) = e.year AND b.day - window_start(e.year) > u.first + 14)
  AND NOT (window_of(getvariable('as_of')) = e.year AND getvariable('as_of') - window_start(e.year) < u.last - 14) AND e.rows >= u.rows / 2
UNION SELECT getvariable('before');
CREATE OR REPLACE TABLE logged_seasons AS SELECT s.year FROM seasons s JOIN known k ON k.year = s.year WHERE k.hours_known;

-- Every row of the log with what it does: its own hours of a planting, or those of a pool. Overhead pools hold fixed hours alone.
CREATE OR REPLACE TABLE worked AS
SELECT w.date, w.kind, h.planting, h.year, h.stage, h.hours,
    CASE WHEN h.pool IS NULL THEN g.behavior WHEN p.line = 'overhead' THEN 'fixed' ELSE g.in_pool END AS driver
FROM work_hours h JOIN work w ON w.row = h.row JOIN stages g ON g.stage = h.stage LEFT JOIN pools p ON p.pool = h.pool
WHERE h.year IN (SELECT year FROM logged_seasons);

-- Hours that come whatever is grown, trips and fixed ones, stand in their week: the mean of the seasons, volunteers left out.
CREATE OR REPLACE TABLE fixed_hours AS
SELECT week_in(date, window_of(date)) AS week, sum(hours) / (SELECT count(*) FROM logged_seasons) AS hours
FROM worked WHERE date IS NOT NULL AND kind <> 'volunteer' AND driver IN ('fixed', 'trips') GROUP BY ALL;

-- What each planting took: its own hours, standard ones among them, and those through pools.
CREATE OR REPLACE TABLE planting_hours AS
WITH parts AS (
    SELECT planting, year, stage, hours FROM worked WHERE planting IS NOT NULL AND driver NOT IN ('fixed', 'trips')
    UNION ALL
    SELECT c.user, c.year, c.stage, c.hours FROM hour_charges c JOIN pools p ON p.pool = c.pool JOIN stages g ON g.stage = c.stage
    WHERE p.line <> 'overhead' AND g.in_pool NOT IN ('fixed', 'trips') AND c.year IN (SELECT year FROM logged_seasons))
SELECT planting, year, coalesce(sum(hours) FILTER (stage = 'nursery'), 0) AS nursery,
    coalesce(sum(hours) FILTER (stage = 'grow'), 0) AS grow,
    coalesce(sum(hours) FILTER (stage NOT IN ('nursery', 'grow')), 0) AS handle
FROM parts GROUP BY planting, year;

-- How much more the first week in the bed takes: least squares of the growing hours of each week of each year on the bed-feet that came
-- in that week and those that stood, counted every seventh day from the day a planting came in; perennials' bed-feet left out.
SET VARIABLE first_week = (
    WITH stood AS (
        SELECT in_bed, bed_feet, CAST(in_bed + CAST(7 * unnest(range((out_of_bed - in_bed + 6) // 7)) AS INTEGER) AS DATE) AS day
        FROM stays WHERE NOT perennial AND year IN (SELECT year FROM logged_seasons)
    ), feet AS (
        SELECT window_of(day) AS year, week_in(day, window_of(day)) AS week, coalesce(sum(bed_feet) FILTER (day = in_bed), 0) AS came,
            sum(bed_feet) AS stood
        FROM stood GROUP BY ALL
    ), grown AS (
        SELECT window_of(date) AS year, week_in(date, window_of(date)) AS week, sum(hours) AS hours
        FROM worked WHERE date IS NOT NULL AND stage = 'grow' AND driver NOT IN ('fixed', 'trips') GROUP BY ALL
    ), sums AS (
        SELECT sum(came * came) AS cc, sum(came * stood) AS cs, sum(stood * stood) AS ss, sum(came * coalesce(hours, 0)) AS ch,
            sum(stood * coalesce(hours, 0)) AS sh
        FROM feet f LEFT JOIN grown g ON g.year = f.year AND g.week = f.week
    ), lines AS (
        SELECT (ch * ss - sh * cs) / (cc * ss - cs * cs) AS first, (sh * cc - ch * cs) / (cc * ss - cs * cs) AS each
        FROM sums WHERE cc * ss > cs * cs)
    SELECT CASE WHEN coalesce(max(first), 0) <= 0 THEN 1 WHEN max(each) <= 0 THEN 20 ELSE least(20, 1 + max(first) / max(each)) END
    FROM lines);

-- Plantings, each under the cover of its first row; `counts`: those of the seasons. Covers of a crop follow in the order of their first
-- plantings in the file.
CREATE OR REPLACE TABLE seen AS
WITH first_rows AS (
    SELECT planting, arg_min(lower(trim(coalesce(structure, 'open field'))), row) AS cover, min(row) AS place, min(in_bed) AS in_bed,
        max(out_of_bed) AS until, min(sown) AS sown, arg_min(in_bed, row) AS first_in
    FROM stays GROUP BY planting)
SELECT e.planting, e.year, e.crop, c.perennial, f.cover, f.place, f.in_bed, f.first_in, f.until, f.sown, e.bed_feet AS feet,
    coalesce(CAST(k.quantity AS DOUBLE), 0) AS units, e.year IN (SELECT year FROM seasons) AND e.bed_feet > 0 AS counts
FROM enterprises e JOIN first_rows f ON f.planting = e.planting JOIN crops c ON c.crop = e.crop
LEFT JOIN picked k ON k.planting = e.planting AND k.year = e.year;
CREATE OR REPLACE TABLE fact_places AS SELECT crop, cover, min(place * 10000 + year) AS place FROM seen WHERE counts GROUP BY crop, cover;

-- Hours to pick and pack a unit: by crop, all covers together, of seasons whose hours are known.
CREATE OR REPLACE TABLE handling AS
SELECT s.crop, CASE WHEN sum(s.units) > 0 THEN sum(coalesce(h.handle, 0)) / sum(s.units) ELSE 0 END AS per_unit
FROM seen s LEFT JOIN planting_hours h ON h.planting = s.planting AND h.year = s.year
WHERE s.counts AND s.year IN (SELECT year FROM logged_seasons) GROUP BY s.crop;

-- What may be sown goes by plantings that something was picked of or that are over; a perennial by all of them.
CREATE OR REPLACE TABLE known_sowings AS
SELECT s.*, week_since(in_bed, year) AS week, greatest(1, (until - in_bed + 6) // 7) AS weeks,
    coalesce(greatest(0, (in_bed - sown + 6) // 7), 0) AS nursery_weeks
FROM seen s WHERE counts AND (perennial OR units > 0 OR until < getvariable('as_of'));
CREATE OR REPLACE TABLE growing AS
SELECT s.crop, s.cover, coalesce(sum(h.nursery) / sum(s.feet), 0) AS nursery, coalesce(sum(h.grow) / sum(s.feet), 0) AS grow
FROM known_sowings s LEFT JOIN planting_hours h ON h.planting = s.planting AND h.year = s.year
WHERE s.year IN (SELECT year FROM logged_seasons) GROUP BY s.crop, s.cover;

-- Picking by weeks after the planting came into its bed.
CREATE OR REPLACE TABLE offsets AS
SELECT s.crop, s.cover, s.planting, s.year, greatest(0, (l.date - s.in_bed) // 7) AS after, sum(CAST(l.quantity AS DOUBLE)) AS units
FROM known_sowings s JOIN lots l ON l.planting = s.planting AND l.year = s.year WHERE NOT s.perennial GROUP BY ALL;
CREATE OR REPLACE TABLE spans AS SELECT crop, cover, planting, year, min(after) AS first, max(after) AS last FROM offsets GROUP BY ALL;
CREATE OR REPLACE TABLE facts AS
WITH picking AS (
    SELECT crop, cover, CAST(round(median(first)) AS INTEGER) AS first, CAST(round(median(last - first + 1)) AS INTEGER) AS weeks
    FROM spans GROUP BY crop, cover
), means AS (
    SELECT crop, cover, avg(yield) AS mean
    FROM (SELECT crop, cover, year, sum(units) / sum(feet) AS yield FROM known_sowings GROUP BY ALL) GROUP BY crop, cover
), stayed AS (
    SELECT crop, cover, min(week) AS since, max(week) AS until, CAST(round(median(weeks)) AS INTEGER) AS weeks,
        CAST(round(median(nursery_weeks)) AS INTEGER) AS nursery_weeks
    FROM known_sowings WHERE NOT perennial GROUP BY crop, cover)
SELECT s.crop, s.cover, f.place, since, until, coalesce(p.first, 0) AS first, coalesce(p.weeks, 1) AS picking, nursery_weeks, mean,
    greatest(s.weeks, coalesce(p.first + p.weeks, 1)) AS weeks, coalesce(g.nursery, 0) AS nursery, coalesce(g.grow, 0) AS grow
FROM stayed s JOIN fact_places f ON f.crop = s.crop AND f.cover = s.cover JOIN means m ON m.crop = s.crop AND m.cover = s.cover
LEFT JOIN picking p ON p.crop = s.crop AND p.cover = s.cover LEFT JOIN growing g ON g.crop = s.crop AND g.cover = s.cover;
CREATE OR REPLACE TABLE pattern AS
WITH parts AS (
    SELECT o.crop, o.cover, least(f.picking - 1, o.after - s.first) AS i, sum(o.units) AS units
    FROM offsets o JOIN spans s ON s.planting = o.planting AND s.year = o.year JOIN facts f ON f.crop = o.crop AND f.cover = o.cover
    GROUP BY ALL)
SELECT crop, cover, i, units / sum(units) OVER (PARTITION BY crop, cover) AS part FROM parts
UNION ALL SELECT crop, cover, 0, 1 FROM facts f WHERE NOT EXISTS (FROM parts p WHERE p.crop = f.crop AND p.cover = f.cover);

-- Sowings: every week from the earliest to the latest, in a gap of over six weeks between two plantings only within two weeks of either;
-- one before its year began comes in at the end of the year planned. One picked
-- after the year gives nothing in it. None comes in up to the week in which the last on record of the year planned did.
-- Beside them what stands from before (in the year planned itself: up to the closing date), as it is, up to the week in which the last of
-- it leaves its bed by its rows; what has left before the year begins is none.
SET VARIABLE stands_until = CASE WHEN getvariable('as_of') < window_start(getvariable('before') + 2) - 1 THEN getvariable('as_of')
    ELSE getvariable('start') - 1 END;
SET VARIABLE last_week_in = coalesce((SELECT max(least(51, (in_bed - getvariable('start')) // 7)) FROM stays
    WHERE in_bed >= getvariable('start') AND in_bed <= getvariable('stands_until')), -1);
CREATE OR REPLACE TABLE leaving_days AS
SELECT planting, CASE WHEN count(*) = count(out_of_bed) THEN max(out_of_bed) END AS day FROM planting_rows GROUP BY planting;
CREATE OR REPLACE TABLE sowings AS
WITH every_week AS (SELECT *, CAST(unnest(range(since, until + 1)) AS INTEGER) AS of_week FROM facts),
told AS (
    SELECT e.crop, e.cover, e.of_week, max(k.week) FILTER (k.week <= e.of_week) AS before, min(k.week) FILTER (k.week >= e.of_week) AS after
    FROM every_week e JOIN known_sowings k ON k.crop = e.crop AND k.cover = e.cover GROUP BY ALL
), weekly AS (
    SELECT e.* FROM every_week e JOIN told t ON t.crop = e.crop AND t.cover = e.cover AND t.of_week = e.of_week
    WHERE t.after - t.before <= 6 OR least(e.of_week - t.before, t.after - e.of_week) <= 2
), moved AS (
    SELECT *, CASE WHEN of_week < 0 THEN (of_week % 52 + 52) % 52 ELSE least(51, of_week) END AS week, of_week < 0 AS next FROM weekly),
listed AS (
    SELECT crop, cover, place, 1 AS part, of_week AS turn, of_week, week, next OR week + first >= 52 AS later, NULL AS leaves
    FROM moved WHERE week > getvariable('last_week_in')
    UNION ALL
    SELECT f.crop, f.cover, f.place, 2, s.place, since_start(s.in_bed), since_start(s.in_bed), false,
        coalesce((l.day - getvariable('start') + 6) // 7, since_start(s.in_bed) + f.weeks)
    FROM seen s JOIN facts f ON f.crop = s.crop AND f.cover = s.cover JOIN leaving_days l ON l.planting = s.planting
    WHERE s.year = getvariable('before') + 1 AND s.first_in <= getvariable('stands_until') AND NOT s.perennial
      AND (l.day IS NULL OR l.day > getvariable('start')))
SELECT row_number() OVER (ORDER BY place, part, turn) AS sowing, * FROM listed;
CREATE OR REPLACE TABLE yields AS
SELECT s.sowing, CASE WHEN count(k.planting) = 0 THEN any_value(f.mean) ELSE greatest(0,
    any_value(f.mean) + count(k.planting) / (count(k.planting) + 4) * (sum(k.units) / sum(k.feet) - any_value(f.mean))) END AS units
FROM sowings s JOIN facts f ON f.crop = s.crop AND f.cover = s.cover
LEFT JOIN known_sowings k ON k.crop = s.crop AND k.cover = s.cover AND abs(k.week - s.of_week) <= 2 GROUP BY s.sowing;

-- Hours of a bed-foot by week, growing and raising apart from picking. Raising evenly over the weeks in the nursery (at least one),
-- before it comes into the bed, those before the year so many weeks before its end, but of what stands by then; growing first_week to 1.
-- What stands takes none from the week it leaves in on.
CREATE OR REPLACE TABLE whole_weeks AS
SELECT s.sowing, w.nth, CASE
    WHEN (w.nth >= s.week - greatest(1, f.nursery_weeks) AND w.nth < s.week)
        OR (s.week >= 0 AND w.nth - 52 >= s.week - greatest(1, f.nursery_weeks) AND w.nth - 52 < s.week)
        THEN f.nursery / greatest(1, f.nursery_weeks)
    ELSE 0 END + CASE
    WHEN w.nth = s.week THEN f.grow * getvariable('first_week') / (getvariable('first_week') + f.weeks - 1)
    WHEN w.nth > s.week AND w.nth < s.week + f.weeks THEN f.grow / (getvariable('first_week') + f.weeks - 1) ELSE 0 END AS hours
FROM sowings s JOIN facts f ON f.crop = s.crop AND f.cover = s.cover CROSS JOIN (SELECT CAST(unnest(range(52)) AS INTEGER) AS nth) w;
CREATE OR REPLACE TABLE grow_weeks AS
SELECT w.sowing, w.nth, CASE WHEN w.nth < coalesce(s.leaves, 52) THEN w.hours ELSE 0 END AS hours
FROM whole_weeks w JOIN sowings s ON s.sowing = w.sowing;

-- Weeks of picking are medians: what falls up to two weeks after the one it leaves in is picked in its last, and what falls later is lost.
-- What is picked after the year is no hour of it, and of a row that stands past its end no part of what it takes in it.
CREATE OR REPLACE TABLE picking_weeks AS
SELECT s.sowing, s.later, least(s.week + f.first + p.i, coalesce(s.leaves - 1, 1000)) AS nth,
    y.units * p.part * coalesce(h.per_unit, 0) AS hours
FROM sowings s JOIN yields y ON y.sowing = s.sowing JOIN facts f ON f.crop = s.crop AND f.cover = s.cover
JOIN pattern p ON p.crop = s.crop AND p.cover = s.cover LEFT JOIN handling h ON h.crop = s.crop
WHERE s.week + f.first + p.i - coalesce(s.leaves - 1, 1000) <= 2;
CREATE OR REPLACE TABLE pick_weeks AS SELECT sowing, nth, hours FROM picking_weeks WHERE NOT later AND nth BETWEEN 0 AND 51;
CREATE OR REPLACE TABLE beside AS
SELECT s.sowing, CASE WHEN s.part = 2 OR s.later OR s.week + any_value(f.weeks) > 52
        THEN greatest(0, any_value(f.nursery + f.grow) - coalesce(sum(w.hours), 0)) ELSE 0 END AS grown,
    coalesce((SELECT sum(p.hours) FROM picking_weeks p WHERE p.sowing = s.sowing AND (p.later OR p.nth > 51)), 0) AS picked
FROM sowings s JOIN facts f ON f.crop = s.crop AND f.cover = s.cover LEFT JOIN whole_weeks w ON w.sowing = s.sowing
GROUP BY s.sowing, s.part, s.later, s.week;

-- Perennials that still stand: growing evenly over the year, picking in the weeks of their lots, over the bed-feet of all seasons; up to
-- the day their row says they leave. Those that stand longest first.
CREATE OR REPLACE TABLE stands AS
WITH stay_weeks AS (
    SELECT s.planting, CASE WHEN p.out_of_bed < window_start(getvariable('before') + 2)
        THEN least(52, (p.out_of_bed - getvariable('start') + 6) // 7) ELSE 52 END AS weeks
    FROM stays s JOIN planting_rows p ON p.row = s.row WHERE s.out_of_bed >= getvariable('as_of')
), each AS (
    SELECT DISTINCT s.crop, s.cover, w.weeks FROM seen s JOIN stay_weeks w ON w.planting = s.planting
    WHERE s.perennial AND s.counts AND s.year = getvariable('before') AND w.weeks > 0)
SELECT 1000000 + row_number() OVER (ORDER BY p.place, e.weeks DESC) AS sowing, p.crop, p.cover, p.place, e.weeks
FROM fact_places p JOIN each e ON e.crop = p.crop AND e.cover = p.cover;
INSERT INTO sowings SELECT sowing, crop, cover, place, 1, 0, -1, -1, false, NULL FROM stands;
INSERT INTO grow_weeks
SELECT s.sowing, CAST(unnest(range(s.weeks)) AS INTEGER), (g.nursery + g.grow) / 52
FROM stands s JOIN growing g ON g.crop = s.crop AND g.cover = s.cover;
INSERT INTO pick_weeks
SELECT s.sowing, week_in(l.date, window_of(l.date)),
    sum(CAST(l.quantity AS DOUBLE)) / any_value(a.feet) * any_value(coalesce(h.per_unit, 0))
FROM stands s JOIN (SELECT crop, cover, sum(feet) AS feet FROM known_sowings GROUP BY ALL) a ON a.crop = s.crop AND a.cover = s.cover
JOIN known_sowings k ON k.crop = s.crop AND k.cover = s.cover JOIN lots l ON l.planting = k.planting AND l.year = k.year
LEFT JOIN handling h ON h.crop = s.crop WHERE week_in(l.date, window_of(l.date)) < s.weeks
GROUP BY s.sowing, week_in(l.date, window_of(l.date));

-- A row's hours fall as those of its crop's sowing nearest in time, whatever the cover; of two as near the first. One for the year after
-- takes what growing it takes of this year; of one that came in before the year, near one that stands, the hours before it are done; of one
-- that stands past the year those after it are none of its.
-- Without hours on record, evenly over its stay.
CREATE OR REPLACE TABLE near AS
SELECT d.row, arg_min(s.sowing, (abs(s.week - since_start(d.in_bed)), s.sowing)) AS sowing
FROM draft d JOIN sowings s ON s.crop = d.crop GROUP BY d.row;
CREATE OR REPLACE TABLE row_weeks AS
WITH shapes AS (
    SELECT sowing, nth, sum(hours) AS hours FROM (FROM grow_weeks UNION ALL FROM pick_weeks) GROUP BY sowing, nth
), past AS (
    SELECT row, out_of_bed > window_start(getvariable('before') + 2) AS stays_on, in_bed < getvariable('start') AS came_before FROM draft
), shaped AS (
    SELECT n.row, s.nth, s.hours / (sum(s.hours) OVER (PARTITION BY n.row)
        + CASE WHEN d.stays_on OR (d.came_before AND o.part = 2) THEN coalesce(b.grown, 0) ELSE 0 END
        + CASE WHEN d.stays_on THEN coalesce(b.picked, 0) ELSE 0 END) AS part
    FROM near n JOIN past d ON d.row = n.row JOIN shapes s ON s.sowing = n.sowing JOIN sowings o ON o.sowing = n.sowing
    LEFT JOIN beside b ON b.sowing = n.sowing
    WHERE s.hours > 0
), even AS (
    SELECT row, unnest(range(since, until + 1)) AS nth, 1.0 / (until + 1 - since) AS part
    FROM (SELECT row, week_of(in_bed) AS since, greatest(week_of(in_bed), week_of(out_of_bed - 1)) AS until FROM draft d
        WHERE NOT EXISTS (FROM shaped s WHERE s.row = d.row)))
SELECT d.row, p.nth AS week, d.hours * p.part AS hours
FROM draft d JOIN (FROM shaped UNION ALL FROM even) p ON p.row = d.row
WHERE d.year = getvariable('before') + 1 OR d.row NOT IN (SELECT row FROM near)
UNION ALL
SELECT d.row, g.nth, d.standard_feet * g.hours FROM draft d JOIN near n ON n.row = d.row JOIN grow_weeks g ON g.sowing = n.sowing
WHERE d.year > getvariable('before') + 1;

CREATE OR REPLACE TABLE week_hours AS
SELECT w.week, coalesce((SELECT sum(hours) FROM fixed_hours f WHERE f.week = w.week), 0)
    + coalesce((SELECT sum(hours) FROM row_weeks r WHERE r.week = w.week), 0) AS hours
FROM (SELECT unnest(range(52)) AS week) w;
