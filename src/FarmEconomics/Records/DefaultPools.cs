namespace FarmEconomics.Records;

/// <summary>Names and fallbacks of the built-in pools, in one place.</summary>
internal static class DefaultPools
{
    internal const string UnloggedLabor = "unlogged labor";
    internal const string GeneralOverhead = "general overhead";
    internal const string Land = "land";

    /// <summary>Where hours of a stage go that name nothing and whose task names no pool.</summary>
    internal static string WorkPoolOf(Stage stage) => stage switch
    {
        Stage.Nursery => "nursery work",
        Stage.Grow => "grow work",
        Stage.Harvest => "harvest work",
        Stage.Pack => "pack work",
        Stage.Sell => "sell work",
        _ => GeneralOverhead,
    };

    /// <summary>The basis a built-in pool falls back on when its own has no weights.</summary>
    internal static Basis? FallbackOf(string pool) => pool switch
    {
        "seed and plants" => new Basis(BasisKind.BedFeet),
        "packaging" => new Basis(BasisKind.QuantityCrates),
        "nursery work" => new Basis(BasisKind.BedFeet),
        _ => null,
    };

    /// <summary>The pool of what names a channel.</summary>
    internal static string ChannelPoolName(string channel) => $"{channel} (channel)";
}
