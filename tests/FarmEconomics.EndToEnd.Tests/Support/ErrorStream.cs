using System.Diagnostics;
using System.Text;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>What a process that goes on writes on its error stream, read as it comes.</summary>
internal sealed class ErrorStream
{
    private readonly StringBuilder text = new();

    public ErrorStream(Process process)
    {
        process.ErrorDataReceived += (_, line) =>
        {
            lock (text)
            {
                text.Append(line.Data is null ? "" : line.Data + "\n");
            }
        };
        process.BeginErrorReadLine();
    }

    /// <summary>What it wrote so far.</summary>
    public string Text
    {
        get
        {
            lock (text)
            {
                return text.ToString();
            }
        }
    }
}
