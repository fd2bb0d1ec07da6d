-- docs/methods.md 1: harvests that name only a crop, crop years, days in bed, enterprises.

CREATE TABLE named AS SELECT planting, min(date) AS first, max(date) AS last FROM harvest_rows WHERE planting IS NOT NULL GROUP BY planting;

-- Least days from bed to harvest: the 5th percentile (rounded down) of the crop's plantings that a harvest names, else 20; perennials 0.
-- Longest stay without an end: the greatest of 60, twice the median and the 95th percentile (rounded down) of its bed rows that have one; none has: 300. Perennials: 0 and 300.
CREATE TABLE crop_times AS
WITH waits AS (
    SELECT crop, quantile_cont(days, 0.05) AS fifth
    FROM (SELECT p.crop, p.planting, any_value(first) - min(in_bed) AS days FROM planting_rows p JOIN named USING (planting) GROUP BY p.crop, p.planting) GROUP BY crop
), stayed AS (
    SELECT crop, median(coalesce(out_of_bed, last + 1) - in_bed) AS middle, quantile_cont(coalesce(out_of_bed, last + 1) - in_bed, 0.95) AS most
    FROM planting_rows LEFT JOIN named USING (planting) WHERE coalesce(out_of_bed, last + 1) > in_bed GROUP BY crop
)
SELECT c.crop, CASE WHEN perennial THEN 0 WHEN fifth IS NULL THEN 20 ELSE CAST(floor(round(fifth, 6)) AS INTEGER) END AS soonest,
    CASE WHEN perennial OR middle IS NULL THEN 300 ELSE CAST(floor(round(greatest(60, 2 * middle, most), 6)) AS INTEGER) END AS longest
FROM crops c LEFT JOIN waits USING (crop) LEFT JOIN stayed USING (crop);

-- While such harvests are split, a planting without a last day stands until the last harvest that names it, else for its longest stay, at most to the closing date.
CREATE TABLE assumed AS
SELECT p.*, soonest, longest, out_of_bed IS NULL AND NOT perennial AND last IS NULL AS open,
    CASE WHEN out_of_bed IS NOT NULL THEN out_of_bed WHEN perennial THEN getvariable('as_of') + 1 WHEN last >= in_bed THEN last + 1
        ELSE least(in_bed + longest, getvariable('as_of') + 1) END AS until, row_number() OVER (PARTITION BY bed ORDER BY in_bed, p.row) AS place
FROM planting_rows p JOIN crop_times USING (crop) LEFT JOIN named USING (planting);

-- One that no harvest names and that has no last day makes room, the longest standing first, for the first planting that finds its bed too full. One a turn in each bed.
CREATE TABLE standing AS
WITH RECURSIVE turns AS (
    SELECT 0 AS turn, row, bed, place, in_bed, bed_feet, open, until FROM assumed
    UNION ALL (
    WITH full_beds AS (
        SELECT n.bed, n.in_bed AS day, min(s.place) FILTER (s.open) AS oldest
        FROM turns n JOIN turns s ON s.bed = n.bed AND s.place < n.place AND s.until > n.in_bed
        JOIN (SELECT bed, CAST(length_ft AS DOUBLE) * wide AS length FROM file_of('beds') JOIN beds USING (bed)) b ON b.bed = n.bed
        GROUP BY n.bed, n.place, n.in_bed, n.bed_feet, length
        HAVING sum(s.bed_feet) + n.bed_feet > length + 1e-9 AND arg_min(s.in_bed, s.place) FILTER (s.open) < n.in_bed
        QUALIFY n.place = min(n.place) OVER (PARTITION BY n.bed))
    SELECT turn + 1, t.row, t.bed, t.place, t.in_bed, t.bed_feet, t.open, CASE WHEN t.place = f.oldest THEN f.day ELSE t.until END
    FROM turns t LEFT JOIN full_beds f ON f.bed = t.bed WHERE EXISTS (FROM full_beds))
), last_turn AS (FROM turns QUALIFY turn = max(turn) OVER ())
SELECT a.* EXCLUDE (until, place, open), l.until, min(row) OVER (PARTITION BY planting) AS first_row FROM assumed a JOIN last_turn l USING (row);

-- Over the plantings long enough in a bed that day by their bed-feet there, exactly at 10^-8; else whoever left last before, in the same window;
-- else those that stand, young as they are; else whoever left last in an earlier window, not too long ago; else the next to come into a bed in that window.
CREATE TABLE harvest_shares AS
WITH open_rows AS (
    SELECT row AS what, date, crop, quantity AS total FROM harvest_rows WHERE planting IS NULL
), there AS (
    SELECT what, total, planting AS part, first_row AS place, bed_feet AS weight, date - in_bed >= soonest AS ready
    FROM open_rows JOIN standing USING (crop) WHERE in_bed <= date AND (date < until OR date = out_of_bed) -- a bed is picked before it is cleared
), candidates AS (
    SELECT 1 AS choice, what, total, part, min(place) AS place, sum(weight) AS weight FROM there WHERE ready GROUP BY what, total, part
    UNION ALL SELECT CASE WHEN window_of(max(until)) = window_of(any_value(date)) THEN 2 ELSE 4 END, what, total, arg_max(planting, (until, -row)), 0, 1
    FROM open_rows JOIN standing USING (crop) WHERE until <= date AND date - until <= longest GROUP BY what, total
    UNION ALL SELECT 3, what, total, part, min(place), sum(weight) FROM there GROUP BY what, total, part
    UNION ALL SELECT 5, what, total, arg_min(planting, (in_bed, row)), 0, 1 FROM open_rows JOIN standing USING (crop) WHERE in_bed > date AND window_of(in_bed) = window_of(date) GROUP BY what, total)
