using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Notebooks;

namespace FarmEconomics.EndToEnd.Tests.Notebooks;

public class NotebookDocumentTests
{
    // nbformat's own description of the format: https://nbformat.readthedocs.io/en/latest/format_description.html
    private const string Unusual = """
        {
         "cells": [
          {
           "attachments": {
            "bed.png": {
             "image/png": "iVBORw0KGgo="
            }
           },
           "cell_type": "markdown",
           "id": "a",
           "metadata": {},
           "source": "one string, é ½"
          },
          {
           "cell_type": "raw",
           "id": "b",
           "metadata": {
            "format": "text/x-rst"
           },
           "source": [
            "raw\n",
            "cell"
           ]
          }
         ],
         "metadata": {
          "unknown": {
           "kept": true
          }
         },
         "nbformat": 4,
         "nbformat_minor": 5
        }

        """;

    [Fact]
    public void Document_WithUnusualCells_IsWrittenAsItWasRead() =>
        Assert.Equal(Unusual.ReplaceLineEndings("\n"), NotebookDocument.Parse(Unusual).ToJson());

    [Fact]
    public void Source_AsStringOrLines_IsOneText() =>
        Assert.Equal(["one string, é ½", "raw\ncell"], NotebookDocument.Parse(Unusual).Cells.Select(c => c.Source));

    [Theory]
    [InlineData("", "not a notebook: ")]
    [InlineData("[]", "not a notebook of format 4")]
    [InlineData("{\"cells\": [], \"nbformat\": 3}", "not a notebook of format 4")]
    [InlineData("{\"cells\": [], \"nbformat\": \"4\"}", "not a notebook of format 4")]
    public void Parse_SomethingElse_SaysWhatIsWrong(string text, string expected) =>
        Assert.StartsWith(expected, Assert.Throws<NotebookException>(() => NotebookDocument.Parse(text)).Message, StringComparison.Ordinal);

    [Fact]
    public void Save_OverAFile_LeavesOnlyTheNewOne()
    {
        using Scratch scratch = new();
        string path = scratch.File("n.ipynb");
        File.WriteAllText(path, "old");
        NotebookDocument.Parse(Unusual).Save(path);
        Assert.Equal(Unusual.ReplaceLineEndings("\n"), File.ReadAllText(path));
        Assert.Single(Directory.GetFiles(scratch.Folder));
    }

    [Theory]
    [InlineData(-5, "-5")]
    [InlineData(true, "true")]
    [InlineData("a\"b\\c\n\u2028\u0000é", "\"a\\\"b\\\\c\\u000a\\u2028\\u0000é\"")]
    public void Literal_OfAValue_IsCSharp(object value, string expected) => Assert.Equal(expected, NotebookParameters.Literal(value));

    [Fact]
    public void Literal_OfAnotherType_IsRefused() =>
        Assert.Contains("not Single", Assert.Throws<NotebookException>(() => NotebookParameters.Literal(1.5f)).Message, StringComparison.Ordinal);
}
