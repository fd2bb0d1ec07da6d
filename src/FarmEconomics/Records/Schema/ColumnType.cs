namespace FarmEconomics.Records.Schema;

/// <summary>What a column holds: decides how its text is read and how many decimals it may have.</summary>
public enum ColumnType
{
    /// <summary>Free text.</summary>
    Text,

    /// <summary>A name that other tables may refer to; compared trimmed and without case.</summary>
    Name,

    /// <summary>A day, ISO 8601 unless the farm sets another format.</summary>
    Date,

    /// <summary>A quantity, length, number of hours or other measure: plain digits, at most 10 decimals.</summary>
    Number,

    /// <summary>Hours: a number, or written as a time (7:30, 7h30, 7 h 30 min).</summary>
    Hours,

    /// <summary>An amount in the farm's currency: at most 2 decimals.</summary>
    Money,

    /// <summary>A price or wage in the farm's currency: at most 4 decimals.</summary>
    Price,

    /// <summary>A rate or weight: at most 4 decimals.</summary>
    Rate,

    /// <summary>A percentage: 6.5 stands for 6.5 %; at most 4 decimals.</summary>
    Percent,

    /// <summary>A crop year of four digits.</summary>
    Year,

    /// <summary>Yes or no.</summary>
    YesNo,

    /// <summary>One word of a fixed list.</summary>
    Choice,

    /// <summary>The basis of a pool.</summary>
    Basis,
}
