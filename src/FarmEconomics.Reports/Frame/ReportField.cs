namespace FarmEconomics.Reports.Frame;

/// <summary>The type of a parameter.</summary>
public enum ParameterType
{
    /// <summary>Text.</summary>
    Text,

    /// <summary>A whole number.</summary>
    Whole,

    /// <summary>A decimal number, exact.</summary>
    Number,

    /// <summary>A number in binary floating point.</summary>
    Approximate,

    /// <summary>True or false.</summary>
    YesNo,

    /// <summary>A day.</summary>
    Day,
}

/// <summary>A parameter as a field of a form, a part of an address, or an option.</summary>
/// <param name="Name">Its name in addresses, in small letters with underscores.</param>
/// <param name="Type">Its type.</param>
/// <param name="Default">The value it has when none is given: string, int, decimal, double, bool or DateOnly.</param>
/// <param name="Label">What a person calls it.</param>
/// <param name="Help">What it does, and what its default means.</param>
public sealed record ReportField(string Name, ParameterType Type, object Default, string Label, string Help)
{
    /// <summary>What it is counted in, or null. <c>money</c> and <c>length</c> stand for the farm's own.</summary>
    public string? Unit { get; init; }

    /// <summary>The lowest value allowed, or null.</summary>
    public decimal? Lowest { get; init; }

    /// <summary>The highest value allowed, or null.</summary>
    public decimal? Highest { get; init; }

    /// <summary>Whose names may be chosen (<c>crop</c>, <c>crop year</c>, <c>channel</c> ...), or null.</summary>
    public string? Choice { get; init; }
}

/// <summary>Says what a person reads of a parameter; its default is the property's own.</summary>
/// <param name="label">What a person calls it.</param>
/// <param name="help">What it does, and what its default means: "0 = ..." or "empty = ...".</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class FieldAttribute(string label, string help = "") : Attribute
{
    /// <summary>What a person calls it.</summary>
    public string Label { get; } = label;

    /// <summary>What it does.</summary>
    public string Help { get; } = help;

    /// <summary>What it is counted in; <c>money</c> and <c>length</c> stand for the farm's own.</summary>
    public string? Unit { get; set; }

    /// <summary>The lowest value allowed; not a number: none.</summary>
    public double Lowest { get; set; } = double.NaN;

    /// <summary>The highest value allowed; not a number: none.</summary>
    public double Highest { get; set; } = double.NaN;

    /// <summary>Whose names may be chosen.</summary>
    public string? Choice { get; set; }
}
