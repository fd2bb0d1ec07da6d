namespace FarmEconomics.Records;

/// <summary>The records can't be made into a result; <see cref="Problems"/> says why.</summary>
public sealed class RecordsException : Exception
{
    /// <summary>Makes one from its problems.</summary>
    /// <param name="problems">At least one.</param>
    public RecordsException(params IReadOnlyList<Problem> problems)
        : base(string.Join(Environment.NewLine, problems.Select(problem => $"{problem.Source}: {problem.Code}: {problem.Message}")))
    {
        Problems = problems;
    }

    /// <summary>What is wrong.</summary>
    public IReadOnlyList<Problem> Problems { get; }
}
