-- The statement of the whole farm, and the left sides of the proof (docs/methods.md 10), from the recount alone.

CREATE VIEW years AS SELECT DISTINCT year FROM pool_years;

CREATE TABLE farm_sums AS
WITH crop_sums AS (
    SELECT year, sum(sales) AS sales, sum(share_income) AS share_income, sum(household) AS household, sum(closing) AS closing, sum(materials) AS materials,
        sum(selling) AS selling, sum(labor) AS labor, sum(owner_labor) AS owner_labor, sum(infrastructure) AS infrastructure, sum(overhead) AS overhead, sum(establishment) AS establishment, sum(establishment_unknown) AS establishment_unknown,
        sum(hours) AS hours, sum(worth_unknown) AS worth_unknown
    FROM budgets GROUP BY year
), charged AS (
    SELECT year, sum(units) FILTER (user = 'household') AS to_household, sum(units) FILTER (user = 'unused') AS unused, sum(units) FILTER (user = 'not assigned') AS not_assigned
    FROM charges GROUP BY year
), booked AS (
    SELECT year, sum(household) AS books_household, sum(amount) FILTER (class NOT IN ('operating', 'labor')) AS excluded, sum(amount) AS all_books FROM books GROUP BY year
), owned AS (SELECT year, sum(household) AS owned_household, sum(amount) AS owned FROM ownership GROUP BY year
), nobody AS (SELECT year, sum(units) AS direct_nobody FROM direct_money WHERE planting IS NULL GROUP BY year
), worked_for_nobody AS (
    -- hours of a crop that is never planted again
    SELECT w.year, sum(total) AS labor_nobody FROM work w JOIN work_cost c ON c.row = w.row WHERE NOT EXISTS (FROM work_to d WHERE d.row = w.row) GROUP BY w.year
), dated_sales AS (SELECT year, sum(sales + share_income) AS dated_sales, sum(fee) AS dated_fees FROM leaving_money GROUP BY year
), loose AS (
    SELECT year, sum(units) FILTER (stream IN ('sales', 'share_income')) AS loose_sales, sum(units) FILTER (stream = 'fee') AS loose_fees FROM loose_money GROUP BY year
), other AS (
    SELECT year, sum(amount) AS other_income FROM income i
    WHERE kind <> 'share' OR NOT EXISTS (FROM allotted a JOIN leavings l ON l.row = a.row WHERE l.channel = i.channel AND l.year = i.year) GROUP BY year
), imputed AS (
    SELECT w.year, sum(total) FILTER (stream = 'owner') AS owner_dated, sum(total) FILTER (stream = 'hired' AND w.year NOT IN (SELECT year FROM wage_years)) AS wage_based
    FROM work_cost c JOIN work w ON w.row = c.row GROUP BY w.year
), clocked AS (SELECT year, sum(hours) AS all_hours FROM work GROUP BY year)
SELECT years.year, COLUMNS(* EXCLUDE year)
FROM years LEFT JOIN crop_sums USING (year) LEFT JOIN charged USING (year) LEFT JOIN booked USING (year) LEFT JOIN owned USING (year) LEFT JOIN nobody USING (year)
LEFT JOIN worked_for_nobody USING (year) LEFT JOIN dated_sales USING (year) LEFT JOIN loose USING (year) LEFT JOIN other USING (year) LEFT JOIN imputed USING (year) LEFT JOIN clocked USING (year);
UPDATE farm_sums SET to_household = coalesce(to_household, 0) + coalesce(books_household, 0) + coalesce(owned_household, 0),
    not_assigned = coalesce(not_assigned, 0) + coalesce(direct_nobody, 0) + coalesce(labor_nobody, 0) + coalesce(loose_fees, 0);

