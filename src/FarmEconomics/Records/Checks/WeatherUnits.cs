using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Checks;

/// <summary>
/// Weather that reads as if it were in the other system's unit, which nothing later would show: a need of water that is a fraction of the
/// true one, or rain that fills the soil. Each column is told once, at the first row that gives it away. The bounds are ours, beyond what
/// weather does: reference evapotranspiration stays under an inch a day; no temperature above 56.7 degrees C was ever measured (World
/// Meteorological Organization, Death Valley 1913); the wettest places have under 3 inches on the mean of their days of rain; and the
/// warm half of a year in which vegetables grow has a day of 50 degrees F.
/// </summary>
internal static class WeatherUnits
{
    private const decimal MostEt0Mm = 25m;
    private const decimal MostEt0In = 1m;
    private const decimal HottestC = 57m;
    private const decimal ColdestSummerF = 50m;
    private const decimal MeanRainIn = 3m;
    private const int FewestDays = 30;
    private const int FewestWetDays = 10;

    internal static void Check(CheckContext context)
    {
        bool metric = context.Settings.LengthUnit == LengthUnit.M;
        List<WeatherRow> rows = [.. context.Tables.Weather];
        decimal mostEt0 = metric ? MostEt0Mm : MostEt0In;
        Report(context, rows.Where(row => row.Et0In > mostEt0), WeatherRow.Et0InColumn, row => row.Et0In, metric ? "" : "millimeters");
        if (metric)
        {
            Report(context, rows.Where(row => row.TmaxF > HottestC), WeatherRow.TmaxFColumn, row => row.TmaxF, "degrees F");
            return;
        }

        List<WeatherRow> summer = rows.FindAll(row => row.TmaxF is not null && IsWarmHalf(row.Date, context.Settings.Site.Latitude));
        if (summer.Count >= FewestDays && summer.TrueForAll(row => row.TmaxF < ColdestSummerF))
        {
            Report(context, summer, WeatherRow.TmaxFColumn, row => row.TmaxF, "degrees C");
        }

        List<WeatherRow> wet = rows.FindAll(row => row.RainIn > 0m);
        if (wet.Count >= FewestWetDays && wet.Average(row => row.RainIn!.Value) > MeanRainIn)
        {
            Report(context, wet, WeatherRow.RainInColumn, row => row.RainIn, "millimeters");
        }
    }

    private static bool IsWarmHalf(DateOnly day, decimal? latitude) => day.Month is >= 4 and <= 9 == latitude is not < 0m;

    private static void Report(CheckContext context, IEnumerable<WeatherRow> rows, NumberColumn column, Func<WeatherRow, decimal?> value,
        string likely)
    {
        foreach (WeatherRow row in rows.Take(1))
        {
            ColumnSchema schema = column.Schema;
            bool metric = context.Settings.LengthUnit == LengthUnit.M;
            string unit = (metric ? schema.MetricUnit : null) ?? schema.Unit ?? "";
            string reads = likely.Length > 0 ? $": the column reads like {likely}" : "";
            context.Report(ProblemCodes.WeatherUnit, row, schema.Name, context.Notation.Text(
                $"{schema.NameFor(context.Settings.LengthUnit)} is in {unit}, and {value(row)} can't be right{reads}."),
                context.Notation.Text($"{value(row)}"));
        }
    }
}
