namespace FarmEconomics.Reports.Shared;

/// <summary>What a kilowatt of panels gives month by month at a northern place, from a published year of weather: a check of plausibility, never part of a result.</summary>
public static class SolarReference
{
    /// <summary>Where the figures are from, to stand beside them.</summary>
    public const string Source = "Burlington, Vermont, weather of 2018, panels at 45 degrees, no snow, shade or battery losses: another place's figures, for comparison only";

    private static readonly Lazy<decimal[]> Months = new(Read);

    /// <summary>kWh per kilowatt in each month, January first.</summary>
    public static IReadOnlyList<decimal> KilowattHoursPerKilowatt => Months.Value;

    private static decimal[] Read()
    {
        using Stream stream = typeof(SolarReference).Assembly.GetManifestResourceStream("FarmEconomics.Reports.References.solar-burlington-2018.csv")
            ?? throw new InvalidOperationException("The table of solar yields is missing from the program.");
        using StreamReader reader = new(stream);
        return reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Skip(1)
            .Select(line => decimal.Parse(line.Split(',')[1])).ToArray();
    }
}
