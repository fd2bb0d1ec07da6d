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

/// <summary>Checks each row of a table by itself, all in one pass over the table.</summary>
internal sealed class RowChecks<T>(string table, Func<RecordTables, List<T>> rows, params (string Name, Action<CheckContext, T> Check)[] checks)
    : RecordCheck($"{table}: {string.Join(", ", checks.Select(check => check.Name))}")
    where T : IRecordRow
{
    public override void Run(CheckContext context)
    {
        foreach (T row in rows(context.Tables))
        {
            foreach ((_, Action<CheckContext, T> check) in checks)
            {
                check(context, row);
            }
        }
    }
}
