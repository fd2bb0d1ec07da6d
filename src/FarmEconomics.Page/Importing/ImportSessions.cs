using System.Security.Cryptography;
using FarmEconomics.Files.Importing.Sessions;

namespace FarmEconomics.Page.Importing;

/// <summary>The files being brought in: the last few, each gone when it makes room for another or the program ends.</summary>
internal sealed class ImportSessions : IDisposable
{
    private const int Most = 4;
    private readonly Lock gate = new();
    private readonly List<(string Id, ImportSession Session)> kept = [];

    internal string Keep(ImportSession session)
    {
        string id = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(8));
        lock (gate)
        {
            kept.Insert(0, (id, session));
            if (kept.Count > Most)
            {
                kept[Most].Session.Dispose();
                kept.RemoveAt(Most);
            }
        }

        return id;
    }

    /// <summary>Works with a file; one request at a time.</summary>
    /// <returns>Null when there is no such file any more.</returns>
    internal T? With<T>(string id, Func<ImportSession, T> work)
        where T : class
    {
        lock (gate)
        {
            return kept.Find(one => one.Id == id).Session is { } session ? work(session) : null;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (gate)
        {
            kept.ForEach(one => one.Session.Dispose());
            kept.Clear();
        }
    }
}
