using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Checks;

/// <summary>The known names of one table, and what to say when a row names another.</summary>
internal sealed class NameIndex(string code, string what, string where, bool checkable, IReadOnlySet<string>? skipped)
{
    private readonly HashSet<string> known = new(StringComparer.OrdinalIgnoreCase);

    private bool[] byNumber = [];

    /// <summary>True when the table is there and readable, so that an unknown name is a fault.</summary>
    public bool Checkable => checkable;

    public IReadOnlyCollection<string> Names => known;

    public void Add(string? name)
    {
        if (!string.IsNullOrWhiteSpace(name))
        {
            known.Add(name.Trim());
        }
    }

    public void AddRange(IEnumerable<string?> names)
    {
        foreach (string? name in names)
        {
            Add(name);
        }
    }

    public bool Contains(string name) => known.Contains(name) || known.Contains(name.Trim());

    /// <summary>Makes ready for <see cref="Knows"/>, once all names are there.</summary>
    public void Number(NamePool names)
    {
        byNumber = new bool[names.Count];
        byNumber[0] = true;
        for (int id = 1; id < byNumber.Length; id++)
        {
            byNumber[id] = !checkable || string.IsNullOrWhiteSpace(names[id]) || Contains(names[id]!);
        }
    }

    /// <summary>True for a blank and for a name that is known, by its number in the tables.</summary>
    public bool Knows(int name) => byNumber[name];

    /// <summary>Reports a name that isn't known; a blank one is fine.</summary>
    public bool Check(CheckContext context, IRecordRow row, string column, string? name)
    {
        if (!checkable || string.IsNullOrWhiteSpace(name) || Contains(name))
        {
            return true;
        }

        if (skipped?.Contains(name.Trim()) == true)
        {
            context.Report(
                code,
                row,
                column,
                $"The {what} \"{name}\" stands in a row that is skipped.",
                name,
                hint: "Fix that row, and this one is read."
            );
            return false;
        }

        context.Report(code, row, column, $"There is no {what} \"{name}\" {where}.", name, context.Search.Find(name, known));
        return false;
    }
}
