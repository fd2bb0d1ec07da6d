using FarmEconomics.Files;
using FarmEconomics.Records;
using Spectre.Console;

namespace FarmEconomics.Cli;

/// <summary>Progress on the error stream, one line that is written over in a terminal and nothing but plain lines elsewhere.</summary>
internal sealed class Terminal : IProgress<ReadingProgress>
{
    private const int RowsBetweenReports = 200_000;
    private readonly IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(Console.Error) });
    private readonly bool silent;
    private int lastLength;

    /// <summary>A terminal to report to.</summary>
    /// <param name="silent">True: say nothing, because somebody else reports for many at once.</param>
    internal Terminal(bool silent = false) => this.silent = silent;

    /// <summary>True when a person sits before the error stream.</summary>
    private bool IsLive => console.Profile.Out.IsTerminal && console.Profile.Capabilities.Ansi;

    /// <summary>Says what is being done; in a terminal it takes the place of what was said before.</summary>
    /// <param name="message">In a few words.</param>
    internal void Step(string message)
    {
        if (silent)
        {
            return;
        }

        if (IsLive)
        {
            string text = message.Length < console.Profile.Width ? message : message[..(console.Profile.Width - 1)];
            PlainConsole.Control.Write('\r');
            Console.Error.Write(text.PadRight(lastLength));
            lastLength = text.Length;
        }
        else
        {
            Console.Error.WriteLine(message);
        }
    }

    /// <summary>Says how far a step is: in a terminal only, a log needs no more than the step.</summary>
    /// <param name="message">In a few words.</param>
    internal void Detail(string message)
    {
        if (IsLive)
        {
            Step(message);
        }
    }

    /// <summary>Clears the line of progress.</summary>
    internal void Clear()
    {
        if (IsLive && lastLength > 0)
        {
            PlainConsole.Control.Write("\r" + new string(' ', lastLength) + "\r");
            lastLength = 0;
        }
    }

    /// <summary>Reading of large files is told every so many rows.</summary>
    /// <param name="value">How far it is.</param>
    public void Report(ReadingProgress value)
    {
        ArgumentNullException.ThrowIfNull(value);
        if (value.Rows > 0 && value.Rows % RowsBetweenReports == 0)
        {
            Step(value.Notation.Text($"Reading {value.File}: {value.Rows:N0} rows"));
        }
    }
}
