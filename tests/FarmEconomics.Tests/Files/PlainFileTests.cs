using System.Diagnostics;
using System.Net.Sockets;
using FarmEconomics.Files;
using FarmEconomics.Files.Importing;
using FarmEconomics.Records;
using Xunit;

namespace FarmEconomics.Tests.Files;

/// <summary>What only looks like a file is named, and nobody waits for it.</summary>
public class PlainFileTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("sales.csv")]
    [InlineData("sales.till.csv")]
    [InlineData("farm.csv")]
    public async Task Open_PipeNamedLikeATable_IsNamedAndNotWaitedFor(string name)
    {
        string folder = TestFolders.MakeBad("sound");
        File.Delete(Path.Combine(folder, name));
        MakePipe(Path.Combine(folder, name));

        FarmFolder farm = await Task.Run(() => FarmFolder.Open(folder), Cancel).WaitAsync(TimeSpan.FromMinutes(1), Cancel);

        Problem problem = Assert.Single(farm.Problems, problem => problem.Source.File == name);
        Assert.Contains("is no plain file but a pipe, a socket or a device", problem.Message, StringComparison.Ordinal);
        Assert.Equal(Severity.Error, problem.Severity);
    }

    [Fact]
    public async Task Open_LinkToADevice_IsNamed()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "devices are no files on Windows");
        string folder = TestFolders.MakeBad("sound");
        File.Delete(Path.Combine(folder, "sales.csv"));
        File.CreateSymbolicLink(Path.Combine(folder, "sales.csv"), "/dev/zero");

        FarmFolder farm = await Task.Run(() => FarmFolder.Open(folder), Cancel).WaitAsync(TimeSpan.FromMinutes(1), Cancel);

        Assert.Contains(farm.Problems, problem => problem.Message.Contains("sales.csv is no plain file", StringComparison.Ordinal));
    }

    [Fact]
    public void Open_Socket_IsNamed()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "sockets are no files on Windows");
        string folder = TestFolders.MakeBad("sound");
        File.Delete(Path.Combine(folder, "sales.csv"));
        using Socket socket = new(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        socket.Bind(new UnixDomainSocketEndPoint(Path.Combine(folder, "sales.csv")));

        Assert.Contains(FarmFolder.Open(folder).Problems, problem => problem.Message.Contains("sales.csv is no plain file", StringComparison.Ordinal));
    }

    [Fact]
    public void Open_FolderNamedLikeATable_IsNamed()
    {
        string folder = TestFolders.MakeBad("sound");
        File.Delete(Path.Combine(folder, "expenses.csv"));
        Directory.CreateDirectory(Path.Combine(folder, "expenses.csv"));

        FarmFolder farm = FarmFolder.Open(folder);

        Assert.Contains(farm.Problems, problem => problem is { Severity: Severity.Error, Message: "expenses.csv is a folder, not a file." });
        Assert.Null(farm.Review);
    }

    [Fact]
    public void Open_EmptyFile_StillSaysItIsEmpty()
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "sales.csv"), "");

        Assert.Contains(FarmFolder.Open(folder).Problems, problem => problem.Message == "sales.csv has no heading row.");
    }

    [Fact]
    public async Task OpenAndImport_PipesAsWorkbookAndSource_AreNamed()
    {
        string folder = TestFolders.MakeBad("sound");
        (string workbook, string till) = (Path.Combine(folder, "pipe.xlsx"), Path.Combine(folder, "till.csv"));
        MakePipe(workbook);
        MakePipe(till);

        IOException opened = await Assert.ThrowsAsync<IOException>(() => Task.Run(() => FarmFolder.Open(workbook), Cancel).WaitAsync(TimeSpan.FromMinutes(1), Cancel));
        IOException imported = await Assert.ThrowsAsync<IOException>(() => Task.Run(() => RecordsImport.Plan(till, "sales", till, null), Cancel).WaitAsync(TimeSpan.FromMinutes(1), Cancel));

        Assert.Contains("pipe.xlsx is no plain file", opened.Message, StringComparison.Ordinal);
        Assert.Contains("till.csv is no plain file", imported.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sales.csv")]
    [InlineData("notes.csv")]
    public async Task Fingerprint_PipeInTheFolder_IsTakenWithoutWaitingAndChangesWhenItGoes(string name)
    {
        string folder = TestFolders.MakeBad("sound");
        string whole = RecordsFingerprint.Of(folder);
        byte[]? before = File.Exists(Path.Combine(folder, name)) ? File.ReadAllBytes(Path.Combine(folder, name)) : null;
        File.Delete(Path.Combine(folder, name));
        MakePipe(Path.Combine(folder, name));

        string piped = await Task.Run(() => RecordsFingerprint.Of(folder) + RecordsFingerprint.QuickSign(folder)[..0], Cancel).WaitAsync(TimeSpan.FromMinutes(1), Cancel);
        File.Delete(Path.Combine(folder, name));
        if (before is not null)
        {
            File.WriteAllBytes(Path.Combine(folder, name), before);
        }

        Assert.NotEqual(whole, piped);
        Assert.Equal(whole, RecordsFingerprint.Of(folder));
    }

    [Fact]
    public async Task Fingerprint_LinksToADeviceAndToNothing_AreNotRead()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "devices are no files on Windows");
        string folder = TestFolders.MakeBad("sound");
        File.CreateSymbolicLink(Path.Combine(folder, "zero.csv"), "/dev/zero");
        File.CreateSymbolicLink(Path.Combine(folder, "gone.csv"), "/nowhere/at/all.csv");

        string sign = await Task.Run(() => RecordsFingerprint.Of(folder) + RecordsFingerprint.QuickSign(folder), Cancel).WaitAsync(TimeSpan.FromMinutes(1), Cancel);

        Assert.NotEmpty(sign);
    }

    [Fact]
    public void QuickSign_FileBehindALinkWritten_IsAnotherSign()
    {
        string folder = TestFolders.MakeBad("sound");
        string kept = Path.Combine(TestFolders.Make(("kept.csv", File.ReadAllText(Path.Combine(folder, "sales.csv")))), "kept.csv");
        File.Delete(Path.Combine(folder, "sales.csv"));
        File.CreateSymbolicLink(Path.Combine(folder, "sales.csv"), kept);
        string before = RecordsFingerprint.QuickSign(folder);

        File.AppendAllText(kept, "2025-06-11,kale,market,1,2.50\n");

        Assert.NotEqual(before, RecordsFingerprint.QuickSign(folder));
    }

    [Fact]
    public void Open_LinkInACircle_LeadsToNoFile()
    {
        string folder = TestFolders.MakeBad("sound");
        File.CreateSymbolicLink(Path.Combine(folder, "expenses.csv"), Path.Combine(folder, "expenses.csv"));

        Assert.Contains(FarmFolder.Open(folder).Problems,
            problem => problem.Message == "expenses.csv can't be opened: it is a link that leads to no file.");
        Assert.NotEmpty(RecordsFingerprint.Of(folder));
    }

    private static void MakePipe(string path)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "pipes are no files on Windows");
        using Process process = Process.Start("mkfifo", [path]);
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
    }
}
