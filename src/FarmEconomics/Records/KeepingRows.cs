namespace FarmEconomics.Records;

/// <summary>A row of <c>aliases</c>: another way a name is written.</summary>
public sealed class AliasRow : RecordRow
{
    /// <summary>The table the name stands in.</summary>
    public string Table { get; set; } = "";

    /// <summary>The name as it is also written.</summary>
    public string Alias { get; set; } = "";

    /// <summary>The name it stands for.</summary>
    public string Name { get; set; } = "";
}

/// <summary>A row of <c>imports</c>: how one column of a table is filled from a file that is not the farm's own.</summary>
public sealed class ImportRow : RecordRow
{
    /// <summary>The name of the mapping the row belongs to.</summary>
    public string Import { get; set; } = "";

    /// <summary>The table it fills.</summary>
    public string Table { get; set; } = "";

    /// <summary>The column it fills; blank for a row that leaves rows of the source out.</summary>
    public string? Column { get; set; }

    /// <summary>The heading of the source column.</summary>
    public string? SourceColumn { get; set; }

    /// <summary>A value that stands in every row.</summary>
    public string? Constant { get; set; }

    /// <summary>The value of the source that is replaced, or whose rows are left out.</summary>
    public string? When { get; set; }

    /// <summary>What takes its place.</summary>
    public string? Becomes { get; set; }

    /// <summary>How the source writes dates and numbers.</summary>
    public string? Format { get; set; }
}
