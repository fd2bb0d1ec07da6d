using System.Text;

namespace FarmEconomics.Reports.Display;

/// <summary>Names of code as keys for other programs.</summary>
internal static class KeyName
{
    /// <summary>A name in small letters with hyphens: <c>WhatWasShort</c> is <c>what-was-short</c>.</summary>
    internal static string Of(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        StringBuilder built = new();
        foreach (char c in name)
        {
            if (char.IsUpper(c) && built.Length > 0)
            {
                built.Append('-');
            }

            built.Append(char.ToLowerInvariant(c));
        }

        return built.ToString();
    }
}
