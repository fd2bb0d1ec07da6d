using FarmEconomics.Records;
using FarmEconomics.Records.Reading;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>
/// Reads the one-line text of changes: <c>owner_wage=22; price of Carrots at Stand=+10%; wages=+5%; hours of harvest=-10%;
/// expenses of propane=+15%; yield of Carrots=+10%</c>. Names are compared trimmed and without case; every fault is told, not only the
/// first.
/// </summary>
public static class ScenarioText
{
    /// <summary>How each change is written, for help and messages.</summary>
    public static IReadOnlyList<string> Forms { get; } =
    [
        "SETTING=VALUE, such as owner_wage=22",
        "price of CROP=4.50, or by a percent: price of CROP at CHANNEL=+10%, prices at CHANNEL=-5%, prices=+3%",
        "wages=+5% (hired work), wage of hired=18, wage of owner=22, wage of WORKER=20",
        "hours of CROP=-20%, hours of STAGE=-10%, hours=+5%",
        "expenses of CATEGORY=+15%, expenses of POOL=+15%, expenses=+5%",
        "yield of CROP=+10%, yields=-10%",
        "income of CHANNEL=+5% (share payments), fee of CHANNEL=6.5",
        "without CROP: not grown, alone or with other crops left out",
    ];

    /// <summary>Reads changes.</summary>
    /// <param name="text">The text; blank: no changes.</param>
    /// <param name="records">The records whose names it may use.</param>
    /// <param name="faults">What can't be read, by position.</param>
    /// <returns>The changes that can be read.</returns>
    public static IReadOnlyList<ScenarioChange> Read(string text, FarmRecords records, out IReadOnlyList<ScenarioFault> faults)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(records);
        List<ScenarioFault> found = [];
        List<ScenarioChange> changes = [];
        ScenarioReader reader = new(records);
        int start = 0;
        foreach (string piece in text.Split(';'))
        {
            TextPart part = new TextPart(piece, start + 1).Trim();
            start += piece.Length + 1;
            if (part.Text.Length == 0)
            {
                continue;
            }

            try
            {
                ScenarioChange change = reader.Read(part);
                RequireBeside(changes, change, part);
                changes.Add(change);
            }
            catch (ScenarioTextException wrong)
            {
                found.AddRange(wrong.Faults);
            }
        }

        faults = found;
        return changes;
    }

    private static void RequireBeside(List<ScenarioChange> changes, ScenarioChange change, TextPart part)
    {
        if (!change.Step.IsPercent && changes.Find(other => !other.Step.IsPercent && SameThing(other, change)) is { } earlier)
        {
            throw part.Fault($"\"{earlier.Text}\" sets the same thing already; keep one of the two.");
        }

        if (changes.Count > 0 && changes[0].Subject == ScenarioSubject.Without != (change.Subject == ScenarioSubject.Without))
        {
            throw part.Fault("A crop left out stands alone or with other crops left out: what else changes would be of rows that "
                + "are no longer there.");
        }
    }

    private static bool SameThing(ScenarioChange left, ScenarioChange right) =>
        (left.Subject, left.Scope, left.Name, left.Channel) == (right.Subject, right.Scope, right.Name, right.Channel);
}

/// <summary>A part of the text with its place in the whole.</summary>
/// <param name="Text">The part.</param>
/// <param name="Position">Where it starts, from 1.</param>
internal readonly record struct TextPart(string Text, int Position)
{
    internal TextPart Trim()
    {
        int blanks = Text.Length - Text.TrimStart().Length;
        return new TextPart(Text.Trim(), Position + blanks);
    }

    internal TextPart From(int start) => new TextPart(Text[start..], Position + start).Trim();

    internal TextPart Until(int end) => new TextPart(Text[..end], Position).Trim();

    internal ScenarioTextException Fault(string message, string? nearest = null) =>
        new([new ScenarioFault(Position, message, nearest)]);

    /// <summary>A fault that names what was probably meant, out of the known names.</summary>
    internal ScenarioTextException Unknown(string message, IEnumerable<string> known) =>
        Fault(message, Text.Length == 0 ? null : NearestName.Find(Text, known));
}
