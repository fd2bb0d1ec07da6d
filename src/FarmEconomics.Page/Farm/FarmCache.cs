using System.Collections.Concurrent;
using FarmEconomics.Files;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Page.Farm;

/// <summary>The records, read again when a file changed; kept for each set of settings that is being tried.</summary>
internal sealed class FarmCache(string folder)
{
    private const int Most = 6;
    private readonly Lock gate = new();
    private readonly List<(string Key, OpenedFarm Farm)> kept = [];
    private string quickSign = "";
    private string fingerprint = "";

    /// <summary>The folder or workbook, in full.</summary>
    internal string Folder { get; } = Path.GetFullPath(folder);

    /// <summary>The farm's name as last read; for pages that tell of no figure.</summary>
    internal string FarmName { get; private set; } = "";

    /// <summary>
    /// The last answer of each report that takes long, whatever it was asked, with the farm it is of: shown while a new one is worked out.
    /// </summary>
    internal ConcurrentDictionary<ReportId, (ReviewedFarm Farm, IReadOnlyList<Block> Blocks)> LastAnswers { get; } = [];

    /// <summary>Looks whether a file changed; a request does so once, and reads all it reads by what it saw.</summary>
    /// <exception cref="IOException">The records can't be read.</exception>
    internal FarmSnapshot Look()
    {
        lock (gate)
        {
            string sign = RecordsFingerprint.QuickSign(Folder);
            if (sign != quickSign)
            {
                fingerprint = RecordsFingerprint.Of(Folder);
                quickSign = sign;
            }

            return new FarmSnapshot(this, fingerprint);
        }
    }

    /// <summary>The records of a fingerprint, opened unless they are kept.</summary>
    internal OpenedFarm Open(string of, string settings, bool skipBadRows)
    {
        lock (gate)
        {
            string key = $"{of}\n{skipBadRows}\n{settings}";
            int at = kept.FindIndex(one => one.Key == key);
            OpenedFarm farm = at >= 0 ? kept[at].Farm : new OpenedFarm(FarmFolder.Open(Folder, SettingText.Pairs(settings), skipBadRows))
            { Fingerprint = of };
            if (at >= 0)
            {
                kept.RemoveAt(at);
            }

            FarmName = farm.Settings.FarmName;
            kept.Insert(0, (key, farm));
            if (kept.Count > Most)
            {
                kept.RemoveAt(Most);
            }

            return farm;
        }
    }
}

/// <summary>The records as they stood when a request looked at them.</summary>
/// <param name="cache">Where they are kept.</param>
/// <param name="fingerprint">What was in the files.</param>
internal sealed class FarmSnapshot(FarmCache cache, string fingerprint)
{
    /// <summary>What was in the files.</summary>
    internal string Fingerprint => fingerprint;

    /// <summary>The records, opened.</summary>
    /// <param name="settings">Settings to try, as <c>name=value; name=value</c>.</param>
    /// <param name="skipBadRows">Whether rows in error are left out.</param>
    /// <exception cref="IOException">The records can't be read.</exception>
    /// <exception cref="ArgumentException">A setting has no name and value.</exception>
    internal OpenedFarm Farm(string settings = "", bool skipBadRows = false) => cache.Open(fingerprint, settings, skipBadRows);
}
