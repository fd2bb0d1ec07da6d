using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Page.Farm;
using FarmEconomics.Pricing;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Funding;
using FarmEconomics.Reports.Pricing;

namespace FarmEconomics.Page.Fields;

/// <summary>Values that are well written and still can't be, given the records: said beside the field, instead of by a notebook that
/// stops.</summary>
internal static class RecordsFit
{
    /// <summary>Refuses what the records don't allow.</summary>
    /// <param name="form">The fields as they were read.</param>
    /// <param name="declared">The notebook's parameters.</param>
    /// <param name="farm">Opens the records with the settings of the form.</param>
    internal static void Check(FieldForm form, IReadOnlyList<ReportField> declared, Func<OpenedFarm> farm)
    {
        (string Key, Func<FarmReview, int, string?> Fault)[] checks = [.. declared
            .Where(parameter => form.Parameters.GetValueOrDefault(parameter.Name) is string { Length: > 0 })
            .Select(parameter => (parameter.Name, Fault: CheckOf(parameter, form)!)).Where(check => check.Fault is not null)];
        if (checks.Length == 0)
        {
            return;
        }

        farm().With(folder =>
        {
            int year = form.Year == 0 && folder.Review is { CropYears.Count: > 0 } any ? any.LatestCropYear : form.Year;
            foreach ((string key, Func<FarmReview, int, string?> fault) in checks)
            {
                if (folder.Review is { } review && review.CropYears.Contains(year) && fault(review, year) is { } sentence)
                {
                    form.Refuse(key, sentence);
                }
            }

            return true;
        });
    }

    private static Func<FarmReview, int, string?>? CheckOf(ReportField parameter, FieldForm form)
    {
        string text = (string)form.Parameters[parameter.Name];
        string project = form.Parameters.GetValueOrDefault("project") as string ?? "";
        return (parameter.Choice, parameter.Unit) switch
        {
            ("crop", _) => (review, year) => review.Season(year).Crops.Any(crop => crop.Name == text)
                ? null : $"{text} has no planting in {year}; choose another crop or another year.",
            ("channel with prices", _) => (review, year) => Said(() => PriceSentences.ChannelOf(
                PriceBook.Of(review, year, new PriceTerms()), text)),
            (_, "name=value") => (review, year) => Said(() => WriteUpReport.Make(review, year, project, text)),
            (_, "name=years") => (review, year) => Said(() => WriteUpReport.Make(review, year, project, "", text)),
            (_, "file") => (review, year) => Said(() =>
            {
                IReadOnlyList<PlannedItem> plan = SharePlanFile.Read(text);
                return form.Parameters.GetValueOrDefault("members") is decimal and > 0m and var members
                    ? ShareReport.Planned(PriceBook.Of(review, year, new PriceTerms()), new ShareTerms { Members = members }, plan, members)
                    : null;
            })?.Replace(Path.GetDirectoryName(text) + Path.DirectorySeparatorChar, "", StringComparison.Ordinal),
            _ => null,
        };
    }

    // The library says what is wrong in a sentence of its own.
    private static string? Said(Func<object?> work)
    {
        try
        {
            work();
            return null;
        }
        catch (Exception refused) when (refused is ArgumentException or FormatException or IOException or UnauthorizedAccessException)
        {
            return refused.Message.Split(" (Parameter")[0];
        }
    }
}
