using System.Text;

namespace FarmEconomics.Records.Schema;

/// <summary>The words a grower writes for the values of a fixed list (<c>capital-recovery</c> and the like), both ways.</summary>
public static class Words
{
    /// <summary>All words of a list, in its order.</summary>
    /// <typeparam name="T">The list.</typeparam>
    /// <returns>The words, in lower case.</returns>
    public static IReadOnlyList<string> All<T>()
        where T : struct, Enum => Cache<T>.Words;

    /// <summary>The word for a value.</summary>
    /// <typeparam name="T">The list.</typeparam>
    /// <param name="value">The value.</param>
    /// <returns>The word, in lower case.</returns>
    public static string Of<T>(T value)
        where T : struct, Enum => Cache<T>.Words[PlaceOf(value)];

    /// <summary>Reads a word, without regard to case, spaces, hyphens and underscores.</summary>
    /// <typeparam name="T">The list.</typeparam>
    /// <param name="text">The text.</param>
    /// <param name="value">The value, when the word is on the list.</param>
    /// <returns>Whether the word is on the list.</returns>
    public static bool TryParse<T>(string text, out T value)
        where T : struct, Enum
    {
        string key = HeadingKey.Of(text);
        int at = Array.IndexOf(Cache<T>.Keys, typeof(T) == typeof(CostDriver) ? DriverOf(key) : key);
        value = at < 0 ? default : Cache<T>.Values[at];
        return at >= 0;
    }

    /// <summary>The value at a place of a list, from 0.</summary>
    internal static T At<T>(int place)
        where T : struct, Enum => Cache<T>.Values[place];

    /// <summary>The place of a value in its list, from 0.</summary>
    internal static int PlaceOf<T>(T value)
        where T : struct, Enum => Array.IndexOf((Array)Cache<T>.Values, value);

    /// <summary>What costs varied with in files of before.</summary>
    private static string DriverOf(string key) => key switch
    {
        "area" => "length",
        "sales" => "units",
        "nothing" => "fixed",
        _ => key,
    };

    private static string Spell(string name, char joint)
    {
        var word = new StringBuilder(name.Length + 2);
        foreach (char c in name)
        {
            if (char.IsUpper(c) && word.Length > 0)
            {
                word.Append(joint);
            }

            word.Append(char.ToLowerInvariant(c));
        }

        return word.ToString();
    }

    // Not the generic forms of the framework: those are compiled anew for every list at each start of the program.
    private static Array ValuesOf(Type list) => Enum.GetValues(list);

    private static string[] NamesOf(Type list) => Enum.GetNames(list);

    private static class Cache<T>
        where T : struct, Enum
    {
        public static readonly T[] Values = (T[])ValuesOf(typeof(T));

        // What a rate is per reads like a column name (bed_foot); the words of all other lists are hyphenated.
        public static readonly string[] Words =
            Array.ConvertAll(NamesOf(typeof(T)), name => Spell(name, typeof(T) == typeof(RatePer) ? '_' : '-'));

        public static readonly string[] Keys = Array.ConvertAll(Words, HeadingKey.Of);
    }
}
