using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>
/// Takes crops out of the records: their plantings, harvests and sales, their own rows of work and of the books, and of every unnamed row
/// that varies with what goes the part that was charged to them; boxes are refilled. Run through the engine it does to the farm what
/// <see cref="AvoidableCost"/> says, to the cent (docs/methods.md, section 16). Values of what is moved are held as reviewed.
/// </summary>
internal sealed class CropRemoval
{
    private readonly FarmReview review;
    private readonly FarmRecords records;
    private readonly RecordsCopy copy;
    private readonly HashSet<Crop> gone;
    private readonly HashSet<string> goneNames;
    private readonly WorkRemoval work;
    private readonly Dictionary<ExpenseRow, decimal> named = [];

    private CropRemoval(FarmReview review, RecordsCopy copy, IEnumerable<Crop> crops)
    {
        this.review = review;
        this.copy = copy;
        records = review.Records;
        gone = [.. crops];
        goneNames = new(
            gone.Select(crop => crop.Name)
                .Concat(records.Plantings.Where(planting => gone.Contains(planting.Crop)).Select(planting => planting.Name)),
            StringComparer.OrdinalIgnoreCase
        );
        work = new WorkRemoval(review, copy);
    }

    internal static void Apply(FarmReview review, RecordsCopy copy, IEnumerable<Crop> crops) =>
        new CropRemoval(review, copy, crops).Apply();

    private void Apply()
    {
        List<Departure> departures = [];
        foreach (int year in review.Charges.Years)
        {
            SeasonCosts costs = SeasonCosts.Of(review.Season(year));
            List<EnterpriseBudget> budgets = [.. costs.Season.Crops.Where(crop => gone.Contains(crop.Crop!))];
            if (budgets.Count > 0)
            {
                Departure departure = costs.Avoidable.Without(budgets, 1m, gone);
                departures.Add(departure);
                TakeNamed(costs, budgets);
                TakeShared(costs, budgets, departure);
            }

            KeepEstablishment(costs.Season);
        }

        TakeProduce();
        HoldHarvests();
        FinishBooks();
        work.Finish();
        BoxMoves.Apply(review, copy, departures.SelectMany(departure => departure.Refill.Items), gone);
        KeepYears();
    }

    /// <summary>
    /// What establishing perennials took is spent either way: of those taken out no crop carries it, of others it stays as reviewed, though
    /// more shared cost falls on them.
    /// </summary>
    private void KeepEstablishment(SeasonReview season)
    {
        copy.HoldEstablishment(season.EstablishmentLines);
        Money spent = Money.Sum(season.Crops.Where(crop => gone.Contains(crop.Crop!)).Select(crop => crop.Sums.Establishment));
        if (spent != Money.Zero)
        {
            copy.Add<ExpenseRow>(Bill(records.AsOf, season.CropYear, spent.Amount));
        }
    }

    private void TakeNamed(SeasonCosts costs, List<EnterpriseBudget> budgets)
    {
        foreach (Charge charge in budgets.SelectMany(budget => budget.Enterprises).SelectMany(costs.DirectCharges))
        {
            if (charge.IsFee || charge.VariesWith is CostDriver.Fixed or CostDriver.Trips)
            {
                continue;
            }

            if (charge.Origin is ExpenseRow row)
            {
                named[row] = named.GetValueOrDefault(row) + charge.Amount.Amount;
            }
            else
            {
                work.Take(charge, charge.Amount.Amount, charge.Hours);
            }
        }
    }

    /// <summary>
    /// What was charged to the crops through pools, and trips no longer made, comes off the pools' rows of the same driver.
    /// </summary>
    private void TakeShared(SeasonCosts costs, List<EnterpriseBudget> budgets, Departure departure)
    {
        HashSet<Enterprise> own = [.. budgets.SelectMany(budget => budget.Enterprises)];
        foreach (PoolResult pool in costs.Season.Pools)
        {
            foreach (IGrouping<CostStream, PoolCharge> stream in pool.Charges.GroupBy(charge => charge.Source.Stream))
            {
                decimal[] off = new decimal[Enum.GetValues<CostDriver>().Length];
                foreach (
                    Money[] parts in stream
                        .Where(charge => charge.Enterprise is { } enterprise && own.Contains(enterprise))
                        .Select(SeasonCosts.ByBehavior)
                )
                {
                    for (int i = 0; i < parts.Length; i++)
                    {
                        off[i] += (CostDriver)i is CostDriver.Fixed or CostDriver.Trips ? 0m : parts[i].Amount;
                    }
                }

                off[(int)CostDriver.Trips] = departure
                    .Trips.Where(trip => trip.Pool == pool.Pool && trip.Stream == stream.Key)
                    .Sum(trip => trip.Amount.Amount);
                for (int i = 0; i < off.Length; i++)
                {
                    TakeOff(pool, stream.Key, (CostDriver)i, new Money(off[i]));
                }
            }
        }
    }

    private void TakeOff(PoolResult pool, CostStream stream, CostDriver driver, Money off)
    {
        if (off == Money.Zero)
        {
            return;
        }

        List<Charge> rows =
        [
            .. pool.Rows.Where(row => row.Stream == stream && row.Amount.Amount > 0m && PoolSharing.DriverOf(row, pool.Pool) == driver),
        ];
        rows = rows.Count > 0 ? rows : [.. pool.Rows.Where(row => row.Stream == stream && row.Amount != Money.Zero)];
        Money[] parts = LargestRemainder.Split(off, rows.ConvertAll(row => Math.Abs(row.Amount.Amount)));
        for (int i = 0; i < parts.Length; i++)
        {
            if (parts[i] == Money.Zero)
            {
                continue;
            }

            if (rows[i].Origin is ExpenseRow row)
            {
                Credit(row, parts[i].Amount, rows[i].HomeYear);
            }
            else
            {
                work.Take(rows[i], parts[i].Amount, rows[i].Hours * parts[i].Amount / rows[i].Amount.Amount);
            }
        }
    }

