using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>Rows crop by crop, each crop's by date, then file order: told by sorting them, where the table counts them out.</summary>
public class CropLayoutTests
{
    private const int Rows = 70_000;
    private const int Late = 10_000;

    /// <summary>
    /// The last crop's 10,000 rows stand first in the file and are of the last day; the first crop's 60,000 are of three days in turn; the
    /// one between has none. More rows than are laid out in one piece.
    /// </summary>
    [Fact]
    public void RowsOutOfOrder_LieByCropDateAndFile()
    {
        int[] crops = [.. Enumerable.Range(0, Rows).Select(row => row < Late ? 2 : 0)];
        int[] days = [.. Enumerable.Range(0, Rows).Select(row => row < Late ? 20 : 12 - (row % 3))];
        CropLayout layout = new(3, crops, days);
        Assert.Equal([0, Rows - Late, Rows - Late, Rows], layout.Starts);
        Assert.Equal([Rows - Late, 0, Late], Enumerable.Range(0, 3).Select(layout.CountOf));
        int[] rows = [.. Enumerable.Range(0, Rows)];
        Assert.Equal(rows.OrderBy(row => crops[row]).ThenBy(row => days[row]), layout.RowOf);
        Assert.Equal(rows.OrderBy(row => days[row]), layout.ByDate.Select(place => layout.RowOf[place]));
    }

    /// <summary>Two rows of the first crop, three of the third, one of the last; none of the second.</summary>
    [Fact]
    public void Place_TellsItsCrop()
    {
        CropLayout layout = new(4, [0, 2, 2, 3, 0, 2], [1, 1, 2, 2, 3, 3]);
        Assert.Equal([0, 0, 2, 2, 2, 3], Enumerable.Range(0, 6).Select(layout.CropAt));
        Assert.Equal([0, 4, 1, 2, 5, 3], layout.RowOf);
        Assert.Equal([0, 2, 3, 5, 1, 4], layout.ByDate);
    }

    [Fact]
    public void OneCrop_HasAllPlaces() => Assert.Equal([0, 0], new[] { 0, 1 }.Select(new CropLayout(1, [0, 0], [5, 4]).CropAt));
}
