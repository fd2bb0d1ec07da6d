namespace FarmEconomics.Planning;

/// <summary>What a limit of a plan is a limit of.</summary>
public enum PlanLimitKind
{
    /// <summary>Bed-feet under a cover in a week.</summary>
    Beds,

    /// <summary>Hours in a week.</summary>
    Hours,

    /// <summary>Crates in a store in a week.</summary>
    Crates,

    /// <summary>Trays in a week.</summary>
    Trays,

    /// <summary>List value of the boxes of a week.</summary>
    Boxes,

    /// <summary>What the grower wishes at least or at most of a crop.</summary>
    Wish,

    /// <summary>This year's length of a crop that is picked after the year ends.</summary>
    Later,

    /// <summary>What is picked, kept and sold of a crop: bookkeeping, no limit of the farm's.</summary>
    Balance,

    /// <summary>Water in a week, in thousands of the farm's unit of volume.</summary>
    Water,

    /// <summary>kWh for pumping in a week.</summary>
    Power,

    /// <summary>Money that comes in a month and stays; cash at its end must not fall below its limit.</summary>
    Cash,

    /// <summary>Bed-feet of a family over the year, in beds of a cover that are free of it.</summary>
    Rotation,
}

/// <summary>A limit of a plan.</summary>
/// <param name="Kind">What it limits.</param>
/// <param name="Place">Place of the cover, store, crop or rotation; 0 where there is but one.</param>
/// <param name="Week">The week, for cash the month, from 0; -1: the whole year.</param>
public readonly record struct PlanLimitKey(PlanLimitKind Kind, int Place, int Week);
