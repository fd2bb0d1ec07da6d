using System.Text;

namespace FarmEconomics.Reports.Blocks;

/// <summary>Writes blocks as plain text, for a terminal or a screen reader.</summary>
internal static class BlockText
{
    /// <summary>One block.</summary>
    internal static string Of(Block block) =>
        block switch
        {
            HeadlineBlock headline => Join(headline.Headline, headline.Why?.ToPlainText(), headline.HowSure),
            FiguresBlock figures => string.Join('\n', figures.Figures.Select(figure => $"{figure.Shown} {figure.Words}".Trim())),
            ProseBlock prose => Join(prose.Heading, prose.Text.ToPlainText()),
            AnswersBlock answers => Join(
                answers.Heading,
                string.Join('\n', answers.Answers.Select(answered => $"{answered.Question} {answered.Answer.ToPlainText()}"))
            ),
            CardsBlock cards => Join(
                cards.Heading,
                string.Join(
                    '\n',
                    cards.Cards.Select(card => $"{card.Title}: {string.Join(' ', card.Lines.Select(line => line.ToPlainText()))}")
                )
            ),
            TableBlock table => Join(table.Heading, table.Table.ToPlainText()),
            PlotBlock plot => Join(plot.Heading, plot.Caption, plot.Chart.Bars?.Alt ?? plot.Chart.Figure?.Alt),
            FoldBlock fold => Join([fold.Heading, .. fold.Blocks.Select(Of)]),
            PairBlock pair => Join([.. pair.Blocks.Select(Of)]),
            _ => "",
        };

    private static string Join(params IEnumerable<string?> parts)
    {
        StringBuilder text = new();
        foreach (string part in parts.OfType<string>().Where(part => part.Length > 0))
        {
            text.Append(text.Length > 0 ? "\n" : "").Append(part.TrimEnd());
        }

        return text.ToString();
    }
}