FROM candidates QUALIFY choice = min(choice) OVER (PARTITION BY what);

-- Each harvest is a lot; lots queue by date, then as the file has them.
CREATE TABLE lots AS
WITH pieces AS (
    SELECT row, date, crop, planting, quantity, culled, 0 AS piece FROM harvest_rows WHERE planting IS NOT NULL
    UNION ALL
    SELECT h.row, h.date, h.crop, s.part, CAST(s.amount AS DECIMAL(24, 8)), CAST(s.amount * h.culled / h.quantity AS DECIMAL(24, 8)), p.place
    FROM split_exactly('harvest_shares') s JOIN harvest_shares p ON p.what = s.what AND p.part = s.part JOIN harvest_rows h ON h.row = s.what)
SELECT row_number() OVER (ORDER BY date, pieces.row, piece) AS lot, date, crop, planting, CAST(quantity AS DECIMAL(24, 8)) AS quantity, CAST(culled AS DOUBLE) AS culled,
    CASE WHEN storage_days IS NULL THEN window_start(window_of(date) + 1) - 1 ELSE date + storage_days END AS kept_until -- without storage_days: to the end of the window
FROM pieces JOIN crops USING (crop) WHERE quantity > 0;

CREATE TABLE planting_years AS
SELECT planting, any_value(p.crop) AS crop, any_value(perennial) AS perennial, min(row) AS place, CASE WHEN any_value(last) >= min(in_bed) THEN any_value(last) END AS last_harvest,
    coalesce(max(crop_year), window_of(any_value(first)), window_of(max(out_of_bed)), window_of(min(in_bed))) AS year
FROM planting_rows p LEFT JOIN (SELECT planting, min(date) AS first, max(date) AS last FROM lots GROUP BY 1) USING (planting)
GROUP BY planting;

-- Days in bed = out - in, at least 1. No last day: the day after the last harvest since it came into a bed, else its longest stay, at most to the closing date;
-- a perennial still stands on that day.
CREATE TABLE stays AS
SELECT p.* EXCLUDE (out_of_bed, crop_year), y.year,
    CASE WHEN out_of_bed IS NOT NULL THEN out_of_bed WHEN p.perennial THEN getvariable('as_of') + 1
        WHEN last_harvest IS NULL THEN least(in_bed + longest, getvariable('as_of')) ELSE last_harvest + 1 END AS out_of_bed
FROM planting_rows p JOIN planting_years y USING (planting) JOIN crop_times t ON t.crop = p.crop;

-- One row per enterprise and bed. A perennial is an enterprise of every window it stands in: bed-feet in full, days inside the window,
-- its trays in the window it was set out in.
CREATE TABLE enterprise_rows AS
SELECT planting, crop, year, row, bed, structure, bed_feet, bed_feet * greatest(1, out_of_bed - in_bed) AS bed_foot_days,
    trays, greatest(0, in_bed - sown) AS nursery_days
FROM stays WHERE NOT perennial
UNION ALL
SELECT planting, crop, n, row, bed, structure, bed_feet,
    bed_feet * (least(greatest(out_of_bed, in_bed + 1), window_start(n + 1)) - greatest(in_bed, window_start(n))),
    CASE WHEN window_of(in_bed) = n THEN trays ELSE 0 END, greatest(0, in_bed - sown)
FROM (SELECT *, unnest(range(window_of(in_bed), window_of(greatest(out_of_bed - 1, in_bed)) + 1)) AS n FROM stays WHERE perennial);

CREATE TABLE enterprises AS
SELECT planting, year, any_value(crop) AS crop, min(row) AS place, string_agg(bed, '; ' ORDER BY row) FILTER (first_of_bed) AS bed,
    sum(bed_feet) AS bed_feet, sum(bed_foot_days) AS bed_foot_days, coalesce(sum(trays), 0) AS trays, coalesce(sum(trays * nursery_days), 0) AS tray_days
FROM (SELECT *, row = min(row) OVER (PARTITION BY planting, year, bed) AS first_of_bed FROM enterprise_rows) GROUP BY planting, year;

-- The enterprise each lot belongs to, and what was picked of each.
ALTER TABLE lots ADD COLUMN year INTEGER;
UPDATE lots SET year = CASE WHEN y.perennial THEN window_of(lots.date) ELSE y.year END FROM planting_years y WHERE y.planting = lots.planting;

CREATE TABLE picked AS SELECT planting, year, sum(quantity) AS quantity FROM lots GROUP BY planting, year;
