using FarmEconomics.Records;

namespace FarmEconomics.Funding;

/// <summary>What a match asked for in percent is a percent of; both are common among funders.</summary>
public enum MatchBase
{
    /// <summary>The whole project.</summary>
    Total,

    /// <summary>The funder's money.</summary>
    Award,
}

/// <summary>What a funder's program says: indirect charges, match, levels.</summary>
public sealed record GrantAssumptions
{
    internal static IReadOnlyList<AssumptionEntry> Entries { get; } =
    [
        new NumberEntry(
            "indirect_percent", "Indirect rate", "%",
            "indirect rate on the base below (up to 15% without a negotiated rate: 2 CFR 200.414(f), awards from 2024-10-01)")
        { Most = 100m, Get = a => a.Grant.IndirectPercent, Set = (a, v) => a with { Grant = a.Grant with { IndirectPercent = v } } },
        new ClassesEntry(
            "indirect_classes",
            "Object classes in the indirect base",
            "object classes in the indirect base (equipment and construction stay out of modified total direct costs; large subawards too, "
                + "which the records don't tell)"
        )
        {
            Get = a => a.Grant.IndirectClasses,
            Set = (a, v) => a with { Grant = a.Grant with { IndirectClasses = v } },
        },
        new NumberEntry(
            "indirect_funder_percent",
            "Indirect charges asked of the funder",
            "%",
            "part of the indirect charges asked of the funder"
        )
        {
            Most = 100m,
            Get = a => a.Grant.IndirectFunderPercent,
            Set = (a, v) => a with { Grant = a.Grant with { IndirectFunderPercent = v } },
        },
        new NumberEntry("match_percent", "Match asked for", "%", "match the funder asks for, in percent of the base below")
        {
            Most = 1000m,
            Get = a => a.Grant.MatchPercent,
            Set = (a, v) => a with { Grant = a.Grant with { MatchPercent = v } },
        },
        new WordEntry<MatchBase>(
            "match_base",
            "What the match is a percent of",
            "what match_percent is of: total (the whole project) or award (the funder's money)"
        )
        {
            Get = a => a.Grant.MatchBase,
            Set = (a, v) => a with { Grant = a.Grant with { MatchBase = v } },
        },
        new NumberEntry(
            "in_kind_hours", "Unpaid hours given", "hours",
            "unpaid hours given to the project beyond the rows of the funding table, valued at hour_value, as match")
        { Get = a => a.Grant.InKindHours, Set = (a, v) => a with { Grant = a.Grant with { InKindHours = v } } },
        new NumberEntry(
            "equipment_level", "The farm's own level for equipment", "currency",
            "cost of one piece from which the farm's books treat it as equipment, where that is below the federal level of 10,000 (2 CFR "
                + "part 200, awards from 2024-10-01)")
        { Get = a => a.Grant.EquipmentLevel, Set = (a, v) => a with { Grant = a.Grant with { EquipmentLevel = v } } },
        new TextEntry("program_title", "Grant program", "text", "title of the grant program, for Section A, column (a)")
        {
            Get = a => a.Grant.ProgramTitle,
            Set = (a, v) => a with { Grant = a.Grant with { ProgramTitle = v } },
        },
        new TextEntry(
            "assistance_listing",
            "Assistance listing number",
            "text",
            "the program's assistance listing number, for Section A, column (b)"
        )
        {
            Get = a => a.Grant.AssistanceListing,
            Set = (a, v) => a with { Grant = a.Grant with { AssistanceListing = v } },
        },
    ];

    /// <summary>Indirect rate in percent, 0 to 100; null: no indirect charges.</summary>
    public decimal? IndirectPercent { get; init; }

    /// <summary>Object classes in the indirect base.</summary>
    public IReadOnlyList<ObjectClass> IndirectClasses { get; init; } =
    [
        ObjectClass.Personnel,
        ObjectClass.FringeBenefits,
        ObjectClass.Travel,
        ObjectClass.Supplies,
        ObjectClass.Contractual,
        ObjectClass.Other,
    ];

    /// <summary>Part of the indirect charges asked of the funder, 0 to 100 percent.</summary>
    public decimal IndirectFunderPercent { get; init; } = 100m;

    /// <summary>Match the funder asks for, in percent of <see cref="MatchBase"/>; null: none stated.</summary>
    public decimal? MatchPercent { get; init; }

    /// <summary>What the match is a percent of.</summary>
    public MatchBase MatchBase { get; init; }

    /// <summary>Unpaid hours given beyond the rows of the funding table.</summary>
    public decimal InKindHours { get; init; }

    /// <summary>
    /// Cost of one piece from which the farm's own books treat it as equipment, in currency; null: the federal level alone.
    /// </summary>
    public decimal? EquipmentLevel { get; init; }

    /// <summary>Title of the grant program; null: not given.</summary>
    public string? ProgramTitle { get; init; }

    /// <summary>The program's assistance listing number; null: not given.</summary>
    public string? AssistanceListing { get; init; }

    /// <summary>What can't be; throws where it is.</summary>
    /// <exception cref="ArgumentException">A match of the whole project of 100 percent or more.</exception>
    internal void Validate()
    {
        if (MatchBase == MatchBase.Total && MatchPercent >= 100m)
        {
            throw new ArgumentException("match_percent must be below 100 of the whole project.", "values");
        }
    }
}
