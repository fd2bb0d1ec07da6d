namespace FarmEconomics.Records.Reading;

/// <summary>Finds the known name a grower probably meant.</summary>
public static class NearestName
{
    private const int LongestCompared = 200;
    private const int ShortestSingular = 4;

    /// <summary>The nearest known name, when one is near enough to be meant.</summary>
    /// <param name="name">The name as written.</param>
    /// <param name="known">The known names.</param>
    /// <returns>The nearest one (the first of several equally near), or null.</returns>
    public static string? Find(string name, IEnumerable<string> known)
    {
        if (name.Length > LongestCompared)
        {
            return null;
        }

        string wanted = name.Trim().ToLowerInvariant();
        string? nearest = null;
        int best = 1 + Math.Clamp(wanted.Length / 3, 1, 3);
        string? containing = null;
        foreach (string candidate in known)
        {
            string other = candidate.Trim().ToLowerInvariant();
            if (Math.Abs(other.Length - wanted.Length) < best && Distance(wanted, other, best) is int distance && distance < best)
            {
                best = distance;
                nearest = candidate;
            }

            // Of names that hold the other or are held by it the one alike in most letters: "Salad turnips, bunched" is no "Salad".
            if ((containing is null || Apart(other) < Apart(containing)) && Math.Min(wanted.Length, other.Length) >= 3
                && (other.Contains(wanted, StringComparison.Ordinal) || wanted.Contains(other, StringComparison.Ordinal)))
            {
                containing = candidate;
            }
        }

        return nearest ?? OfSingulars(wanted, known) ?? containing;

        int Apart(string other) => Math.Abs(other.Trim().Length - wanted.Length);
    }

    // "carot" is two letters off Carrots, one off a carrot.
    private static string? OfSingulars(string wanted, IEnumerable<string> known)
    {
        string one = wanted.TrimEnd('s');
        return one.Length < ShortestSingular ? null : known.FirstOrDefault(candidate =>
            candidate.Trim().ToLowerInvariant().TrimEnd('s') is { Length: >= ShortestSingular } other
                && Math.Abs(other.Length - one.Length) < 2 && Distance(one, other, 2) < 2);
    }

    // Given up, with what it is at least, as soon as it can't be less than the limit.
    private static int Distance(string left, string right, int limit)
    {
        int[] twoBack = new int[right.Length + 1];
        int[] oneBack = [.. Enumerable.Range(0, right.Length + 1)];
        int[] current = new int[right.Length + 1];
        for (int i = 1; i <= left.Length; i++)
        {
            current[0] = i;
            int least = i;
            for (int j = 1; j <= right.Length; j++)
            {
                int change = oneBack[j - 1] + (left[i - 1] == right[j - 1] ? 0 : 1);
                current[j] = Math.Min(change, 1 + Math.Min(oneBack[j], current[j - 1]));
                if (i > 1 && j > 1 && left[i - 1] == right[j - 2] && left[i - 2] == right[j - 1])
                {
                    current[j] = Math.Min(current[j], twoBack[j - 2] + 1);
                }

                least = Math.Min(least, current[j]);
            }

            // A swap reaches two rows back, so one row at the limit isn't enough.
            if (least > limit)
            {
                return least;
            }

            (twoBack, oneBack, current) = (oneBack, current, twoBack);
        }

        return oneBack[right.Length];
    }
}
