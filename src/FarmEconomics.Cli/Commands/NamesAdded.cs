using FarmEconomics.Files;
using FarmEconomics.Files.Importing;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Cli.Commands;

/// <summary>The list of unknown names, filled in and confirmed at once.</summary>
internal static class NamesAdded
{
    /// <summary>Puts the names into the records, all or none.</summary>
    /// <exception cref="WrongUseException">A name can't be taken, or there is none.</exception>
    internal static void Add(string folder, string list, TextWriter to)
    {
        if (!Directory.Exists(folder))
        {
            throw new WrongUseException(
                File.Exists(folder)
                    ? $"{folder} is a workbook, which is only ever read: put the names into its sheet aliases yourself."
                    : $"There is no records folder \"{folder}\"."
            );
        }

        try
        {
            RecordsReading records = RecordsFolder.Read(folder);
            List<GivenName> names = NameList.Read(list).Where(name => !NameList.IsKnown(name, records)).ToList();
            IReadOnlyList<(GivenName Name, string Why)> faults = NameList.Faults(names, records);
            if (faults.Count > 0)
            {
                throw new WrongUseException(
                    $"{list} can't be taken, and nothing was written: "
                        + string.Join("; ", faults.Take(5).Select(fault => $"\"{fault.Name.Alias}\": {fault.Why}"))
                        + (faults.Count > 5 ? $"; and {faults.Count - 5} more" : "")
                        + "."
                );
            }

            to.WriteLine(names.Count == 0 ? $"{list} gives no name that your records don't know already."
                : $"{records.FarmSettings.Notation.Count(names.Count, "name")} written to {NameList.Confirm(folder, names)} in {folder}.");
        }
        catch (ArgumentException fault)
        {
            throw new WrongUseException(fault.Message);
        }
    }
}