    /// <summary>A row like another that takes money back.</summary>
    private void Credit(ExpenseRow row, decimal amount, int year)
    {
        RowValues credit = copy.Like(row);
        credit["amount"] = -amount;
        credit["farm_percent"] = null;
        credit["crop_year"] = year;
        copy.Add<ExpenseRow>(credit);
    }

    private void TakeProduce()
    {
        copy.Remove(records.Tables.Plantings.Where(row => gone.Contains(records.Crop(row.Crop))));
        copy.Remove(
            records.Tables.Harvests.Where(row =>
                !string.IsNullOrWhiteSpace(row.Planting) ? goneNames.Contains(row.Planting.Trim()) : gone.Contains(records.Crop(row.Crop!))
            )
        );
        copy.Remove(records.Tables.Use.Where(row => goneNames.Contains(row.User.Trim())));
        copy.Remove(records.Tables.Loads.Where(row => goneNames.Contains(row.User.Trim())));
        foreach (Disposition leaving in review.Trace.Dispositions.Where(leaving => gone.Contains(leaving.Crop)))
        {
            // What belongs to no planting is one part, the last.
            if (leaving.Parts is [.., { Enterprise: null } loose])
            {
                KeepUnassigned(leaving, loose);
            }
            else
            {
                copy.Remove([leaving.Row]);
            }
        }
    }

    /// <summary>
    /// What no planting could take stays where it was, at its money: that of shares and household use is its list value. Of what has no
    /// price on record it stays unknown.
    /// </summary>
    private void KeepUnassigned(Disposition leaving, DispositionPart loose)
    {
        bool atList = leaving.Channel.Kind is ChannelKind.Share or ChannelKind.Household;
        decimal amount = (atList ? loose.ListValue : loose.Amount).Amount;
        copy.Scale(leaving.Row, SaleRow.QuantityColumn, leaving.Quantity == 0m ? 1m : loose.Quantity / leaving.Quantity);
        if (!leaving.ValueIncomplete)
        {
            copy.Set(leaving.Row, SaleRow.AmountColumn, amount);
        }

        decimal fee = atList ? 0m : loose.Fee.Amount - Money.Rounded(amount * (leaving.Channel.Row.FeePercent ?? 0m) / 100m).Amount;
        if (fee != 0m && leaving.Fee != Money.Zero)
        {
            // A part of a fee rounded as a whole is not the fee of a part.
            copy.Add<ExpenseRow>(Bill(leaving.Row.Date, leaving.Window, fee));
        }
    }

    /// <summary>Harvests of other crops stay with the plantings they were divided among, though beds stand empty now.</summary>
    private void HoldHarvests()
    {
        foreach (
            IGrouping<HarvestRow, Lot> row in review.Trace.Lots.Where(lot => !gone.Contains(lot.Enterprise.Crop)).GroupBy(lot => lot.Row)
        )
        {
            if (!string.IsNullOrWhiteSpace(row.Key.Planting) || row.Any(lot => lot.Enterprise.Planting.Beds.All(bed => bed.In > lot.Date)))
            {
                continue;
            }

            copy.Remove([row.Key]);
            foreach (Lot lot in row)
            {
                copy.Add<HarvestRow>(new()
                {
                    ["date"] = row.Key.Date,
                    ["planting"] = lot.Enterprise.Planting.Name,
                    ["quantity"] = lot.Quantity,
                    ["culled"] = lot.Culled,
                    Source = row.Key.Source,
                });
            }
        }
    }

    /// <summary>
    /// Rows of the books that name the crops keep what stays and the household's part; those that name a planting now name its crop, in the
    /// same year.
    /// </summary>
    private void FinishBooks()
    {
        foreach (
            ExpenseRow row in records.Expenses.Where(row =>
                !string.IsNullOrWhiteSpace(row.Planting) && goneNames.Contains(row.Planting.Trim())
            )
        )
        {
            copy.Set(row, ExpenseRow.CropYearColumn, review.Charges.HomeYearOf(row));
            copy.Set(row, ExpenseRow.CropColumn, records.FindPlanting(row.Planting!)!.Crop.Name);
            copy.Set(row, ExpenseRow.PlantingColumn, null);
        }

        foreach ((ExpenseRow row, decimal off) in named)
        {
            decimal farm = Money.Rounded(row.Amount * (row.FarmPercent ?? 100m) / 100m).Amount;
            if (farm != row.Amount)
            {
                RowValues household = copy.Like(row);
                household["amount"] = row.Amount - farm;
                household["farm_percent"] = 0m;
                copy.Add<ExpenseRow>(household);
            }

            copy.Set(row, ExpenseRow.AmountColumn, farm - off);
            copy.Set(row, ExpenseRow.FarmPercentColumn, null);
        }
    }

    /// <summary>The last date in the records stays what it was, and so do the years that yearly costs are charged to.</summary>
    private void KeepYears()
    {
        foreach (int year in review.Charges.Years)
        {
            copy.Add<ExpenseRow>(Bill(records.AsOf, year, 0m));
        }
    }

    /// <summary>A bill of a year that names nothing.</summary>
    internal static RowValues Bill(DateOnly day, int year, decimal amount) => new()
    {
        ["date"] = day,
        ["category"] = "supplies",
        ["crop_year"] = year,
        ["amount"] = amount,
        Source = new SourceLine("without", 0),
    };
}
