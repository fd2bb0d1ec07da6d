using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Checks;

/// <summary>
/// Names of other tables stand in them, and a row names at most one of what it may name one of: both as its table declares.
/// </summary>
internal static class NamesKnown
{
    /// <summary>The check of a table; null when it refers to none.</summary>
    public static RecordCheck? Of(TableSchema table) =>
        Referring(table).Length == 0 ? null : new TableCheck(NameOf(table), context => Run(context, table));

    private static void Run(CheckContext context, TableSchema schema)
    {
        Run(context, schema, context.Tables.Of(schema));
        if (context.Tables.InErrorOf(schema) is { } inError)
        {
            Run(context, schema, inError);
        }
    }

    private static void Run(CheckContext context, TableSchema schema, RecordTable table)
    {
        TextColumn[] columns = Referring(schema);
        TextColumn[] tags = [.. schema.AtMostOneOf.Select(name => columns.First(column => column.Schema.Name == name))];
        (TextColumn Column, NameIndex Index)[] known = [.. columns.Select(column => (column, context.Names(column.Schema.RefersTo!)))];
        foreach (int row in Suspects.Among(table.Count, IsFine))
        {
            bool twoTags = Given(table, row, tags) > 1;
            if (twoTags)
            {
                ReportTags(context, table[row], tags);
            }

            foreach ((TextColumn column, NameIndex index) in known.Where(one => !twoTags || !tags.Contains(one.Column)))
            {
                if (!index.Knows(column.Id(table, row)))
                {
                    Report(context, table[row], column, index);
                }
            }
        }

        bool IsFine(int row)
        {
            foreach ((TextColumn column, NameIndex index) in known)
            {
                if (!index.Knows(column.Id(table, row)))
                {
                    return false;
                }
            }

            return tags.Length == 0 || Given(table, row, tags) <= 1;
        }
    }

    private static string NameOf(TableSchema table) =>
        $"{table.Name}: {(table.AtMostOneOf.Count > 0 ? $"at most one of {string.Join(", ", table.AtMostOneOf)}; " : "")}"
        + $"{string.Join(", ", Referring(table).Select(column => column.Schema.Name))} known";

    // A unit is known for a crop, not by itself: that is a check of its own.
    private static TextColumn[] Referring(TableSchema table) =>
        [.. table.Stored.OfType<TextColumn>().Where(column => column.Schema.RefersTo is { } other
            && RecordSchema.Find(other)?.UnknownName is not null)];

    private static int Given(RecordTable table, int row, TextColumn[] tags)
    {
        int given = 0;
        foreach (TextColumn tag in tags)
        {
            given += tag.Id(table, row) == 0 ? 0 : 1;
        }

        return given;
    }

    private static void ReportTags(CheckContext context, IRecordRow row, TextColumn[] tags)
    {
        TextColumn[] given = [.. tags.Where(tag => tag.Id(row.Home, row.Index) != 0)];
        context.Report(ProblemCodes.TwoTags, row, given[1].Schema.Name,
            $"The row names a {given[0].Schema.Name} and a {given[1].Schema.Name}.", given[1].Maybe(row.Home, row.Index));
    }

    private static void Report(CheckContext context, IRecordRow row, TextColumn column, NameIndex index)
    {
        string text = column.Of(row.Home, row.Index);
        const StringSplitOptions Filled = StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries;
        string[] names = column.Schema.Several ? text.Split(';', Filled) : [text];
        foreach (string name in names)
        {
            index.Check(context, row, column.Schema.Name, name);
        }
    }
}
