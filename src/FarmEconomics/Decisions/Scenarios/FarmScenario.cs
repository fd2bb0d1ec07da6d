using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>
/// A season as it might have been: named changes of the records, worked through the whole engine and set beside the real thing. Nothing of
/// it is ever written to the records. It is not <see cref="Decisions.SensitivityCase"/>, which moves three factors of one budget.
/// </summary>
/// <param name="Name">Its name; not blank.</param>
/// <param name="Changes">Its changes, in the order written; none: the season as it was.</param>
/// <param name="Note">A remark of the grower's, or null.</param>
public sealed record FarmScenario(string Name, IReadOnlyList<ScenarioChange> Changes, string? Note = null)
{
    /// <summary>All changes in one line, with semicolons between them; it reads back as the same changes.</summary>
    public string Text => string.Join("; ", Changes.Select(change => change.Text));

    /// <summary>Reads a scenario from its one-line text.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="text">Changes with semicolons between them, such as <c>price of Carrots=+10%; owner_wage=22</c>; blank: none.</param>
    /// <param name="records">The records whose names it may use.</param>
    /// <param name="note">A remark, or null.</param>
    /// <returns>The scenario.</returns>
    /// <exception cref="ScenarioTextException">The text can't be read; all its faults are named, each with its position.</exception>
    public static FarmScenario Parse(string name, string text, FarmRecords records, string? note = null)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        IReadOnlyList<ScenarioChange> changes = ScenarioText.Read(text, records, out IReadOnlyList<ScenarioFault> faults);
        return faults.Count == 0 ? new FarmScenario(name.Trim(), changes, note) : throw new ScenarioTextException(faults);
    }
}

/// <summary>What is wrong with the text of a change.</summary>
/// <param name="Position">Where it starts, counted from 1 in the whole text.</param>
/// <param name="Message">What is wrong and what was expected, in a sentence.</param>
/// <param name="Nearest">The nearest known name, when one is near.</param>
public sealed record ScenarioFault(int Position, string Message, string? Nearest = null)
{
    /// <summary>The message with the name that was probably meant.</summary>
    public string Sentence => Nearest is null ? Message : $"{Message} Did you mean {Nearest}?";

    /// <summary>The position and the sentence.</summary>
    public override string ToString() => $"position {Position}: {Sentence}";
}

/// <summary>The text of a scenario can't be read; <see cref="Faults"/> says why.</summary>
public sealed class ScenarioTextException : Exception
{
    /// <summary>Makes one from its faults.</summary>
    /// <param name="faults">At least one.</param>
    public ScenarioTextException(IReadOnlyList<ScenarioFault> faults)
        : base(string.Join(Environment.NewLine, faults)) => Faults = faults;

    /// <summary>What is wrong, by position.</summary>
    public IReadOnlyList<ScenarioFault> Faults { get; }
}
