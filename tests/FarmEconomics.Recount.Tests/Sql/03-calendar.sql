-- docs/methods.md 1: harvests that name only a crop, crop years, days in bed, enterprises.

-- While such harvests are split, a planting without a last day stands until the last harvest that names it, else until the closing date (docs/decisions.md).
CREATE TABLE standing AS
SELECT p.*, CASE WHEN out_of_bed IS NOT NULL THEN out_of_bed WHEN perennial OR last IS NULL THEN getvariable('as_of') ELSE last + 1 END AS until
FROM planting_rows p LEFT JOIN (SELECT planting, max(date) AS last FROM harvest_rows WHERE planting IS NOT NULL GROUP BY 1) USING (planting);

-- Over the plantings in a bed that day by their bed-feet there, exactly at 10^-8; nobody in a bed: whoever left last before.
CREATE TABLE harvest_shares AS
WITH there AS (
    SELECT h.row AS what, s.planting AS part, min(s.row) AS place, sum(s.bed_feet) AS weight
    FROM harvest_rows h JOIN standing s ON s.crop = h.crop AND s.in_bed <= h.date AND h.date < s.until WHERE h.planting IS NULL GROUP BY h.row, s.planting
), somebody AS (
    FROM there
    UNION ALL
    SELECT h.row, (SELECT arg_max(planting, (until, -row)) FROM standing b WHERE b.crop = h.crop AND b.until <= h.date), 0, 1
    FROM harvest_rows h WHERE h.planting IS NULL AND h.row NOT IN (SELECT what FROM there))
SELECT s.*, h.quantity AS total FROM somebody s JOIN harvest_rows h ON h.row = s.what;

-- Each harvest is a lot; lots queue by date, then as the file has them.
CREATE TABLE lots AS
WITH pieces AS (
    SELECT row, date, crop, planting, quantity, 0 AS piece FROM harvest_rows WHERE planting IS NOT NULL
    UNION ALL
    SELECT h.row, h.date, h.crop, s.part, CAST(s.amount AS DECIMAL(24, 8)), p.place
    FROM split_exactly('harvest_shares') s JOIN harvest_shares p ON p.what = s.what AND p.part = s.part JOIN harvest_rows h ON h.row = s.what)
SELECT row_number() OVER (ORDER BY date, row, piece) AS lot, date, crop, planting, CAST(quantity AS DECIMAL(24, 8)) AS quantity FROM pieces WHERE quantity > 0;

CREATE TABLE planting_years AS
SELECT planting, any_value(p.crop) AS crop, any_value(perennial) AS perennial, min(row) AS place, any_value(last) AS last_harvest,
    coalesce(max(crop_year), window_of(any_value(first)), window_of(max(out_of_bed)), window_of(min(in_bed))) AS year
FROM planting_rows p LEFT JOIN (SELECT planting, min(date) AS first, max(date) AS last FROM lots GROUP BY 1) USING (planting)
GROUP BY planting;

-- Days in bed = out - in, at least 1. No last day: the day after the last harvest, else the closing date; a perennial still stands.
CREATE TABLE stays AS
SELECT p.* EXCLUDE (out_of_bed, crop_year), y.year,
    CASE WHEN out_of_bed IS NOT NULL THEN out_of_bed WHEN p.perennial OR last_harvest IS NULL THEN getvariable('as_of') ELSE last_harvest + 1 END AS out_of_bed
FROM planting_rows p JOIN planting_years y USING (planting);

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
SELECT planting, year, any_value(crop) AS crop, min(row) AS place, string_agg(bed, '; ' ORDER BY row) AS bed,
    sum(bed_feet) AS bed_feet, sum(bed_foot_days) AS bed_foot_days, coalesce(sum(trays), 0) AS trays, coalesce(sum(trays * nursery_days), 0) AS tray_days
FROM enterprise_rows GROUP BY planting, year;

-- The enterprise each lot belongs to, and what was picked of each.
ALTER TABLE lots ADD COLUMN year INTEGER;
UPDATE lots SET year = CASE WHEN y.perennial THEN window_of(lots.date) ELSE y.year END FROM planting_years y WHERE y.planting = lots.planting;

CREATE TABLE picked AS SELECT planting, year, sum(quantity) AS quantity FROM lots GROUP BY planting, year;
