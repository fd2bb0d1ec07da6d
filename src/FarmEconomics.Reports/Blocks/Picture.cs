using FarmEconomics.Reports.Display;

namespace FarmEconomics.Reports.Blocks;

/// <summary>A picture that can be drawn for a page and for a window of 400 px.</summary>
/// <param name="Draw">Draws it; true: for the window of 400 px.</param>
internal sealed record Picture(Func<bool, Figure> Draw)
{
    /// <summary>Both drawings as a chart.</summary>
    /// <param name="data">The same data as a table, where no table stands beside it.</param>
    internal Chart AsChart(Tables.ReportTable? data = null) => new(data) { Figure = Draw(false), Phone = Draw(true) };
}
