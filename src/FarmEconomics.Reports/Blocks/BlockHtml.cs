namespace FarmEconomics.Reports.Blocks;

/// <summary>
/// Writes blocks as HTML: each an element with the id and the name of its key. Links stand as targets, which a page makes addresses of.
/// </summary>
internal static class BlockHtml
{
    /// <summary>Some blocks, one below the other.</summary>
    internal static Html Of(IEnumerable<Block> blocks)
    {
        HtmlWriter html = new();
        foreach (Block block in blocks)
        {
            html.Add(Of(block));
        }

        return html.ToHtml();
    }

    /// <summary>One block.</summary>
    internal static Html Of(Block block) =>
        block switch
        {
            HeadlineBlock headline => Headline(headline),
            FiguresBlock figures => Figures(figures),
            ProseBlock prose => Section(
                prose.Key,
                prose.Heading,
                prose.IsSmall ? Html.Of($"<div class=\"cap\">{new Html(prose.Text.ToHtml())}</div>\n") : new Html(prose.Text.ToHtml())
            ),
            AnswersBlock answers => Answers(answers),
            CardsBlock cards => Cards(cards),
            TableBlock table => Section(table.Key, table.Heading, BlockTable.Of(table, captionIsHeading: table.Heading is null)),
            PlotBlock plot => Section(plot.Key, plot.Heading ?? TitleOf(plot.Chart.Figure), Plot(plot)),
            PairBlock pair => Html.Of(
                $"<div class=\"two\" id=\"{pair.Key.Id}\" data-block=\"{pair.Key.Name}\">\n{Of(pair.Blocks)}</div>\n"
            ),
            FoldBlock fold => Fold(fold),
            _ => throw new ArgumentException($"There is no way to show a {block.GetType().Name}.", nameof(block)),
        };

    /// <summary>The same for a notebook: the chart as a picture, links as words.</summary>
    internal static Html InNotebook(Block block) => NotebookHtml.Of(block);

    private static Html Section(BlockKey key, string? heading, Html body)
    {
        Html title = heading is null ? Html.Empty : Html.Of($"<h2>{heading}</h2>\n");
        return Html.Of($"<section id=\"{key.Id}\" data-block=\"{key.Name}\">\n{title}{body}</section>\n");
    }

    private static Html Headline(HeadlineBlock block)
    {
        Html why = block.Why is { } text ? Html.Of($"<div class=\"dek\">{new Html(text.ToHtml())}</div>\n") : Html.Empty;
        Html sure = block.HowSure is { } words ? Html.Of($"<p class=\"sure\">{words}</p>\n") : Html.Empty;
        return Html.Of($"<div id=\"{block.Key.Id}\" data-block=\"{block.Key.Name}\">\n<h1>{block.Headline}</h1>\n{why}{sure}</div>\n");
    }

    private static Html Figures(FiguresBlock block)
    {
        HtmlWriter html = new();
        html.Add($"<div class=\"k\" id=\"{block.Key.Id}\" data-block=\"{block.Key.Name}\">\n");
        foreach (KeyFigure figure in block.Figures)
        {
            html.Add($"<div><b>{figure.Shown}</b> <span>{figure.Words}</span></div>\n");
        }

        return html.Add($"</div>\n").ToHtml();
    }

    private static Html Answers(AnswersBlock block)
    {
        HtmlWriter html = new();
        html.Add($"<dl class=\"q\">\n");
        foreach (Answered answered in block.Answers)
        {
            html.Add($"<dt><a href=\"{answered.Target}\">{answered.Question}</a></dt><dd>{Line(answered.Answer)}</dd>\n");
        }

        return Section(block.Key, block.Heading, html.Add($"</dl>\n").ToHtml());
    }

    private static Html Cards(CardsBlock block)
    {
        HtmlWriter html = new();
        html.Add($"<div class=\"do\">\n");
        foreach (Card card in block.Cards)
        {
            html.Add($"<div class=\"{card.Tone.ToString().ToLowerInvariant()}\"><h3>{card.Title}</h3>");
            foreach (Display.Prose line in card.Lines)
            {
                html.Add(new Html(line.ToHtml()));
            }

            html.Add($"</div>\n");
        }

        return Section(block.Key, block.Heading, html.Add($"</div>\n").ToHtml());
    }

    private static Html Plot(PlotBlock block)
    {
        Html caption = block.Caption is { } words ? Html.Of($"<p class=\"cap\">{words}</p>\n") : Html.Empty;
        Chart chart = block.Chart;
        Html drawing = chart.Bars is { } bars ? BarDrawing.Of(bars)
            : chart.Phone is { } phone
            ? Html.Of($"<div class=\"d\">{new Html(chart.Figure!.SvgBelowTitle())}</div>"
                + $"<div class=\"ph\">{new Html(phone.SvgBelowTitle())}</div>")
            : chart.Figure is { } figure ? new Html(figure.SvgBelowTitle())
            : Html.Empty;
        bool scrolls = chart.Figure is { Width: > 600 } && chart.Phone is null;
        Html open = scrolls ? new Html("<figure class=\"wide\" tabindex=\"0\">") : new Html("<figure>");
        Html data = chart.Data is { } table && chart.Bars is null
            ? Html.Of($"<details class=\"data\"><summary>The figures of this chart</summary>\n"
                + $"{BlockTable.Of(new TableBlock(block.Key, null, table) { Rows = 0 }, captionIsHeading: false)}</details>\n")
            : Html.Empty;
        return Html.Of($"{caption}{open}{drawing}</figure>\n{data}");
    }

    // The plot's own title stands above it, in the page's letters.
    private static string? TitleOf(Display.Figure? figure) => figure is { TitleHeight: > 0, Title.Length: > 0 } ? figure.Title : null;

    private static Html Fold(FoldBlock block) => Html.Of(
        $"<details id=\"{block.Key.Id}\" data-block=\"{block.Key.Name}\" class=\"{(block.ScreenOnly ? "nofold" : "")}\"><summary>"
            + $"<h2>{block.Heading}</h2></summary>\n<div class=\"folded\">\n{Of(block.Blocks)}</div>\n</details>\n");

    // A single paragraph without its tags, for within another element.
    private static Html Line(Display.Prose prose)
    {
        string html = prose.ToHtml().Trim();
        return new(
            html.StartsWith("<p>", StringComparison.Ordinal) && html.IndexOf("<p>", 3, StringComparison.Ordinal) < 0 ? html[3..^4] : html
        );
    }
}
