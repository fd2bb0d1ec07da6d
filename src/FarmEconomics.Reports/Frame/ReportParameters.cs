using System.Reflection;
using System.Text;

namespace FarmEconomics.Reports.Frame;

/// <summary>
/// What every report may be asked for: the season, settings to try, and whether rows in error are left out. They choose the farm a report
/// is worked out from.
/// </summary>
public record ReportParameters
{
    /// <summary>The crop year; 0: the season just ended.</summary>
    [Field("Crop year", "0 = the season just ended", Choice = "crop year")]
    public int Year { get; init; }

    /// <summary>Settings that go before those of farm.csv, as <c>name=value; name=value</c>.</summary>
    [Field("Settings to try", "instead of those in farm.csv: \"owner_wage=22; interest_percent=4\"", Choice = "setting")]
    public string Settings { get; init; } = "";

    /// <summary>Whether rows in error are left out.</summary>
    [Field("Leave out rows in error", "true = go on without them; they are listed", Unit = "yes or no")]
    public bool SkipBadRows { get; init; }
}

/// <summary>A Parameters record as fields, and made from them: the one place where names, units, ranges and defaults are read.</summary>
public static class ParameterFields
{
    /// <summary>The fields of a record, those of every report first.</summary>
    /// <typeparam name="T">The record.</typeparam>
    public static IReadOnlyList<ReportField> Of<T>()
        where T : ReportParameters, new()
    {
        T standard = new();
        return
        [
            .. Properties(typeof(T))
                .Select(property => Field(property.Property, property.Field, property.Property.GetValue(standard) ?? "")),
        ];
    }

    /// <summary>A record with the values given; what isn't given keeps its default.</summary>
    /// <typeparam name="T">The record.</typeparam>
    /// <param name="values">Values by the field's name, of the field's type.</param>
    public static T Make<T>(IReadOnlyDictionary<string, object> values)
        where T : ReportParameters, new()
    {
        ArgumentNullException.ThrowIfNull(values);
        T made = new();
        foreach ((PropertyInfo property, _) in Properties(typeof(T)))
        {
            if (values.TryGetValue(NameOf(property), out object? value))
            {
                property.SetValue(made, value);
            }
        }

        return made;
    }

    private static IEnumerable<(PropertyInfo Property, FieldAttribute Field)> Properties(Type record) => record.GetProperties()
        .Select(property => (Property: property, Field: property.GetCustomAttribute<FieldAttribute>()))
        .Where(pair => pair.Field is not null).Select(pair => (pair.Property, pair.Field!))
        .OrderBy(pair => pair.Property.DeclaringType == typeof(ReportParameters) ? 0 : 1).ThenBy(pair => pair.Property.MetadataToken);

    private static ReportField Field(PropertyInfo property, FieldAttribute field, object standard) =>
        new(NameOf(property), TypeOf(property.PropertyType), standard, field.Label, field.Help)
        {
            Unit = field.Unit,
            Lowest = double.IsNaN(field.Lowest) ? null : (decimal)field.Lowest,
            Highest = double.IsNaN(field.Highest) ? null : (decimal)field.Highest,
            Choice = field.Choice,
        };

    private static ParameterType TypeOf(Type type) => type == typeof(int) ? ParameterType.Whole
        : type == typeof(decimal) ? ParameterType.Number
        : type == typeof(bool) ? ParameterType.YesNo
        : type == typeof(string) ? ParameterType.Text
        : throw new NotSupportedException($"A parameter can't be a {type.Name}.");

    private static string NameOf(PropertyInfo property)
    {
        StringBuilder name = new();
        foreach (char c in property.Name)
        {
            name.Append(char.IsUpper(c) && name.Length > 0 ? "_" : "").Append(char.ToLowerInvariant(c));
        }

        return name.ToString();
    }
}
