using FarmEconomics.Files.Editing;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>A child that corrects the same row over and over, and puts every second correction back, until it is killed.</summary>
internal static class EditingChild
{
    internal const string Verb = "edit-until-killed";

    internal static int Run(string folder)
    {
        var editor = new RecordsEditor(folder, TimeProvider.System);
        for (int i = 0; ; i++)
        {
            EditableRow row = editor.Row("harvests.csv", 2)!;
            EditOutcome saved = editor.Save(new RowChange("harvests.csv", row.Version, 2, new Dictionary<string, string> { ["quantity"] = row.Fields[2] == "40" ? "41" : "40" }));
            if (!saved.Saved || (i % 2 == 1 && !editor.Undo("harvests.csv").Saved))
            {
                return 1;
            }

            Console.Out.WriteLine(i);
            Console.Out.Flush();
        }
    }
}
