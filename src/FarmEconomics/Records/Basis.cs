namespace FarmEconomics.Records;

/// <summary>The ways a pool can be shared out.</summary>
public enum BasisKind
{
    /// <summary>Bed-feet x days in bed.</summary>
    BedFootDays,

    /// <summary>Trays x days from sowing to bed.</summary>
    TrayDays,

    /// <summary>Bed-feet planted.</summary>
    BedFeet,

    /// <summary>Direct hours, all stages or one.</summary>
    LaborHours,

    /// <summary>Crates picked.</summary>
    QuantityCrates,

    /// <summary>Crates x days held in the store.</summary>
    CrateDays,

    /// <summary>Bed-foot-days x water need.</summary>
    Water,

    /// <summary>Sales value.</summary>
    SalesValue,

    /// <summary>Quantities x the rate table's weight.</summary>
    InputRates,

    /// <summary>The use and loads tables only.</summary>
    Measured,
}

/// <summary>A basis as the pools table writes it.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Stage">The stage for <c>labor-hours:STAGE</c>; null: all stages.</param>
public sealed record Basis(BasisKind Kind, Stage? Stage = null)
{
    private static readonly Dictionary<string, BasisKind> Names = new(StringComparer.OrdinalIgnoreCase)
    {
        ["bed-foot-days"] = BasisKind.BedFootDays,
        ["tray-days"] = BasisKind.TrayDays,
        ["bed-feet"] = BasisKind.BedFeet,
        ["labor-hours"] = BasisKind.LaborHours,
        ["quantity-crates"] = BasisKind.QuantityCrates,
        ["crate-days"] = BasisKind.CrateDays,
        ["water"] = BasisKind.Water,
        ["sales-value"] = BasisKind.SalesValue,
        ["input-rates"] = BasisKind.InputRates,
        ["measured"] = BasisKind.Measured,
    };

    /// <summary>The names a pools table may use; <c>labor-hours</c> also takes <c>:STAGE</c>.</summary>
    public static IReadOnlyCollection<string> KnownNames => Names.Keys;

    /// <summary>The unit the weights are in.</summary>
    public string Unit => Kind switch
    {
        BasisKind.BedFootDays => "bed-foot-days",
        BasisKind.TrayDays => "tray-days",
        BasisKind.BedFeet => "bed-feet",
        BasisKind.LaborHours => "hours",
        BasisKind.QuantityCrates => "crates",
        BasisKind.CrateDays => "crate-days",
        BasisKind.Water => "weighted bed-foot-days",
        BasisKind.SalesValue => "sales value",
        BasisKind.InputRates => "weighted units",
        _ => "measured units",
    };

    /// <summary>Reads a basis.</summary>
    /// <param name="text">As written.</param>
    /// <param name="basis">The basis.</param>
    /// <returns>False when it isn't one.</returns>
    public static bool TryParse(string? text, out Basis? basis)
    {
        basis = null;
        string name = (text ?? "").Trim();
        int colon = name.IndexOf(':', StringComparison.Ordinal);
        string head = (colon < 0 ? name : name[..colon]).Trim().Replace(' ', '-').Replace('_', '-');
        if (!Names.TryGetValue(head, out BasisKind kind))
        {
            return false;
        }

        if (colon < 0)
        {
            basis = new Basis(kind);
            return true;
        }

        if (kind != BasisKind.LaborHours || !Enum.TryParse(name[(colon + 1)..].Trim(), ignoreCase: true, out Stage stage))
        {
            return false;
        }

        basis = new Basis(kind, stage);
        return true;
    }

    /// <summary>Reads a basis that was checked before.</summary>
    /// <param name="text">As written.</param>
    /// <returns>The basis.</returns>
    /// <exception cref="FormatException">The text isn't a basis.</exception>
    public static Basis Parse(string text) =>
        TryParse(text, out Basis? basis) ? basis! : throw new FormatException($"'{text}' is not a basis.");

    /// <summary>The basis as the pools table writes it.</summary>
    public override string ToString()
    {
        string name = Names.First(pair => pair.Value == Kind).Key;
        return Stage is { } stage ? $"{name}:{stage.ToString().ToLowerInvariant()}" : name;
    }
}
