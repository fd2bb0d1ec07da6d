using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Notebooks;

[assembly: AssemblyFixture(typeof(ReviewedDemo))]
[assembly: AssemblyFixture(typeof(ReviewedSound))]

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>A farm reviewed once, pages and notebooks, for all tests that look at the review; gone with the last of them.</summary>
public abstract class ReviewedOnce : IDisposable
{
    private readonly Scratch scratch = new();
    private readonly Lazy<Task<ProgramRun>> run;

    private protected ReviewedOnce(string records)
    {
        run = new(async () =>
        {
            string before = Checksums.Of(records);
            ProgramRun made = await Program.RunAsync(["review", records, "--out", Place]);
            Assert.True(made.ExitCode == 0, made.Error);
            Assert.Equal(before, Checksums.Of(records));
            return made;
        });
    }

    /// <summary>What the command said.</summary>
    internal Task<ProgramRun> Run => run.Value;

    /// <summary>The folder with its pages; it stays as it is.</summary>
    public Task<string> Folder => FolderAsync();

    private string Place => scratch.File("out");

    /// <summary>One of its notebooks, as it was executed.</summary>
    public async Task<NotebookDocument> Notebook(string name) => NotebookDocument.Load(Path.Combine(await Folder, "notebooks", name));

    private async Task<string> FolderAsync()
    {
        _ = await run.Value;
        return Place;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        scratch.Dispose();
        GC.SuppressFinalize(this);
    }
}

/// <summary>The demo farm's pages and notebooks.</summary>
public sealed class ReviewedDemo() : ReviewedOnce(ManyFarms.Demo);

/// <summary>Those of the small sound farm.</summary>
public sealed class ReviewedSound() : ReviewedOnce(ManyFarms.Sound);
