namespace FarmEconomics.Recount.Tests;

/// <summary>The demo farm reviewed by the program and recounted, once for all tests that look at it.</summary>
public sealed class DemoRecount : IDisposable
{
    internal Reviewed Reviewed { get; } = new(RecordsCopy.Demo);

    internal Recount Recount { get; } = new(RecordsCopy.Demo);

    /// <inheritdoc/>
    public void Dispose() => Recount.Dispose();
}
