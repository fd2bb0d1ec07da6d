using System.Text;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Tests.Docs;

/// <summary>Writes docs/records.md from the schema, so that what is documented is what is read.</summary>
internal static class RecordsDocument
{
    private const string Before = """
        # The records a grower keeps

        Generated from the table schemas in `src/FarmEconomics/Records/Schema` by the tests; change those, then run the tests with
        `FARM_REWRITE=1`.

        A *records folder* holds one CSV file per table, named after it. Every table opens in any spreadsheet, and the program changes it
        only where you press Save (in `open`, a row at a time or a plan at once; the file before is kept in the folder `history`, which is
        never read, like all folders within this one). Five tables are needed: crops, beds, plantings, harvests and sales. Each further
        table sharpens the answer; without it the program says what it can't say, and never prints 0 for what isn't known.

        ## How to write them

        - **Files** are CSV as in RFC 4180, in UTF-8 with or without a byte-order mark. The separator (`,` `;` or tab) is told from the
          heading row. Fields with the separator, a quote or a line break stand in quotes, a quote inside them is written twice. Blank
          rows are passed over.
        - **Headings** stand in the first row and are matched without regard to case, spaces, hyphens and underscores: `Bed Feet` is
          `bed_feet`. A heading that is no column of the table is reported, never dropped in silence.
        - **Dates** are written `2025-06-30` (ISO 8601). `date_format` adds another form for the whole folder.
        - **Numbers** have a decimal point, or what `decimal_mark` says. Money may carry a currency sign, thousands separators and
          accounting negatives: `(1,234.50)`. A column ending in `_percent` holds 6.5 for 6.5 %. Trailing zeros don't count as decimals.
        - **Hours** are a number (7.5), or a time: `7:30`, `7h30`, `7 h 30 min`, `45 min`. In a workbook the cell's own format decides: a cell that
          shows 7:30 is seven and a half hours; one that shows a time of day (7:30 AM), or shows less than it holds (31.5 hours as 7:30), is an error.
        - **Limits**: amounts have at most 2 decimals; prices, wages, rates and percentages at most 4; other numbers at most 10; no
          number has more than 12 digits before the decimal mark. More is an error: nothing is rounded in silence. What each column takes
          at least and at most stands below. Dates and crop years lie from 1900 to 2099.
        - **Names** of crops, beds, plantings, channels and so on are compared trimmed, with one space between words, without case, and with
          their letters composed (Unicode NFC), so that names which look alike are one.
          They have at most 100 letters, all of which can be seen; other texts have at most 2,000.
          An unknown name is reported with the nearest known one.
        - **Credits**: money given back for what was sold is a row of sales of its own, with quantity 0 and an amount below 0. Goods that came
          back and were thrown out, eaten or given away are rows of those channels.
        - A bed is **overfull** when its plantings take over half a percent more length than it has; less is what pacing and rounding leave.
        - **Units**: quantities are in the crop's own unit unless `unit` says otherwise and `units` knows the conversion.
        - **Yes and no** may also be written y and n, true and false, 1 and 0.
        - A **required** column must be there and filled in every row. The others may be left out, or left blank row by row.
        - A **crop year** runs for twelve months from `crop_year_start` and is named after the year it starts in. Records of several
          years stand in the same tables.

        ## A workbook instead of a folder

        Every command also takes a workbook (`.xlsx`) with one sheet per table, named after it; a sheet named `about` is not read. Its rows
        are read as those of a CSV file are, so that a folder and a workbook with the same content give the same results; a place is
        told as `records.xlsx!sales:12:D`.

        - Dates and numbers may be numbers, text, or formulas with their value; a number in a date column counts as the spreadsheet's day
          number. A number has 15 digits, as spreadsheets keep them. A formula without a value, or with an error, is an error of its row.
          A percentage is what its cell shows: 6.5% is 6.5, though the spreadsheet keeps 0.065.
        - Rows above the headings, totals (a first cell `Total` and a blank required one) and remarks under the table (one cell of several
          words) are named by a warning and not read; the last two in CSV files as well. Hidden sheets are read and named. Merged cells are named.
        - A file or sheet of more than 256 MB, a row of more than 1 MB, a workbook that would unpack to more than 1 GB or to a hundred times
          its size, more than 10,000 rows in error, and a file that changes while it is read are refused whole; so is a workbook with more than
          1,000 sheets, 4 million different texts, or a list of its parts of more than 16 MB.

        ## Several files for one table

        Beside `sales.csv` there may be `sales.NAME.csv`; they are read after it, by name. What the `import` command adds stands in such files,
        with the columns `source_file`, `source_line` and `source_id`, which every table may have and no result rests on. `source_id`
        stands for the content of the source row and for which of several equal rows it is, after the source's own number of the row (a transaction's, a
        check's) where it has one; a row that is there already is never added again, also when you have changed it since. Two rows with numbers of their own are
        never told as entered twice.

        ## Files of other programs

        `import FILE --into FOLDER` reads CSV with commas, semicolons, tabs or bars between the fields, in UTF-8, UTF-16 or Windows-1252, and workbooks (`.xlsx`,
        every sheet with rows, or `--sheet NAME`). Of another spreadsheet's file it says how to save it. It shows what it sees, drafts a mapping as a file to look
        through, and adds nothing until `--apply`. The page Import of `open` does the same, with fields for what is asked, and adds only when you press Add.

        - **Headings** are found below titles and summaries; a file without any has `column 1`, `column 2` and so on. A file may repeat its headings further down,
          with others beside them, or to the right behind an empty column; a table with other headings is named and left for an import of its own
          (`--headings-at LINE`). Columns that nothing is read from, such as tips, are named.
        - **Wide tables** (days down and crops or workers across, or the other way) become a row for each value; blank cells are nothing. Rows and columns of totals are
          not read: they are compared with what the rows come to, and a difference is told.
        - **Columns that come again** become a row for each time, with the columns that come once: with numbers (Paid 1, Date 1, Paid 2,
          Date 2), or under a heading of their own (Brought, Sold, Price below each market day).
        - **Lines above the rows** may say whose they are: "Name: Rosa", "Week of 6/2/2025", "Customer: Corner Shop", a name alone above
          each of several parts, or, in notes without any heading, a day alone above what was picked on it.
          Such a line counts until another says otherwise; what was read from there is told.
        - **Blank cells** that mean the same as above, as in merged cells, are read so where they can mean nothing else: a day or a crop
          written once for several rows, a customer left blank together with the day.
          The draft says how many, and a single day missing among many is held back.
        - **Dates** may have any one form the file keeps to. Where two readings fit (6/3 and 3/6), you are asked (`--dates month-first`), never guessed for.
          Days without a year are of the one the title or the file's name tells; where they run over New Year, each needs its own.
        - **Quantities** may be noted: `12 bu`, `~15`, `3 1/2 lb`, `2½`, `1,5 kg` become a number and a unit; how many are marked as about right is said.
        - **Units** may stand in the item's name, where no column has any: five of "Salad mix bag" are five bags, two of
          "Salad mix 1/2 lb" two half pounds (`units` says that 1/2 lb is 0.5 lb).
          A heading such as "Picked (lb)" or "kg" names a unit, too.
        - **Hours** may be a time, start and end with a break, or times in and out by turns (`7:30-12`, `8-12, 1-5`).
          On a clock of twelve hours a time earlier than the one before it is of the afternoon: 7:30 to 4 is 8.5 hours.
          Hours alone count as times where they can be nothing else: 10-2 and 8-12, 1-5 do, 3-4 and 7,5 don't.
          07:30 to 04:00, a start without an end, an odd number of times, and times of two days are errors of their row.
          Numbers that look like parts of a day (0.3125 for 7:30) are asked for.
        - **Weeks**: one total a week is a period, from `date` to `through`, and no day of forty hours; columns for Monday, Tuesday and so on stand on their
          days. More hours than a day has, without a week named, are asked for.
          Of two readings of three weeks or more, the one that has all begin on one day of the week is taken.
        - **Names** your tables don't know are listed in one file, with a guess where one is near; what you fill in is saved as aliases.
          `(left out)` in place of a name leaves its rows out (a tote bag among what a register sold); the mapping remembers it.
        - **Problems** are told by cause, those most money hangs on first; `--all` tells every row, `--list FILE` writes them to a CSV file.
        - **Rows in error** stop no others: with `--apply` they go to a file of their own, to be fixed there and imported by the same mapping.
          A row with more values than the heading row (a comma in a number, without quotes) and one with a quote that is never closed are
          in error.
        - The mapping is saved with the records as rows of [imports](#imports); the next file with these headings is read by it.

        ## Farms that measure in meters

        `length_unit` `m` makes every length one in meters: beds have `length_m` and `width_cm`, plantings `bed_meters`, rates may be per
        `bed_meter`, and results have `bed_meters` and `per_bed_meter` in place of feet. Nothing is converted, and a heading of the other unit is
        an error, so that units can't be mixed. Kilograms are a unit of a crop like any other; pools may be shared out by `bed-meters` and `bed-meter-days`.
        `start --metric` (with `--currency` and `--decimal-comma`) writes tables for such a farm. Money has no sign of its own: `currency` names it.

        Every fault of every file is reported in one run, with file, line and character, the row, the nearest known name and how to
        fix it: see [errors.md](errors.md). `check` tells each kind of fault once, with how many rows have it; `--all` tells every row, `--list FILE`
        writes them to a CSV file. Of one kind in one file the first 1,000 rows are kept and the others counted. Errors stop the review unless `--skip-bad-rows` is given; then the rows in error, and
        those that refer to them, are left out and listed with the money in them. Warnings don't stop it.

        `check --fix-names --out FILE` writes every name your tables don't know into one list: the table, the name, what it is likely to mean (blank where nobody
        can guess), how many rows have it and the first of them. Fill it in, and `check --add-names FILE` puts all of them into `aliases.names.csv` at once, or
        none if one names what isn't there. The page Fix records of `open` has the same list as a form.

        """;

