using FarmEconomics.Records;

namespace FarmEconomics.Planning;

/// <content>Where a plan doesn't fit.</content>
public sealed partial class PlanOutlook
{
    // As in the records check: less is what pacing and rounding leave.
    private const decimal OverfullBy = 1.005m;
    private readonly List<TakenBed> standing;

    // Ours, without a source: fewer sowings, or those of one season, say little of when a crop can be sown.
    private const int LeastSowings = 4;
    private const int LeastSeasons = 2;
    private const int FarDays = 28;
    private const int YearDays = 365;

    private IEnumerable<PlanProblem> FindProblems() =>
        Overfull()
            .Concat(Oversold())
            .Concat(TooSoon())
            .Concat(NotPlanned())
            .Concat(LeavesEarly())
            .Concat(Outside())
            .Concat(OutOfSeason())
            .Concat(Trays())
            .Concat(Credit())
            .Concat(
                Weeks
                    .Where(week => HoursThere && week.IsShort)
                    .Select(week => new PlanProblem(PlanProblemKind.Hours, week.From, "hours", week.Short, []))
            );

    /// <summary>
    /// Beds whose plantings take over half a percent more length than there is, each time from its first such day; what stands from before
    /// and isn't in the plan counts as well.
    /// </summary>
    private IEnumerable<PlanProblem> Overfull()
    {
        Held[] held =
        [
            .. draft.Plantings.Select(one => new Held(one.Planting, one.Bed.Trim(), one.BedFeet, one.In, one.Out)),
            .. standing.Select(one => new Held(one.Planting, one.Bed, (decimal)one.BedFeet / Width(one.Bed), one.In, one.Out)),
        ];
        foreach (IGrouping<string, Held> bed in held.GroupBy(one => one.Bed, StringComparer.OrdinalIgnoreCase))
        {
            bool goesOn = false;
            foreach (DateOnly day in bed.Select(one => one.In).Concat(bed.Select(one => one.Out)).Distinct().Order())
            {
                Held[] there = [.. bed.Where(one => one.In <= day && day < one.Out)];
                decimal length = LengthOn(bed.Key, day), taken = there.Sum(one => one.Feet);
                bool isOver = taken > length * OverfullBy;
                if (isOver && !goesOn)
                {
                    string[] plantings = [.. there.Select(one => one.Planting).Distinct()];
                    yield return new PlanProblem(PlanProblemKind.Bed, day, bed.Key, taken - length, plantings);
                }

                goesOn = isOver;
            }
        }
    }

    // A bed that isn't on record, or isn't there on that day, has no length.
    private decimal LengthOn(string bed, DateOnly day) =>
        beds.TryGetValue(bed, out BedRow row) && row.IsThere(day) ? row.LengthFt : 0m;

    /// <summary>
    /// What stands when the year begins and isn't in the plan under its own name, nor as its crop in its bed: it holds its bed all the
    /// same. What came in during the year may be a sowing of the plan under another name.
    /// </summary>
    private IEnumerable<TakenBed> StandingBeside()
    {
        DateOnly end = season.Settings.EndOf(model.CropYear);
        IEnumerable<TakenBed> sown = model.Sowings.SelectMany(sowing => sowing.Standing.Select(one => new TakenBed(
            one.Planting,
            model.Crops[sowing.Crop].Name,
            one.Bed,
            one.BedFeet,
            one.In,
            one.Out ?? (sowing.WeeksInBed > PlanModel.Weeks ? end : start.AddDays(7 * (sowing.Week + sowing.WeeksInBed))),
            IsPicked: true
        )));
        bool IsPlanned(TakenBed one) =>
            draft.Plantings.Any(row => Same(row.Planting, one.Planting)
                || (Same(row.Crop, one.Crop) && Same(row.Bed.Trim(), one.Bed) && row.In < one.Out && one.In < row.Out));
        return model.Taken.Concat(sown).Where(one => one.In < start && !IsPlanned(one));
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);

    /// <summary>What is to be picked in the year and isn't planned.</summary>
    private IEnumerable<PlanProblem> NotPlanned() =>
        standing.Where(one => one.IsPicked).GroupBy(one => one.Planting).Select(one =>
            new PlanProblem(PlanProblemKind.NotPlanned, start, string.Join(", ", one.Select(bed => bed.Bed)), 0m, [one.Key]));

