namespace FarmEconomics.Records.Storage;

/// <summary>How the fields of a file are written. Of one thread: it remembers the texts it has read.</summary>
/// <param name="DecimalMark">The farm's decimal mark.</param>
/// <param name="DateFormat">The farm's own format of dates, or null.</param>
/// <param name="LengthUnit">The farm's unit of length.</param>
/// <param name="Texts">The texts and days read so far, by column.</param>
internal sealed record FieldFormat(char DecimalMark, string? DateFormat, LengthUnit LengthUnit, TextReading[] Texts);