    private const string After = """
        ## What a result folder holds

        The contract for other programs. `tables/*.csv` have decimal points, ISO dates, money to the cent, rates and quantities to 4
        decimals; a blank field stands for "not available".

        - `crops.csv`: crop_year, crop, unit, plantings, bed_feet, bed_foot_weeks, harvested (without culled), unmatched, sold, other_use,
          unsold, output, of_which_household, of_which_closing_stock, materials, selling, gross_margin, labor_hours,
          of_which_estimated_hours, labor_cost, of_which_owner_labor, margin_after_labor, infrastructure, margin_after_infrastructure,
          overhead, establishment, net_return, gross_margin_per_bed_foot, gross_margin_per_bed_foot_week, gross_margin_per_labor_hour,
          return_to_labor_per_hour, net_return_per_bed_foot, average_price, break_even_price, break_even_yield_per_bed_foot
        - `plantings.csv`: the same columns per planting, with planting and bed in front
        - `channels.csv`: crop_year, channel, kind, quantity_value, fees, direct_costs, hours, margin (before labor), margin_per_hour;
          costs and hours are those that name the channel
        - `pools.csv`: crop_year, pool, cash_cost, labor_cost, ownership_cost, hours, received_from_pools, passed_to_pools, to_crops,
          to_household, unused, not_assigned; cash, labor and ownership add up to the last four
        - `charges.csv`: crop_year, pool, crop, amount: what each crop was charged by each pool of origin, adding up to to_crops
        - `statement.csv`: crop_year, line, amount: the statement of the whole farm
        - `reconciliation.csv`: crop_year, check, left, right, difference: the proof, every difference 0.00
        - `short.csv`: crop_year, what (beds, hours, own hours, hired hours, crates, trays, kWh, water, sprinklers), name, counted_by (week, told by its
          Monday, or day), from, in_use, limit, bed_feet, bed_feet_limit (for beds, on the mean of the week's days), limit_from (limits, beds,
          most ever, panels and battery), short (yes, no), not_checked (why)
        - `short_crops.csv`: crop_year, what, name, crop, contribution, used_while_short, unit, contribution_per_unit, for beds bed_foot_weeks and
          contribution_per_bed_foot_week: what the plantings that used it while it was short added to the farm; one list per what and name
        - `water_weeks.csv`: crop_year, week (its Monday), gallons_needed, gallons_limit, gallons_put_on, days_short, lost_at_limit,
          lost_as_watered; headings alone where weather or blocks are not written
        - `water_crops.csv`: crop_year, crop, contribution, gallons_needed, contribution_per_1000_gallons, lost_at_limit, lost_as_watered,
          ky (over a season), ky_from (given, given by stage, published, similar crop, not listed)
        - `water_days.csv`: crop_year, block, date, sowings and not_told (sowings whose day is told, and isn't), gallons_rain and
          gallons_watering (in, at the roots) = gallons_used + gallons_stored + gallons_drained, gallons_missed, stress (part of the need taken
          up), yield_lost (part of the yield, weighted by area), lost_as_watered; without watering.csv headings alone
        - `water_worth.csv`: crop_year, more_of (water, sprinklers, hours, hours and water), amount, counted_in, saved over the season,
          lost_by_less; headings alone where no limit is written
        - `power_months.csv`: crop_year, month, kwh_wanted, kwh_made, kwh_spilled, days_short, kwh_generated, kwh_short, and the kWh that one kWh
          of battery or one kW of panels more would have saved in that month, and one less lost
        - `power_loads.csv`: crop_year, load, gives_way (the lower the sooner), protects, kwh_wanted, kwh_went_without, days
        - `picked.csv`: crop_year, crop, unit, week (Monday of the week it was picked in), fate (sold, on hand, eaten, other use, given away, thrown
          out, past keeping, culled), channel, days_held, quantity, at_price, packing_and_fees, worth: all that was picked, each part once
        - `sowings.csv`: crop_year, crop, planting, sown (else the day in the bed), net_return, paid (yes, no), then price,
          picked_per_bed_foot, hours_per_bed_foot and not_sold of the sowing, each followed by that of its crop
        - `tasks.csv`: crop_year, task, stage, hours, minutes_per_crate, minutes_per_bed_foot: every year on record up to the one reviewed
        - `plan_against_actual.csv`: crop_year, crop, up_to (the last day held against the plan), planned, came, difference, and its parts, which
          sum to it to the cent: length, yield, culls, part_sold, where_sold, price, hours, cost_of_an_hour, supplies, rest; above 0 it is
          better than planned; headings alone where no plan is on file
        - `problems.csv`: severity, code, file, line, column, message
        """;

