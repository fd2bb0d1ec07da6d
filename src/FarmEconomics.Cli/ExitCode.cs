namespace FarmEconomics.Cli;

/// <summary>What the commands return.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    internal const int Done = 0;

    /// <summary>The records hold errors, or a result could not be made from them.</summary>
    internal const int RecordsInError = 1;

    /// <summary>The command was given wrongly, or a file or folder can't be read or written.</summary>
    internal const int WrongUse = 2;
}
