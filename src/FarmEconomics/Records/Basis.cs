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
    // Each with the name a pools table gives it and the unit its weights are in, in documented order.
    private static readonly (BasisKind Kind, string Name, string Unit)[] Known =
    [
        (BasisKind.BedFootDays, "bed-foot-days", "bed-foot-days"),
        (BasisKind.TrayDays, "tray-days", "tray-days"),
        (BasisKind.BedFeet, "bed-feet", "bed-feet"),
        (BasisKind.LaborHours, "labor-hours", "hours"),
        (BasisKind.QuantityCrates, "quantity-crates", "crates"),
        (BasisKind.CrateDays, "crate-days", "crate-days"),
        (BasisKind.Water, "water", "weighted bed-foot-days"),
        (BasisKind.SalesValue, "sales-value", "sales value"),
        (BasisKind.InputRates, "input-rates", "weighted units"),
        (BasisKind.Measured, "measured", "measured units"),
    ];

    /// <summary>The names a pools table may use; <c>labor-hours</c> also takes <c>:STAGE</c>.</summary>
    public static IReadOnlyList<string> KnownNames { get; } = Array.ConvertAll(Known, basis => basis.Name);

    /// <summary>The unit the weights are in.</summary>
    public string Unit => Array.Find(Known, basis => basis.Kind == Kind).Unit;

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
        int at = Array.FindIndex(Known, known => known.Name.Equals(head, StringComparison.OrdinalIgnoreCase));
        if (at < 0)
        {
            return false;
        }

        BasisKind kind = Known[at].Kind;

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
        string name = Array.Find(Known, basis => basis.Kind == Kind).Name;
        return Stage is { } stage ? $"{name}:{stage.ToString().ToLowerInvariant()}" : name;
    }
}
