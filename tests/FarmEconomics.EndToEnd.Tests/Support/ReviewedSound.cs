using FarmEconomics.EndToEnd.Tests.Support;

[assembly: AssemblyFixture(typeof(ReviewedSound))]

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>The small sound farm reviewed once, notebooks and all, for the tests that need a whole review; gone with the last of them.</summary>
public sealed class ReviewedSound : IDisposable
{
    private readonly Scratch scratch = new();
    private readonly Lazy<Task<string>> folder;

    public ReviewedSound()
    {
        folder = new(async () =>
        {
            ProgramRun run = await Program.RunAsync("review", ManyFarms.Sound, "--out", scratch.File("out"));
            Assert.True(run.ExitCode == 0, run.Error);
            return scratch.File("out");
        });
    }

    /// <summary>The folder with its pages and notebooks; it stays as it is.</summary>
    public Task<string> Folder => folder.Value;

    /// <inheritdoc/>
    public void Dispose() => scratch.Dispose();
}
