using Xunit;

namespace FarmEconomics.Tests.House;

/// <summary>Methods end by 40 lines and lines by column 140, in each folder of src.</summary>
public class CodeSizeTests
{
    public static TheoryData<string> Folders { get; } =
    [
        .. Directory.GetDirectories(Path.Combine(Repository.Root, "src")).Select(Repository.Name).Order(StringComparer.Ordinal),
    ];

    [Theory]
    [MemberData(nameof(Folders))]
    public void Methods_EndByFortyLines(string folder) => None(In(folder, CodeSize.LongMethods));

    [Theory]
    [MemberData(nameof(Folders))]
    public void Lines_EndByColumn140(string folder) => None(In(folder, CodeSize.LongLines));

    [Theory]
    [InlineData(38, false)] // with its signature and closing brackets, 41 lines
    [InlineData(37, true)]
    public void Method_OfSteps_IsReadWhole(int steps, bool isShort)
    {
        string step = string.Concat(Enumerable.Repeat("        Step();\n", steps));
        string text = $"class C\n{{\n    [Fact]\n    void M()\n    {{\n{step}    }}\n}}\n";
        Assert.Equal(isShort ? [] : ["a.cs:4: M has 41 lines"], CodeSize.LongMethods("a.cs", text));
    }

    [Theory]
    [InlineData("int[] M() =>\n[\n", "1,\n", "];", true)]
    [InlineData("int M(int x) => x switch\n{\n", "1 => 2,\n", "};", true)]
    [InlineData("Table M() => Table.Of(\n", "new(1),\n", "new(2));", true)]
    [InlineData("int[] P => new[]\n{\n", "1,\n", "};", true)]
    [InlineData("bool M() =>\n", "true &&\n", "false;", false)] // one expression, but it lists nothing
    [InlineData("int[] M()\n{\nreturn [\n", "1,\n", "];\n}", false)] // says what it is by =>
    [InlineData("Func<int>[] M() =>\n[\n", "() => { return 1; },\n", "];", false)] // has steps in it
    [InlineData("C()\n{\n", "X();\n", "}", false)]
    [InlineData("int P\n{\nget\n{\n", "X();\n", "return 1; }\n}", false)]
    [InlineData("void M()\n{\nint L()\n{\n", "X();\n", "return 1; }\n}", false)]
    [InlineData("Action f = () =>\n{\n", "X();\n", "};", false)]
    [InlineData("int[] f =\n[\n", "1,\n", "];", true)]
    public void Body_OfFiftyRows_IsExemptWhereItOnlyLists(string head, string row, string end, bool isExempt)
    {
        string text = $"class C {{\n{head}{string.Concat(Enumerable.Repeat(row, 50))}{end}\n}}\n";
        Assert.Equal(isExempt, !CodeSize.LongMethods("a.cs", text).Any());
    }

    [Fact]
    public void Line_Of141Columns_IsFound() =>
        Assert.Equal(["a.cs:2: 141 columns"], CodeSize.LongLines("a.cs", $"{new string('x', 140)}\r\n{new string('x', 141)}\r\n"));

    // All of them, each on a line of its own; Assert.Empty tells but the first few.
    private static void None(List<string> found) => Assert.True(found.Count == 0, string.Join('\n', found));

    private static List<string> In(string folder, Func<string, string, IEnumerable<string>> check) =>
        [.. Repository.Sources(folder).SelectMany(file => check(Repository.Name(file), File.ReadAllText(file)))];
}
