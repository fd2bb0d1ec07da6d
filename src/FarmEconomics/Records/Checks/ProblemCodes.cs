namespace FarmEconomics.Records.Checks;

/// <summary>The codes of the catalog by what they stand for.</summary>
public static class ProblemCodes
{
    /// <summary>Required table missing.</summary>
    public const string MissingTable = "E101";

    /// <summary>File without a heading row.</summary>
    public const string EmptyFile = "E102";

    /// <summary>Required column missing.</summary>
    public const string MissingColumn = "E103";

    /// <summary>Text not in UTF-8.</summary>
    public const string NotUtf8 = "E104";

    /// <summary>Quotes that don't close.</summary>
    public const string BadQuotes = "E105";

    /// <summary>More fields than headings.</summary>
    public const string TooManyFields = "E106";

    /// <summary>Column twice.</summary>
    public const string ColumnTwice = "E107";

    /// <summary>Two files for one table.</summary>
    public const string TableTwice = "E108";

    /// <summary>A row longer than any record.</summary>
    public const string RowTooLong = "E109";

    /// <summary>Required value missing.</summary>
    public const string BlankValue = "E110";

    /// <summary>Not a number.</summary>
    public const string NotANumber = "E111";

    /// <summary>Too many decimals.</summary>
    public const string TooManyDecimals = "E112";

    /// <summary>Number too large.</summary>
    public const string NumberTooLarge = "E113";

    /// <summary>Not a date.</summary>
    public const string NotADate = "E114";

    /// <summary>Word not on the list.</summary>
    public const string UnknownWord = "E115";

    /// <summary>Neither yes nor no.</summary>
    public const string NotYesNo = "E116";

    /// <summary>Not a crop year.</summary>
    public const string NotAYear = "E117";

    /// <summary>Nothing named.</summary>
    public const string NoneOf = "E118";

    /// <summary>A cell of a workbook without a value.</summary>
    public const string CellWithoutValue = "E119";

    /// <summary>Unknown setting.</summary>
    public const string UnknownSetting = "E120";

    /// <summary>Bad value of a setting.</summary>
    public const string BadSetting = "E121";

    /// <summary>Setting twice.</summary>
    public const string SettingTwice = "E122";

    /// <summary>A number beyond what the column may hold.</summary>
    public const string NumberOutOfRange = "E123";

    /// <summary>A text longer than the column takes.</summary>
    public const string TextTooLong = "E124";

    /// <summary>Letters in a name that can't be seen.</summary>
    public const string UnseenLetters = "E125";

    /// <summary>A file larger than what is read.</summary>
    public const string FileTooLarge = "E130";

    /// <summary>A file that can't be opened.</summary>
    public const string FileUnreadable = "E131";

    /// <summary>A file that changed while it was read.</summary>
    public const string FileChanged = "E132";

    /// <summary>More rows in error than are listed.</summary>
    public const string TooManyInError = "E133";

    /// <summary>Unknown column.</summary>
    public const string UnknownColumn = "W101";

    /// <summary>Unknown file.</summary>
    public const string UnknownFile = "W102";

    /// <summary>A row that is no record.</summary>
    public const string NoRecord = "W104";

    /// <summary>A hidden sheet.</summary>
    public const string HiddenSheet = "W105";

    /// <summary>Merged cells.</summary>
    public const string MergedCells = "W106";

    /// <summary>Unknown crop.</summary>
    public const string UnknownCrop = "E201";

    /// <summary>Unknown bed.</summary>
    public const string UnknownBed = "E202";

    /// <summary>Unknown planting.</summary>
    public const string UnknownPlanting = "E203";

    /// <summary>Unknown channel.</summary>
    public const string UnknownChannel = "E204";

    /// <summary>Unknown pool.</summary>
    public const string UnknownPool = "E205";

    /// <summary>Unknown task.</summary>
    public const string UnknownTask = "E206";

    /// <summary>Unknown worker.</summary>
    public const string UnknownWorker = "E207";

    /// <summary>Unknown category.</summary>
    public const string UnknownCategory = "E208";

    /// <summary>Unit without conversion.</summary>
    public const string NoConversion = "E209";

    /// <summary>Unknown structure.</summary>
    public const string UnknownStructure = "E210";

    /// <summary>Unknown user.</summary>
    public const string UnknownUser = "E211";

    /// <summary>Total of nothing.</summary>
    public const string UnknownTotal = "E212";

    /// <summary>Unknown asset.</summary>
    public const string UnknownAsset = "E213";

    /// <summary>Unknown block.</summary>
    public const string UnknownBlock = "E215";

    /// <summary>More than one of crop, planting, channel, pool.</summary>
    public const string TwoTags = "E220";

    /// <summary>Crop and planting disagree.</summary>
    public const string CropDisagrees = "E221";

    /// <summary>Rows of one planting disagree.</summary>
    public const string PlantingConflict = "E222";

    /// <summary>Harvest before the bed was planted.</summary>
    public const string HarvestTooEarly = "E223";

    /// <summary>Out of the bed before in it.</summary>
    public const string OutBeforeIn = "E224";

    /// <summary>Sown after it was in the bed.</summary>
    public const string SownAfterInBed = "E225";

    /// <summary>Bed not there yet, or no longer.</summary>
    public const string BedNotThere = "E226";

    /// <summary>Name twice.</summary>
    public const string NameTwice = "E227";

    /// <summary>Zero or negative.</summary>
    public const string NotPositive = "E228";

    /// <summary>Percentage out of range.</summary>
    public const string PercentRange = "E229";

    /// <summary>Date outside any crop year.</summary>
    public const string DateOutside = "E230";

    /// <summary>Income through a channel that takes sales.</summary>
    public const string IncomeChannel = "E231";

