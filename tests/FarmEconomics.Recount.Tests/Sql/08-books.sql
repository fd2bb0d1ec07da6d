-- docs/methods.md 5: the books, class by class. The household's part comes off first: the farm's is rounded, the household has the rest.

CREATE TABLE books AS
SELECT row, crop, planting, channel, amount, category, class, line, varies_with, written,
    CASE WHEN class IN ('operating', 'labor') THEN amount - cents_of(amount * CAST(farm_percent * 10000 AS BIGINT), 100000000) ELSE 0 END AS household, home_year AS year,
    coalesce(pool, channel || ' (channel)', CASE WHEN crop IS NULL AND planting IS NULL THEN category_pool END) AS pool
FROM booked;

-- A row naming a crop: that year's plantings, else the next later year's that has one, by what its cost varies with.
CREATE TABLE crop_row_users AS
SELECT b.row, e.planting, e.year, e.place, e.bed_feet,
    CASE b.varies_with WHEN 'quantity' THEN o.harvested WHEN 'units' THEN CAST(o.sales_value AS DOUBLE) ELSE e.bed_feet END AS measure
FROM books b JOIN enterprises e ON e.crop = b.crop JOIN enterprise_output o ON o.planting = e.planting AND o.year = e.year
WHERE b.crop IS NOT NULL AND b.class IN ('operating', 'labor') AND e.year = (SELECT min(year) FROM enterprises n WHERE n.crop = b.crop AND n.year >= b.year);

CREATE TABLE direct_weights AS
SELECT u.row AS what, u.planting AS part, u.place, CASE WHEN sum(measure) OVER (PARTITION BY u.row) > 0 THEN measure ELSE bed_feet END AS weight,
    b.amount - b.household AS total, u.year FROM crop_row_users u JOIN books b ON b.row = u.row;

CREATE TABLE direct_money AS
SELECT b.row, w.part AS planting, w.year, b.class, b.line, b.varies_with, s.units
FROM split('direct_weights') s JOIN direct_weights w ON w.what = s.what AND w.part = s.part JOIN books b ON b.row = s.what
UNION ALL
SELECT row, planting, year, class, line, varies_with, amount - household FROM books WHERE planting IS NOT NULL AND class IN ('operating', 'labor')
UNION ALL -- a crop that is never planted again
SELECT row, NULL, year, class, line, varies_with, amount - household FROM books
WHERE crop IS NOT NULL AND class IN ('operating', 'labor') AND row NOT IN (SELECT row FROM crop_row_users);

-- What pools hold of the books. Wages that name nothing are in step 7; those that name a pool or a channel are its hired labor.
CREATE TABLE pool_books AS
SELECT pool, year, class, line, varies_with, written, amount - household AS units FROM books
WHERE crop IS NULL AND planting IS NULL AND (class = 'operating' OR (class = 'labor' AND (channel IS NOT NULL OR row IN (SELECT row FROM expenses WHERE pool IS NOT NULL))));
