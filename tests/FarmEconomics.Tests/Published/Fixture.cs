using System.Globalization;
using System.Text.Json;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Published;

/// <summary>A file of published figures: dataset, citation, inputs, answers with their tolerance and evidence in one place.</summary>
internal static class Fixture
{
    internal static JsonElement Load(string dataset)
    {
        string path = Path.Combine(AppContext.BaseDirectory, "Published", dataset + ".json");
        return JsonDocument.Parse(File.ReadAllText(path)).RootElement;
    }

    internal static string Text(this JsonElement element, string name) => element.GetProperty(name).GetString()!;

    internal static decimal Number(this JsonElement element, string name) => element.GetProperty(name).Number();

    /// <summary>A physical figure, as a double.</summary>
    internal static double Double(this JsonElement element, string name) => element.GetProperty(name).GetDouble();

    internal static decimal Number(this JsonElement element) =>
        element.ValueKind == JsonValueKind.String ? decimal.Parse(element.GetString()!, CultureInfo.InvariantCulture) : element.GetDecimal();

    internal static IEnumerable<JsonElement> List(this JsonElement element, string name) => element.GetProperty(name).EnumerateArray();

    internal static decimal[] Numbers(this JsonElement element, string name) => element.List(name).Select(item => item.Number()).ToArray();

    internal static decimal[][] Table(this JsonElement element, string name) =>
        element.List(name).Select(row => row.EnumerateArray().Select(item => item.Number()).ToArray()).ToArray();

    /// <summary>Holds a figure against an answer of the file, if the file has one.</summary>
    internal static void Check(this JsonElement answers, string name, decimal? actual)
    {
        if (answers.TryGetProperty(name, out JsonElement answer))
        {
            Meets(answer, name, actual);
        }
    }

    internal static void Meets(this JsonElement answer, string name, decimal? actual)
    {
        Assert.True(actual is not null, $"{name} is not available");
        decimal expected = answer.Number("value");
        Assert.True(Math.Abs(expected - actual.Value) <= answer.Number("tolerance"), $"{name}: {answer.Text("evidence")} {expected}, got {actual}");
    }

    /// <summary>Figures are decimals in text, to the cent.</summary>
    internal static void Near(decimal[] expected, decimal[] actual, decimal tolerance)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (int i = 0; i < expected.Length; i++)
        {
            Close.To(expected[i], actual[i], tolerance);
        }
    }
}
