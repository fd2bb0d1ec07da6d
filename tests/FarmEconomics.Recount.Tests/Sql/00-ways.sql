-- Ways of counting that every step uses (docs/methods.md, sections 1 and 9). Money is held in whole cents from the moment it is made.
SET threads = 1; -- sums of floating weights in one order, so that every run gives the same digits

-- Rounded to the cent, midpoint away from zero. Eight decimals first: a quotient that stands for x.xx5 must not lie a hair below it.
CREATE MACRO cents(amount) AS CAST(100 * round(CAST(amount AS DECIMAL(28, 8)), 2) AS BIGINT);

-- The same of a quantity to 8 decimals times a price: its product may lie that close to half a cent. For amounts of less than some thousands.
CREATE MACRO fine_cents(amount) AS CAST(100 * round(CAST(amount AS DECIMAL(28, 11)), 2) AS BIGINT);

-- The same of a decimal, exactly: nothing is lost before.
CREATE MACRO exact_cents(amount) AS CAST(100 * round(amount, 2) AS BIGINT);

-- The same of a quotient of whole numbers, exactly: half a cent that stands on a third of something is kept. Both in units so small that they are whole.
CREATE MACRO cents_of(top, bottom) AS CAST(sign(top) * sign(bottom) * ((200 * abs(CAST(top AS HUGEINT)) + abs(CAST(bottom AS HUGEINT))) // (2 * abs(CAST(bottom AS HUGEINT)))) AS BIGINT);

-- The crop year a day lies in: window N holds the twelve months from N-MM-DD on.
CREATE MACRO window_of(day) AS
    CASE WHEN strftime(day, '%m-%d') >= getvariable('crop_year_start') THEN year(day) ELSE year(day) - 1 END;
CREATE MACRO window_start(n) AS CAST(n || '-' || getvariable('crop_year_start') AS DATE);

-- Months counted from year 0, and how many months of a window have begun by the closing date: 0 to 12.
CREATE MACRO month_number(day) AS year(day) * 12 + month(day) - 1;
CREATE MACRO months_passed(n) AS CASE WHEN getvariable('as_of') < window_start(n) THEN 0
    ELSE least(12, month_number(getvariable('as_of')) - month_number(window_start(n)) + 1) END;

-- Largest remainder. `parts` names a table of (what, part, place, weight, total): `total` whole units of `what` are split over its parts.
-- Shares to 12 decimals, remainders compared at 6 decimals of a unit, ties to the earlier place; a negative total is split by its absolute value.
CREATE MACRO split(parts) AS TABLE
    WITH shared AS (
        SELECT what, part, place, total, CAST(weight / sum(weight) OVER (PARTITION BY what) AS DECIMAL(14, 12)) AS share
        FROM query_table(parts) WHERE weight > 0
    ), floored AS (
        SELECT *, abs(total) * share AS exact, floor(abs(total) * share) AS whole FROM shared
    ), ranked AS (
        SELECT *,
            row_number() OVER (PARTITION BY what ORDER BY round(exact - whole, 6) DESC, place) AS rank,
            abs(total) - sum(whole) OVER (PARTITION BY what) AS missing
        FROM floored
    )
    SELECT what, part, CAST(sign(total) * (whole + CASE WHEN rank <= missing THEN 1 ELSE 0 END) AS BIGINT) AS units FROM ranked;

-- Hours and quantities: the same in units of 10^-8, but shares are not rounded. `total` is the hours or the quantity itself; what is finer than a unit
-- goes to the part that is rounded up first. Weights are floating numbers here, so remainders are compared at 5 decimals of a unit: at 3, some hundred plantings
-- had two so near each other that the wrong one got a unit, and a planting of few hours of its own was three off after a season's rows.
CREATE MACRO split_exactly(parts) AS TABLE
    WITH shared AS (
        SELECT what, part, place, CAST(floor(CAST(total AS DECIMAL(28, 10)) * 100000000) AS BIGINT) AS all_units, CAST(total AS DECIMAL(28, 10)) AS total,
            weight / sum(weight) OVER (PARTITION BY what) AS share
        FROM query_table(parts) WHERE weight > 0
    ), floored AS (
        SELECT *, all_units * share AS exact, CAST(floor(all_units * share + 0.000005) AS BIGINT) AS whole FROM shared
    ), ranked AS (
        SELECT *,
            row_number() OVER (PARTITION BY what ORDER BY round(exact - whole, 5) DESC, place) AS rank,
            all_units - sum(whole) OVER (PARTITION BY what) AS missing
        FROM floored
    )
    SELECT what, part, CAST(whole + CASE WHEN rank <= missing THEN 1 ELSE 0 END AS DECIMAL(28, 10)) / 100000000
        + CASE WHEN rank = 1 THEN total - CAST(all_units AS DECIMAL(28, 10)) / 100000000 ELSE 0 END AS amount
    FROM ranked;
