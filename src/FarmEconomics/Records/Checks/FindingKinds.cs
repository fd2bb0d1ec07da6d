namespace FarmEconomics.Records.Checks;

/// <summary>The kinds that only show once lots are traced (4xx) and costs shared out (5xx).</summary>
internal static class FindingKinds
{
    internal static IReadOnlyList<ProblemKind> All { get; } =
    [
        new(ProblemCodes.HarvestAfterBed, "Harvest, but none of this crop was in the ground",
            "The harvest names only its crop, and none of it was in a bed that day; "
                + "it is counted to the planting that left its bed last before.",
            "Name the planting in the harvest, or correct its out_of_bed."),
        new(ProblemCodes.SoldMoreThanPicked, "Sold more than picked",
            "More left than was picked and still kept by then; the rest stays with the crop, spread over that year's plantings.",
            "Enter the missing harvest, or correct quantity, unit or date."),
        new(ProblemCodes.HeldTooLong, "Held longer than it keeps",
            "What left was older than the crop's storage_days, and nothing younger could take its place.",
            "Correct the dates, enter the missing harvest, or correct the crop's storage_days."),
        new(ProblemCodes.NoStorageDays, "No days it keeps",
            "Without storage_days a harvest is taken to keep to the end of the crop year it was picked in.",
            "Enter how many days the crop keeps."),
        new(ProblemCodes.NoListValue, "No price for this",
            "It was sold or used through a channel that needs a price, and there is none on record; until there is one it counts as 0, "
                + "and what the crop brought in is incomplete.",
            "Enter a price in the prices table, or in the row."),
        new(ProblemCodes.PricedAtList, "Sale without a price",
            "A sale for money carries neither unit_price nor amount; it counts at its list value: the list price, else what the crop "
                + "usually sold for.",
            "Enter unit_price or amount, or, where it wasn't sold, the kind of its channel in channels.csv."),
        new(ProblemCodes.ShareIncomeWithoutShares, "Members paid, but no boxes recorded",
            "Members paid for a year in which no produce went out through that channel; "
                + "until it is recorded the payments count as other income.",
            "Enter what went into the boxes, or the crop_year the payment is for."),
        new(ProblemCodes.NoHiredWage, "No wage",
            "The hours are hired, the books hold no wages of that year, and no wage is known: the hours count, "
                + "their cost is not available.",
            "Enter the wage in the workers table, or the wages paid in expenses."),
        new(ProblemCodes.LaterCropYear, "Counted to a later crop year",
            "The row names a crop that has no planting in the row's crop year; it is counted to the next year that has one.",
            "Name the crop_year, or enter the missing planting."),
        new(ProblemCodes.NoCropYear, "No planting of this crop that year",
            "The row names a crop that has no planting in the row's crop year or later; it is not assigned to any crop.",
            "Enter the missing planting, or correct the crop or the date."),
        new(ProblemCodes.StockWithoutPrice, "Stock without a price",
            "Nothing tells what the stock on hand is worth; it is valued at 0 and the crop's output is incomplete.",
            "Enter a price in the prices table."),
        new(ProblemCodes.UnassignedLeaving, "No planting of this crop that year",
            "The crop was sold or used in a year in which it has no planting; the money is not assigned to any crop.",
            "Enter the missing planting and its harvest, or correct the crop or the date."),
        new(ProblemCodes.PlantingAfterClose, "Planting set out after the closing date",
            "The row names a planting that goes into its bed after the closing date; it is not assigned to any crop in this review.",
            "Set as_of to a later date, or correct the planting's in_bed."),
        new(ProblemCodes.HoursWithoutMoney, "Hired hours with no wages to pay them",
            "The books hold wages of the year, but each row names a crop, planting, channel or pool, so nothing is left to spread over the "
                + "hired hours; they count at no cost.",
            "Leave wages that were paid for several things without a name, or ignore this if the named rows hold all wages."),
        new(ProblemCodes.NotedBeforeHarvest, "Left before it was picked",
            "Nothing at hand could fill the row, and a harvest dated a few days later covers it.",
            "Correct the date of the row or of the harvest."),
        new(ProblemCodes.PlantingWithoutEnd, "Planting without an end",
            "The planting has no out_of_bed and nothing was picked of it; it is taken out of its bed after twice its crop's usual stay, "
                + "so that it carries no cost beyond.",
            "Enter the day the bed was free again."),
        new(ProblemCodes.HarvestSoonAfterBed, "Harvest too soon after planting",
            "The harvest names only its crop, and the plantings in a bed that day had not stood there long enough; "
                + "it is counted to the planting that left its bed last before, if one did not long ago.",
            "Name the planting in the harvest, or correct the dates."),
        new(ProblemCodes.HarvestBeforeBed, "Harvest before the planting it counts to",
            "The harvest names only its crop, nothing of it stood in a bed or had left one not long ago; "
                + "it is counted to the next planting of that crop year.",
            "Name the planting in the harvest, or enter the planting it came from (volunteers too)."),
        new(ProblemCodes.CratesUnknown, "Crates not known of most of what was sold",
            "The pool is shared by crates, and crops with over half of the sales value don't say how many of their units fill one; "
                + "the pool is divided by sales value.",
            "Enter units_per_crate of these crops."),
        new(ProblemCodes.LooksLikeNextYears, "Planting that looks like next year's",
            "Nothing is picked of the planting yet, and by its date it will be picked in a later crop year (garlic set in October); "
                + "without a crop_year it counts in the one it was set in, with its length, hours and costs.",
            "Enter the crop year it will be picked in as crop_year, or, where it failed, the day its bed was free as out_of_bed."),
        new(ProblemCodes.HarvestLongAfterBed, "Harvest long after the last planting",
            "The harvest names only its crop, the last planting of it left its bed too long before, and none came later that crop year.",
            "Name the planting in the harvest, correct its out_of_bed, or enter the planting it came from (volunteers too)."),
        new(ProblemCodes.ClosedCircle, "Pools that serve only each other",
            "The pools have no user outside their circle, so their cost can't reach a crop.",
            "Enter a user outside the circle for one of them: if the boiler heats only the pump house and the pump serves only the boiler, "
                + "say which crops or greenhouse the boiler heats."),
        new(ProblemCodes.NoWeights, "Nothing to share a pool by",
            "The pool holds money or hours but nothing of its basis; they are not assigned to any crop.",
            "Give the pool another basis, or enter the records its basis needs."),
        new(ProblemCodes.NoUnitsPerCrate, "No size of a crate",
            "The pool is shared by crates and the crop doesn't say how many of its units fill one; "
                + "its crates are estimated from its sales value, without one it pays none of the cost.",
            "Enter how many units fill a crate."),
        new(ProblemCodes.NoStore, "No store",
            "There are several stores and the crop, which was held, names none, so it pays none of their cost.",
            "Enter the pool or pools the crop is kept in."),
        new(ProblemCodes.OverCapacity, "Used above capacity",
            "The pool was used more than its capacity; nothing of it counts as unused.",
            "Correct the capacity or the use."),
        new(ProblemCodes.NoInterest, "No interest rate",
            "There are assets but no cost of capital: ownership cost is not available, nor are infrastructure and net return.",
            "Enter interest_percent in the farm table; 0 is a value too."),
        new(ProblemCodes.NoOwnerWage, "No worth of an own hour",
            "There are unpaid owner hours but no value for one: their value is not available, nor are labor and net return.",
            "Enter owner_wage in the farm table."),
        new(ProblemCodes.PercentBesideBooks, "Cost that may count twice",
            "The asset carries repairs_percent or insurance_tax_percent although the books hold such a row for its pool.",
            "Leave the percent blank, or take the row off the pool."),
        new(ProblemCodes.HouseholdTwice, "Household that may count twice",
            "The household stands among the pool's users although farm_percent already takes its part out.",
            "Keep one of the two."),
        new(ProblemCodes.UseWithoutPlanting, "Use without a planting",
            "The user of the pool has no planting in that crop year; its part is not assigned.",
            "Correct the user or the crop_year."),
        new(ProblemCodes.NoWaterNeed, "No need of water",
            "The pool is shared by water and the crop doesn't say how much it needs; it is taken as 1, the average.",
            "Enter the crop's relative need of water."),
        new(ProblemCodes.HourFarFromWages, "A hired hour far from the workers' wages",
            "Wages and what is paid on top of them, over the hired hours, come to less than three quarters or more than one and a half "
                + "times what workers.csv says an hour is paid. Hours left out of the log make an hour look dear; "
                + "wages left out of the books make it look cheap.",
            "Enter the missing hours or wages, or correct the wage in workers.csv."),
        new(ProblemCodes.BurdenInBooks, "Payroll burden in the books without wages",
            "The books of the year hold payroll taxes, workers' compensation or benefits but no wages. Hired hours cost wage x hours; "
                + "the percent that stands in for such rows is not added on top of them.",
            "Enter the wages in expenses.csv; or leave the rows out and let payroll_burden_percent stand for them."),
        new(ProblemCodes.PartOfYear, "Part of a year",
            "The closing date lies inside the crop year, so only the months that have begun by then carry their part of yearly costs: "
                + "equipment and buildings, their repairs and insurance by percent, and capacity.",
            "Nothing, while the year goes on. If it is over, set as_of to its last day."),
        new(ProblemCodes.UnpaidHoursAfterAll, "Unpaid hours after all",
            "The setting unpaid_hours says that nobody works unpaid, but the log holds hours of an owner. They count.",
            "Take the setting out of farm.csv, or correct the worker's kind."),
    ];
}
