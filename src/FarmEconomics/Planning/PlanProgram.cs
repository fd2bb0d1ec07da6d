using FarmEconomics.Planning.Programs;

namespace FarmEconomics.Planning;

/// <summary>
/// A plan's linear program: lengths first, then for each season what is picked, kept, boxed and sold, and who works. Sales, less fees,
/// packaging, bought-in produce, hours at their cost, and what varies with length and quantity. A two-stage program with simple recourse;
/// source: Birge and Louveaux, Introduction to Stochastic Programming, ch. 1.
/// </summary>
internal sealed class PlanProgram
{
    // Lengths that stand are sums of rounded ones.
    private const double Slack = 1e-6;
    private readonly PlanModel plan;
    private readonly PlanSeason[] seasons;
    private readonly bool beyond;
    private readonly List<PlanLimitKey> keys = [];

    /// <param name="plan">The model.</param>
    /// <param name="seasons">The seasons that may come; their chances sum to 1.</param>
    /// <param name="beyond">True: hours may go beyond what there is, at three times a hired hour, so that any plan can be scored.</param>
    /// <param name="tail">Weight of the mean of the worst seasons, 0 to 1; the rest counts the expected income.</param>
    internal PlanProgram(PlanModel plan, IReadOnlyList<PlanSeason>? seasons = null, bool beyond = false, double tail = 0.0)
    {
        this.plan = plan;
        this.seasons = [.. seasons ?? [PlanSeason.Mean(plan.Crops.Count)]];
        this.beyond = beyond;

        // The worst of a single season is that season.
        tail = this.seasons.Length > 1 ? tail : 0.0;
        Lengths = [.. plan.Sowings.Select(sowing => Model.AddQuantity(
            plan.Crops[sowing.Crop].Name, (sowing.Later ?? sowing.EarnsAfter) - sowing.Cost, sowing.Bounds.Most, sowing.Bounds.Least))];
        ChargeChanges();
        LimitBeds();
        LimitTrays();
        LimitCrops();
        LimitRotation();
        PlanWaterLimits.Add(plan, this);
        Incomes = [.. Enumerable.Range(0, this.seasons.Length).Select(i => AddSeason(this.seasons[i], 1.0 - tail))];
        PlanCashLimits.Add(plan, this);
        if (tail > 0.0)
        {
            double[] chances = [.. this.seasons.Select(season => season.Chance)];
            SeasonRisk.AddTailMean(Model, [.. Incomes.Select(season => season.Income)], chances, PlanSettings.WorstPart, tail);
        }
    }

    internal LinearModel Model { get; } = new();

    /// <summary>The quantity that holds each sowing's length.</summary>
    internal int[] Lengths { get; }

    /// <summary>What each limit of <see cref="Model"/> is a limit of.</summary>
    internal IReadOnlyList<PlanLimitKey> Keys => keys;

    /// <summary>The quantities of each season.</summary>
    internal PlanSeasonPlaces[] Incomes { get; }

    /// <summary>The seasons, in the order of <see cref="Incomes"/>.</summary>
    internal IReadOnlyList<PlanSeason> Seasons => seasons;

    /// <summary>The quantities that hold cash at the end of each month; none where it isn't limited.</summary>
    internal List<int> Cash { get; } = [];

    /// <summary>The quantities that hold what is short of cash by month, where that may be: no money of the plan's.</summary>
    internal List<int> CashShort { get; } = [];

    /// <summary>What an own hour is worth.</summary>
    internal double OwnHour => plan.Hours.OwnCost;

    internal int CropOf(int sowing) => plan.Sowings[sowing].Crop;

    internal int Limit(PlanLimitKey key, double least, double most)
    {
        // Limits that the helper of the worst seasons adds come after these, so places agree.
        keys.Add(key);
        return Model.AddLimit(key.Kind.ToString(), least, most);
    }

    /// <summary>The quantities that hold how far lengths lie from this year's: no money of the plan's.</summary>
    internal HashSet<int> Changes { get; } = [];

