-- docs/methods.md 8: establishment of perennials whose bearing years are given. Years before the first that bore carry their cost on; each bearing season takes its part.

CREATE TABLE stands AS
WITH each AS (
    SELECT b.planting, b.year, b.crop, b.bed_feet, b.harvested > 0 OR b.unmatched > 0 AS bore, b.materials + b.selling + b.labor + b.infrastructure + b.overhead AS cost, k.net_known
    FROM budgets b JOIN crops c ON c.crop = b.crop JOIN known k ON k.year = b.year WHERE c.perennial AND c.bearing_years IS NOT NULL
), spans AS (
    SELECT planting, min(year) FILTER (bore) AS first_bore, max(year) FILTER (bore) AS last_bore, min(year) AS set_out, arg_max(bed_feet, year) AS feet FROM each GROUP BY planting
), ends AS (SELECT planting, bool_and(out_of_bed IS NOT NULL AND out_of_bed <= getvariable('as_of')) AS cleared FROM planting_rows GROUP BY planting
), before AS (
    SELECT planting, sum(cost * pow(1 + getvariable('interest'), first_bore - 1 - year)) AS cost, bool_and(net_known) AS cost_known
    FROM each JOIN spans USING (planting) WHERE year < first_bore GROUP BY planting
), accounts AS (
    SELECT s.*, cleared, CASE WHEN cleared THEN last_bore - first_bore + 1 ELSE c.bearing_years END AS seasons,
        CASE WHEN getvariable('interest') IS NULL THEN NULL WHEN c.establishment_cost IS NOT NULL THEN cents(c.establishment_cost * feet)
            WHEN set_out = first_bore OR NOT b.cost_known THEN NULL ELSE cents(b.cost / 100) END AS spent
    FROM spans s JOIN ends USING (planting) JOIN (SELECT DISTINCT planting, crop FROM each) USING (planting) JOIN crops c USING (crop) LEFT JOIN before b USING (planting)
), parts AS (
    SELECT *, cents(spent / 100 * CASE WHEN getvariable('interest') = 0 THEN 1 / seasons ELSE getvariable('interest') / nullif(1 - pow(1 + getvariable('interest'), -seasons), 0) END) AS part FROM accounts
)
SELECT e.planting, e.year,
    CASE WHEN first_bore IS NULL AND cleared THEN 0 WHEN first_bore IS NULL OR e.year < first_bore THEN -e.cost
        WHEN seasons <= e.year - first_bore OR months_passed(e.year) = 0 THEN 0
        ELSE coalesce(cents(CAST(part AS DOUBLE) * least(1, seasons - (e.year - first_bore)) * months_passed(e.year) / 1200), 0) END AS units,
    CASE WHEN first_bore IS NULL AND cleared THEN 0 WHEN first_bore IS NULL OR e.year < first_bore THEN CASE WHEN net_known THEN 0 ELSE 1 END
        WHEN seasons <= e.year - first_bore OR months_passed(e.year) = 0 THEN 0 WHEN part IS NULL THEN 1 ELSE 0 END AS is_unknown
FROM each e JOIN parts p USING (planting);

ALTER TABLE budgets ADD COLUMN establishment BIGINT DEFAULT 0;
ALTER TABLE budgets ADD COLUMN establishment_unknown INTEGER DEFAULT 0;
UPDATE budgets SET establishment = s.units, establishment_unknown = s.is_unknown, staying = staying + s.units FROM stands s WHERE s.planting = budgets.planting AND s.year = budgets.year;
