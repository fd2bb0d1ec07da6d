using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;

namespace FarmEconomics.Reports.Frame;

/// <summary>The reports there are; the small-letter name is the page's address.</summary>
public enum ReportId
{
    /// <summary>What was left, who earned it, what to do next season.</summary>
    Season,

    /// <summary>One crop.</summary>
    Crop,

    /// <summary>The rows behind a crop's figures.</summary>
    Rows,

    /// <summary>What to drop, fix, keep and grow.</summary>
    DropOrGrow,

    /// <summary>The plan of the next year.</summary>
    NextYear,

    /// <summary>Prices by crop and channel, the price of a share.</summary>
    Prices,

    /// <summary>Where shared costs went.</summary>
    SharedCosts,

    /// <summary>Water and power.</summary>
    Water,

    /// <summary>A season with something changed.</summary>
    WhatIf,

    /// <summary>What a lender or a funder sees.</summary>
    Lender,

    /// <summary>Whether the records can be trusted.</summary>
    Records,
}

/// <summary>
/// A report: what it is called, which fields it has, and its blocks, a pure function of the farm, the parameters and a token.
/// </summary>
public interface IReport
{
    /// <summary>Which it is.</summary>
    ReportId Id { get; }

    /// <summary>Its name among the pages; null: it is reached from others, as the page of a crop is.</summary>
    string? Tab { get; }

    /// <summary>Its parameters as fields, those of every report first.</summary>
    IReadOnlyList<ReportField> Fields { get; }

    /// <summary>True when it is worked out in a quarter of a second; else the last answer is shown meanwhile.</summary>
    bool IsInstant { get; }

    /// <summary>
    /// True when it asks its farm for little that other reports ask for (verdicts, what was short ...): a review makes it while those are
    /// worked out.
    /// </summary>
    bool StandsAlone { get; }

    /// <summary>True when it can be made of records that errors keep from being reviewed.</summary>
    bool TakesAnyRecords { get; }

    /// <summary>Works it out.</summary>
    /// <param name="farm">The farm.</param>
    /// <param name="given">Values by field; what isn't given keeps its default.</param>
    /// <param name="cancellation">Called off by a newer request.</param>
    /// <exception cref="ArgumentException">A value the records don't allow; the message is for the person.</exception>
    IReadOnlyList<Block> Make(ReviewedFarm farm, IReadOnlyDictionary<string, object> given, CancellationToken cancellation);

    /// <summary>Why a field changes nothing with these records; null when it does.</summary>
    /// <param name="field">The field's name.</param>
    /// <param name="farm">The farm.</param>
    string? ChangesNothing(string field, ReviewedFarm farm);

    /// <summary>Its question and answer in a line for the season's page, linked to it; null: it has none.</summary>
    /// <param name="farm">The farm.</param>
    (string Question, Prose Answer)? InALine(ReviewedFarm farm);
}

/// <summary>A report with its own Parameters record.</summary>
/// <typeparam name="TParameters">The record; <see cref="ReportParameters"/> itself where it needs no more.</typeparam>
public abstract class Report<TParameters> : IReport
    where TParameters : ReportParameters, new()
{
    private readonly Lazy<IReadOnlyList<ReportField>> fields = new(ParameterFields.Of<TParameters>);

    /// <inheritdoc/>
    public abstract ReportId Id { get; }

    /// <inheritdoc/>
    public abstract string? Tab { get; }

    /// <inheritdoc/>
    public IReadOnlyList<ReportField> Fields => fields.Value;

    /// <inheritdoc/>
    public virtual bool IsInstant => true;

    /// <inheritdoc/>
    public virtual bool StandsAlone => false;

    /// <inheritdoc/>
    public virtual bool TakesAnyRecords => false;

    /// <summary>Works it out.</summary>
    /// <param name="farm">The farm.</param>
    /// <param name="parameters">The parameters.</param>
    /// <param name="cancellation">Called off by a newer request.</param>
    /// <returns>Its blocks, in the order of the page.</returns>
    public abstract IReadOnlyList<Block> Make(ReviewedFarm farm, TParameters parameters, CancellationToken cancellation = default);

    /// <inheritdoc/>
    public IReadOnlyList<Block> Make(ReviewedFarm farm, IReadOnlyDictionary<string, object> given, CancellationToken cancellation) =>
        Make(farm, ParameterFields.Make<TParameters>(given), cancellation);

    /// <inheritdoc/>
    public virtual string? ChangesNothing(string field, ReviewedFarm farm) => null;

    /// <inheritdoc/>
    public virtual (string Question, Prose Answer)? InALine(ReviewedFarm farm) => null;
}
