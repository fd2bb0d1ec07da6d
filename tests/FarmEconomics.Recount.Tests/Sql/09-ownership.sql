-- docs/methods.md 6 and 9: capital recovery (or depreciation and interest), repairs, insurance and tax; part years by month; each part rounded once.
-- Months after the closing date don't count, nor an asset put into service after it. Quotients are rounded exactly; the factor itself is a floating number.

CREATE TABLE ownership AS
WITH spans AS (
    SELECT *, month_number(in_service) AS first_month, coalesce(month_number(retired), 1000000) AS past_month,
        CAST(cost * 100 AS BIGINT) AS c, CAST(salvage * 100 AS BIGINT) AS s, CAST(grant_amount * 100 AS BIGINT) AS g, getvariable('interest') AS i,
        CAST(life_years * 10000 AS BIGINT) AS life, CAST(getvariable('interest_percent') * 10000 AS BIGINT) AS percent
    FROM assets WHERE in_service <= getvariable('as_of')
), years AS (
    SELECT spans.*, n AS year, month_number(window_start(n)) AS opens, month_number(window_start(n)) + months_passed(n) AS closes
    FROM spans, (SELECT DISTINCT year AS n FROM enterprises UNION SELECT DISTINCT year FROM expenses UNION SELECT DISTINCT year FROM work)
), counted AS (
    SELECT *, greatest(0, least(closes, past_month) - greatest(opens, first_month)) AS months,
        greatest(0, least(closes, past_month, first_month + CAST(round(life_years * 12) AS BIGINT)) - greatest(opens, first_month)) AS capital_months,
        ((c - g - s) * i / nullif(1 - pow(1 + i, -life_years), 0) + s * i) / 100 AS recovery, getvariable('ownership_method') = 'capital-recovery' AS recovers
    FROM years
), pieces AS (
    SELECT asset, pool, year, farm_percent, 'capital' AS piece, cents(recovery * capital_months / 12) AS amount FROM counted WHERE recovers AND percent > 0
    UNION ALL SELECT asset, pool, year, farm_percent, 'capital', cents_of((c - g - s) * capital_months * 10000, 1200 * life) FROM counted WHERE i IS NOT NULL AND (NOT recovers OR percent = 0)
    UNION ALL SELECT asset, pool, year, farm_percent, 'interest', cents_of(percent * (c - g + s) * capital_months, 2400000000) FROM counted WHERE NOT recovers
    UNION ALL SELECT asset, pool, year, farm_percent, 'repairs', cents_of(c * CAST(repairs_percent * 10000 AS BIGINT) * months, 1200000000) FROM counted
    UNION ALL SELECT asset, pool, year, farm_percent, 'insurance', cents_of(c * CAST(insurance_tax_percent * 10000 AS BIGINT) * months, 1200000000) FROM counted
    UNION ALL SELECT asset, pool, year, farm_percent, 'unknown', NULL FROM counted WHERE i IS NULL AND capital_months > 0)
SELECT asset, pool, year, amount, cents_of(amount * CAST((100 - farm_percent) * 10000 AS BIGINT), 100000000) AS household, piece FROM pieces WHERE amount <> 0 OR piece = 'unknown';

-- The farm's own land: its rent, else its value x interest, for all of it or for an acre of its area, by month up to the closing date; unknown without interest.
INSERT INTO ownership
SELECT NULL, 'land', n, CASE WHEN getvariable('land_rent') IS NOT NULL THEN cents_of(CAST(getvariable('land_rent') * 100 AS HUGEINT) * CAST(getvariable('land_area') * 10000 AS BIGINT) * months_passed(n), 12000000)
    WHEN getvariable('interest') IS NOT NULL THEN cents_of(CAST(getvariable('land_value') * 100 AS HUGEINT) * CAST(getvariable('land_area') * 10000 AS BIGINT) * CAST(getvariable('interest_percent') * 10000 AS BIGINT) * months_passed(n), 12000000000000) END, 0,
    CASE WHEN getvariable('land_rent') IS NULL AND getvariable('interest') IS NULL THEN 'unknown' ELSE 'land' END
FROM (SELECT DISTINCT year AS n FROM enterprises UNION SELECT DISTINCT year FROM expenses UNION SELECT DISTINCT year FROM work)
WHERE (getvariable('land_rent') > 0 OR (getvariable('land_rent') IS NULL AND getvariable('land_value') > 0)) AND months_passed(n) > 0 AND EXISTS (FROM beds);

-- Without an interest rate the ownership cost of a pool with an asset within its life isn't known.
CREATE TABLE unowned AS SELECT DISTINCT pool, year FROM ownership WHERE piece = 'unknown';
DELETE FROM ownership WHERE amount IS NULL;