    /// <summary>End before start.</summary>
    public const string EndBeforeStart = "E232";

    /// <summary>Payments that can't be counted.</summary>
    public const string PaymentCount = "E233";

    /// <summary>A balance-sheet item of a kind its class can't hold.</summary>
    public const string BalanceKind = "E236";

    /// <summary>A year or quarter of a project that isn't whole.</summary>
    public const string ProjectQuarter = "E237";

    /// <summary>A grant greater than what the asset cost, or money it fetched without the day it went.</summary>
    public const string AssetMoney = "E238";

    /// <summary>A liability entered below 0.</summary>
    public const string LiabilityBelowZero = "E239";

    /// <summary>Lowest temperature above the highest.</summary>
    public const string TemperatureOrder = "E235";

    /// <summary>An alias of a table without aliases.</summary>
    public const string AliasOfNothing = "E240";

    /// <summary>An alias that is itself a name.</summary>
    public const string AliasHidesName = "E241";

    /// <summary>A row of a mapping that makes no sense.</summary>
    public const string BadImport = "E242";

    /// <summary>Bed overfull.</summary>
    public const string BedOverfull = "W201";

    /// <summary>Row twice.</summary>
    public const string DuplicateRow = "W202";

    /// <summary>More than 16 hours in a day.</summary>
    public const string LongDay = "W203";

    /// <summary>Amount and price disagree.</summary>
    public const string AmountDisagrees = "W204";

    /// <summary>Weather that reads as in another unit.</summary>
    public const string WeatherUnit = "W205";

    /// <summary>Two names that read as one.</summary>
    public const string NamesAlike = "W206";

    /// <summary>An asset's sale that seems to stand in income as well.</summary>
    public const string SaleTwice = "W207";

    /// <summary>A grant for an asset that stands in income too.</summary>
    public const string GrantTwice = "W208";

    /// <summary>More salvage than what it cost.</summary>
    public const string SalvageAboveCost = "W209";

    /// <summary>A customer's unpaid bill that seems to be listed as goods.</summary>
    public const string InvoicesAsGoods = "W210";

    /// <summary>A control total the records miss.</summary>
    public const string TotalMissed = "W240";

    /// <summary>Harvest when nothing stood in a bed.</summary>
    public const string HarvestAfterBed = "W401";

    /// <summary>Sold more than picked.</summary>
    public const string SoldMoreThanPicked = "W402";

    /// <summary>Held longer than it keeps.</summary>
    public const string HeldTooLong = "W403";

    /// <summary>No storage_days.</summary>
    public const string NoStorageDays = "W404";

    /// <summary>No price.</summary>
    public const string NoListValue = "W405";

    /// <summary>Sale without a price.</summary>
    public const string PricedAtList = "W406";

    /// <summary>Share income without shares.</summary>
    public const string ShareIncomeWithoutShares = "W407";

    /// <summary>No wage.</summary>
    public const string NoHiredWage = "W408";

    /// <summary>Counted to a later crop year.</summary>
    public const string LaterCropYear = "W409";

    /// <summary>Crop without a planting.</summary>
    public const string NoCropYear = "W410";

    /// <summary>Stock without a price.</summary>
    public const string StockWithoutPrice = "W411";

    /// <summary>Sold without a planting.</summary>
    public const string UnassignedLeaving = "W412";

    /// <summary>Planting set out after the closing date.</summary>
    public const string PlantingAfterClose = "W413";

    /// <summary>Hired hours without money.</summary>
    public const string HoursWithoutMoney = "W414";

    /// <summary>Left before it was picked.</summary>
    public const string NotedBeforeHarvest = "W415";

    /// <summary>Planting without an end.</summary>
    public const string PlantingWithoutEnd = "W416";

    /// <summary>Harvest too soon after planting.</summary>
    public const string HarvestSoonAfterBed = "W417";

    /// <summary>Harvest before the planting it counts to.</summary>
    public const string HarvestBeforeBed = "W418";

    /// <summary>Crates not known of most of what was sold.</summary>
    public const string CratesUnknown = "W419";

    /// <summary>Planting that looks like next year's.</summary>
    public const string LooksLikeNextYears = "W420";

    /// <summary>Harvest long after the last planting.</summary>
    public const string HarvestLongAfterBed = "E402";

    /// <summary>Pools that serve only each other.</summary>
    public const string ClosedCircle = "E501";

    /// <summary>Nothing to share a pool by.</summary>
    public const string NoWeights = "W501";

    /// <summary>No units_per_crate.</summary>
    public const string NoUnitsPerCrate = "W502";

    /// <summary>No store.</summary>
    public const string NoStore = "W503";

    /// <summary>Used above capacity.</summary>
    public const string OverCapacity = "W504";

    /// <summary>No interest_percent.</summary>
    public const string NoInterest = "W505";

    /// <summary>No owner_wage.</summary>
    public const string NoOwnerWage = "W506";

    /// <summary>Cost that may count twice.</summary>
    public const string PercentBesideBooks = "W507";

    /// <summary>Household that may count twice.</summary>
    public const string HouseholdTwice = "W508";

    /// <summary>Use without a planting.</summary>
    public const string UseWithoutPlanting = "W509";

    /// <summary>No water_need.</summary>
    public const string NoWaterNeed = "W510";

    /// <summary>A hired hour far from the workers' wages.</summary>
    public const string HourFarFromWages = "W511";

    /// <summary>Payroll burden in the books without wages.</summary>
    public const string BurdenInBooks = "W512";

    /// <summary>Part of a year.</summary>
    public const string PartOfYear = "W513";

    /// <summary>Unpaid hours after all.</summary>
    public const string UnpaidHoursAfterAll = "W514";
}
