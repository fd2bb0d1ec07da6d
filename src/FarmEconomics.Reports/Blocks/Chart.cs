using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Blocks;

/// <summary>A chart: its drawing for a page, one for a phone, and the same data as a table, which is its content.</summary>
/// <param name="Data">The data it shows.</param>
public sealed record Chart(ReportTable? Data)
{
    /// <summary>The drawing for a page and a notebook, by the plotting library; null where <see cref="Bars"/> is.</summary>
    public Figure? Figure { get; init; }

    /// <summary>The drawing for a window of 400 px; null: the other scrolls.</summary>
    public Figure? Phone { get; init; }

    /// <summary>Plain bars; null where a figure is.</summary>
    public BarList? Bars { get; init; }
}

/// <summary>A bar with its label.</summary>
/// <param name="Label">What it is of.</param>
/// <param name="Value">Its length; below 0 it is a loss.</param>
/// <param name="Shown">What stands at its end.</param>
/// <param name="Tip">The exact figure, for whoever points at it.</param>
public sealed record Bar(string Label, decimal Value, string Shown, string Tip)
{
    /// <summary>Drawn in gray: not logged, or estimated.</summary>
    public bool IsPale { get; init; }

    /// <summary>Drawn as a loss whatever its length.</summary>
    public bool IsLoss { get; init; }
}

/// <summary>Bars below each other, drawn as plain SVG, and a line across them where something is compared with one value.</summary>
/// <param name="Alt">What it shows, in words.</param>
/// <param name="Bars">The bars, in order.</param>
public sealed record BarList(string Alt, IReadOnlyList<Bar> Bars)
{
    /// <summary>A value to compare with; null: none.</summary>
    public decimal? Mark { get; init; }

    /// <summary>Drawn for half the page's width, beside another.</summary>
    public bool IsHalf { get; init; }

    /// <summary>What stands at the mark.</summary>
    public string MarkText { get; init; } = "";
}
