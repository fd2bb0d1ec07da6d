-- What ships with the program (RECORDS, "Shipped with the program"); a grower's row of the same name takes its place.
-- Only the pools are needed whole: the demo's own tasks and categories name every one they use, a test farm's must as well.

-- What a cost varies with, in the words of today; files may hold those of before.
CREATE MACRO driver(word) AS CASE lower(word) WHEN 'area' THEN 'length' WHEN 'sales' THEN 'units' WHEN 'nothing' THEN 'fixed' ELSE replace(lower(word), ' ', '-') END;

CREATE TABLE pools AS
WITH shipped(pool, basis, line, varies_with) AS (VALUES
    ('seed and plants', 'input-rates, else bed-feet', 'materials', 'length'),
    ('fertility and crop supplies', 'bed-feet', 'materials', 'length'),
    ('packaging', 'input-rates, else quantity-crates', 'selling', 'quantity'),
    ('selling general', 'sales-value', 'selling', 'units'),
    ('nursery work', 'tray-days, else bed-feet', 'labor', 'length'),
    ('grow work', 'bed-foot-days', 'labor', 'length'),
    ('harvest work', 'quantity-crates', 'labor', 'quantity'),
    ('pack work', 'quantity-crates', 'labor', 'quantity'),
    ('sell work', 'sales-value', 'labor', 'trips'),
    ('unlogged labor', 'bed-foot-days', 'labor', 'length'),
    ('general overhead', 'bed-foot-days', 'overhead', 'fixed'),
    ('land', 'bed-foot-days', 'overhead', 'fixed')
), own AS (
    SELECT pool, basis, statement_line AS line, coalesce(driver(varies_with), 'fixed') AS varies_with, structure, CAST(capacity AS DOUBLE) AS capacity FROM file_of('pools')
)
SELECT *, NULL AS channel FROM own
UNION ALL SELECT pool, basis, line, varies_with, NULL, NULL, NULL FROM shipped WHERE pool NOT IN (SELECT pool FROM own)
UNION ALL SELECT channel || ' (channel)', 'sales-value', 'selling', 'trips', NULL, NULL, channel FROM channels;

-- Each stage of work and its pool; overhead goes to general overhead. What hours vary with that name a crop, and what those of a pool do.
CREATE TABLE stages(stage VARCHAR, work_pool VARCHAR, behavior VARCHAR, in_pool VARCHAR);
INSERT INTO stages VALUES
    ('nursery', 'nursery work', 'length', 'length'), ('grow', 'grow work', 'length', 'length'), ('harvest', 'harvest work', 'quantity', 'quantity'),
    ('pack', 'pack work', 'quantity', 'quantity'), ('sell', 'sell work', 'quantity', 'trips'), ('overhead', 'general overhead', 'fixed', 'fixed');

CREATE TABLE tasks AS SELECT task, stage, pool FROM file_of('tasks');

-- What is paid on top of wages: a class of its own; in records that don't know it, class labor with a tax line of benefits, insurance, pensions or taxes,
-- told by its number, its name or the beginning of its name. It is labor, but no wages.
CREATE TABLE categories AS
WITH own AS (
    SELECT category, replace(lower(class), '_', '-') AS class, statement_line, pool, varies_with, lower(regexp_replace(coalesce(tax_line, ''), '[^A-Za-z0-9]', '', 'g')) AS label FROM file_of('categories'))
SELECT category, CASE class WHEN 'labor-burden' THEN 'labor' ELSE class END AS class,
    class = 'labor-burden' OR (class = 'labor' AND EXISTS (FROM (VALUES ('15', 'employeebenefitprograms'), ('20', 'insuranceotherthanhealth'), ('23', 'pensionandprofitsharingplans'), ('29', 'taxes')) t(number, name)
        WHERE label = number OR (length(label) >= 4 AND starts_with(name, label)))) AS burden,
    coalesce(statement_line, 'materials') AS line, coalesce(pool, 'general overhead') AS pool, coalesce(driver(varies_with), 'length') AS varies_with, driver(varies_with) AS written
FROM own;
