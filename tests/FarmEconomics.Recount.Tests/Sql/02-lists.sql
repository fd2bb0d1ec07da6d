-- What ships with the program (RECORDS, "Shipped with the program"); a grower's row of the same name takes its place.
-- Only the pools are needed whole: the demo's own tasks and categories name every one they use, a test farm's must as well.

CREATE TABLE pools AS
WITH shipped(pool, basis, line, varies_with) AS (VALUES
    ('seed and plants', 'input-rates, else bed-feet', 'materials', 'area'),
    ('fertility and crop supplies', 'bed-feet', 'materials', 'area'),
    ('packaging', 'input-rates, else quantity-crates', 'selling', 'quantity'),
    ('selling general', 'sales-value', 'selling', 'sales'),
    ('nursery work', 'tray-days, else bed-feet', 'labor', 'area'),
    ('grow work', 'bed-foot-days', 'labor', 'area'),
    ('harvest work', 'quantity-crates', 'labor', 'quantity'),
    ('pack work', 'quantity-crates', 'labor', 'quantity'),
    ('sell work', 'sales-value', 'labor', 'sales'),
    ('unlogged labor', 'bed-foot-days', 'labor', 'area'),
    ('general overhead', 'bed-foot-days', 'overhead', 'nothing')
), own AS (
    SELECT pool, basis, statement_line AS line, coalesce(varies_with, 'nothing') AS varies_with, structure, CAST(capacity AS DOUBLE) AS capacity FROM file_of('pools')
)
SELECT *, NULL AS channel FROM own
UNION ALL SELECT pool, basis, line, varies_with, NULL, NULL, NULL FROM shipped WHERE pool NOT IN (SELECT pool FROM own)
UNION ALL SELECT channel || ' (channel)', 'sales-value', 'selling', 'sales', NULL, NULL, channel FROM channels;

-- Each stage of work and its pool; overhead goes to general overhead.
CREATE TABLE stages(stage VARCHAR, work_pool VARCHAR, behavior VARCHAR);
INSERT INTO stages VALUES
    ('nursery', 'nursery work', 'area'), ('grow', 'grow work', 'area'), ('harvest', 'harvest work', 'quantity'),
    ('pack', 'pack work', 'quantity'), ('sell', 'sell work', 'sales'), ('overhead', 'general overhead', 'nothing');

CREATE TABLE tasks AS SELECT task, stage, pool FROM file_of('tasks');

-- What is paid on top of wages: a class of its own; in records that don't know it, class labor with a tax line of benefits, insurance, pensions or taxes,
-- told by its number, its name or the beginning of its name. It is labor, but no wages.
CREATE TABLE categories AS
WITH own AS (
    SELECT category, replace(lower(class), '_', '-') AS class, statement_line, pool, varies_with, lower(regexp_replace(coalesce(tax_line, ''), '[^A-Za-z0-9]', '', 'g')) AS label FROM file_of('categories'))
SELECT category, CASE class WHEN 'labor-burden' THEN 'labor' ELSE class END AS class,
    class = 'labor-burden' OR (class = 'labor' AND EXISTS (FROM (VALUES ('15', 'employeebenefitprograms'), ('20', 'insuranceotherthanhealth'), ('23', 'pensionandprofitsharingplans'), ('29', 'taxes')) t(number, name)
        WHERE label = number OR (length(label) >= 4 AND starts_with(name, label)))) AS burden,
    coalesce(statement_line, 'materials') AS line, coalesce(pool, 'general overhead') AS pool, coalesce(varies_with, 'area') AS varies_with
FROM own;
