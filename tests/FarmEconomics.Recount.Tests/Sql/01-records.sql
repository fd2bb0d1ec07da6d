-- The records as the grower wrote them (RECORDS). Only columns a result rests on; a missing column is one of blanks.
-- Rows keep the order of the file (`row`), because splits and queues fall back on it. Rows dated after `as_of` are left out.

CREATE MACRO file_of(name) AS TABLE
    SELECT row_number() OVER () AS row, * FROM read_csv(getvariable('folder') || '/' || name || '.csv',
        header = true, all_varchar = true, delim = ',', quote = '"', escape = '"', strict_mode = true);

CREATE TABLE farm AS SELECT lower(trim(setting)) AS setting, trim(value) AS value FROM file_of('farm');
SET VARIABLE crop_year_start = coalesce((SELECT value FROM farm WHERE setting = 'crop_year_start'), '01-01');
SET VARIABLE as_of = (SELECT CAST(value AS DATE) FROM farm WHERE setting = 'as_of');
SET VARIABLE owner_wage = (SELECT CAST(value AS DECIMAL(12, 4)) FROM farm WHERE setting = 'owner_wage');
SET VARIABLE burden = coalesce((SELECT CAST(value AS DECIMAL(12, 4)) FROM farm WHERE setting = 'payroll_burden_percent'), 0);
SET VARIABLE interest = (SELECT CAST(value AS DOUBLE) / 100 FROM farm WHERE setting = 'interest_percent');
SET VARIABLE interest_percent = (SELECT CAST(value AS DECIMAL(9, 4)) FROM farm WHERE setting = 'interest_percent');
SET VARIABLE land_value = (SELECT CAST(value AS DECIMAL(14, 2)) FROM farm WHERE setting = 'land_value');
SET VARIABLE land_rent = (SELECT CAST(value AS DECIMAL(14, 2)) FROM farm WHERE setting = 'land_rent');
SET VARIABLE land_area = coalesce((SELECT CAST(value AS DECIMAL(14, 4)) FROM farm WHERE setting = 'land_area'), 1);
SET VARIABLE standard_width = coalesce((SELECT CAST(value AS DOUBLE) FROM farm WHERE setting = 'standard_bed_width_in'), 30);
SET VARIABLE closing_stock = coalesce((SELECT value FROM farm WHERE setting = 'closing_stock'), 'count');
SET VARIABLE ownership_method = coalesce((SELECT value FROM farm WHERE setting = 'ownership_method'), 'capital-recovery');
SET VARIABLE unpaid_hours = coalesce((SELECT value FROM farm WHERE setting = 'unpaid_hours'), 'as-logged');
SET VARIABLE idle_capacity = coalesce((SELECT value FROM farm WHERE setting = 'idle_capacity'), 'separate');

CREATE TABLE crops AS
SELECT row, crop, unit, CAST(storage_days AS INTEGER) AS storage_days, store, CAST(coalesce(water_need, '1') AS DOUBLE) AS water_need,
    CAST(units_per_crate AS DOUBLE) AS units_per_crate, lower(coalesce(perennial, 'no')) IN ('yes', 'y', 'true', '1') AS perennial,
    CAST(bearing_years AS DECIMAL(9, 4)) AS bearing_years, CAST(establishment_cost AS DECIMAL(14, 4)) AS establishment_cost
FROM file_of('crops');

CREATE TABLE units AS
SELECT crop, unit, CAST(base_units AS DECIMAL(18, 6)) AS base FROM file_of('units')
UNION ALL SELECT crop, unit, 1 FROM crops;

CREATE TABLE beds AS
SELECT bed, structure, coalesce(CAST(width_in AS DOUBLE), getvariable('standard_width')) / getvariable('standard_width') AS wide FROM file_of('beds');

