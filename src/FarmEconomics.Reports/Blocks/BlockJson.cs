using System.Globalization;
using System.Text.Json.Nodes;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Blocks;

/// <summary>
/// A block's content for another program: sentences, raw values, a table's columns by key. What is drawn is told by its data, never by
/// pixels.
/// </summary>
internal static class BlockJson
{
    /// <summary>The blocks of a report, those within folds and pairs as well, by key.</summary>
    internal static JsonObject Of(IEnumerable<Block> blocks)
    {
        JsonObject all = [];
        foreach (Block block in Flat(blocks))
        {
            all[block.Key.Name] = Of(block);
        }

        return all;
    }

    /// <summary>All blocks, what is folded away or in pairs after what holds it.</summary>
    internal static IEnumerable<Block> Flat(IEnumerable<Block> blocks) => blocks.SelectMany(block => Flat(block switch
    {
        FoldBlock fold => fold.Blocks,
        PairBlock pair => pair.Blocks,
        _ => [],
    }).Prepend(block));

    /// <summary>One block.</summary>
    internal static JsonObject Of(Block block)
    {
        JsonObject json = new() { ["key"] = block.Key.Name };
        switch (block)
        {
            case TableBlock table:
                json["heading"] = table.Heading;
                json["table"] = Of(table.Table);
                break;
            case PlotBlock plot:
                json["heading"] = plot.Heading;
                json["caption"] = plot.Caption;
                json["data"] = plot.Chart.Data is { } data ? Of(data) : Of(plot.Chart.Bars);
                json["alt"] = plot.Chart.Bars?.Alt ?? plot.Chart.Figure?.Alt;
                break;
            case FoldBlock fold:
                json["heading"] = fold.Heading;
                json["blocks"] = Names(fold.Blocks);
                break;
            case PairBlock pair:
                json["blocks"] = Names(pair.Blocks);
                break;
            default:
                AddWords(json, block);
                break;
        }

        return json;
    }

    private static void AddWords(JsonObject json, Block block)
    {
        switch (block)
        {
            case HeadlineBlock headline:
                json["headline"] = headline.Headline;
                json["why"] = headline.Why?.ToPlainText();
                json["how-sure"] = headline.HowSure;
                break;
            case FiguresBlock figures:
                json["figures"] = Array(figures.Figures, figure => new()
                { ["name"] = figure.Name, ["value"] = Raw(figure.Value), ["words"] = figure.Words });
                break;
            case ProseBlock prose:
                json["heading"] = prose.Heading;
                json["text"] = prose.Text.ToPlainText();
                break;
            case AnswersBlock answers:
                json["answers"] = Array(answers.Answers, one => new()
                { ["question"] = one.Question, ["answer"] = one.Answer.ToPlainText() });
                break;
            case CardsBlock cards:
                json["cards"] = Array(cards.Cards, card => new()
                { ["name"] = card.Name, ["title"] = card.Title, ["lines"] = Lines(card.Lines) });
                break;
        }
    }

    private static JsonArray Array<T>(IEnumerable<T> items, Func<T, JsonObject> each) =>
        new([.. items.Select(item => (JsonNode)each(item))]);

    private static JsonObject Of(ReportTable table)
    {
        string[] keys =
        [
            .. table.Columns.Select((column, index) => column.Key ?? string.Create(CultureInfo.InvariantCulture, $"column-{index + 1}")),
        ];
        JsonArray rows = [];
        foreach (IReadOnlyList<ReportCell> row in table.Rows)
        {
            rows.Add(Of(keys, row));
        }

        return new JsonObject
        {
            ["title"] = table.Title,
            ["columns"] = new JsonArray([
                .. table.Columns.Select(
                    (column, index) =>
                        (JsonNode)
                            new JsonObject
                            {
                                ["key"] = keys[index],
                                ["heading"] = column.Heading,
                                ["unit"] = column.Unit,
                            }
                ),
            ]),
            ["rows"] = rows,
            ["total"] = table.TotalRow is { } total ? Of(keys, total) : null,
            ["notes"] = new JsonArray([.. table.Notes.Select(note => (JsonNode?)note)]),
        };
    }

    private static JsonObject Of(string[] keys, IReadOnlyList<ReportCell> row)
    {
        JsonObject cells = [];
        foreach ((int index, ReportCell cell) in row.Index())
        {
            cells[keys[index]] = cell.Reason is { } why ? new JsonObject { ["unknown"] = why } : Raw(cell.Value);
        }

        return cells;
    }

    private static JsonArray? Of(BarList? bars) =>
        bars is null
            ? null
            : new JsonArray([
                .. bars.Bars.Select(bar =>
                    (JsonNode)
                        new JsonObject
                        {
                            ["label"] = bar.Label,
                            ["value"] = bar.Value,
                            ["shown"] = bar.Shown,
                        }
                ),
            ]);

    private static JsonArray Names(IReadOnlyList<Block> blocks) => new([.. blocks.Select(block => (JsonNode?)block.Key.Name)]);

    private static JsonArray Lines(IReadOnlyList<Prose> lines) => new([.. lines.Select(line => (JsonNode?)line.ToPlainText())]);

    private static JsonNode? Raw(object? value) => value switch
    {
        null => null,
        decimal number => JsonValue.Create(number),
        DateOnly day => Looks.Day(day),
        _ => value.ToString(),
    };
}
