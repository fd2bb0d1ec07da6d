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
        WriteUses(season, Path.Combine(folder, Uses), book);
        WriteCrops(season, Path.Combine(folder, Crops), book);
    }

    // Lengths stand in columns of their own, so that a heading says what it holds on a farm in meters too.
    private static void WriteUses(WhatWasShort season, string path, Workbook? book)
    {
        string[] headings = ["crop_year", "what", "name", "counted_by", "from", "in_use", "limit", "bed_feet", "bed_feet_limit",
            "limit_from", "short", "not_checked"];
        using CsvTable table = new(path, book, [.. headings.Select(season.Season.Notation.Label)]);
        foreach (ScarceResource resource in season.Resources)
        {
            bool beds = resource.Kind == ScarceKind.BedLength;
            HashSet<ScarceSpan> shorts = [.. resource.Short];
            foreach (ScarceSpan span in resource.Spans)
            {
                table.Whole(season.Season.CropYear).Text(Word(resource.Kind)).Text(resource.Name).Text(resource.ByWeek ? "week" : "day")
                    .Text(span.From.ToString("yyyy-MM-dd"))
                    .Number(beds ? null : span.Used).Number(beds ? null : span.Limit).Number(beds ? span.Used : null)
                        .Number(beds ? span.Limit : null)
                    .Text(Word(span.Source)).Text(shorts.Contains(span) ? "yes" : "no").Text("");
                table.End();
            }
        }

        foreach (NotChecked item in season.NotChecked)
        {
            table.Whole(season.Season.CropYear).Text("").Text(item.Name).Text("").Text("").Number(null).Number(null).Number(null)
                .Number(null).Text("").Text("").Text(item.Reason);
            table.End();
        }
    }

    private static void WriteCrops(WhatWasShort season, string path, Workbook? book)
    {
        string[] headings = ["crop_year", "what", "name", "crop", "contribution", "used_while_short", "unit", "contribution_per_unit",
            "bed_foot_weeks", "contribution_per_bed_foot_week"];
        using CsvTable table = new(path, book, [.. headings.Select(season.Season.Notation.Label)]);
        foreach (ScarceResource resource in season.Short)
        {
            bool beds = resource.Kind == ScarceKind.BedLength;
            foreach (ScarceUse crop in resource.Crops)
            {
                table.Whole(season.Season.CropYear).Text(Word(resource.Kind)).Text(resource.Name).Text(crop.Crop.Name)
                    .Money(crop.Contribution.Value)
                    .Number(beds ? null : crop.Use)
                    .Text(beds ? "" : season.Season.Notation.Label(resource.UseUnit))
                    .Number(beds ? null : crop.PerUnit.Value)
                    .Number(beds ? crop.Use : null)
                    .Number(beds ? crop.PerUnit.Value : null);
                table.End();
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
        ScarceKind.Water => "water",
        ScarceKind.Sprinklers => "sprinklers",
        _ => "kWh",
    };

    private static string Word(LimitSource source) => source switch
    {
        LimitSource.Limits => "limits",
        LimitSource.Beds => "beds",
        LimitSource.Supply => "panels and battery",
        _ => "most ever",
    };
}