-- A planting nobody named is known by its crop, year and number, in the order in which plantings came into their beds; a name somebody gave is passed over.
CREATE TABLE planting_names AS
WITH p AS (SELECT row, planting, trim(crop) AS crop, lower(trim(crop)) AS folded, CAST(in_bed AS DATE) AS day, year(CAST(in_bed AS DATE)) AS in_year FROM file_of('plantings')),
turns AS (SELECT *, row_number() OVER (PARTITION BY folded, in_year ORDER BY day, row) AS turn FROM p WHERE planting IS NULL),
numbers AS (SELECT folded, in_year, unnest(range(1, (SELECT count(*) FROM p) + 1)) AS n FROM (SELECT DISTINCT folded, in_year FROM turns)),
free AS (
    SELECT folded, in_year, n, row_number() OVER (PARTITION BY folded, in_year ORDER BY n) AS turn FROM numbers
    WHERE folded || ' ' || in_year || ', sowing ' || n NOT IN (SELECT lower(trim(planting)) FROM p WHERE planting IS NOT NULL))
SELECT row, planting FROM p WHERE planting IS NOT NULL
UNION ALL SELECT row, crop || ' ' || in_year || ', sowing ' || n FROM turns JOIN free USING (folded, in_year, turn);

-- Bed-feet count at the standard width.
CREATE TABLE planting_rows AS
SELECT p.row, n.planting, crop, bed, structure, CAST(bed_feet AS DOUBLE) * wide AS bed_feet, CAST(in_bed AS DATE) AS in_bed,
    CAST(out_of_bed AS DATE) AS out_of_bed, CAST(sown AS DATE) AS sown, CAST(trays AS DOUBLE) AS trays, CAST(crop_year AS INTEGER) AS crop_year,
    perennial
FROM file_of('plantings') p JOIN planting_names n USING (row) JOIN beds USING (bed) JOIN crops USING (crop)
WHERE CAST(in_bed AS DATE) <= getvariable('as_of');

-- Quantities in the crop's own unit.
CREATE TABLE harvest_rows AS
WITH h AS (
    SELECT h.row, CAST(date AS DATE) AS date, coalesce(h.crop, p.crop) AS crop, h.planting, h.unit, h.quantity, coalesce(h.culled, '0') AS culled
    FROM file_of('harvests') h LEFT JOIN (SELECT DISTINCT planting, crop FROM planting_rows) p ON p.planting = h.planting)
SELECT h.row, date, h.crop, planting, CAST(CAST(quantity AS DECIMAL(18, 6)) * base AS DECIMAL(24, 8)) AS quantity,
    CAST(CAST(culled AS DECIMAL(18, 6)) * base AS DECIMAL(24, 8)) AS culled
FROM h JOIN crops c ON c.crop = h.crop JOIN units u ON u.crop = h.crop AND u.unit = coalesce(h.unit, c.unit)
WHERE date <= getvariable('as_of');

CREATE TABLE channels AS
SELECT row, channel, kind, CAST(coalesce(fee_percent, '0') AS DECIMAL(9, 4)) AS fee_percent, coalesce(values_from, channel) AS values_from FROM file_of('channels');

-- `own_value`: what the row itself says it is worth; an amount counts before a price.
CREATE TABLE leavings AS
SELECT s.row, CAST(date AS DATE) AS date, window_of(CAST(date AS DATE)) AS year, s.crop, s.channel, kind, planting, values_from, fee_percent,
    CAST(CAST(quantity AS DECIMAL(18, 6)) * base AS DECIMAL(24, 8)) AS quantity,
    coalesce(exact_cents(CAST(amount AS DECIMAL(18, 2))), exact_cents(CAST(quantity AS DECIMAL(18, 6)) * CAST(unit_price AS DECIMAL(12, 4)))) AS own_value
FROM (SELECT * FROM file_of('sales') UNION ALL BY NAME SELECT NULL AS planting WHERE false) s
JOIN channels h ON h.channel = s.channel JOIN crops c ON c.crop = s.crop
JOIN units u ON u.crop = s.crop AND u.unit = coalesce(s.unit, c.unit)
WHERE CAST(date AS DATE) <= getvariable('as_of');

