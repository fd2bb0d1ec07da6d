-- docs/methods.md 6 and 9: capital recovery (or depreciation and interest), repairs, insurance and tax; part years by month; each part rounded once.

CREATE TABLE ownership AS
WITH spans AS (
    SELECT *, year(in_service) * 12 + month(in_service) - 1 AS first_month,
        coalesce(year(retired) * 12 + month(retired) - 1, 1000000) AS past_month,
        CAST(cost AS DOUBLE) AS c, CAST(salvage AS DOUBLE) AS s, CAST(grant_amount AS DOUBLE) AS g, getvariable('interest') AS i
    FROM assets
), years AS (
    SELECT spans.*, n AS year, year(window_start(n)) * 12 + month(window_start(n)) - 1 AS opens
    FROM spans, (SELECT DISTINCT year AS n FROM enterprises UNION SELECT DISTINCT year FROM expenses UNION SELECT DISTINCT year FROM work)
), counted AS (
    SELECT *, greatest(0, least(opens + 12, past_month) - greatest(opens, first_month)) AS months,
        greatest(0, least(opens + 12, past_month, first_month + life_years * 12) - greatest(opens, first_month)) AS capital_months,
        (c - g - s) * CASE WHEN i = 0 THEN 1 / life_years ELSE i / (1 - pow(1 + i, -life_years)) END + s * i AS recovery,
        (c - g - s) / life_years AS depreciation, i * (c - g + s) / 2 AS mean_interest, getvariable('ownership_method') = 'capital-recovery' AS recovers
    FROM years
), pieces AS (
    SELECT asset, pool, year, farm_percent, cents(recovery * capital_months / 12) AS amount FROM counted WHERE recovers
    UNION ALL SELECT asset, pool, year, farm_percent, cents(depreciation * capital_months / 12) FROM counted WHERE NOT recovers
    UNION ALL SELECT asset, pool, year, farm_percent, cents(mean_interest * capital_months / 12) FROM counted WHERE NOT recovers
    UNION ALL SELECT asset, pool, year, farm_percent, cents(c * CAST(repairs_percent AS DOUBLE) / 100 * months / 12) FROM counted
    UNION ALL SELECT asset, pool, year, farm_percent, cents(c * CAST(insurance_tax_percent AS DOUBLE) / 100 * months / 12) FROM counted)
SELECT asset, pool, year, amount, cents(amount * (100 - farm_percent) / 10000) AS household FROM pieces WHERE amount <> 0;
