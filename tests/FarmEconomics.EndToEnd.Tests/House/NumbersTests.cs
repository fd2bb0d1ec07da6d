using System.Reflection;
using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.EndToEnd.Tests.House;

/// <summary>
/// Every number a person reads follows the farm's decimal mark because no other way of writing one is left: text is made of a number by a
/// farm's <see cref="Notation"/>, or, for programs, with a format provider said aloud.
/// </summary>
public class NumbersTests
{
    /// <summary>What may write numbers otherwise, each with its reason.</summary>
    private static readonly string[] Allowed =
    [
        "FarmEconomics.Reports.Words.Phrase: Percent", // whole percents: no mark, no thousands
        "FarmEconomics.Notebooks.NotebookParameters: Quote", // a character's code in C#
    ];

    public static TheoryData<string> Assemblies =>
        ["FarmEconomics", "FarmEconomics.Files", "FarmEconomics.Reports", "FarmEconomics.Notebooks", "FarmEconomics.NotebookKit", "FarmEconomics.Page", "FarmEconomics.Cli"];

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void Number_MadeText_GoesThroughTheFarmsNotationOrAProviderSaidAloud(string name)
    {
        Assembly assembly = name == "FarmEconomics.Cli" ? Assembly.LoadFrom(Program.Assembly) : Assembly.Load(name);

        string[] found = [.. NumberCalls.Of(assembly).Except(Allowed).Distinct()];
        Assert.True(found.Length == 0, string.Join('\n', found));
    }

    [Fact]
    public void Scan_OfMethodsThatForgetTheFarm_FindsEachAndNoOther() => Assert.Equal(
        ["Built", "Formatted", "Grouped", "Joined", "Maybe", "Worth"],
        NumberCalls.Of(typeof(Forgetful)).Select(found => found.Split(": ")[1]).Order());

    private static class Forgetful
    {
        internal static string Worth(Money money) => $"{money} in all";

        internal static string Formatted(decimal number) => number.ToString("0.00");

        internal static string Maybe(decimal? number) => $"{number:0.#}";

        internal static string Grouped(int rows) => $"{rows:N0} rows";

        internal static string Joined(decimal[] numbers) => string.Join(", ", numbers);

        internal static string Built(double number) => new System.Text.StringBuilder().Append(number).ToString();

        internal static string Counted(int rows) => $"{rows} rows";

        internal static string InTheFarmsWay(Notation notation, decimal number) => notation.Text($"{number:0.00} in all");

        internal static string ForAProgram(decimal number) => number.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture);
    }
}
