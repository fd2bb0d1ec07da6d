using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Inputs;

/// <summary>Two imported rows with numbers of their own are two things that happened, however alike they look: no row is told as entered
/// twice that has one.</summary>
internal static class OwnNumbers
{
    /// <summary>The column that tells imported rows apart.</summary>
    public const string Column = "source_id";

    public static IEnumerable<Problem> Without(IReadOnlyList<Problem> problems, IReadOnlyList<TableInput> inputs, FarmSettings settings)
    {
        ILookup<string, Problem> twice = problems.Where(problem => problem.Code == ProblemCodes.DuplicateRow
            && problem.Further == 0).ToLookup(problem => problem.Source.File);
        HashSet<Problem> own = new(ReferenceEqualityComparer.Instance as IEqualityComparer<Problem>);
        foreach (TableInput input in inputs.Where(input => twice.Contains(input.File)))
        {
            using InputReading file = input.Open(options => options, settings);
            file.Reader.ReadHeader();
            int at = Array.FindIndex(file.Reader.Headers.ToArray(), heading => HeadingKey.Of(heading) == HeadingKey.Of(Column));
            ILookup<int, Problem> byLine = twice[input.File].ToLookup(problem => problem.Source.Line);
            while (at >= 0 && file.Reader.Read())
            {
                if (byLine.Contains(file.Line) && OwnNumber.Of(file.Reader.GetString(at)) is not null)
                {
                    own.UnionWith(byLine[file.Line]);
                }
            }
        }

        return problems.Where(problem => !own.Contains(problem));
    }
}