    /// <summary>What stands in the plan and is to leave its bed before its usual picking is over.</summary>
    private IEnumerable<PlanProblem> LeavesEarly()
    {
        foreach (PlanSowing sowing in model.Sowings)
        {
            string[] names = [.. sowing.Standing.Select(one => one.Planting).Distinct()];
            if (sowing.Lost is { } lost && draft.Plantings.Any(row => Array.Exists(names, name => Same(name, row.Planting))))
            {
                string crop = model.Crops[sowing.Crop].Name;
                decimal units = (decimal)(lost.Units * sowing.Bounds.Least);
                yield return new PlanProblem(PlanProblemKind.LeavesEarly, lost.Leaves, crop, units, names)
                {
                    Unit = season.Records.Crop(crop).Row.Unit,
                };
            }
        }
    }

    /// <summary>Rows that no week of the year holds: a slip in a date.</summary>
    private IEnumerable<PlanProblem> Outside()
    {
        DateOnly end = season.Settings.EndOf(model.CropYear);
        IEnumerable<PlanProblem> plantings = draft
            .Plantings.Where(one => one.CropYear == model.CropYear && (one.In >= end || one.Out <= start))
            .Select(one => new PlanProblem(PlanProblemKind.Outside, one.In, one.Crop, 0m, [one.Planting]));
        return plantings.Concat(draft
            .Sales.Where(one => one.CropYear == model.CropYear)
            .SelectMany(one => DaysOf(one).Where(day => !IsInYear(day)).Select(day => (one.Crop, Day: day)))
            .GroupBy(one => one.Crop)
            .Select(crop => new PlanProblem(PlanProblemKind.Outside, crop.Min(one => one.Day), crop.Key, 0m, [])));
    }

    /// <summary>
    /// Sowings over four weeks before the earliest or after the latest time of the crop year that their crop came into a bed, and as far
    /// from every other in the calendar: a slip in a date, or a trial. Perennials, and what is on record already, are left alone.
    /// </summary>
    private IEnumerable<PlanProblem> OutOfSeason()
    {
        ILookup<string, (int CropYear, string Planting, int Day)> onRecord = season
            .Trace.Enterprises.Where(one => one.Stays.Count > 0 && !one.Crop.Perennial)
            .ToLookup(one => one.Crop.Name, one => (one.CropYear, one.Planting.Name, DayOf(one.CropYear, one.Stays.Min(stay => stay.In))));
        foreach (IGrouping<string, DraftPlanting> planting in draft.Plantings.Where(one => one.In >= start).GroupBy(one => one.Planting))
        {
            DraftPlanting row = planting.MinBy(one => one.In)!;
            (int CropYear, string Planting, int Day)[] sown = [.. onRecord[row.Crop]];
            int seasons = sown.Select(one => one.CropYear).Distinct().Count(), day = DayOf(row.CropYear, row.In);
            if (sown.Length < LeastSowings || seasons < LeastSeasons || Array.Exists(sown, one => Same(one.Planting, row.Planting)))
            {
                continue;
            }

            int first = sown.Min(one => one.Day), last = sown.Max(one => one.Day);
            if ((day < first || day > last) && Array.TrueForAll(sown, one => Apart(one.Day, day) > FarDays))
            {
                DateOnly WeekOf(int of) => season.Settings.StartOf(row.CropYear).AddDays((int)Math.Floor(of / 7m) * 7);
                yield return new PlanProblem(PlanProblemKind.OutOfSeason, row.In, row.Crop, 0m, [row.Planting])
                {
                    OnRecord = new SownOnRecord(WeekOf(first), WeekOf(last), sown.Length, seasons),
                };
            }
        }
    }

    private int DayOf(int cropYear, DateOnly day) => day.DayNumber - season.Settings.StartOf(cropYear).DayNumber;

    private static int Apart(int day, int other)
    {
        int apart = Math.Abs(day - other) % YearDays;
        return Math.Min(apart, YearDays - apart);
    }

