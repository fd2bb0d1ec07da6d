namespace FarmEconomics.Page.Fields;

/// <summary>How a field is filled in.</summary>
internal enum FieldKind
{
    /// <summary>A line of text.</summary>
    Text,

    /// <summary>A number, typed with the farm's decimal mark or a dot.</summary>
    Number,

    /// <summary>A whole number.</summary>
    Whole,

    /// <summary>Yes or no.</summary>
    YesNo,

    /// <summary>One of a list.</summary>
    Choice,

    /// <summary>Several lines of text.</summary>
    Lines,
}

/// <summary>One entry of a list to choose from.</summary>
/// <param name="Value">What is sent.</param>
/// <param name="Text">What is read.</param>
internal sealed record FieldOption(string Value, string Text);

/// <summary>A labeled field on a page.</summary>
/// <param name="Key">Its name in the address.</param>
/// <param name="Label">What a person calls it.</param>
/// <param name="Kind">How it is filled in.</param>
/// <param name="Default">The value it has when the address doesn't name it.</param>
/// <param name="Help">One sentence below it.</param>
internal sealed record PageField(string Key, string Label, FieldKind Kind, string Default, string Help)
{
    /// <summary>What it is counted in, or null.</summary>
    internal string? Unit { get; init; }

    /// <summary>The lowest value allowed, or null.</summary>
    internal decimal? Lowest { get; init; }

    /// <summary>The highest value allowed, or null.</summary>
    internal decimal? Highest { get; init; }

    /// <summary>What may be chosen.</summary>
    internal IReadOnlyList<FieldOption> Options { get; init; } = [];

    /// <summary>The field without which it changes nothing, and isn't asked about yet; null: it counts by itself.</summary>
    internal string? WaitsFor { get; init; }

    /// <summary>The heading of the group it stands in; null: among the first.</summary>
    internal string? Group { get; init; }
}
