using System.Globalization;
using FarmEconomics.Planning;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Start;

/// <summary>
/// A plan as the record tables <c>plan</c> and <c>plan_sales</c>, in the farm's own form, ready to be edited and laid beside the other
/// records.
/// </summary>
public static class PlanRecords
{
    /// <summary>What separates the fields of a farm's own tables.</summary>
    /// <param name="farm">The farm's settings.</param>
    public static char Separator(FarmSettings farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        return RecordsTemplate.Separator(farm);
    }

    /// <summary>
    /// A plan as rows of the record tables: every column of the declaration in its order, in the farm's decimal mark and unit of length.
    /// </summary>
    /// <param name="farm">The farm's settings.</param>
    /// <param name="draft">The plan.</param>
    /// <returns>File, headings and rows of each table.</returns>
    public static IReadOnlyList<(string File, IReadOnlyList<string> Headings, IReadOnlyList<IReadOnlyList<string>> Rows)> Rows(
        FarmSettings farm,
        PlanDraft draft
    )
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(draft);
        return
        [
            ("plan.csv", Headings<PlanRow>(farm), [.. draft.Plantings.Select(one => Row(farm, one))]),
            ("plan_sales.csv", Headings<PlanSaleRow>(farm), [.. draft.Sales.Select(one => Row(farm, one))]),
        ];
    }

    /// <summary>Writes the tables into a folder.</summary>
    /// <param name="farm">The farm's settings.</param>
    /// <param name="draft">The plan.</param>
    /// <param name="folder">The folder.</param>
    /// <exception cref="IOException">A file can't be written.</exception>
    internal static void Write(FarmSettings farm, PlanDraft draft, string folder)
    {
        char separator = Separator(farm);
        foreach ((string file, IReadOnlyList<string> headings, IReadOnlyList<IReadOnlyList<string>> rows) in Rows(farm, draft))
        {
            using StreamWriter writer = new(Path.Combine(folder, file)) { NewLine = "\n" };
            foreach (IReadOnlyList<string> row in rows.Prepend(headings))
            {
                writer.WriteLine(string.Join(separator, row.Select(text => CsvField.Of(text, separator.ToString()))));
            }
        }
    }

    private static List<string> Headings<T>(FarmSettings farm)
        where T : struct, IRecordRow<T> => [.. T.Schema.Columns.Select(column => column.NameFor(farm.LengthUnit))];

    private static List<string> Row(FarmSettings farm, DraftPlanting one) => Texts(
        farm, one.CropYear, one.Planting, one.Crop, one.Bed, one.BedFeet, one.In, one.Out, one.Sown,
        one.Trays > 0m ? one.Trays : null, one.Yield, one.Hours, one.Cost);

    private static List<string> Row(FarmSettings farm, DraftSale one) => Texts(
        farm, one.CropYear, one.Crop, one.Channel, one.Quantity, null, one.Price, one.From, one.Weeks == 1 ? null : one.Weeks);

    private static List<string> Texts(FarmSettings farm, params object?[] values) => [.. values.Select(value => value switch
    {
        null => "",
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        decimal number => number.ToString("0.##########", CultureInfo.InvariantCulture).Replace('.', farm.DecimalMark),
        IFormattable other => other.ToString(null, CultureInfo.InvariantCulture),
        _ => (string)value,
    })];
}