    /// <summary>Weeks on end in which more trays stand than there is room for, with the most that are short.</summary>
    private IEnumerable<PlanProblem> Trays()
    {
        for (int week = 0; model.Trays is { } most && week < Weeks.Count; week++)
        {
            int first = week;
            decimal by = 0m;
            for (; week < Weeks.Count && OverBy(most[week], Weeks[week].Trays) is { } over; week++)
            {
                by = Math.Max(by, over);
            }

            if (by > 0m)
            {
                yield return new PlanProblem(PlanProblemKind.Trays, Weeks[first].From, "trays", by, []);
            }
        }
    }

    private static decimal? OverBy(double most, decimal trays) =>
        (double)trays > most * (double)OverfullBy ? trays - (decimal)most : null;

    /// <summary>
    /// The month at whose end most is owed beyond what the line of credit lets be; less than a hundredth of what goes out by then is what
    /// hours that fall otherwise may leave.
    /// </summary>
    private IEnumerable<PlanProblem> Credit()
    {
        if (model.Cash is not { HasLine: true } cash || CostsUnknown is not null)
        {
            yield break;
        }

        decimal left = (decimal)cash.Opening, gone = 0m;
        (int Month, decimal By) worst = (0, 0m);
        for (int month = 0; month < Months.Count; month++)
        {
            PlanMonth one = Months[month];
            (left, gone) = (left + one.Left, gone + one.Supplies + one.BoughtIn + one.Wages + one.Running + one.Drawn);
            decimal by = -left - (decimal)cash.Line[month];
            worst = by > gone / 100m && by > worst.By ? (month, by) : worst;
        }

        if (worst.By > 0m)
        {
            yield return new PlanProblem(PlanProblemKind.Credit, Months[worst.Month].Month, "line of credit", worst.By, []);
        }
    }

    /// <summary>Families laid into beds that aren't free of them, or over more length of a bed in the year than it has.</summary>
    private IEnumerable<PlanProblem> TooSoon()
    {
        foreach (PlanRotation rotation in model.Rotation)
        {
            foreach (
                IGrouping<string, DraftPlanting> bed in draft
                    .Plantings.Where(one => one.In >= start && Falls(rotation, one))
                    .GroupBy(one => one.Bed.Trim(), StringComparer.OrdinalIgnoreCase)
            )
            {
                decimal free = rotation.Beds.Contains(bed.Key) ? beds[bed.Key].LengthFt * OverfullBy : 0m;
                decimal laid = bed.Sum(one => one.BedFeet);
                if (laid > free)
                {
                    decimal over = laid - (free > 0m ? beds[bed.Key].LengthFt : 0m);
                    string[] plantings = [.. bed.Select(one => one.Planting).Distinct()];
                    yield return new PlanProblem(PlanProblemKind.Rotation, bed.Min(one => one.In), bed.Key, over, plantings)
                    {
                        Family = rotation.Family,
                    };
                }
            }
        }
    }

    private bool Falls(PlanRotation rotation, DraftPlanting one) =>
        beds.TryGetValue(one.Bed.Trim(), out BedRow bed)
        && string.Equals(PlanFacts.CoverOf(bed), model.Covers[rotation.Cover].Name, StringComparison.OrdinalIgnoreCase)
        && string.Equals(season.Records.FindCrop(one.Crop)?.Row.Family?.Trim(), rotation.Family, StringComparison.OrdinalIgnoreCase);

    /// <summary>Crops of which over half a percent more is to be sold than picked in the year.</summary>
    private IEnumerable<PlanProblem> Oversold()
    {
        ILookup<string, DraftPlanting> grown = draft
            .Plantings.Where(one => one.CropYear == model.CropYear)
            .ToLookup(one => one.Crop, StringComparer.OrdinalIgnoreCase);
        foreach (
            IGrouping<string, DraftSale> crop in draft
                .Sales.Where(sale => sale.CropYear == model.CropYear)
                .GroupBy(sale => sale.Crop, StringComparer.OrdinalIgnoreCase)
        )
        {
            decimal picked = grown[crop.Key].Sum(one => one.Yield), sold = crop.Sum(sale => sale.Quantity);
            if (sold > picked * OverfullBy)
            {
                yield return new PlanProblem(PlanProblemKind.Sales, crop.Min(sale => sale.From), crop.Key, sold - picked, [])
                {
                    Unit = season.Records.Crop(crop.Key).Row.Unit,
                };
            }
        }
    }

    private sealed record Held(string Planting, string Bed, decimal Feet, DateOnly In, DateOnly Out);
}
