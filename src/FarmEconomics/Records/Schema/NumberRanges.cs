namespace FarmEconomics.Records.Schema;

/// <summary>Ranges several columns have.</summary>
internal static class NumberRanges
{
    // Written as an amount by hand nobody has a million of a unit in one row, nor sells a thousandth of one.
    public static readonly NumberRange QuantityOrNone = new(0.001m, 1_000_000m) { OrZero = true };
    public static readonly NumberRange UseOrNone = new(0.001m, 1_000_000_000m) { OrZero = true };

    // A currency of small units (IDR, VND) needs ten digits where dollars need six.
    public static readonly NumberRange AnyAmount = new(-10_000_000_000m, 10_000_000_000m);
    public static readonly NumberRange AmountFromZero = new(0m, 10_000_000_000m);
    public static readonly NumberRange PriceFromZero = new(0m, 10_000_000m);
    public static readonly NumberRange Part = new(0m, 100m);
    public static readonly NumberRange Length = new(0.01m, 100_000m);
    public static readonly NumberRange Total = new(-999_999_999_999m, 999_999_999_999m);
}

/// <summary>Units and words several columns have.</summary>
internal static class ColumnUnits
{
    public const string Feet = "ft";
    public const string Currency = "currency";
    public const string CropUnit = "the crop's unit, or that of `unit`";
    public const string UserHelp = "Who used it: another pool, a crop, a planting, or `household`.";
}
