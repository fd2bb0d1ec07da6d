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
        Write(html, blocks);
        return html.ToHtml();
    }

    /// <summary>One block.</summary>
    internal static Html Of(Block block) => Of([block]);

    /// <summary>Writes some blocks, one below the other.</summary>
    internal static void Write(HtmlWriter html, IEnumerable<Block> blocks)
    {
        foreach (Block block in blocks)
        {
            Write(html, block);
        }
    }

    /// <summary>The same for a notebook: the chart as a picture, links as words.</summary>
    internal static Html InNotebook(Block block) => NotebookHtml.Of(block);

    private static void Write(HtmlWriter html, Block block)
    {
        switch (block)
        {
            case HeadlineBlock headline:
                Headline(html, headline);
                break;
            case FiguresBlock figures:
                Figures(html, figures);
                break;
            case ProseBlock prose:
                Section(html, prose.Key, prose.Heading, () => Prose(html, prose));
                break;
            case AnswersBlock answers:
                Section(html, answers.Key, answers.Heading, () => Answers(html, answers));
                break;
            case CardsBlock cards:
                Section(html, cards.Key, cards.Heading, () => Cards(html, cards));
                break;
            case TableBlock table:
                Section(html, table.Key, table.Heading, () => BlockTable.Write(html, table, captionIsHeading: table.Heading is null));
                break;
            case PlotBlock plot:
                Section(html, plot.Key, plot.Heading ?? TitleOf(plot.Chart.Figure), () => Plot(html, plot));
                break;
            case PairBlock pair:
                html.Add($"<div class=\"two\" id=\"{pair.Key.Id}\" data-block=\"{pair.Key.Name}\">\n");
                Write(html, pair.Blocks);
                html.Add($"</div>\n");
                break;
            case FoldBlock fold:
                Fold(html, fold);
                break;
            default:
                throw new ArgumentException($"There is no way to show a {block.GetType().Name}.", nameof(block));
        }
    }

    private static void Section(HtmlWriter html, BlockKey key, string? heading, Action body)
    {
        html.Add($"<section id=\"{key.Id}\" data-block=\"{key.Name}\">\n");
        if (heading is not null)
        {
            html.Add($"<h2>{heading}</h2>\n");
        }

        body();
        html.Add($"</section>\n");
    }

    private static void Prose(HtmlWriter html, ProseBlock block)
    {
        html.Safe(block.IsSmall ? "<div class=\"cap\">" : "").Safe(block.Text.ToHtml()).Safe(block.IsSmall ? "</div>\n" : "");
    }

    private static void Headline(HtmlWriter html, HeadlineBlock block)
    {
        html.Add($"<div id=\"{block.Key.Id}\" data-block=\"{block.Key.Name}\">\n<h1>{block.Headline}</h1>\n");
        if (block.Why is { } why)
        {
            html.Safe("<div class=\"dek\">").Safe(why.ToHtml()).Safe("</div>\n");
        }

        if (block.HowSure is { } sure)
        {
            html.Add($"<p class=\"sure\">{sure}</p>\n");
        }

        html.Add($"</div>\n");
    }

    private static void Figures(HtmlWriter html, FiguresBlock block)
    {
        html.Add($"<div class=\"k\" id=\"{block.Key.Id}\" data-block=\"{block.Key.Name}\">\n");
        foreach (KeyFigure figure in block.Figures)
        {
            html.Add($"<div><b>{figure.Shown}</b> <span>{figure.Words}</span></div>\n");
        }

        html.Add($"</div>\n");
    }

    private static void Answers(HtmlWriter html, AnswersBlock block)
    {
        html.Add($"<dl class=\"q\">\n");
        foreach (Answered answered in block.Answers)
        {
            html.Add($"<dt><a href=\"{answered.Target}\">{answered.Question}</a></dt><dd>{Line(answered.Answer)}</dd>\n");
        }

        html.Add($"</dl>\n");
    }

    private static void Cards(HtmlWriter html, CardsBlock block)
    {
        html.Add($"<div class=\"do\">\n");
        foreach (Card card in block.Cards)
        {
            html.Add($"<div class=\"{card.Tone.ToString().ToLowerInvariant()}\"><h3>{card.Title}</h3>");
            foreach (Display.Prose line in card.Lines)
            {
                html.Safe(line.ToHtml());
            }

            html.Add($"</div>\n");
        }

        html.Add($"</div>\n");
    }

    private static void Plot(HtmlWriter html, PlotBlock block)
    {
        if (block.Caption is { } words)
        {
            html.Add($"<p class=\"cap\">{words}</p>\n");
        }

        Chart chart = block.Chart;
        html.Safe(chart.Figure is { Width: > 600 } && chart.Phone is null ? "<figure class=\"wide\" tabindex=\"0\">" : "<figure>");
        if (chart.Bars is { } bars)
        {
            BarDrawing.Write(html, bars);
        }
        else if (chart.Phone is { } phone)
        {
            html.Safe("<div class=\"d\">").Safe(chart.Figure!.SvgBelowTitle()).Safe("</div>");
            html.Safe("<div class=\"ph\">").Safe(phone.SvgBelowTitle()).Safe("</div>");
        }
        else
        {
            html.Safe(chart.Figure?.SvgBelowTitle());
        }

        html.Add($"</figure>\n");
        if (chart.Data is { } table && chart.Bars is null)
        {
            html.Add($"<details class=\"data\"><summary>The figures of this chart</summary>\n");
            BlockTable.Write(html, new TableBlock(block.Key, null, table) { Rows = 0 }, captionIsHeading: false);
            html.Add($"</details>\n");
        }
    }

    // The plot's own title stands above it, in the page's letters.
    private static string? TitleOf(Display.Figure? figure) => figure is { TitleHeight: > 0, Title.Length: > 0 } ? figure.Title : null;

    private static void Fold(HtmlWriter html, FoldBlock block)
    {
        html.Add($"<details id=\"{block.Key.Id}\" data-block=\"{block.Key.Name}\" class=\"{(block.ScreenOnly ? "nofold" : "")}\"><summary>"
            + $"<h2>{block.Heading}</h2></summary>\n<div class=\"folded\">\n");
        Write(html, block.Blocks);
        html.Add($"</div>\n</details>\n");
    }

    // A single paragraph without its tags, for within another element.
    private static Html Line(Display.Prose prose)
    {
        string html = prose.ToHtml().Trim();
        return new(
            html.StartsWith("<p>", StringComparison.Ordinal) && html.IndexOf("<p>", 3, StringComparison.Ordinal) < 0 ? html[3..^4] : html
        );
    }
}