CREATE VIEW statement_result AS
WITH f AS (SELECT year, coalesce(COLUMNS(* EXCLUDE year), 0) FROM farm_sums),
m AS (SELECT *, sales + share_income + household + closing AS output, sales + share_income + household + closing - materials - selling AS gross FROM f)
SELECT crop_year,
    line || CASE WHEN NOT ownership_known AND (line LIKE 'cost not assigned%' OR line LIKE 'household''s part%' OR (amount IS NOT NULL
        AND EXISTS (FROM unowned o JOIN pools p ON p.pool = o.pool WHERE o.year = s.crop_year
            AND list_contains(CASE s.line WHEN 'materials' THEN ['materials'] WHEN 'selling' THEN ['selling'] WHEN 'hired labor' THEN ['labor']
                WHEN 'gross margin' THEN ['materials', 'selling'] WHEN 'margin after labor' THEN ['materials', 'selling', 'labor'] ELSE [] END, p.line))))
        THEN ', before ownership cost' ELSE '' END AS line, amount
FROM (SELECT m.year AS crop_year, ownership_known, line,
    money(CASE WHEN with_worth AND worth_unknown <> 0 THEN NULL ELSE CASE needs WHEN 'costs' THEN CASE WHEN costs_known THEN units END WHEN 'labor' THEN CASE WHEN labor_known THEN units END
    WHEN 'costs and labor' THEN CASE WHEN costs_known AND labor_known THEN units END WHEN 'hired' THEN CASE WHEN hired_known THEN units END
    WHEN 'infrastructure' THEN CASE WHEN costs_known AND ownership_known THEN units END WHEN 'ownership' THEN CASE WHEN ownership_known THEN units END
    WHEN 'overhead' THEN CASE WHEN overhead_known THEN units END WHEN 'establishment' THEN CASE WHEN establishment_unknown = 0 THEN units END WHEN 'net' THEN CASE WHEN net_known THEN units END
    WHEN 'full' THEN CASE WHEN net_known AND establishment_unknown = 0 THEN units END ELSE units END END) AS amount
FROM m JOIN known k ON k.year = m.year, LATERAL (VALUES
    ('sales', sales, '', true), ('share income', share_income, '', true), ('household use', household, '', true), ('closing stock', closing, '', true), ('output', output, '', true),
    ('materials', materials, 'costs', false), ('selling', selling, 'costs', false), ('gross margin', gross, 'costs', true), ('hired labor', labor - owner_labor, 'hired', false), ('owner labor', owner_labor, 'labor', false),
    ('margin after labor', gross - labor, 'costs and labor', true), ('infrastructure', infrastructure, 'infrastructure', false), ('margin after infrastructure', gross - labor - infrastructure, 'net', true),
    ('overhead', overhead, 'overhead', false), ('establishment', establishment, 'establishment', false),
    ('net return of the crops', gross - labor - infrastructure - overhead - establishment, 'full', true), ('other income', other_income, '', false),
    ('sales not assigned to a crop', loose_sales, '', false), ('unused capacity', unused, 'ownership', false), ('cost not assigned to a crop', not_assigned, '', false),
    ('net return of the farm', gross - labor - infrastructure - overhead - establishment + other_income + loose_sales - unused - not_assigned, 'full', true),
    ('household''s part of costs, not a farm cost', to_household, '', false),
    ('capital, principal, interest on asset loans, tax and drawings, outside the budget', excluded, '', false))
    v(line, units, needs, with_worth)) s;

-- The left sides: what there is to be found again. Rows of the books by their crop year, imputed charges by their day.
CREATE VIEW proof_result AS
WITH f AS (SELECT year, coalesce(COLUMNS(* EXCLUDE year), 0) FROM farm_sums)
SELECT year AS crop_year, 'books and imputed charges' AS starts, money(all_books + owner_dated + wage_based + owned + dated_fees + establishment) AS "left" FROM f
UNION ALL SELECT year, 'hours logged and estimated', all_hours FROM f
UNION ALL SELECT year, 'sales and share income dated', money(dated_sales) FROM f
UNION ALL SELECT crop_year, 'quantity of ' || crop || ':', harvested + unmatched FROM crops_result;
