namespace FarmEconomics.Recount.Tests;

/// <summary>
/// The review of a records folder by the SQL files alone, all crop years at once. Each file is one step and says which section of docs/methods.md it does.
/// </summary>
internal sealed class Recount : IDisposable
{
    private readonly Database database = new();

    /// <summary>Runs the steps.</summary>
    /// <param name="folder">The records.</param>
    /// <param name="last">The number of the last step wanted: a step of <c>Sql/Apart</c> may rest on the first few alone.</param>
    internal Recount(string folder, int last = 99)
    {
        database.Run($"SET VARIABLE folder = {Database.Quoted(folder)}");
        foreach (string step in Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Sql"), "*.sql").Order(StringComparer.Ordinal)
            .Where(step => int.Parse(Path.GetFileName(step)[..2], System.Globalization.CultureInfo.InvariantCulture) <= last))
        {
            database.Run(File.ReadAllText(step));
        }
    }

    /// <summary>Refills the boxes, week after week of all years; each week takes what earlier ones left.</summary>
    internal void RefillBoxes()
    {
        string week = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Sql", "Turns", "refill.sql"));
        for (long turn = 1; turn <= Count("FROM box_weeks"); turn++)
        {
            database.Run($"SET VARIABLE turn = {turn}");
            database.Run(week);
        }
    }

    /// <summary>Runs a file of <c>Sql/Apart</c>: a step nothing else rests on.</summary>
    internal void RunApart(string name) =>
        database.Run(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Sql", "Apart", name + ".sql")));

    /// <summary>Tells the recount what is asked of it.</summary>
    internal void Ask(string sql) => database.Run(sql);

    internal List<Dictionary<string, object?>> Table(string view, int year) => database.Rows($"SELECT * FROM {view} WHERE crop_year = {year}");

    internal List<Dictionary<string, object?>> Rows(string from) => database.Rows(from);

    /// <summary>How many rows a `FROM ...` gives.</summary>
    internal long Count(string from) => (long)database.Rows($"SELECT count(*) AS n {from}")[0]["n"]!;

    public void Dispose() => database.Dispose();
}
