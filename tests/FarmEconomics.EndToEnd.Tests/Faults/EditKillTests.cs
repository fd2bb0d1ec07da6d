using System.Diagnostics;
using System.Globalization;
using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Faults;

/// <summary>A row being corrected when the program is killed: the file is the one before or the one after, whole, and the next correction works. Six kills, or as many as FARMECONOMICS_KILLS says.</summary>
public class EditKillTests
{
    private static readonly int Kills = int.Parse(Environment.GetEnvironmentVariable("FARMECONOMICS_KILLS") ?? "6", CultureInfo.InvariantCulture);

    [Fact]
    public void Edit_KilledAtAnyMoment_LeavesTheOldOrTheNewWhole()
    {
        using Scratch scratch = new();
        foreach (string file in Directory.EnumerateFiles(ManyFarms.Sound))
        {
            File.Copy(file, scratch.File(Path.GetFileName(file)));
        }

        string place = scratch.File("harvests.csv");
        string old = File.ReadAllText(place);
        string fresh = old.Replace(",40", ",41", StringComparison.Ordinal);
        Random random = new(20260101);
        for (int i = 0; i < Kills; i++)
        {
            ProcessStartInfo start = new(EntryPoint.TestProgram, [EditingChild.Verb, scratch.Folder]) { RedirectStandardOutput = true };
            using Process child = Process.Start(start)!;
            Assert.NotNull(child.StandardOutput.ReadLine());
            Thread.Sleep(random.Next(0, 400));
            child.Kill();
            child.WaitForExit();

            Assert.Contains(File.ReadAllText(place), new[] { old, fresh });
            Assert.All(Directory.GetFiles(Path.Combine(scratch.Folder, "history"), "*.csv"), copy => Assert.Contains(File.ReadAllText(copy), new[] { old, fresh }));
        }

        var editor = new Files.Editing.RecordsEditor(scratch.Folder, TimeProvider.System);
        string to = File.ReadAllText(place) == old ? "41" : "40";
        Assert.True(editor.Save(new Files.Editing.RowChange("harvests.csv", editor.Row("harvests.csv", 2)!.Version, 2, new Dictionary<string, string> { ["quantity"] = to })).Saved);
        Assert.Empty(Directory.GetFiles(scratch.Folder, ".harvests.csv.new-*"));
    }
}
