using BenchmarkDotNet.Attributes;
using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Tracing;

namespace FarmEconomics.Benchmarks;

/// <summary>
/// The way from files to budgets in pieces, each with the ones before it done. In this process: a project made on the fly would fall under this
/// repository's build rules.
/// </summary>
[InProcess]
[MemoryDiagnoser]
public class Pieces
{
    private string folder = "";
    private RecordsReading reading = null!;
    private FarmTrace trace = null!;
    private FarmRecords records = null!;

    /// <summary>Sales rows of the farm.</summary>
    [Params(5_000, 50_000, 500_000)]
    public int Sales { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        folder = Directory.CreateTempSubdirectory("pieces-").FullName;
        LargeFarm.Write(folder, Sales);
        reading = RecordsFolder.Read(folder);
        records = FarmRecords.Link(reading.Tables, reading.FarmSettings);
        trace = FarmTrace.Of(records);
    }

    [GlobalCleanup]
    public void Cleanup() => Directory.Delete(folder, recursive: true);

    [Benchmark]
    public RecordsReading Read() => RecordsFolder.Read(folder);

    [Benchmark]
    public IReadOnlyList<Problem> Check() => RecordChecks.Run(reading.Tables, reading.FarmSettings);

    /// <summary>Names are linked again each time: a trace writes into the linked records.</summary>
    [Benchmark]
    public FarmTrace LinkAndTrace() => FarmTrace.Of(FarmRecords.Link(reading.Tables, reading.FarmSettings));

    [Benchmark]
    public ChargeBook Cost() => ChargeBook.Of(trace);

    [Benchmark]
    public int LinkTraceCostAndBudgetAllYears()
    {
        FarmReview review = FarmReview.Of(FarmRecords.Link(reading.Tables, reading.FarmSettings));
        return review.CropYears.Sum(year => review.Season(year).Reconciliation.Count);
    }
}