    private void ChargeChanges()
    {
        for (int i = 0; plan.ChangeCost > 0.0 && i < Lengths.Length; i++)
        {
            if (plan.Sowings[i].Standing.Count == 0)
            {
                int same = Limit(new(PlanLimitKind.Balance, plan.Sowings[i].Crop, -1), plan.Sowings[i].Today, plan.Sowings[i].Today);
                Model.Set(same, Lengths[i], 1.0);
                int more = Model.AddQuantity("more", -plan.ChangeCost), fewer = Model.AddQuantity("fewer", -plan.ChangeCost);
                Model.Set(same, more, -1.0);
                Model.Set(same, fewer, 1.0);
                Changes.UnionWith([more, fewer]);
            }
        }
    }

    private int AtMost(PlanLimitKey key, double most) => Limit(key, double.NegativeInfinity, most);

    private int[] SowingsThat(Func<PlanSowing, bool> holds) => [.. Enumerable.Range(0, Lengths.Length).Where(i => holds(plan.Sowings[i]))];

    private void LimitBeds()
    {
        for (int cover = 0; cover < plan.Covers.Count; cover++)
        {
            for (int week = 0; week < PlanModel.Weeks; week++)
            {
                int[] there = SowingsThat(sowing => sowing.Cover == cover && sowing.Holds(week));
                if (there.Length > 0)
                {
                    int beds = AtMost(new(PlanLimitKind.Beds, cover, week), plan.Covers[cover].Feet[week]);
                    Array.ForEach(there, i => Model.Set(beds, Lengths[i], 1.0));
                }
            }
        }
    }

    private void LimitTrays()
    {
        for (int week = 0; plan.Trays is { } most && week < PlanModel.Weeks; week++)
        {
            int trays = AtMost(new(PlanLimitKind.Trays, 0, week), most[week]);
            for (int i = 0; i < Lengths.Length; i++)
            {
                Model.Set(trays, Lengths[i], plan.Sowings[i].Trays[week]);
            }
        }
    }

    private void LimitCrops()
    {
        for (int c = 0; c < plan.Crops.Count; c++)
        {
            int[] own = SowingsThat(sowing => sowing.Crop == c);
            (double least, double most) = plan.Crops[c].Wish;
            if (least > 0.0 || !double.IsInfinity(most))
            {
                int wish = Limit(new(PlanLimitKind.Wish, c, -1), least, most);
                Array.ForEach(own, i => Model.Set(wish, Lengths[i], 1.0));
            }

            int[] sown = [.. own.Where(i => plan.Sowings[i].Standing.Count == 0)];
            int[] later = [.. sown.Where(i => plan.Sowings[i].PartAfter > 0.0)];
            if (later.Length > 0)
            {
                // Of what is picked over the turn of the year only that part counts, against all of the crop's length.
                bool turns = Array.Exists(later, i => plan.Sowings[i].Later is null);
                double today = sown.Where(i => turns || plan.Sowings[i].Later is not null)
                    .Sum(i => Math.Max(plan.Sowings[i].Today, plan.Sowings[i].Bounds.Least));
                int limit = AtMost(new(PlanLimitKind.Later, c, -1), today + Slack);
                Array.ForEach(later, i => Model.Set(limit, Lengths[i], plan.Sowings[i].PartAfter));
            }
        }
    }

    private void LimitRotation()
    {
        for (int place = 0; place < plan.Rotation.Count; place++)
        {
            int limit = AtMost(new(PlanLimitKind.Rotation, place, -1), plan.Rotation[place].Feet);
            int[] held = SowingsThat(sowing => plan.Rotation[place].Holds(plan, sowing));
            Array.ForEach(held, i => Model.Set(limit, Lengths[i], 1.0));
        }
    }

