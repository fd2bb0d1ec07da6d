using CsvHelper;
using FarmEconomics.Files.Places;
using FarmEconomics.Files.Reading;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;

namespace FarmEconomics.Files.Inputs;

/// <summary>A CSV file of a records folder.</summary>
internal sealed class CsvInput(string path, string file, string table) : TableInput(file, table)
{
    public string Path { get; } = path;

    /// <summary>
    /// Far above any farm's records (several million rows), and small enough that what is read of it fits a plain computer.
    /// </summary>
    public const long MaxBytes = 256L * 1024 * 1024;

    public override InputReading Open(Func<CsvReaderOptions, CsvReaderOptions> options, FarmSettings settings)
    {
        try
        {
            PlainFile.Require(Path, File);
            FileInfo before = FolderPlace.FileAt(Path) ?? throw new FileNotFoundException($"There is no file {Path}.", Path);
            (long length, DateTime written) = (before.Length, before.LastWriteTimeUtc);
            if (length > MaxBytes)
            {
                throw new InputException(
                    ProblemCodes.FileTooLarge,
                    settings.Notation.Text($"{File} has {length / 1048576:N0} MB; at most {MaxBytes / 1048576} MB are read.")
                );
            }

            return new InputReading(CsvReader.FromFile(Path, options(TableFile.Options(Path))), finish: () =>
            {
                before.Refresh();
                if (!before.Exists || before.Length != length || before.LastWriteTimeUtc != written)
                {
                    throw new InputException(ProblemCodes.FileChanged, $"{File} was changed while it was being read.");
                }
            });
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            string why = fault switch
            {
                UnauthorizedAccessException => "you have no right to read it",
                FileNotFoundException or DirectoryNotFoundException => "it is a link that leads to no file",
                _ => "another program may hold it",
            };
            throw new InputException(ProblemCodes.FileUnreadable, $"{File} can't be opened: {why}.");
        }
    }
}
