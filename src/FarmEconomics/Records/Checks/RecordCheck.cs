using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Checks;

/// <summary>One check with a name a reader can tell what it does by.</summary>
internal abstract class RecordCheck(string name)
{
    public string Name { get; } = name;

    public abstract void Run(CheckContext context);
}

/// <summary>A check of a whole table or of several.</summary>
internal sealed class TableCheck(string name, Action<CheckContext> check) : RecordCheck(name)
{
    public override void Run(CheckContext context) => check(context);
}

/// <summary>What is looked at in a row.</summary>
/// <param name="Name">What is checked.</param>
/// <param name="IsFine">False for a row that may be at fault; only reads, and runs on several threads. Null: every row is looked at
/// closer.</param>
/// <param name="Report">Looks closer, and reports what is wrong.</param>
internal sealed record RowCheck<T>(string Name, Func<CheckContext, T, bool>? IsFine, Action<CheckContext, T> Report)
{
    public static implicit operator RowCheck<T>((string Name, Action<CheckContext, T> Report) check) => new(check.Name, null, check.Report);

    public static implicit operator RowCheck<T>((string Name, Func<CheckContext, T, bool> IsFine, Action<CheckContext, T> Report) check) =>
        new(check.Name, check.IsFine, check.Report);
}

/// <summary>Checks each row of a table by itself, all in one pass over the table.</summary>
internal sealed class RowChecks<T>(params RowCheck<T>[] checks)
    : RecordCheck($"{T.Schema.Name}: {string.Join(", ", checks.Select(check => check.Name))}")
    where T : struct, IRecordRow<T>
{
    public override void Run(CheckContext context)
    {
        Rows<T> rows = context.Tables.Of<T>();
        foreach (int row in Suspects.Among(rows.Count, row => IsFine(context, rows[row])))
        {
            T suspect = rows[row];
            foreach (RowCheck<T> check in checks)
            {
                if (check.IsFine?.Invoke(context, suspect) != true)
                {
                    check.Report(context, suspect);
                }
            }
        }
    }

    private bool IsFine(CheckContext context, T row)
    {
        foreach (RowCheck<T> check in checks)
        {
            if (check.IsFine is null || !check.IsFine(context, row))
            {
                return false;
            }
        }

        return true;
    }
}
