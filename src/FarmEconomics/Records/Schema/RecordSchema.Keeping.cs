using static FarmEconomics.Records.Schema.ColumnType;

namespace FarmEconomics.Records.Schema;

/// <content>Tables about the records themselves: other ways names are written, and how files from elsewhere are read.</content>
public static partial class RecordSchema
{
    private static IEnumerable<TableSchema> Keeping() =>
    [
        new("aliases", "another way a name is written; it is read as the name wherever a row refers to it",
        [
            Must("table", Text, "The table the name stands in: crops, units, beds, plantings, channels, workers, tasks, categories, pools, structures (as beds has them) or assets."),
            Must("alias", Text, "The name as it is also written.") with { NamesSomething = true },
            Must("name", Text, "The name it stands for.") with { NamesSomething = true, MaxLength = 100 },
        ])
        { IsAid = true, Without = "Without aliases.csv every name must be written as its own table has it." },
        new("imports", "how one column of a table is filled from a file of another program; the import command reads and writes it",
        [
            Must("import", Text, "The name of the mapping; its rows belong together."),
            Must("table", Text, "The table it fills."),
            Col("column", Text, "The column it fills; blank: rows of the source whose source_column holds `when` are left out."),
            Col("source_column", Text, "The heading of the source column."),
            Col("constant", Text, "A value for every row, in place of a source column."),
            Col("when", Text, "A value of the source column that is replaced by `becomes`."),
            Col("becomes", Text, "What takes its place; blank: the field is left blank."),
            Col("format", Text, "How the source writes it: a date format such as MM/DD/YYYY, `negative` (the sign is turned), `absolute` (the sign is dropped), `decimal-comma`; several separated by `;`."),
        ])
        { IsAid = true, Without = "Without imports.csv no mapping for files of other programs is remembered." },
    ];
}
