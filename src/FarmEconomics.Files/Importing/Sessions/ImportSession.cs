using System.Security.Cryptography;
using System.Text;
using FarmEconomics.Files.Importing.Drafts;
using FarmEconomics.Files.Places;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;

namespace FarmEconomics.Files.Importing.Sessions;

/// <summary>
/// A file brought in step by step, as a page does it: looked at, its questions answered, its names given, and added only when the person
/// saw what would be added. The file, its mapping and its names lie in a folder of their own outside the records, gone with the session.
/// </summary>
public sealed class ImportSession : IDisposable
{
    private const int LongestName = 80;
    private readonly string records;
    private readonly string place;
    private readonly string source;
    private readonly Dictionary<int, string> answers = [];
    private readonly Dictionary<(string Table, string Alias), string> names = [];
    private string answered = "";

    private ImportSession(string records, string place, string source)
    {
        this.records = records;
        this.place = place;
        this.source = source;
    }

    /// <summary>The file's name.</summary>
    public string Name => Path.GetFileName(source);

    /// <summary>How the file is looked at.</summary>
    public ImportView View { get; private set; } = new();

    /// <summary>Begins with a copy of a file.</summary>
    /// <param name="records">The records folder.</param>
    /// <param name="name">The file's name; folders in it are left away.</param>
    /// <param name="content">What it holds.</param>
    /// <returns>The session.</returns>
    /// <exception cref="IOException">The copy can't be written.</exception>
    public static ImportSession Begin(string records, string name, Stream content)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(content);
        string place = Directory.CreateTempSubdirectory("farm-import-").FullName;
        TemporaryPlaces.Add(place);
        string source = Path.Combine(place, Plain(name));
        using FileStream copy = new(source, FileMode.CreateNew, FileAccess.Write);
        content.CopyTo(copy);
        return new ImportSession(records, place, source);
    }

    /// <summary>Looks at the file another way; what was answered of the other mapping is forgotten.</summary>
    /// <param name="view">How.</param>
    public void Turn(ImportView view)
    {
        if (view != View)
        {
            View = view;
            answers.Clear();
        }
    }

    /// <summary>Keeps answers; a blank one takes an earlier one back.</summary>
    /// <param name="draftVersion">The version of the draft they answer: those to another one are not kept.</param>
    /// <param name="given">The answers, by line of the draft.</param>
    /// <returns>False when the draft is another one by now.</returns>
    public bool Answer(string draftVersion, IEnumerable<KeyValuePair<int, string>> given)
    {
        ArgumentNullException.ThrowIfNull(given);
        if (draftVersion != Look().DraftVersion)
        {
            return false;
        }

        answered = draftVersion;
        foreach ((int line, string answer) in given)
        {
            answers[line] = answer.Trim();
        }

        return true;
    }

    /// <summary>Keeps what names mean; a blank one takes an earlier one back.</summary>
    /// <param name="given">The names.</param>
    /// <returns>The names that can't be taken, each with why; the others are kept.</returns>
    public IReadOnlyList<(GivenName Name, string Why)> Give(IReadOnlyList<GivenName> given)
    {
        ArgumentNullException.ThrowIfNull(given);
        IReadOnlyList<(GivenName Name, string Why)> faults =
            NameList.Faults(given.Where(name => name.Name.Trim() != GivenName.LeftOut), RecordsFolder.Read(records));
        foreach (GivenName name in given.Except(faults.Select(fault => fault.Name)))
        {
            names[(name.Table, name.Alias)] = name.Name.Trim();
        }

        return faults;
    }

    /// <summary>What there is to see.</summary>
    /// <returns>The draft, and what would be added by it.</returns>
    public ImportLook Look()
    {
        var request = new ImportRequest(source) { Folder = records, Table = View.Table, Sheet = View.Sheet, Names = NamesFile() };
        try
        {
            RecordsReading reading = RecordsImport.Open(request)!;
            ImportLook look = new() { Sheets = RecordsImport.Sheets(source), Notation = reading.FarmSettings.Notation };
            if (!View.Anew && View.HeadingsAt is null && RecordsImport.Remembers(request))
            {
                return WithPlan(look, RecordsImport.Plan(request), reading);
            }

            var draft = ImportDraft.Of(request, View.HeadingsAt);
            string version = VersionOf(draft.Csv);
            Dictionary<int, string> said = answered == version ? new(answers) : [];
            look = look with { Draft = draft, Answers = said, DraftVersion = version, Known = Known(draft, reading) };
            return draft.Questions.Any(question => question.IsOpen && said.GetValueOrDefault(question.Line, "").Length == 0)
                ? look : WithPlan(look, RecordsImport.Plan(request with { Map = MapFile(draft.With(said)), Table = draft.Table }), reading);
        }
        catch (Exception fault) when (fault is ArgumentException or IOException)
        {
            return new ImportLook { Fault = fault.Message, Sheets = SheetsOrNone() };
        }
    }

    /// <summary>Adds the rows, if they are those that were seen.</summary>
    /// <param name="version">The version of what was seen.</param>
    /// <returns>What came of it: the file's name, or why nothing was added.</returns>
    /// <exception cref="IOException">A file can't be written; then the records are as they were.</exception>
    public (bool Added, string Message) Add(string version)
    {
        ImportLook look = Look();
        if (look.Plan is not { CanApply: true } plan)
        {
            return (false, "Nothing was added: there is no row to add.");
        }

        if (look.Version != version)
        {
            return (false, "Nothing was added: what would be added is not what you saw. Look at it again, then press Add.");
        }

        ImportPlan.RemoveLeftovers(records);
        plan.Apply();
        return (
            true,
            plan.Notation.Text($"{plan.Rows.Count:N0} {(plan.Rows.Count == 1 ? "row" : "rows")} added to {plan.Table}, in {plan.FileName}.")
        );
    }

    /// <inheritdoc/>
    public void Dispose() => TemporaryPlaces.Remove(place);

    private static string Plain(string name)
    {
        string plain = string.Concat(
                name.Split('/', '\\')[^1].Select(c => char.IsControl(c) || Path.GetInvalidFileNameChars().Contains(c) ? '-' : c)
            )
            .Trim()
            .TrimStart('.');
        string ending = Path.GetExtension(plain);
        string stem = Path.GetFileNameWithoutExtension(plain);
        return (stem.Length == 0 ? "file" : stem[..Math.Min(stem.Length, LongestName)]) + ending[..Math.Min(ending.Length, 8)];
    }

    private static string VersionOf(params string?[] texts) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\u001E', texts))).AsSpan(0, 16));

    private static Dictionary<string, IReadOnlyList<string>> Known(ImportDraft draft, RecordsReading reading)
    {
        var known = new KnownNames(reading.Tables, reading.FarmSettings);
        return draft.Questions.Select(question => question.NamesOf).OfType<string>().Distinct().ToDictionary(table => table, known.Of);
    }

    private ImportLook WithPlan(ImportLook look, ImportPlan plan, RecordsReading reading)
    {
        var known = new KnownNames(reading.Tables, reading.FarmSettings);
        Dictionary<string, IReadOnlyList<string>> choices = [];
        HashSet<(string, string)> open = [.. plan.UnknownNames.Select(name => (name.Table, name.Alias))];
        SessionName[] all =
        [
            .. plan.UnknownNames.Select(name => new SessionName(name.Table, name.Alias, name.Name, name.Rows, Choices(name.Table))),
            .. names
                .Where(name =>
                    name.Value.Length > 0
                    && !open.Contains(name.Key)
                    && !NameList.IsKnown(new(name.Key.Table, name.Key.Alias, name.Value), reading)
                )
                .Select(name => new SessionName(name.Key.Table, name.Key.Alias, name.Value, 0, Choices(name.Key.Table))),
        ];
        return look with { Plan = plan, Names = all, Version = VersionOf(plan.FileName, plan.Csv, plan.MappingCsv, plan.NamesCsv) };

        IReadOnlyList<string> Choices(string table) =>
            choices.TryGetValue(table, out IReadOnlyList<string>? of) ? of : choices[table] = known.Of(table);
    }

    private string MapFile(string csv)
    {
        string path = Path.Combine(place, ".map.csv");
        File.WriteAllText(path, csv);
        return path;
    }

    private string? NamesFile()
    {
        if (names.Values.All(name => name.Length == 0))
        {
            return null;
        }

        string path = Path.Combine(place, ".names.csv");
        var csv = new StringBuilder("table,alias,name\n");
        foreach (((string table, string alias), string name) in names.Where(name => name.Value.Length > 0))
        {
            ImportCsv.Line(csv, [table, alias, name]);
        }

        File.WriteAllText(path, csv.ToString());
        return path;
    }

    private IReadOnlyList<string> SheetsOrNone()
    {
        try
        {
            return RecordsImport.Sheets(source);
        }
        catch (Exception fault) when (fault is IOException or ArgumentException)
        {
            return [];
        }
    }
}