    /// <summary>
    /// The income of a season as a free quantity, and all it is made of; what lengths cost is the same in every season and stands in the
    /// objective. In a program of one season the parts stand there as well; else the season's income does.
    /// </summary>
    private PlanSeasonPlaces AddSeason(PlanSeason season, double weight)
    {
        bool alone = seasons.Length == 1;
        PlanSeasonPlaces places = new();
        if (!alone)
        {
            places.Income = Model.AddQuantity("income of a season", season.Chance * weight, least: double.NegativeInfinity);
            int sum = Limit(new(PlanLimitKind.Balance, 0, -1), 0.0, 0.0);
            Model.Set(sum, places.Income, -1.0);
            places.Sum = sum;
        }

        AddHoursAndBoxes(places);
        for (int c = 0; c < plan.Crops.Count; c++)
        {
            AddCrop(c, season, places);
        }

        return places;
    }

    private int Part(PlanSeasonPlaces places, double worth, double most = double.PositiveInfinity)
    {
        int quantity = Model.AddQuantity("", places.Sum is null ? worth : 0.0, most);
        if (places.Sum is { } sum)
        {
            Model.Set(sum, quantity, worth);
        }

        return quantity;
    }

    private void AddHoursAndBoxes(PlanSeasonPlaces places)
    {
        PlanHours there = plan.Hours;
        for (int week = 0; week < PlanModel.Weeks; week++)
        {
            int hours = AtMost(new(PlanLimitKind.Hours, 0, week), -there.Fixed[week]);
            places.Hours[week] = hours;
            Model.Set(hours, places.Own[week] = Part(places, -there.OwnCost, there.Own[week]), -1.0);
            Model.Set(hours, places.Hired[week] = Part(places, -there.HiredCost, there.Hired[week]), -1.0);
            if (beyond)
            {
                Model.Set(hours, Part(places, -PlanSettings.MissingHours * Math.Max(there.HiredCost, there.OwnCost)), -1.0);
            }

            for (int i = 0; i < Lengths.Length; i++)
            {
                Model.Set(hours, Lengths[i], plan.Sowings[i].Hours[week]);
            }

            if (plan.BoxTarget[week] > 0.0)
            {
                int boxes = Limit(new(PlanLimitKind.Boxes, 0, week), plan.BoxTarget[week], double.PositiveInfinity);
                int bought = Part(places, -plan.BuyIn);
                Model.Set(boxes, bought, 1.0);
                (places.Boxes[week], places.Bought[week]) = (boxes, bought);
            }

            for (int store = 0; store < plan.Stores.Count; store++)
            {
                places.Stores[(store, week)] = AtMost(new(PlanLimitKind.Crates, store, week), plan.Stores[store].Crates[week]);
            }
        }
    }

    /// <summary>
    /// Picked no more than is ripe; stock of last week + picked = sold + boxed + stock + what is left unsold; stock no more than what was
    /// picked in the weeks it keeps.
    /// </summary>
    private void AddCrop(int c, PlanSeason season, PlanSeasonPlaces places)
    {
        PlanCrop crop = plan.Crops[c];
        int[] own = SowingsThat(sowing => sowing.Crop == c);
        int?[] picked = new int?[PlanModel.Weeks];
        int? before = null;
        for (int week = 0; week < PlanModel.Weeks; week++)
        {
            picked[week] = AddPicking((c, week), own, season, places);
            if (before is null && picked[week] is null)
            {
                continue;
            }

            int balance = Limit(new(PlanLimitKind.Balance, c, week), 0.0, double.PositiveInfinity);
            Set(balance, before, 1.0);
            Set(balance, picked[week], 1.0);
            for (int step = 0; step < crop.Steps[week].Count; step++)
            {
                PlanStep sale = crop.Steps[week][step];
                int sold = Part(places, (sale.Net * season.Price[c]) - crop.SoldCost, sale.Units);
                places.Sold[(c, week, step)] = sold;
                Model.Set(balance, sold, -1.0);
            }

            if (places.Boxes[week] is { } boxes && crop.BoxMost > 0.0 && crop.BoxValue.Count > 0 && crop.BoxValue[week] > 0.0)
            {
                int box = Part(places, -crop.SoldCost, crop.BoxMost);
                places.Boxed[(c, week)] = box;
                Model.Set(balance, box, -1.0);
                Model.Set(boxes, box, crop.BoxValue[week]);
            }

            before = AddStock((c, week), balance, picked, places);
        }
    }

