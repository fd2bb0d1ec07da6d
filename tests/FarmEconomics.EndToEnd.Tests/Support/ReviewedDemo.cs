using FarmEconomics.EndToEnd.Tests.Support;

[assembly: AssemblyFixture(typeof(ReviewedDemo))]

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>The demo farm reviewed once, without notebooks, for all tests that look at its pages; gone with the last of them.</summary>
public sealed class ReviewedDemo : IDisposable
{
    private readonly Scratch scratch = new();
    private readonly Lazy<Task<string>> folder;

    public ReviewedDemo()
    {
        folder = new(async () =>
        {
            ProgramRun run = await Program.RunAsync("review", ManyFarms.Demo, "--no-notebooks", "--out", scratch.File("out"));
            Assert.True(run.ExitCode == 0, run.Error);
            return scratch.File("out");
        });
    }

    /// <summary>The folder with its pages.</summary>
    public Task<string> Folder => folder.Value;

    /// <inheritdoc/>
    public void Dispose() => scratch.Dispose();
}
