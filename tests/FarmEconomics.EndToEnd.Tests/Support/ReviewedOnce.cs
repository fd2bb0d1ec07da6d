using FarmEconomics.EndToEnd.Tests.Support;

[assembly: AssemblyFixture(typeof(ReviewedDemo))]
[assembly: AssemblyFixture(typeof(ReviewedSound))]

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>A farm reviewed once for all tests that look at the review; gone with the last of them.</summary>
public abstract class ReviewedOnce : IDisposable
{
    private readonly Scratch scratch = new();
    private readonly Lazy<Task<string>> folder;

    private protected ReviewedOnce(string records, params string[] options)
    {
        folder = new(async () =>
        {
            ProgramRun run = await Program.RunAsync(["review", records, "--out", scratch.File("out"), .. options]);
            Assert.True(run.ExitCode == 0, run.Error);
            return scratch.File("out");
        });
    }

    /// <summary>The folder with its pages; it stays as it is.</summary>
    public Task<string> Folder => folder.Value;

    /// <inheritdoc/>
    public void Dispose()
    {
        scratch.Dispose();
        GC.SuppressFinalize(this);
    }
}

/// <summary>The demo farm's pages.</summary>
public sealed class ReviewedDemo() : ReviewedOnce(ManyFarms.Demo, "--no-notebooks");

/// <summary>The small sound farm's pages and notebooks.</summary>
public sealed class ReviewedSound() : ReviewedOnce(ManyFarms.Sound);
