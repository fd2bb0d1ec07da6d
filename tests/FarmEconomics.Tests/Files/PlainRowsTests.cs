using System.Text;
using CsCheck;
using CsvHelper;
using FarmEconomics.Files.Reading;
using Xunit;

namespace FarmEconomics.Tests.Files;

/// <summary>Rows without quotes have the same fields as the CSV library finds, whatever stands in them and however long they are.</summary>
public class PlainRowsTests
{
    [Fact]
    public void Read_AnyRows_HaveTheFieldsTheCsvLibraryFinds() =>
        Gen.Select(
                Gen.String[Gen.Char["ab1. \t-é"], 0, 40].Array[1, 8].Array[0, 30],
                Gen.Char[",;\t"],
                Gen.Bool,
                Gen.Bool
            )
            .Sample(
                (rows, separator, windows, ended) =>
                {
                    string lineEnd = windows ? "\r\n" : "\n";
                    string text = string.Join(lineEnd, rows.Select(row => string.Join(separator, row))) + (ended ? lineEnd : "");
                    byte[] bytes = Encoding.UTF8.GetBytes(text);
                    Assert.Equal(ByLibrary(bytes, separator), Plain(bytes, separator));
                },
                iter: 300
            );

    [Theory]
    [InlineData("")]
    [InlineData("\n")]
    [InlineData("\r\n\r\n")]
    [InlineData(" \t\n")]
    public void Read_NothingButLineEnds_IsBlank(string text) => Assert.Empty(Plain(Encoding.UTF8.GetBytes(text), ','));

    /// <summary>What stands behind the bytes that count is no part of them, separators and line feeds least of all.</summary>
    [Theory]
    [InlineData(30)]
    [InlineData(31)]
    [InlineData(32)]
    [InlineData(33)]
    [InlineData(64)]
    public void Read_BytesBehindTheEnd_DontCount(int length) =>
        Assert.Equal([$"{new string('a', length - 2)}|b"], Plain(Encoding.UTF8.GetBytes($"{new string('a', length - 2)},b"), ','));

    private static List<string> Plain(byte[] bytes, char separator)
    {
        byte[] padded = new byte[bytes.Length + PlainRows.Padding];
        Array.Fill(padded, (byte)separator);
        padded[^1] = (byte)'\n';
        bytes.CopyTo(padded, 0);
        var rows = new PlainRows(padded, bytes.Length, (byte)separator);
        List<string> found = [];
        while (rows.Read())
        {
            string[] fields = new string[rows.Count];
            for (int i = 0; i < fields.Length; i++)
            {
                fields[i] = Encoding.UTF8.GetString(rows[i]);
            }

            if (!rows.IsBlank)
            {
                found.Add(string.Join('|', fields));
            }
        }

        return found;
    }

    private static List<string> ByLibrary(byte[] bytes, char separator)
    {
        using CsvReader reader = CsvReader.Create(bytes, TableFile.Options(separator) with { HasHeader = false });
        List<string> found = [];
        while (reader.Read())
        {
            if (!RowsInOrder.IsBlank(reader))
            {
                found.Add(string.Join('|', Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)));
            }
        }

        return found;
    }
}
