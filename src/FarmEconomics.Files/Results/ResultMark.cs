namespace FarmEconomics.Files.Results;

/// <summary>What marks a folder as written by a review: the next one replaces it whole, so nothing of the grower's may be put there.</summary>
public static class ResultMark
{
    /// <summary>The name of the marking file.</summary>
    public const string FileName = ".farm-review";
}
