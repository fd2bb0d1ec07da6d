namespace FarmEconomics.Records;

/// <summary>Where a record stands in the grower's files, so that every figure can be opened down to it.</summary>
/// <param name="File">The file's name as the grower knows it, relative to the records folder (for example <c>sales.csv</c>).</param>
/// <param name="Line">The line in that file, counted from 1; the heading row is line 1.</param>
public readonly record struct SourceLine(string File, int Line)
{
    /// <summary>Orders by file name, then by line.</summary>
    /// <param name="left">One place.</param>
    /// <param name="right">The other.</param>
    /// <returns>Less than 0, 0 or more than 0.</returns>
    public static int Compare(SourceLine left, SourceLine right)
    {
        int byFile = string.CompareOrdinal(left.File, right.File);
        return byFile != 0 ? byFile : left.Line.CompareTo(right.Line);
    }

    /// <summary>The place in a sentence about a row that may stand in the same file.</summary>
    internal string SeenFrom(SourceLine row) => File == row.File ? $"line {Line}" : $"line {Line} of {File}";

    /// <summary>The <c>file:line</c> form used in messages.</summary>
    public override string ToString() => $"{File}:{Line}";
}
