using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>The sums of a season that changes are read off by.</summary>
internal sealed class SeasonMoney(FarmReview review, SeasonReview season)
{
    private readonly int year = season.CropYear;

    /// <summary>Sales and household use, without share payments; not available while a part of it has no price.</summary>
    internal Result Sales => ValueOf(Parts);

    internal decimal Fees => Parts.Sum(part => part.Fee.Amount);

    internal decimal Labor =>
        review
            .Charges.ByYear[year]
            .Where(charge => charge.HomeYear == year && charge.Stream is CostStream.HiredLabor or CostStream.OwnerLabor)
            .Sum(charge => charge.Amount.Amount);

    private IReadOnlyList<DispositionPart> Parts => season.DispositionParts;

    private IReadOnlyList<LaborUse> Work => review.Trace.LaborByWindow[year];

    /// <summary>The same of what left through one channel; null: all of it.</summary>
    internal Result SalesThrough(string? channel) =>
        ValueOf(Parts.Where(part => channel is null || part.Disposition.Channel.Name == channel));

    internal Result PricePerUnit(Crop crop, string? channel)
    {
        // A channel of kind other has prices too; they count where it is asked for, and in no average of market, stand and wholesale.
        List<DispositionPart> sold = Parts.Where(part => part.Disposition.Crop.Index == crop.Index
            && (channel is null ? part.Disposition.Channel.IsPriced
                : part.Disposition.Channel.Name == channel && part.Disposition.IsSold)).ToList();
        return sold.Exists(part => part.Disposition.ValueIncomplete) ? Result.NotAvailable(Availability.NoPriceOf([crop.Name]))
            : Result.Of(
                sold.Sum(part => part.Amount.Amount), sold.Sum(part => part.Quantity),
                $"none of {year} was sold for a price{(channel is null ? "" : $" through {channel}")}");
    }

    internal Result Picked(Crop crop)
    {
        EnterpriseBudget? budget = season.Crops.FirstOrDefault(budget => budget.Name == crop.Name);
        return budget is null ? Result.NotAvailable($"no planting of {year}") : Result.Known(budget.Sums.Harvested);
    }

    internal Result PerHour(ScenarioScope scope, string? worker)
    {
        List<LaborUse> work = scope switch
        {
            ScenarioScope.Hired => Work.Where(use => use.Kind == WorkerKind.Hired).ToList(),
            ScenarioScope.Owner => Work.Where(use => use.Kind == WorkerKind.Owner).ToList(),
            _ => Work.Where(use =>
                    use.Origin is LaborRow row && string.Equals(row.Worker.Trim(), worker, StringComparison.OrdinalIgnoreCase)
                )
                .ToList(),
        };
        return work.Exists(use => review.Charges.AmountOf(use) is null)
            ? Result.NotAvailable("some of the hours have no wage")
            : Result.Of(
                work.Sum(use => review.Charges.AmountOf(use)!.Value.Amount),
                work.Sum(use => use.Hours),
                $"no such hours in {year}"
            );
    }

    internal Result HoursOf(ScenarioChange change, HashSet<IRecordRow> rows) => Result.Known(Work.Where(use => change.Scope switch
    {
        ScenarioScope.Crop => rows.Contains(use.Origin),
        ScenarioScope.Stage => Words.Of(use.Stage) == change.Name,
        _ => true,
    }).Sum(use => use.Hours));

    internal Result FeePercent(string channel) => Result.Known(review.Records.Channel(channel).Row.FeePercent ?? 0m);

    private static Result ValueOf(IEnumerable<DispositionPart> parts)
    {
        List<DispositionPart> all = [.. parts];
        List<string> unknown =
        [
            .. all.Where(part => part.Disposition.ValueIncomplete).Select(part => part.Disposition.Crop.Name).Distinct(),
        ];
        return unknown.Count > 0 ? Result.NotAvailable(Availability.NoPriceOf(unknown)) : Result.Known(all.Sum(Value));
    }

    private static decimal Value(DispositionPart part) => part.Disposition.Channel.Kind switch
    {
        ChannelKind.Share => 0m,
        ChannelKind.Household => part.ListValue.Amount,
        _ => part.Amount.Amount,
    };
}
