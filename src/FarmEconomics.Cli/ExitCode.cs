namespace FarmEconomics.Cli;

/// <summary>What the commands return.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    internal const int Done = 0;

    /// <summary>The records hold errors, or a result could not be made from them.</summary>
    internal const int RecordsInError = 1;

    /// <summary>The program has a fault of its own.</summary>
    internal const int ProgramAtFault = 1;

    /// <summary>The command was given wrongly, or a file or folder can't be read or written.</summary>
    internal const int WrongUse = 2;

    /// <summary>Stopped with Ctrl+C (128 and the number of the signal, as shells have it).</summary>
    internal const int Interrupted = 130;

    /// <summary>Asked to end by the system or another program.</summary>
    internal const int Terminated = 143;
}
