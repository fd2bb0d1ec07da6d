using FarmEconomics.Decisions.Short;
using FarmEconomics.Files.Workbooks;

namespace FarmEconomics.Files.Results;

/// <summary>Writes what a season was short of: every week or day looked at, and what each crop added per unit while it was short.</summary>
internal static class ShortTables
{
    internal const string Uses = "short.csv";
    internal const string Crops = "short_crops.csv";

    internal static void Write(WhatWasShort season, string folder, Workbook? book)
    {
        using CsvTable uses = new(Path.Combine(folder, Uses), book, "crop_year", "what", "name", "counted_by", "from", "in_use", "limit", "limit_from", "short", "not_checked");
        foreach (ScarceThing thing in season.Things)
        {
            HashSet<ScarceSpan> shorts = [.. thing.Short];
            foreach (ScarceSpan span in thing.Spans)
            {
                uses.Whole(season.Season.CropYear).Text(Word(thing.Kind)).Text(thing.Name).Text(thing.ByWeek ? "week" : "day").Text(span.From.ToString("yyyy-MM-dd"))
                    .Number(span.Used).Number(span.Limit).Text(Word(span.Source)).Text(shorts.Contains(span) ? "yes" : "no").Text("");
                uses.End();
            }
        }

        foreach (NotChecked item in season.NotChecked)
        {
            uses.Whole(season.Season.CropYear).Text("").Text(item.Name).Text("").Text("").Number(null).Number(null).Text("").Text("").Text(item.Reason);
            uses.End();
        }

        using CsvTable crops = new(Path.Combine(folder, Crops), book, "crop_year", "what", "name", "crop", "contribution", "used_while_short", "unit", "contribution_per_unit");
        foreach (ScarceThing thing in season.Short)
        {
            foreach (ScarceUse crop in thing.Crops)
            {
                crops.Whole(season.Season.CropYear).Text(Word(thing.Kind)).Text(thing.Name).Text(crop.Crop.Name).Money(crop.Contribution.Value).Number(crop.Use)
                    .Text(season.Season.Notation.Label(thing.UseUnit)).Number(crop.PerUnit.Value);
                crops.End();
            }
        }
    }

    private static string Word(ScarceKind kind) => kind switch
    {
        ScarceKind.BedLength => "beds",
        ScarceKind.Hours => "hours",
        ScarceKind.OwnHours => "own hours",
        ScarceKind.HiredHours => "hired hours",
        ScarceKind.Crates => "crates",
        ScarceKind.Trays => "trays",
        _ => "kWh",
    };

    private static string Word(LimitSource source) => source switch
    {
        LimitSource.Limits => "limits",
        LimitSource.Beds => "beds",
        _ => "most ever",
    };
}
