using System.Globalization;
using System.Text;

namespace FarmEconomics.Cli;

/// <summary>
/// Everything the commands say goes through here. Names and remarks out of records may hold characters that a terminal obeys (escape
/// sequences) or that turn what follows around; they are shown as what they are, such as <c>\u001B</c>.
/// </summary>
internal sealed class PlainConsole : IDisposable
{
    private readonly TextWriter output = Console.Out;
    private readonly TextWriter error = Console.Error;

    private PlainConsole()
    {
        Console.SetOut(new PlainWriter(output));
        Console.SetError(new PlainWriter(error));
        Control = error;
    }

    /// <summary>
    /// The error stream as it is, for the program's own line that is written over; nothing out of records is written to it.
    /// </summary>
    internal static TextWriter Control { get; private set; } = Console.Error;

    /// <summary>Puts it between the commands and the terminal.</summary>
    internal static PlainConsole Install() => new();

    public void Dispose()
    {
        Console.SetOut(output);
        Console.SetError(error);
    }

    /// <summary>
    /// True for a character a terminal doesn't show but obeys: controls but tab and line end, separators of lines, marks of direction.
    /// </summary>
    internal static bool IsObeyed(char letter) => letter is not ('\n' or '\t') && (char.IsControl(letter)
        || char.GetUnicodeCategory(letter) is UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
        || letter is '\u061C' or '\u200E' or '\u200F' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069'));

    private sealed class PlainWriter(TextWriter inner) : TextWriter(CultureInfo.InvariantCulture)
    {
        private bool afterReturn;

        public override Encoding Encoding => inner.Encoding;

        public override void Write(char value) => Write([value]);

        public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

        public override void Write(string? value) => Write(value.AsSpan());

        public override void Write(ReadOnlySpan<char> buffer)
        {
            StringBuilder plain = new(buffer.Length);
            foreach (char letter in buffer)
            {
                // A carriage return is part of a line end or goes back to the start of the line: the next character tells.
                if (afterReturn)
                {
                    plain.Append(letter == '\n' ? "\r" : @"\u000D");
                }

                afterReturn = letter == '\r';
                if (!afterReturn)
                {
                    _ = IsObeyed(letter)
                        ? plain.Append(@"\u").Append(((int)letter).ToString("X4", CultureInfo.InvariantCulture))
                        : plain.Append(letter);
                }
            }

            inner.Write(plain.ToString());
        }

        public override void Flush() => inner.Flush();
    }
}
