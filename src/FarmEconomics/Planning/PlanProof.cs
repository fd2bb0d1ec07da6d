using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Planning;

/// <summary>
/// The proof of a plan: written as records of the year to come and reviewed by the ordinary engine, it must bring the same contribution to
/// the cent, and sell of every crop no more than it has picked by then. Payments for shares, trips and shared cost are the same either way
/// and in neither.
/// </summary>
/// <param name="Planned">What the plan's own rows sum to: sales less fees, hours at their cost, and what varies.</param>
/// <param name="Reviewed">What the engine makes of them.</param>
/// <param name="Objective">The plan's worth before its rows were rounded, without what is picked after the year.</param>
public sealed record PlanProof(Money Planned, Money Reviewed, double Objective)
{
    private const string OwnHand = "own hours of the plan";
    private const string HiredHand = "hired hours of the plan";
    private const string Work = "work of the plan";
    private const string Supplies = "supplies of the plan";
    private static readonly SourceLine Source = new("plan", 0);

    /// <summary>What becomes of each crop's produce, in the model's order.</summary>
    public IReadOnlyList<PlanProduce> Produce { get; init; } = [];

    /// <summary>True when both agree to the cent and every crop's produce adds up.</summary>
    public bool Holds => Planned == Reviewed && Produce.All(one => one.AddsUp);

    /// <summary>Proves a plan.</summary>
    /// <param name="records">The farm's records.</param>
    /// <param name="model">The model.</param>
    /// <param name="draft">The plan's rows.</param>
    /// <param name="quantities">What it picks, sells and works.</param>
    /// <param name="feet">Bed-feet of each sowing.</param>
    /// <returns>The proof.</returns>
    public static PlanProof Of(FarmRecords records, PlanModel model, PlanDraft draft, PlanQuantities quantities, IReadOnlyList<double> feet)
    {
        ArgumentNullException.ThrowIfNull(records);
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(draft);
        ArgumentNullException.ThrowIfNull(quantities);
        ArgumentNullException.ThrowIfNull(feet);
        Writer writer = new(records, model);
        writer.AddPlantings(draft);
        writer.AddProduce(draft, quantities, feet);
        writer.AddWorkAndCost(quantities, feet);
        FarmReview review = FarmReview.Of(writer.Link());
        SeasonReview season = review.Season(model.CropYear);
        SeasonCosts costs = SeasonCosts.Of(season);

        // What is left of the season before is sold first: what was paid for it is the plan's all the same.
        decimal sold = review
            .CropYears.SelectMany(review.Trace.PartsOfYear)
            .Where(part => IsPlans(part.Disposition.Row) && part.Enterprise is not null)
            .Where(part => part.Disposition.Channel.Kind != ChannelKind.Share)
            .Sum(part => (part.Amount - part.Fee).Amount);

        // What plantings that stand already have cost before is the same either way.
        decimal cost = season.Crops.SelectMany(crop => crop.Enterprises).SelectMany(costs.DirectCharges)
            .Where(charge => IsPlans(charge.Origin) && !charge.IsFee)
            .Sum(charge => charge.Amount.Amount);
        return new PlanProof(writer.Planned, new Money(sold - cost), writer.Objective)
        {
            Produce = [.. ProduceOf(model, review.Trace).Where(one => one.Picked > 0m || one.Sold > 0m)],
        };
    }

    private static IEnumerable<PlanProduce> ProduceOf(PlanModel model, FarmTrace trace)
    {
        ILookup<string, Lot> lotsOf = trace.Lots.Where(lot => IsPlans(lot.Row)).ToLookup(lot => lot.Enterprise.Crop.Name);
        ILookup<string, Disposition> soldOf = trace.Dispositions.Where(one => IsPlans(one.Row)).ToLookup(one => one.Crop.Name);
        foreach (string crop in model.Crops.Select(crop => crop.Name))
        {
            Lot[] lots = [.. lotsOf[crop]];
            DispositionPart[] parts = [.. soldOf[crop].SelectMany(one => one.Parts)];
            yield return new PlanProduce(
                crop,
                lots.Sum(lot => lot.Quantity),
                soldOf[crop].Sum(one => one.Quantity),
                lots.Sum(lot => lot.Remaining)
            )
            {
                FromBefore = parts.Where(part => part.Lot is { } lot && !IsPlans(lot.Row)).Sum(part => part.Quantity),
                First = parts.Where(part => part.Lot is null).Select(part => (DateOnly?)part.Disposition.Date).Min(),
            };
        }
    }

