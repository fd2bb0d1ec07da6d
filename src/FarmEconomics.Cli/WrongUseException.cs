namespace FarmEconomics.Cli;

/// <summary>The command can't be carried out as given; the message says why and what to do, in words for the grower.</summary>
internal sealed class WrongUseException(string message) : Exception(message);
