using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Losses;
using FarmEconomics.Files.Workbooks;

namespace FarmEconomics.Files.Results;

/// <summary>Writes where the harvest went, every sowing beside its crop, and the minutes of every task.</summary>
internal static class LossResults
{
    internal const string Picked = "picked.csv";
    internal const string Sowings = "sowings.csv";
    internal const string Tasks = "tasks.csv";

    internal static void Write(SeasonCosts costs, string folder, Workbook? book)
    {
        WritePicked(PickedTree.Of(costs), Path.Combine(folder, Picked), book);
        WriteSowings(Decisions.Losses.Sowings.Of(costs.Season), Path.Combine(folder, Sowings), book);
        WriteTasks(costs.Season, Path.Combine(folder, Tasks), book);
    }

    private static void WritePicked(PickedTree tree, string path, Workbook? book)
    {
        using CsvTable table =
            new(path, book, "crop_year", "crop", "unit", "week", "fate", "channel", "days_held", "quantity", "at_price",
            "packing_and_fees", "worth");
        foreach (PickedPart part in tree.Parts)
        {
            table.Whole(tree.Season.CropYear).Text(part.Crop.Name).Text(part.Crop.Unit).Text(part.Week.ToString("yyyy-MM-dd"))
                .Text(Word(part.Fate)).Text(part.Channel?.Name).Whole(part.DaysHeld)
                .Number(part.Quantity).Money(part.Amount?.Amount).Money(part.Deducted?.Amount).Money(part.Value?.Amount);
            table.End();
        }
    }

    private static void WriteSowings(Sowings sowings, string path, Workbook? book)
    {
        string[] headings =
        [
            "crop_year", "crop", "planting", "sown", "net_return", "paid", "price", "crop_price", "picked_per_bed_foot",
                "crop_picked_per_bed_foot",
            "hours_per_bed_foot", "crop_hours_per_bed_foot", "not_sold", "crop_not_sold",
        ];
        using CsvTable table = new(path, book, [.. headings.Select(sowings.Season.Notation.Label)]);
        foreach (Sowing sowing in sowings.All)
        {
            EnterpriseBudget own = sowing.Budget;
            EnterpriseBudget crop = sowing.Crop;
            table.Whole(sowings.Season.CropYear).Text(crop.Name).Text(own.Name).Text(sowing.Sown.ToString("yyyy-MM-dd"))
                .Money(sowing.NetReturn.Value).Text(sowing.Paid is { } paid ? paid ? "yes" : "no" : "")
                .Number(own.AveragePrice.Value).Number(crop.AveragePrice.Value).Number(own.YieldPerBedFoot.Value)
                    .Number(crop.YieldPerBedFoot.Value)
                .Number(Sowing.HoursPerBedFoot(own).Value).Number(Sowing.HoursPerBedFoot(crop).Value).Number(Sowing.NotSold(own).Value)
                    .Number(Sowing.NotSold(crop).Value);
            table.End();
        }
    }

    private static void WriteTasks(SeasonReview season, string path, Workbook? book)
    {
        string[] headings = ["crop_year", "task", "stage", "hours", "minutes_per_crate", "minutes_per_bed_foot"];
        using CsvTable table = new(path, book, [.. headings.Select(season.Notation.Label)]);
        foreach (TaskMinutes task in TaskMinutes.Of(season))
        {
            foreach (TaskYear year in task.Years)
            {
                table.Whole(year.CropYear).Text(task.Task).Text(task.Stage.ToString().ToLowerInvariant()).Number(year.Hours)
                    .Number(task.Per == TaskPer.Crate ? year.Minutes.Value : null)
                        .Number(task.Per == TaskPer.BedFoot ? year.Minutes.Value : null);
                table.End();
            }
        }
    }

    private static string Word(Fate fate) => fate switch
    {
        Fate.Sold => "sold",
        Fate.OnHand => "on hand",
        Fate.Eaten => "eaten",
        Fate.OtherUse => "other use",
        Fate.GivenAway => "given away",
        Fate.ThrownOut => "thrown out",
        Fate.PastKeeping => "past keeping",
        _ => "culled",
    };
}