    private static bool IsPlans(IRecordRow row) => row.Source == Source;

    /// <summary>Writes the rows of the year to come into a copy of the records, and adds them up as it goes.</summary>
    private sealed class Writer
    {
        private readonly FarmRecords records;
        private readonly PlanModel model;
        private readonly RecordsCopy copy;
        private readonly DateOnly start;
        private decimal planned;

        internal Writer(FarmRecords records, PlanModel model)
        {
            (this.records, this.model) = (records, model);
            start = records.Settings.StartOf(model.CropYear);
            copy = new RecordsCopy(records)
            {
                Settings = records.Settings with
                {
                    AsOf = records.Settings.EndOf(model.CropYear).AddDays(-1),
                    PayrollBurdenPercent = 0m,
                    OwnerWage = (decimal)model.Hours.OwnCost,
                },
            };
            LeaveOutTheYear();
            Add<WorkerRow>(("worker", OwnHand), ("kind", WorkerKind.Owner), ("wage", Rate(model.Hours.OwnCost)));
            Add<TaskRow>(("task", Work), ("stage", Stage.Grow));
            Add<CategoryRow>(
                ("category", Supplies),
                ("class", ExpenseClass.Operating),
                ("statement_line", StatementLine.Materials),
                ("varies_with", CostDriver.Length)
            );
            Add<WorkerRow>(("worker", HiredHand), ("kind", WorkerKind.Hired), ("wage", Rate(model.Hours.HiredCost)));
        }

        internal Money Planned => new(planned);

        internal double Objective { get; private set; }

        internal void AddPlantings(PlanDraft draft)
        {
            HashSet<string> standing = [.. model.Sowings.SelectMany(sowing => sowing.Standing).Select(one => one.Planting)];
            copy.Remove(records.Tables.Plantings.Where(row => row.InBed >= start && !standing.Contains(row.Planting.Trim())));
            foreach (DraftPlanting one in draft.Plantings.Where(one => one.CropYear == model.CropYear && !standing.Contains(one.Planting)))
            {
                Add<PlantingRow>(
                    ("planting", one.Planting),
                    ("crop", one.Crop),
                    ("bed", one.Bed),
                    ("bed_feet", one.BedFeet),
                    ("in_bed", one.In),
                    ("out_of_bed", one.Out),
                    ("crop_year", one.CropYear)
                );
            }
        }

        internal void AddProduce(PlanDraft draft, PlanQuantities quantities, IReadOnlyList<double> feet)
        {
            double[] parts = [.. model.Crops.Select((_, crop) => PartInRows(crop, draft, quantities, feet))];
            foreach (((int crop, int week), double units) in quantities.Picked)
            {
                Add<HarvestRow>(
                    ("date", Day(week)),
                    ("crop", model.Crops[crop].Name),
                    ("quantity", decimal.Round((decimal)(units * parts[crop]), 3) + 0.002m)
                );
            }

            foreach (DraftSale sale in draft.Sales)
            {
                Channel channel = records.Channel(sale.Channel);
                decimal amount = Money.Rounded(sale.Quantity * sale.Price).Amount;
                bool paid = channel.Kind != ChannelKind.Share;
                Add<SaleRow>(
                    ("date", sale.From.AddDays(5)),
                    ("crop", sale.Crop),
                    ("channel", sale.Channel),
                    ("quantity", sale.Quantity),
                    ("amount", paid ? amount : null)
                );
                planned += paid ? amount - Money.Rounded(amount * (channel.Row.FeePercent ?? 0m) / 100m).Amount : 0m;
            }

            Objective += quantities.Sales.Sum(sale => sale.Units * sale.Price * (1.0 - sale.Fee));
        }

        internal void AddWorkAndCost(PlanQuantities quantities, IReadOnlyList<double> feet)
        {
            for (int week = 0; week < PlanModel.Weeks; week++)
            {
                double[] hours = HoursOf(week, quantities, feet);
                double all = quantities.Own[week] + quantities.Hired[week];
                double own = all > 0.0 ? quantities.Own[week] / all : 1.0;
                for (int c = 0; c < hours.Length; c++)
                {
                    AddHours((c, week), OwnHand, hours[c] * own, model.Hours.OwnCost);
                    AddHours((c, week), HiredHand, hours[c] * (1.0 - own), model.Hours.HiredCost);
                }
            }

            for (int c = 0; c < model.Crops.Count; c++)
            {
                double cost = CostOf(c, quantities, feet);
                decimal amount = Money.Rounded((decimal)cost).Amount;
                Objective -= cost;
                if (amount != 0m)
                {
                    planned -= amount;
                    Add<ExpenseRow>(
                        ("date", start.AddDays(180)),
                        ("amount", amount),
                        ("category", Supplies),
                        ("crop", model.Crops[c].Name)
                    );
                }
            }
        }

