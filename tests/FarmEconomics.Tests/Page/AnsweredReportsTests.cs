using FarmEconomics.Page.Farm;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Tests.Answers;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Page;

/// <summary>
/// What a page has worked out is there when it is asked for again; what takes long goes on by itself, and is stopped when nobody wants it
/// any more.
/// </summary>
public class AnsweredReportsTests
{
    private static readonly TimeSpan Forever = Timeout.InfiniteTimeSpan;

    private enum CountingBlock
    {
        Text,
    }

    [Fact]
    public void Of_AskedTheSameAgain_IsNotWorkedOutAgain()
    {
        Counting report = new();
        AnsweredReports answered = new();
        IReadOnlyList<Block> first = answered.Of(report, AnswerFarms.Demo, Given("a"), CancellationToken.None);
        Assert.Same(first, answered.Of(report, AnswerFarms.Demo, Given("a"), CancellationToken.None));
        Assert.NotSame(first, answered.Of(report, AnswerFarms.Demo, Given("b"), CancellationToken.None));
        Assert.Equal(2, report.Made);
    }

    [Fact]
    public async Task Kept_AskedByManyInTurns_IsWorkedOutOncePerQuestion()
    {
        ReviewedFarm farm = ReviewedFarm.Of(AnswerFarms.Demo.Folder);
        int made = 0;
        string[] answers = await Task.WhenAll(
            Enumerable.Range(0, 12).Select(i => Task.Run(() => farm.Kept($"{i % 3}", () => $"{i % 3}, {Interlocked.Increment(ref made)}")))
        );
        Assert.Equal(3, made);
        Assert.All(answers, (answer, i) => Assert.StartsWith($"{i % 3}, ", answer, StringComparison.Ordinal));
    }

    [Fact]
    public void Kept_Stopped_IsAskedAnew()
    {
        ReviewedFarm farm = ReviewedFarm.Of(AnswerFarms.Demo.Folder);
        Assert.Throws<OperationCanceledException>(() => farm.Kept<string>("a", () => throw new OperationCanceledException()));
        Assert.Equal("there", farm.Kept("a", () => "there"));
    }

    [Fact]
    public void Of_AFileThatChanged_IsWorkedOutAgain()
    {
        Counting report = new();
        AnsweredReports answered = new();
        string file = Path.Combine(TestFolders.Make(("kept.csv", "one")), "kept.csv");
        answered.Of(report, AnswerFarms.Demo, Given(file), CancellationToken.None);
        File.WriteAllText(file, "one and two");
        answered.Of(report, AnswerFarms.Demo, Given(file), CancellationToken.None);
        Assert.Equal(2, report.Made);
    }

    [Fact]
    public async Task Within_NotReadyYet_GivesNothingAndGoesOn()
    {
        Counting report = new() { Gate = new TaskCompletionSource() };
        AnsweredReports answered = new();
        Assert.Null(await answered.WithinAsync(report, AnswerFarms.Demo, Given("a"), TimeSpan.FromMilliseconds(1), CancellationToken.None));
        report.Gate.SetResult();
        Assert.NotNull(await answered.WithinAsync(report, AnswerFarms.Demo, Given("a"), Forever, CancellationToken.None));
        Assert.Equal(1, report.Made);
    }

    [Fact]
    public async Task Within_SomethingElseAsked_CallsOffWhatNobodyWaitsFor()
    {
        Counting report = new() { Gate = new TaskCompletionSource() };
        AnsweredReports answered = new();
        Assert.Null(await answered.WithinAsync(report, AnswerFarms.Demo, Given("a"), TimeSpan.FromMilliseconds(1), CancellationToken.None));
        Task<IReadOnlyList<Block>?> waited = answered.WithinAsync(report, AnswerFarms.Demo, Given("b"), Forever, CancellationToken.None);
        Task<IReadOnlyList<Block>?> beside = answered.WithinAsync(report, AnswerFarms.Demo, Given("c"), Forever, CancellationToken.None);
        report.Gate.SetResult();
        Assert.NotNull(await waited);
        Assert.NotNull(await beside);
        Assert.Contains("a", report.CalledOff);
        Assert.DoesNotContain("b", report.CalledOff);
    }

    [Fact]
    public async Task Within_AValueRefused_SaysSoEveryTime()
    {
        Counting report = new();
        AnsweredReports answered = new();
        for (int i = 0; i < 2; i++)
        {
            await Assert.ThrowsAsync<ArgumentException>(() =>
                answered.WithinAsync(report, AnswerFarms.Demo, Given(""), Forever, CancellationToken.None)
            );
        }
    }

    private static Dictionary<string, object> Given(string value) => new() { ["value"] = value };

    /// <summary>Counts how often it was made; stands still until its gate opens.</summary>
    private sealed class Counting : IReport
    {
        private int made;

        public ReportId Id => ReportId.NextYear;

        public string? Tab => null;

        public IReadOnlyList<ReportField> Fields => [];

        public bool IsInstant => false;

        public bool StandsAlone => false;

        public bool TakesAnyRecords => false;

        internal int Made => made;

        internal TaskCompletionSource? Gate { get; init; }

        internal System.Collections.Concurrent.ConcurrentBag<string> CalledOff { get; } = [];

        public IReadOnlyList<Block> Make(ReviewedFarm farm, IReadOnlyDictionary<string, object> given, CancellationToken cancellation)
        {
            string value = (string)given["value"];
            ArgumentException.ThrowIfNullOrEmpty(value);
            using CancellationTokenRegistration told = cancellation.Register(() => CalledOff.Add(value));
            Interlocked.Increment(ref made);
            Gate?.Task.Wait(CancellationToken.None);
            return [new ProseBlock(CountingBlock.Text, null, new Prose(value))];
        }

        public string? ChangesNothing(string field, ReviewedFarm farm) => null;

        public (string Question, Prose Answer)? InALine(ReviewedFarm farm) => null;
    }
}