-- Prices per the crop's own unit, somebody else's (reference) left out.
CREATE TABLE prices AS
SELECT p.row, p.crop, channel, coalesce(CAST("from" AS DATE), DATE '0001-01-01') AS since, CAST(price AS DOUBLE) / CAST(base AS DOUBLE) AS price
FROM file_of('prices') p JOIN crops c ON c.crop = p.crop JOIN units u ON u.crop = p.crop AND u.unit = coalesce(p.unit, c.unit)
WHERE lower(coalesce(reference, 'no')) NOT IN ('yes', 'y', 'true', '1');

CREATE TABLE income AS
SELECT i.row, channel, kind, cents(CAST(amount AS DECIMAL(18, 2))) AS amount, coalesce(CAST(crop_year AS INTEGER), window_of(CAST(date AS DATE))) AS year
FROM file_of('income') i JOIN channels USING (channel) WHERE CAST(date AS DATE) <= getvariable('as_of');

CREATE TABLE workers AS
SELECT row, worker, kind, CAST(wage AS DECIMAL(12, 4)) AS wage, coalesce(CAST("from" AS DATE), DATE '0001-01-01') AS since FROM file_of('workers');

CREATE TABLE labor_rows AS
SELECT row, CAST(date AS DATE) AS date, window_of(CAST(date AS DATE)) AS year, worker, CAST(hours AS DECIMAL(18, 8)) AS hours, task, crop, planting, channel, pool
FROM file_of('labor') WHERE CAST(date AS DATE) <= getvariable('as_of');

CREATE TABLE labor_standards AS
SELECT crop, stage, CAST(minutes AS DOUBLE) AS minutes, per FROM file_of('labor_standards');

CREATE TABLE input_rates AS SELECT pool, crop, CAST(rate AS DOUBLE) AS rate, per FROM file_of('input_rates');

CREATE TABLE expenses AS
SELECT row, CAST(date AS DATE) AS date, coalesce(CAST(crop_year AS INTEGER), window_of(CAST(date AS DATE))) AS year, cents(CAST(amount AS DECIMAL(18, 2))) AS amount,
    category, crop, planting, channel, pool, CAST(coalesce(farm_percent, '100') AS DECIMAL(9, 4)) AS farm_percent
FROM file_of('expenses') WHERE CAST(date AS DATE) <= getvariable('as_of');

CREATE TABLE uses AS SELECT pool, user, CAST(quantity AS DOUBLE) AS quantity, CAST(crop_year AS INTEGER) AS year FROM file_of('use');

CREATE TABLE loads AS
SELECT pool, user, CAST(watts AS DOUBLE) AS watts, CAST(hours_per_day AS DOUBLE) AS hours_per_day, CAST("from" AS DATE) AS since, CAST("to" AS DATE) AS until FROM file_of('loads');

CREATE TABLE assets AS
SELECT row, asset, pool, CAST(in_service AS DATE) AS in_service, CAST(cost AS DECIMAL(18, 2)) AS cost, CAST(life_years AS DOUBLE) AS life_years,
    CAST(coalesce(salvage, '0') AS DECIMAL(18, 2)) AS salvage, CAST(coalesce(farm_percent, '100') AS DECIMAL(9, 4)) AS farm_percent,
    CAST(coalesce("grant", '0') AS DECIMAL(18, 2)) AS grant_amount, CAST(coalesce(repairs_percent, '0') AS DECIMAL(9, 4)) AS repairs_percent,
    CAST(coalesce(insurance_tax_percent, '0') AS DECIMAL(9, 4)) AS insurance_tax_percent, CAST(retired AS DATE) AS retired
FROM file_of('assets');

CREATE TABLE totals AS
SELECT "table" AS about, measure, CAST(amount AS DECIMAL(18, 6)) AS amount, window_of(CAST("from" AS DATE)) AS year FROM file_of('totals');
