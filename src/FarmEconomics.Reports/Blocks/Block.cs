using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Blocks;

/// <summary>A part of a report: data that a page, a notebook or another program shows. Immutable.</summary>
/// <param name="Key">What names it.</param>
[TypeFormatterSource(typeof(BlockFormatterSource), PreferredMimeTypes = ["text/html", "text/plain", BlockFormatterSource.Json])]
public abstract record Block(BlockKey Key) : IHtmlDisplay
{
    /// <inheritdoc/>
    public string ToHtml() => BlockHtml.Of(this).Text;

    /// <inheritdoc/>
    public string ToPlainText() => BlockText.Of(this);

    /// <summary>The content for another program: columns by key, raw values, sentences.</summary>
    public string ToJson() => BlockJson.Of(this).ToJsonString();

    /// <inheritdoc/>
    public sealed override string ToString() => ToPlainText();
}

/// <summary>The finding: one sentence with its number, two on why, and how sure that is.</summary>
/// <param name="Key">What names it.</param>
/// <param name="Headline">The finding.</param>
/// <param name="Why">At most two sentences.</param>
/// <param name="HowSure">At most 25 words; null: none.</param>
public sealed record HeadlineBlock(BlockKey Key, string Headline, Prose? Why, string? HowSure) : Block(Key);

/// <summary>A figure that stands large.</summary>
/// <param name="Name">Its key within the block, in small letters.</param>
/// <param name="Shown">As it reads; empty where it isn't known.</param>
/// <param name="Value">Its raw value: a decimal, a string, or null where it isn't known.</param>
/// <param name="Words">What it is, or why it isn't known.</param>
public sealed record KeyFigure(string Name, string Shown, object? Value, string Words);

/// <summary>At most four figures in a row.</summary>
/// <param name="Key">What names it.</param>
/// <param name="Figures">The figures.</param>
public sealed record FiguresBlock(BlockKey Key, IReadOnlyList<KeyFigure> Figures) : Block(Key);

/// <summary>Sentences under a heading.</summary>
/// <param name="Key">What names it.</param>
/// <param name="Heading">The heading; null: none.</param>
/// <param name="Text">The sentences.</param>
public sealed record ProseBlock(BlockKey Key, string? Heading, Prose Text) : Block(Key)
{
    /// <summary>Set small, as captions and cautions are.</summary>
    public bool IsSmall { get; init; }
}

/// <summary>A question that another page answers, in a line.</summary>
/// <param name="Question">The question.</param>
/// <param name="Target">Where it is answered: an address of <see cref="PageTarget"/>.</param>
/// <param name="Answer">The answer, in a sentence.</param>
public sealed record Answered(string Question, string Target, Prose Answer);

/// <summary>The other questions, each with its answer in a line.</summary>
/// <param name="Key">What names it.</param>
/// <param name="Heading">The heading.</param>
/// <param name="Answers">Questions and answers.</param>
public sealed record AnswersBlock(BlockKey Key, string Heading, IReadOnlyList<Answered> Answers) : Block(Key);

/// <summary>What a card is about: it colors the stroke above it.</summary>
public enum CardTone
{
    /// <summary>A loss.</summary>
    Loss,

    /// <summary>Neither.</summary>
    Pale,

    /// <summary>Something to look after.</summary>
    Third,

    /// <summary>As it is.</summary>
    Soft,

    /// <summary>A gain.</summary>
    Gain,
}

/// <summary>A few sentences beside others of their kind.</summary>
/// <param name="Name">Its key within the block, in small letters.</param>
/// <param name="Title">Its title.</param>
/// <param name="Tone">What it is about.</param>
/// <param name="Lines">Its sentences.</param>
public sealed record Card(string Name, string Title, CardTone Tone, IReadOnlyList<Prose> Lines);

/// <summary>Cards beside each other.</summary>
/// <param name="Key">What names it.</param>
/// <param name="Heading">The heading.</param>
/// <param name="Cards">The cards.</param>
public sealed record CardsBlock(BlockKey Key, string Heading, IReadOnlyList<Card> Cards) : Block(Key);

/// <summary>A table under a heading; its caption is the table's title.</summary>
/// <param name="Key">What names it.</param>
/// <param name="Heading">The heading, a sentence; null: the table's title is one.</param>
/// <param name="Table">The table.</param>
public sealed record TableBlock(BlockKey Key, string? Heading, ReportTable Table) : Block(Key)
{
    /// <summary>How many rows show at first; 0: all, as of the one main table of a page.</summary>
    public int Rows { get; init; } = 12;
}

/// <summary>A chart under a heading; in a notebook a picture.</summary>
/// <param name="Key">What names it.</param>
/// <param name="Heading">The heading: a sentence with the number.</param>
/// <param name="Caption">Unit and year.</param>
/// <param name="Chart">The chart.</param>
[TypeFormatterSource(typeof(PlotFormatterSource), PreferredMimeTypes = ["image/png", "text/plain", BlockFormatterSource.Json])]
public sealed record PlotBlock(BlockKey Key, string? Heading, string? Caption, Chart Chart) : Block(Key);

/// <summary>Blocks that are folded away until somebody opens them; print opens them.</summary>
/// <param name="Key">What names it.</param>
/// <param name="Heading">What is in it.</param>
/// <param name="Blocks">The blocks.</param>
public sealed record FoldBlock(BlockKey Key, string Heading, IReadOnlyList<Block> Blocks) : Block(Key)
{
    /// <summary>Left out of print: long lists that a sheet doesn't need.</summary>
    public bool ScreenOnly { get; init; }
}

/// <summary>Blocks beside each other in two columns; below each other on a phone.</summary>
/// <param name="Key">What names it.</param>
/// <param name="Blocks">The blocks.</param>
public sealed record PairBlock(BlockKey Key, IReadOnlyList<Block> Blocks) : Block(Key);
