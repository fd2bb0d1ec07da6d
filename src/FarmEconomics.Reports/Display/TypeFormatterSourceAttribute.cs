namespace FarmEconomics.Reports.Display;

/// <summary>Tells a notebook kernel which class knows how to show a type.</summary>
/// <remarks>
/// .NET Interactive finds this attribute by its name, not by its type, so this library needs no reference to it. The source
/// has a method <c>CreateTypeFormatters()</c> whose items have <c>MimeType</c> and <c>bool Format(object, TextWriter)</c>.
/// </remarks>
[AttributeUsage(AttributeTargets.Class, Inherited = true)]
public sealed class TypeFormatterSourceAttribute(Type formatterSourceType) : Attribute
{
    /// <summary>The class whose instances make the formatters.</summary>
    public Type FormatterSourceType { get; } = formatterSourceType;

    /// <summary>The media types shown when nobody asks for a particular one.</summary>
    public string[] PreferredMimeTypes { get; set; } = [];
}
