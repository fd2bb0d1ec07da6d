namespace FarmEconomics.Files.Inputs;

/// <summary>A whole file or sheet can't be read; becomes a problem with the code.</summary>
internal sealed class InputException(string code, string message) : Exception(message)
{
    public string Code { get; } = code;
}
