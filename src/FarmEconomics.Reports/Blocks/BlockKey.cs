using FarmEconomics.Reports.Display;

namespace FarmEconomics.Reports.Blocks;

/// <summary>What names a block: its report and its place there, both from an enum, so that no text is a key.</summary>
/// <param name="Report">The report, in small letters: <c>drop-or-grow</c>.</param>
/// <param name="Block">The block within it: <c>what-was-short</c>; with a part where one enum member stands for several blocks.</param>
public readonly record struct BlockKey(string Report, string Block)
{
    /// <summary>As <c>data-block</c> and in JSON: <c>season.ladder</c>.</summary>
    public string Name => $"{Report}.{Block}";

    /// <summary>As the id of an element: <c>season-ladder</c>.</summary>
    public string Id => $"{Report}-{Block}";

    /// <summary>The key an enum member stands for: <c>SeasonBlock.Ladder</c> is <c>season.ladder</c>.</summary>
    /// <param name="key">A member of an enum whose name ends with "Block".</param>
    public static implicit operator BlockKey(Enum key) => Of(key);

    /// <summary>The key an enum member stands for.</summary>
    /// <param name="key">A member of an enum whose name ends with "Block".</param>
    /// <param name="part">What tells blocks of one member apart: a slug; null where there is one.</param>
    public static BlockKey Of(Enum key, string? part = null)
    {
        ArgumentNullException.ThrowIfNull(key);
        string report = key.GetType().Name;
        return new(
            Kebab(report[..report.LastIndexOf("Block", StringComparison.Ordinal)]),
            Kebab(key.ToString()) + (part is null ? "" : "-" + part)
        );
    }

    /// <summary>A name of code in small letters with hyphens.</summary>
    /// <param name="name">The name: <c>WhatWasShort</c>.</param>
    public static string Kebab(string name)
    {
        return KeyName.Of(name);
    }

    /// <inheritdoc/>
    public override string ToString() => Name;
}