    public static string Write()
    {
        var text = new StringBuilder(Before);
        text.Append("\n## Tables\n\n| table | one row is | needed |\n|---|---|---|\n");
        foreach (TableSchema table in RecordSchema.Tables)
        {
            text.Append($"| [{table.Name}](#{table.Name}) | {table.OneRowIs} | {(table.Required ? "yes" : "")} |\n");
        }

        foreach (TableSchema table in RecordSchema.Tables)
        {
            WriteTable(text, table);
        }

        WriteDefaults(text);
        return text.Append('\n').Append(After).Append('\n').ToString().ReplaceLineEndings("\n");
    }

    private static void WriteTable(StringBuilder text, TableSchema table)
    {
        text.Append($"\n### {table.Name}\n\nOne row is {table.OneRowIs}.");
        if (table.OneOf.Count > 0)
        {
            text.Append($" Every row names a {string.Join(" or a ", table.OneOf)}.");
        }

        text.Append(table.Without is null ? "" : $" {table.Without}");
        text.Append("\n\n| column | holds | unit | meaning |\n|---|---|---|---|\n");
        foreach (ColumnSchema column in table.Columns)
        {
            text.Append($"| `{column.Name}`{Metric(column)}{(column.Required ? " (required)" : "")} | {Holds(column)} | {Unit(column)} | {column.Description} |\n");
        }

        if (table.Name == "farm")
        {
            text.Append("\n| setting | must be | default | meaning |\n|---|---|---|---|\n");
            foreach (SettingSpec setting in FarmSettingsReader.Settings)
            {
                text.Append($"| `{setting.Name}` | {setting.Expected} | {setting.Default} | {setting.Description} |\n");
            }
        }
    }

