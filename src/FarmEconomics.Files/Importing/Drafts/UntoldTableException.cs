namespace FarmEconomics.Files.Importing.Drafts;

/// <summary>What table a source is for can't be told from its headings: somebody has to say it, each in the way of the place.</summary>
/// <param name="message">What is seen instead.</param>
internal sealed class UntoldTableException(string message) : ArgumentException(message);