        internal FarmRecords Link() => copy.Link();

        // What the plan picks falls in its weeks; how much it is, its rows say.
        private double PartInRows(int crop, PlanDraft draft, PlanQuantities quantities, IReadOnlyList<double> feet)
        {
            decimal told = draft.Plantings.Where(one => one.CropYear == model.CropYear && one.Crop == model.Crops[crop].Name)
                .Sum(one => one.Yield);
            double after = Enumerable.Range(0, feet.Count)
                .Where(i => model.Sowings[i].Crop == crop && model.Sowings[i].Later is null)
                .Sum(i => feet[i] * model.Sowings[i].LaterUnits);
            double picked = quantities.Picked.Where(one => one.Key.Crop == crop).Sum(one => one.Value);
            return picked > 0.0 ? Math.Max(0.0, (double)told - after) / picked : 0.0;
        }

        private static decimal Rate(double cost) => decimal.Round((decimal)cost, 4);

        private DateOnly Day(int week) => start.AddDays((7 * week) + 5);

        private double[] HoursOf(int week, PlanQuantities quantities, IReadOnlyList<double> feet)
        {
            double[] hours = new double[model.Crops.Count];
            for (int i = 0; i < feet.Count; i++)
            {
                hours[model.Sowings[i].Crop] += model.Sowings[i].Later is null ? feet[i] * model.Sowings[i].Hours[week] : 0.0;
            }

            for (int c = 0; c < hours.Length; c++)
            {
                hours[c] += quantities.Picked.GetValueOrDefault((c, week)) * model.Crops[c].HandlingHours;
            }

            return hours;
        }

        private double CostOf(int crop, PlanQuantities quantities, IReadOnlyList<double> feet)
        {
            double ofFeet = Enumerable
                .Range(0, feet.Count)
                .Where(i => model.Sowings[i].Crop == crop && model.Sowings[i].Later is null)
                .Sum(i => feet[i] * model.Sowings[i].Cost);
            double ofPicked = quantities.Picked.Where(one => one.Key.Crop == crop).Sum(one => one.Value * model.Crops[crop].PickedCost);
            double sold = quantities.Sales.Where(sale => sale.Crop == crop).Sum(sale => sale.Units);
            double boxed = quantities.Boxed.Where(one => one.Key.Crop == crop).Sum(one => one.Value);
            return ofFeet + ofPicked + (model.Crops[crop].SoldCost * (sold + boxed));
        }

        private void AddHours((int Crop, int Week) at, string worker, double hours, double cost)
        {
            decimal logged = decimal.Round((decimal)hours, 3);
            Objective -= hours * cost;
            if (logged > 0m)
            {
                planned -= Money.Rounded(logged * Rate(cost)).Amount;
                Add<LaborRow>(
                    ("date", Day(at.Week)),
                    ("worker", worker),
                    ("hours", logged),
                    ("task", Work),
                    ("crop", model.Crops[at.Crop].Name)
                );
            }
        }

        /// <summary>
        /// What the records hold of the year to come already, what stands at its beginning aside, would take part of the plan's harvest,
        /// sell it, or pay for its hours. All else is of other rows, which the proof doesn't count.
        /// </summary>
        private void LeaveOutTheYear()
        {
            copy.Remove(records.Tables.Harvests.Where(row => row.Date >= start));
            copy.Remove(records.Tables.Sales.Where(row => row.Date >= start));
            copy.Remove(records.Tables.Expenses.Where(row => row.Date >= start || row.CropYear >= model.CropYear));
        }

        private void Add<T>(params (string Column, object? Value)[] cells)
            where T : struct, IRecordRow<T>
        {
            RowValues row = new() { Source = Source };
            foreach ((string column, object? value) in cells)
            {
                if (value is not null)
                {
                    row[column] = value;
                }
            }

            copy.Add<T>(row);
        }
    }
}