    private static string Metric(ColumnSchema column) => column.MetricName is { } name ? $", in meters `{name}`" : "";

    private static string? Unit(ColumnSchema column) => column.MetricName is null ? column.Unit : $"{column.Unit}, or {column.For(LengthUnit.M).Unit}";

    private static string Holds(ColumnSchema column) =>
        What(column) + (column.Range is { } range ? $", {range}" : column.MaxLength is 100 or 2000 ? "" : $", at most {column.MaxLength:N0} letters");

    private static string What(ColumnSchema column) => column.Type switch
    {
        ColumnType.Text => "text",
        ColumnType.Name when column.RefersTo is not null => $"name in {column.RefersTo}",
        ColumnType.Name => "name",
        ColumnType.Date => "date",
        ColumnType.Number => "number",
        ColumnType.Hours => "hours",
        ColumnType.Money => "amount, 2 decimals",
        ColumnType.Price => "price, 4 decimals",
        ColumnType.Rate => "rate, 4 decimals",
        ColumnType.Percent => "percentage, 4 decimals",
        ColumnType.Year => "year",
        ColumnType.YesNo => "yes or no",
        _ => string.Join(", ", column.Allowed),
    };

    private static void WriteDefaults(StringBuilder text)
    {
        text.Append("""

            ## Shipped with the program

            A row of the same name in `tasks`, `pools` or `categories` takes the place of one of these; others are added to them. A task
            without a pool goes to the work pool of its stage. Every channel also has a pool of its own, named `CHANNEL (channel)`, shared
            out by its sales value, on the selling line.

            **Tasks**


            """.ReplaceLineEndings("\n").TrimEnd('\n') + "\n\n");
        foreach (IGrouping<Stage, TaskRow> stage in Defaults.Tasks.GroupBy(task => task.Stage))
        {
            text.Append($"- {Words.Of(stage.Key)}: {string.Join(", ", stage.Select(task => task.Task))}\n");
        }

        text.Append("\n**Pools**\n\n| pool | basis | statement line | varies with |\n|---|---|---|---|\n");
        foreach (PoolRow pool in Defaults.Pools)
        {
            string fallback = DefaultPools.FallbackOf(pool.Pool) is { } other ? $", else {other}" : "";
            text.Append($"| {pool.Pool} | {pool.Basis}{fallback} | {Words.Of(pool.StatementLine)} | {Words.Of(pool.VariesWith!.Value)} |\n");
        }

        text.Append("\n**Categories**\n\n| category | class | statement line | Schedule F line | pool | varies with |\n|---|---|---|---|---|---|\n");
        foreach (CategoryRow row in Defaults.Categories)
        {
            string line = row.StatementLine is { } statementLine ? Words.Of(statementLine) : "";
            string varies = row.VariesWith is { } variesWith ? Words.Of(variesWith) : "";
            text.Append($"| {row.Category} | {Words.Of(row.Class)} | {line} | {row.TaxLine} | {row.Pool} | {varies} |\n");
        }
    }
}
