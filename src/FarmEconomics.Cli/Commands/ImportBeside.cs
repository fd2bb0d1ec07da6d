using System.Text;
using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Places;

namespace FarmEconomics.Cli.Commands;

/// <summary>The files an import writes beside the file it reads: the mapping, the names, the rows to fix. Never among the tables of the
/// records.</summary>
internal sealed class ImportBeside(string file, string? records, string? sheet = null)
{
    private readonly string stem = Path.Combine(Path.GetDirectoryName(Path.GetFullPath(file)) == Directory.GetCurrentDirectory() ? ""
        : Path.GetDirectoryName(file) ?? "", new ImportRequest(file) { Sheet = sheet }.NameBeside);

    internal string Map => stem + ".map.csv";

    internal string Names => stem + ".names.csv";

    internal string Rest => stem + ".to-fix.csv";

    /// <summary>Refuses a place where a new file must not be written.</summary>
    internal void Require(string path, string option)
    {
        if (records is not null && Directory.Exists(records) && FolderPlace.IsIn(path, records)
            && Path.GetDirectoryName(FolderPlace.Real(path)) == FolderPlace.Real(records))
        {
            throw new WrongUseException($"{path} would lie among your tables; give {option} a file elsewhere.");
        }

        if (File.Exists(path))
        {
            throw new WrongUseException($"{path} is there already; give {option} another file, or take that one away.");
        }
    }

    /// <summary>Writes a new file.</summary>
    internal void Write(string path, string text, string option)
    {
        Require(path, option);
        try
        {
            using FileStream stream = new(path, FileMode.CreateNew, FileAccess.Write);
            stream.Write(Encoding.UTF8.GetBytes(text));
        }
        catch (UnauthorizedAccessException)
        {
            throw new WrongUseException($"{path} can't be written; give {option} a file in a folder of yours.");
        }
    }
}
