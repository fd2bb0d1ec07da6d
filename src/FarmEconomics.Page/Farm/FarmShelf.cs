using FarmEconomics.Files;

namespace FarmEconomics.Page.Farm;

/// <summary>The records, read again when a file changed; kept for each set of settings that is being tried.</summary>
internal sealed class FarmShelf(string folder)
{
    private const int Most = 6;
    private readonly Lock gate = new();
    private readonly List<(string Key, OpenedFarm Farm)> kept = [];
    private string quickSign = "";
    private string fingerprint = "";

    /// <summary>The folder or workbook, in full.</summary>
    internal string Folder { get; } = Path.GetFullPath(folder);

    /// <summary>The records as they are now.</summary>
    /// <param name="settings">Settings to try, as <c>name=value; name=value</c>.</param>
    /// <param name="skipBadRows">Whether rows in error are left out.</param>
    /// <exception cref="IOException">The records can't be read.</exception>
    internal OpenedFarm Now(string settings = "", bool skipBadRows = false)
    {
        lock (gate)
        {
            string sign = RecordsFingerprint.QuickSign(Folder);
            if (sign != quickSign)
            {
                fingerprint = RecordsFingerprint.Of(Folder);
                quickSign = sign;
            }

            string key = $"{fingerprint}\n{skipBadRows}\n{settings}";
            int at = kept.FindIndex(one => one.Key == key);
            OpenedFarm farm = at >= 0 ? kept[at].Farm : new OpenedFarm(FarmFolder.Open(Folder, Pairs(settings), skipBadRows), fingerprint);
            if (at >= 0)
            {
                kept.RemoveAt(at);
            }

            kept.Insert(0, (key, farm));
            if (kept.Count > Most)
            {
                kept.RemoveAt(Most);
            }

            return farm;
        }
    }

    private static IEnumerable<KeyValuePair<string, string>> Pairs(string settings) =>
        settings.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(pair => pair.Split('=', 2, StringSplitOptions.TrimEntries))
            .Where(pair => pair.Length == 2).Select(pair => KeyValuePair.Create(pair[0], pair[1]));
}
