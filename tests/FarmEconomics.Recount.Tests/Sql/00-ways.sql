-- Ways of reckoning that every step uses (docs/methods.md, sections 1 and 9). Money is held in whole cents from the moment it is made.
SET threads = 1; -- sums of floating weights in one order, so that every run gives the same digits

-- Rounded to the cent, midpoint away from zero. Eight decimals first: a quotient that stands for x.xx5 must not lie a hair below it.
CREATE MACRO cents(amount) AS CAST(100 * round(CAST(amount AS DECIMAL(28, 8)), 2) AS BIGINT);

-- The crop year a day lies in: window N holds the twelve months from N-MM-DD on.
CREATE MACRO window_of(day) AS
    CASE WHEN strftime(day, '%m-%d') >= getvariable('crop_year_start') THEN year(day) ELSE year(day) - 1 END;
CREATE MACRO window_start(n) AS CAST(n || '-' || getvariable('crop_year_start') AS DATE);

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