    private int? AddPicking((int Crop, int Week) at, int[] own, PlanSeason season, PlanSeasonPlaces places)
    {
        int[] ripe = [.. own.Where(i => plan.Sowings[i].Yield[at.Week] > 0.0)];
        if (ripe.Length == 0)
        {
            return null;
        }

        int picked = Part(places, -plan.Crops[at.Crop].PickedCost);
        places.Picked[at] = picked;
        Model.Set(places.Hours[at.Week], picked, plan.Crops[at.Crop].HandlingHours);
        int most = Limit(new(PlanLimitKind.Balance, at.Crop, at.Week), 0.0, double.PositiveInfinity);
        places.Ripe[at] = most;
        Model.Set(most, picked, -1.0);
        Array.ForEach(ripe, i => Model.Set(most, Lengths[i], plan.Sowings[i].Yield[at.Week] * season.Yield[at.Crop]));
        return picked;
    }

    private int? AddStock((int Crop, int Week) at, int balance, int?[] picked, PlanSeasonPlaces places)
    {
        PlanCrop crop = plan.Crops[at.Crop];
        int[] fresh = [.. picked[Math.Max(0, at.Week - crop.Keeps + 2)..(at.Week + 1)].OfType<int>()];
        if (fresh.Length == 0 || at.Week == PlanModel.Weeks - 1)
        {
            return null;
        }

        int stock = Part(places, 0.0);
        places.Stock[at] = stock;
        Model.Set(balance, stock, -1.0);
        int age = Limit(new(PlanLimitKind.Balance, at.Crop, at.Week), 0.0, double.PositiveInfinity);
        Model.Set(age, stock, -1.0);
        Array.ForEach(fresh, quantity => Model.Set(age, quantity, 1.0));
        for (int store = 0; store < crop.InStore.Count && crop.UnitsPerCrate > 0.0; store++)
        {
            Model.Set(places.Stores[(store, at.Week)], stock, crop.InStore[store] * plan.Stores[store].PeakOverMean / crop.UnitsPerCrate);
        }

        return stock;
    }

    private void Set(int limit, int? quantity, double takes)
    {
        if (quantity is { } there)
        {
            Model.Set(limit, there, takes);
        }
    }
}

/// <summary>Where the quantities of a season stand in the program.</summary>
internal sealed class PlanSeasonPlaces
{
    internal int Income { get; set; }

    /// <summary>The limit that adds the income up; none in a program of one season.</summary>
    internal int? Sum { get; set; }

    internal int[] Own { get; } = new int[PlanModel.Weeks];

    internal int[] Hired { get; } = new int[PlanModel.Weeks];

    /// <summary>The limits on hours.</summary>
    internal int[] Hours { get; } = new int[PlanModel.Weeks];

    /// <summary>The limits on boxes; none in weeks without.</summary>
    internal int?[] Boxes { get; } = new int?[PlanModel.Weeks];

    internal int?[] Bought { get; } = new int?[PlanModel.Weeks];

    internal Dictionary<(int Store, int Week), int> Stores { get; } = [];

    internal Dictionary<(int Crop, int Week), int> Picked { get; } = [];

    /// <summary>The limits on what is picked: no more than is ripe.</summary>
    internal Dictionary<(int Crop, int Week), int> Ripe { get; } = [];

    internal Dictionary<(int Crop, int Week, int Step), int> Sold { get; } = [];

    internal Dictionary<(int Crop, int Week), int> Boxed { get; } = [];

    internal Dictionary<(int Crop, int Week), int> Stock { get; } = [];
}
