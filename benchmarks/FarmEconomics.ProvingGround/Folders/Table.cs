using System.Text;

namespace FarmEconomics.ProvingGround.Folders;

/// <summary>One CSV file being written.</summary>
internal sealed class Table(string name, string heading)
{
    private readonly StringBuilder text = new StringBuilder(heading).Append('\n');

    internal void Row(FormattableString row) => text.Append(FormattableString.Invariant(row)).Append('\n');

    internal void Save(string folder) => File.WriteAllText(Path.Combine(folder, name + ".csv"), text.ToString());
}
