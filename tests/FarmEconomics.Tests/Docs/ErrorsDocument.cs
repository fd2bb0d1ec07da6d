using System.Text;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Tests.Files;

namespace FarmEconomics.Tests.Docs;

/// <summary>Writes docs/errors.md from the catalog and the smallest bad folder of each code.</summary>
internal static class ErrorsDocument
{
    private const string Before = """
        # Errors and warnings

        Generated from the catalog in `src/FarmEconomics/Records/Checks` and the folders in `tests/FarmEconomics.Tests/BadRecords` by
        the tests; change those, then run the tests with `FARM_REWRITE=1`.

        Each fault is printed as `path:line:character: error CODE: what is wrong`, then the row, the nearest known name and how to fix
        it (in a workbook `records.xlsx!sheet:row:COLUMN`). Lines count from 1 with the heading row, characters from 1; a fault of a whole file has neither. Line breaks inside a field
        are shown as `↵`. Errors leave the row out and stop the review unless `--skip-bad-rows` is given; warnings don't.

        Under each code stands the smallest folder that shows it: these files, in place of or beside those of this sound folder.

        """;

    public static string Write()
    {
        var text = new StringBuilder(Before);
        WriteFiles(text, "sound");
        text.Append("\n| code | kind | fault |\n|---|---|---|\n");
        foreach (ProblemKind kind in ProblemCatalog.All)
        {
            text.Append($"| [{kind.Code}](#{kind.Code.ToLowerInvariant()}) | {Word(kind)} | {kind.Title} |\n");
        }

        foreach (ProblemKind kind in ProblemCatalog.All)
        {
            text.Append($"\n## {kind.Code}\n\n**{kind.Title}** ({Word(kind)}). {kind.Meaning} {kind.Fix}\n");
            if (!Directory.Exists(Path.Combine(TestFolders.BadRecords, kind.Code)))
            {
                text.Append("\nNo folder shows it by itself.\n");
                continue;
            }

            WriteFiles(text, kind.Code);
            text.Append($"\n```text\n{File.ReadAllText(Path.Combine(TestFolders.BadRecords, kind.Code, "expected.txt"))}```\n");
        }

        return text.ToString().ReplaceLineEndings("\n");
    }

    private static string Word(ProblemKind kind) => kind.Severity == Severity.Error ? "error" : "warning";

    private static void WriteFiles(StringBuilder text, string folder)
    {
        foreach (string file in Directory.EnumerateFiles(Path.Combine(TestFolders.BadRecords, folder)).Order(StringComparer.Ordinal))
        {
            string name = Path.GetFileName(file);
            if (name.EndsWith(".absent", StringComparison.Ordinal))
            {
                text.Append($"\nNo `{Path.GetFileNameWithoutExtension(name)}`.\n");
            }
            else if (Path.GetExtension(name) is ".repeat" or ".size" or ".link")
            {
                string content = File.ReadAllText(file).TrimEnd('\n');
                text.Append(Path.GetExtension(name) switch
                {
                    ".size" => $"\n`{Path.GetFileNameWithoutExtension(name)}` of {content} bytes.\n",
                    ".link" => $"\n`{Path.GetFileNameWithoutExtension(name)}`, a link to {content}.\n",
                    _ => $"\n`{Path.GetFileNameWithoutExtension(name)}`: what stands between braces, as often as the first line says\n\n```csv\n{content}\n```\n",
                });
            }
            else if (name.EndsWith(".sheet.xml", StringComparison.Ordinal))
            {
                text.Append($"\nThe sheet `{name[..name.IndexOf('.', StringComparison.Ordinal)]}` of a workbook{(name.Contains(".hidden.", StringComparison.Ordinal) ? ", hidden" : "")}\n\n```xml\n{File.ReadAllText(file).TrimEnd('\n')}\n```\n");
            }
            else if (name.EndsWith(".csv", StringComparison.Ordinal))
            {
                string content = File.ReadAllText(file);
                text.Append(content.Length == 0 ? $"\n`{name}`, empty.\n" : $"\n`{name}`\n\n```csv\n{content.TrimEnd('\n')}\n```\n");
            }
        }
    }
}
