namespace FarmEconomics.Records.Checks;

/// <summary>One kind of fault: its code, what it means and how to fix it.</summary>
/// <param name="Code">The stable code.</param>
/// <param name="Title">A few words.</param>
/// <param name="Meaning">What the fault is, in a sentence.</param>
/// <param name="Fix">How to fix it, in a sentence.</param>
public sealed record ProblemKind(string Code, string Title, string Meaning, string Fix)
{
    /// <summary>Codes starting with E are errors, those starting with W warnings.</summary>
    public Severity Severity => Code[0] == 'E' ? Severity.Error : Severity.Warning;
}

/// <summary>
/// Every fault the reader and the checks report, in one place. docs/errors.md is generated from it, with the smallest bad folder
/// for each code. Codes are never reused: 1xx a file by itself, 2xx the records against each other, 4xx lots and hours traced, 5xx costs
/// shared out.
/// </summary>
public static class ProblemCatalog
{
    /// <summary>All kinds, errors and warnings, in documented order.</summary>
    public static IReadOnlyList<ProblemKind> All { get; } =
    [
        new(ProblemCodes.MissingTable, "Required table missing",
            "One of the five tables no review is possible without (crops, beds, plantings, harvests, sales) is not in the folder.",
            "Add the file with at least its required columns."),
        new(ProblemCodes.EmptyFile, "File without a heading row",
            "The file is empty: there is no first row with the names of the columns.",
            "Write the column names in the first row, or remove the file."),
        new(ProblemCodes.MissingColumn, "Required column missing",
            "The heading row lacks a column that every row needs; nothing of the file is read.",
            "Add the column, or correct the spelling of its heading."),
        new(ProblemCodes.NotUtf8, "Letters we can't read",
            "The text is not written in UTF-8, or holds NUL or other control characters.",
            "In your spreadsheet: Save as > CSV UTF-8."),
        new(ProblemCodes.BadQuotes, "Quotes that don't close",
            "A quoted field has no closing quote, or text follows the closing quote.",
            "Close the quote, and write a quote inside quoted text twice."),
        new(ProblemCodes.TooManyFields, "More values than columns",
            "The row has a value beyond the last heading, often because a text or a number has a comma in it (60,00).",
            "Put the value with the comma in quotes, or add the missing heading."),
        new(ProblemCodes.ColumnTwice, "Column twice",
            "Two headings name the same column; nothing of the file is read.",
            "Keep one of them."),
        new(ProblemCodes.TableTwice, "Two files for one table",
            "Two files of the folder have the name of the same table; the second is not read.",
            "Move the rows into one file."),
        new(ProblemCodes.RowTooLong, "Row too long",
            "A row is longer than 1 MB; nothing of the file is read.",
            "Close the quote that was left open, or take out what is not a record."),
        new(ProblemCodes.BlankValue, "Required value missing",
            "The field is blank and the row can't be used without it.",
            "Fill in the field."),
        new(ProblemCodes.NotANumber, "Not a number",
            "The text can't be read as a number with the farm's decimal mark.",
            "Write digits with the decimal mark only; other decimal marks are set by decimal_mark in farm.csv."),
        new(ProblemCodes.TooManyDecimals, "Too many decimals",
            "Amounts have at most 2 decimals; prices, wages, rates and percentages at most 4; other numbers at most 10.",
            "Round to cents; prices, wages, rates and percentages to 4 decimals, other numbers to 10."),
        new(ProblemCodes.NumberTooLarge, "Number too large",
            "The number has more than 12 digits before the decimal mark.",
            "Correct the number."),
        new(ProblemCodes.NotADate, "Not a date",
            "The text is not a day of the calendar in ISO 8601 or in the format farm.csv sets.",
            "Write the date as 2025-06-30. Where all files write 6/30/2025: a line date_format,MM/DD/YYYY in farm.csv."),
        new(ProblemCodes.UnknownWord, "Word not on the list",
            "The column takes one word of a fixed list.",
            "Use one of the allowed words."),
        new(ProblemCodes.NotYesNo, "Neither yes nor no",
            "The column takes yes or no.",
            "Write yes or no, or leave the field blank."),
        new(ProblemCodes.NotAYear, "Not a crop year",
            "A crop year is four digits from 1900 to 2099.",
            "Write the year with four digits."),
        new(ProblemCodes.NoneOf, "Crop or planting missing",
            "The row must say what it is about, in at least one of several columns, and says nothing in any.",
            "Fill in one of them."),
        new(ProblemCodes.CellWithoutValue, "Formula without a result",
            "A cell of the workbook holds a formula that came to an error, or whose result the workbook does not carry.",
            "Open the workbook in a spreadsheet, fix the formula or put its result in its place, and save."),
        new(ProblemCodes.UnknownSetting, "Unknown setting",
            "farm.csv, or --set, names a setting there isn't.",
            "Correct the name, or remove the row."),
        new(ProblemCodes.BadSetting, "Bad value of a setting",
            "The value can't be used for the setting.",
            "Give the setting a value it takes."),
        new(ProblemCodes.SettingTwice, "Setting twice",
            "The same setting stands in two rows.",
            "Keep one of the rows."),
        new(ProblemCodes.NumberOutOfRange, "Number out of range",
            "The number is smaller or larger than any farm's; docs/records.md says what each column takes.",
            "Correct the number; look at its decimal mark and its unit."),
        new(ProblemCodes.TextTooLong, "Text too long",
            "A name has at most 100 letters, a remark at most 2,000.",
            "Shorten the text. A very long one is often a quote that was never closed."),
        new(ProblemCodes.UnseenLetters, "Letters that can't be seen",
            "The name holds a line break, a tab, a control character or another mark that isn't seen, "
                + "so that it would differ from the same name without it.",
            "Type the name anew; in a spreadsheet CLEAN() takes such marks out."),
        new(ProblemCodes.FileTooLarge, "File too large",
            "The file or sheet has more than 256 MB; nothing of it is read.",
            "Split it by year into several folders, or take out what is not a record."),
        new(ProblemCodes.FileUnreadable, "File can't be read",
            "The file is there but can't be opened; the message says why.",
            "Do what the message says, then run the command again."),
        new(ProblemCodes.FileChanged, "File changed meanwhile",
            "The file was changed while it was being read; nothing of it is used.",
            "Run the command again when nothing writes to the file."),
        new(ProblemCodes.TooManyInError, "Too many rows in error",
            "More than 10,000 rows of one file are in error; nothing of it is used.",
            "Fix what the listed rows have in common, often the separator, the decimal mark or the date format."),
        new(ProblemCodes.UnknownColumn, "Unknown column",
            "The heading is none of the table's columns; its values are not read.",
            "Correct the heading if it was meant to be read."),
        new(ProblemCodes.UnknownFile, "Unknown file",
            "A .csv file of the folder has the name of no table; it is not read.",
            "Correct the file's name if it was meant to be read."),
        new(ProblemCodes.NoRecord, "That is not a record",
            "A title above the headings, a total, or a remark under the table; it is not read.",
            "Nothing to fix, unless it was meant to be a record."),
        new(ProblemCodes.HiddenSheet, "Hidden sheet",
            "A sheet with the name of a table is hidden in the workbook; it is read all the same.",
            "Show the sheet, or give it another name if it is not to be read."),
        new(ProblemCodes.MergedCells, "Merged cells",
            "What merged cells show stands in the first of them only; for the others nothing is read.",
            "Take the merging back and fill in each cell."),
        new(ProblemCodes.UnknownCrop, "Unknown crop",
            "The crop is not in crops.csv.",
            "Correct the name, or add the crop to crops.csv."),
        new(ProblemCodes.UnknownBed, "Unknown bed",
            "The bed is not in beds.csv.",
            "Correct the name, or add the bed to beds.csv."),
        new(ProblemCodes.UnknownPlanting, "Unknown planting",
            "The planting is not in plantings.csv.",
            "Correct the name, or add the planting to plantings.csv."),
        new(ProblemCodes.UnknownChannel, "Unknown channel",
            "The channel is not in channels.csv.",
            "Correct the name, or add the channel to channels.csv."),
        new(ProblemCodes.UnknownPool, "Unknown pool",
            "The pool is neither in pools.csv nor shipped with the program, and no channel has that name.",
            "Correct the name, or add the pool to pools.csv."),
        new(ProblemCodes.UnknownTask, "Unknown task",
            "The task is neither in tasks.csv nor shipped with the program.",
            "Correct the name, or add the task to tasks.csv."),
        new(ProblemCodes.UnknownWorker, "Unknown worker",
            "The worker is not in workers.csv.",
            "Correct the name, or add the worker to workers.csv."),
        new(ProblemCodes.UnknownCategory, "Unknown category",
            "The category is neither in categories.csv nor shipped with the program.",
            "Correct the name, or add the category to categories.csv."),
        new(ProblemCodes.NoConversion, "Unit without conversion",
            "The unit is not the crop's own, and units.csv doesn't say how many of the crop's units it holds.",
            "Correct the unit, or add its conversion to units.csv."),
        new(ProblemCodes.UnknownStructure, "Unknown structure",
            "No bed lies in the structure the pool serves.",
            "Correct the name, or name the structure in beds.csv."),
        new(ProblemCodes.UnknownUser, "Unknown user",
            "The user is no pool, crop or planting, and not household.",
            "Correct the name."),
        new(ProblemCodes.UnknownTotal, "Nothing to total there",
            "The table or the measure of the control total has nothing to total.",
            "Use a table with that measure: sales, income, expenses have amount; harvests, sales, use have quantity; "
                + "loads, use have kWh; labor has hours and hours:STAGE."),
        new(ProblemCodes.UnknownAsset, "Unknown asset",
            "The row names an asset that isn't in the assets table.",
            "Correct the name, or add the asset."),
        new(ProblemCodes.UnknownBlock, "Unknown block",
            "The block is not in blocks.csv, or no bed of beds.csv lies in it.",
            "Correct the name, or name the block in both tables."),
        new(ProblemCodes.TwoTags, "More than one of crop, planting, channel, pool",
            "An hour or a cent can go to one place only.",
            "Keep the most exact one and leave the others blank."),
        new(ProblemCodes.CropDisagrees, "Crop and planting disagree",
            "The planting the row names is of another crop than the row says.",
            "Correct the crop or the planting."),
        new(ProblemCodes.PlantingConflict, "Rows of one planting disagree",
            "Rows of the same planting name different crops or crop years.",
            "Give one of the plantings another name, or make the rows agree."),
        new(ProblemCodes.HarvestTooEarly, "Harvest before the bed was planted",
            "The harvest is dated before the planting, or any planting of the crop, was in a bed.",
            "Correct the date of the harvest or of in_bed, or add the planting that is missing."),
        new(ProblemCodes.OutBeforeIn, "Out of the bed before in it",
            "out_of_bed is not after in_bed.",
            "Correct one of the dates."),
        new(ProblemCodes.SownAfterInBed, "Sown after it was in the bed",
            "sown is later than in_bed.",
            "Correct one of the dates; leave sown blank for what is sown in place."),
        new(ProblemCodes.BedNotThere, "Bed not there yet, or no longer",
            "The planting is in the bed before the bed's from or after its to.",
            "Correct the dates of the planting or of the bed."),
        new(ProblemCodes.NameTwice, "Name twice",
            "Two rows of the table stand for the same thing.",
            "Remove one, or give it another name."),
        new(ProblemCodes.NotPositive, "Zero or negative",
            "The quantity, length, price or number of hours can't be negative, or must be above 0. "
                + "In sales, money given back is a row with quantity 0 and an amount below 0.",
            "Correct the number; leave the row out if nothing happened."),
        new(ProblemCodes.PercentRange, "Percentage out of range",
            "The percentage is below 0 or above 100.",
            "Correct the number: 6.5 stands for 6.5%."),
        new(ProblemCodes.DateOutside, "Year looks wrong",
            "The date or crop year lies more than a year away from all plantings, harvests and sales, or before 1900 or after 2099.",
            "Correct the year of the date."),
        new(ProblemCodes.IncomeChannel, "Income through a channel that takes sales",
            "Income without a crop comes through a channel of kind share or other; the money of other channels stands in sales.csv.",
            "Name a channel of kind share or other, or move the row to sales.csv."),
        new(ProblemCodes.EndBeforeStart, "End before start",
            "The last day is before the first.",
            "Correct one of the dates."),
        new(ProblemCodes.PaymentCount, "Payments that can't be counted",
            "payments_per_year is not a whole number from 1 to 365, or years times payments_per_year is not a whole "
                + "number of payments.",
            "Enter 12 for monthly, 4 for quarterly, 1 for yearly payments, and years that hold whole payments."),
        new(ProblemCodes.BalanceKind, "Balance-sheet item of the wrong kind",
            "kind doesn't fit the class: cash as a liability, a debt as an asset.",
            "Current assets are cash, inventory, invoices or supplies; longer-term assets in-assets or beside-assets; "
                + "current liabilities bills, paid-ahead or debt; longer-term liabilities debt."
        ),
        new(
            ProblemCodes.ProjectQuarter,
            "Year or quarter of a project that isn't whole",
            "budget_year or quarter has decimals.",
            "Enter 1 to 5 for the year of the project, 1 to 4 for its quarter, or leave it blank for the first."
        ),
        new(
            ProblemCodes.AssetMoney,
            "Money that doesn't fit the asset",
            "The grant is greater than what the asset cost, or sold_for is given without the day it was sold.",
            "Correct grant or cost; give the day in retired."
        ),
        new(
            ProblemCodes.LiabilityBelowZero,
            "Liability below 0",
            "What is owed is entered below 0: it would count as owned.",
            "Enter what is owed above 0; what others owe you is a current-asset."
        ),
        new(
            ProblemCodes.TemperatureOrder,
            "Lowest temperature above the highest",
            "The day's lowest temperature is higher than its highest.",
            "Swap the two, or correct one of them."),
        new(ProblemCodes.AliasOfNothing, "This table has no names to alias",
            "The table an alias is for has no names that aliases can stand for.",
            "Name one of crops, units, beds, plantings, channels, workers, tasks, categories and pools."),
        new(ProblemCodes.AliasHidesName, "Alias that is a name",
            "The alias is itself a name of the table, so that rows meant for one would be counted to the other.",
            "Remove the alias, or the name if it is no longer used."),
        new(ProblemCodes.BadImport, "Mapping row incomplete",
            "A row of imports names no table or column there is, or not what the column is filled with.",
            "Give the row a column with a source_column or a constant; or, to leave rows or a column out, a source_column alone. "
                + "Put your answer where a draft has a question mark."),
        new(ProblemCodes.BedOverfull, "Bed overfull",
            "On some day the plantings in a bed take more length than the bed has, by more than half a percent of it.",
            "Correct the lengths or the dates, or leave it if two crops share the bed's width."),
        new(ProblemCodes.DuplicateRow, "Row twice",
            "The row says the same as an earlier one, in every column.",
            "Remove it if it was entered twice."),
        new(ProblemCodes.LongDay, "More than 16 hours in a day",
            "The hours of one worker add up to more than 16 on one day.",
            "Correct the hours if they were entered twice or belong to several people."),
        new(ProblemCodes.AmountDisagrees, "Amount and price disagree",
            "Quantity times unit_price is more than 0.01 away from amount; amount counts.",
            "Correct whichever is wrong, or leave unit_price blank."),
        new(ProblemCodes.WeatherUnit, "Weather in another unit",
            "The figures of a column of weather can't be in the unit its heading names: the need of water would be far off.",
            "Convert the column, or take it over in the unit the heading names; a farm in feet has inches and degrees F."),
        new(ProblemCodes.NamesAlike, "Two names that read as one",
            "Two names differ by an accent, a dash, a blank or the plural only, as Carrot and Carrots: if they are one, its figures are "
                + "torn in two.",
            "If they are one: keep one row, and put the other name in aliases.csv, as in crops,Carrot,Carrots. If they are two, "
                + "say so there: one of them as its own name, as in crops,Carrot,Carrot."),
        new(ProblemCodes.SaleTwice, "Sale of an asset that stands in income too",
            "Income of the same amount as sold_for came in within a month of the day in retired: cash would count the sale twice.",
            "Remove the row from income if it is that sale; leave it if it is other money."),
        new(ProblemCodes.GrantTwice, "Grant for an asset that stands in income too",
            "Income of the same amount as grant came in within a year of the day in in_service: the grant makes the asset cost less "
                + "each year, so as income it counts twice, and next year's cash would have it again.",
            "If it is that grant: take it out of income and enter it in expenses as a refund, an amount below 0 in the category the asset "
                + "was bought under. Leave it if it is other money."),
        new(ProblemCodes.SalvageAboveCost, "Worth more at the end than it cost",
            "salvage is greater than the cost, so that owning it would bring money each year.",
            "Correct salvage or cost; leave it if it does gain in value, as land may."),
        new(ProblemCodes.InvoicesAsGoods, "Unpaid bill listed as goods",
            "An item of the balance sheet of kind inventory is named for a wholesale channel, or is as much as that channel took up to "
                + "that day: if customers owe it, the sales hold that money already, and as goods on hand it counts twice.",
            "If it is customers' unpaid bills for what stands in sales, write invoices as its kind. Leave it if it is goods on hand."),
        new(ProblemCodes.TotalMissed, "Control total missed",
            "What the records add up to is further from the control total than its tolerance.",
            "Look for rows that are missing, entered twice or dated wrongly; correct the total if it is wrong."),
        .. FindingKinds.All,
    ];

    private static readonly Dictionary<string, ProblemKind> ByCode = All.ToDictionary(kind => kind.Code);

    /// <summary>Finds a kind by its code.</summary>
    /// <param name="code">The code.</param>
    /// <returns>The kind.</returns>
    /// <exception cref="KeyNotFoundException">There is no such code.</exception>
    public static ProblemKind Get(string code) => ByCode[code];

    /// <summary>Makes a problem of a kind.</summary>
    /// <param name="code">The code.</param>
    /// <param name="source">The place.</param>
    /// <param name="column">The column at fault, or null for the whole row.</param>
    /// <param name="message">What is wrong here, in a sentence.</param>
    /// <param name="offending">The offending text, or null.</param>
    /// <param name="nearest">The nearest known name, or null.</param>
    /// <returns>The problem, with the kind's severity and hint.</returns>
    public static Problem Make(
        string code,
        SourceLine source,
        string? column,
        string message,
        string? offending = null,
        string? nearest = null
    )
    {
        ProblemKind kind = Get(code);
        return new Problem(kind.Severity, code, source, column, message, kind.Fix) { Offending = offending, Nearest = nearest };
    }
}
