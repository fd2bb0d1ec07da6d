using System.CommandLine;
using FarmEconomics.Files;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Pricing;
using FarmEconomics.Reports.Season;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>prices FOLDER</c>: floor, full cost and target of every crop and channel, and price sheets to print.</summary>
internal static class PricesCommand
{
    internal static Command Create()
    {
        Options given = new();
        Command command = new(
            "prices",
            "What each crop must bring, channel by channel: at least so much, or keep what it has; "
                + "break-even and wanted price beside what it sold for.")
        {
            given.Folder, given.Year, given.Channel, given.Hour, given.Margin, given.Step, given.Members, given.Plan, given.Elasticity,
            given.Output, given.Set, given.Skip,
        };
        command.SetAction(parsed => Run(
            parsed.GetValue(given.Folder)!, given.AskedIn(parsed), parsed.GetValue(given.Set), parsed.GetValue(given.Skip)));
        return command;
    }

    private sealed class Options
    {
        internal readonly Argument<string> Folder = CommonOptions.Folder();
        internal readonly Option<int?> Year = CommonOptions.Year();
        internal readonly Option<string?> Channel = OptionRules.Text("--channel", "C",
            "One channel only: a market, stand or wholesale channel, or a share. Default: all.");
        internal readonly Option<NumberOption?> Hour = OptionRules.Number("--target-hour", "X", 0m, 100_000m,
            "Wanted return per labor hour. Default: a quarter above what an hour cost this season, rounded up.");
        internal readonly Option<NumberOption?> Margin = OptionRules.Number("--target-margin", "P", 0m, 99.99m,
            "Wanted net return in percent of the price, instead of --target-hour.");
        internal readonly Option<NumberOption?> Step = OptionRules.Number("--step", "X", 0.01m, 10_000m,
            "The steps prices are asked in, rounded up. Default: 0.25.");
        internal readonly Option<NumberOption?> Members = OptionRules.Number("--members", "M", 0.01m, 1_000_000m,
            "Members with a full box: the records don't tell how many boxes went out.");
        internal readonly Option<string?> Plan = OptionRules.Text("--plan", "FILE",
            "A CSV file with what one full box is to hold (week, crop, quantity, unit): priced beside what the records tell. "
                + "Needs --members.");
        internal readonly Option<NumberOption?> Elasticity = OptionRules.Number("--elasticity", "E", -1000m, 1000m,
            "What a price 10% higher would do if buyers took E% less for each percent: also the best price, which there is only above 1.");
        internal readonly Option<string?> Output = OptionRules.Text("--out", "DIR",
            "Write a price sheet per channel into this folder; written whole or not at all.");
        internal readonly Option<string[]> Set = CommonOptions.Set();
        internal readonly Option<bool> Skip = CommonOptions.SkipBadRows();

        internal Asked AskedIn(ParseResult parsed)
        {
            NumberOption? wantedHour = parsed.GetValue(Hour), wantedMargin = parsed.GetValue(Margin), wantedStep = parsed.GetValue(Step);
            if (wantedHour is not null && wantedMargin is not null)
            {
                throw new WrongUseException("Give --target-hour or --target-margin, not both.");
            }

            return new Asked(parsed.GetValue(Year), parsed.GetValue(Channel), notation =>
                Terms(wantedHour?.On(notation), wantedMargin?.On(notation), wantedStep?.On(notation)))
            {
                Members = parsed.GetValue(Members),
                Plan = parsed.GetValue(Plan),
                Elasticity = parsed.GetValue(Elasticity),
                Output = parsed.GetValue(Output),
            };
        }
    }

    private static PriceTerms Terms(decimal? hour, decimal? margin, decimal? step)
    {
        PriceTerms terms = new() { WantedPerHour = hour, WantedMarginPercent = margin, Step = step ?? 0.25m };
        try
        {
            terms.Check();
        }
        catch (ArgumentOutOfRangeException wrong)
        {
            throw new WrongUseException(wrong.Message);
        }

        return terms;
    }

    /// <summary>What the options ask for.</summary>
    private sealed record Asked(int? Year, string? Channel, Func<Notation, PriceTerms> Terms)
    {
        internal NumberOption? Members { get; init; }

        internal string? Plan { get; init; }

        internal NumberOption? Elasticity { get; init; }

        internal string? Output { get; init; }
    }

    private static int Run(string folder, Asked asked, string[]? set, bool skip)
    {
        IReadOnlyList<PlannedItem>? planned = asked.Plan is null ? null : ReadPlan(asked.Plan, asked.Members);
        FarmFolder farm = CommonOptions.Open(folder, set, skip, new Terminal());
        PriceTerms terms = asked.Terms(farm.Notation);
        decimal? members = asked.Members?.On(farm.Notation);
        decimal? elasticity = asked.Elasticity?.On(farm.Notation);
        if (CommonOptions.ReviewOrProblems(farm, skip) is not { } review)
        {
            return ExitCode.RecordsInError;
        }

        PriceBook book = PriceBook.Of(review, CommonOptions.YearOf(review, asked.Year), terms);
        List<Channel> channels = Wanted(book, asked.Channel);
        CommonOptions.PrintSkipped(farm, Console.Error);
        using OutputFolder? sheets =
            asked.Output is null ? null : OutputFolder.Start(new OutputPlace(asked.Output, OutputPlace.Prices), folder);
        channels.ForEach(one => PrintChannel(book, one, members, elasticity));
        if (planned is not null)
        {
            PrintPlan(book, planned, members!.Value);
        }

        if (asked.Channel is null)
        {
            Console.Out.WriteLine(PriceTables.Channels(book).ToPlainText());
        }

        Console.Out.WriteLine(PriceTables.Assumptions(book).ToPlainText());
        if (sheets is not null)
        {
            WriteSheets(book, channels, new ShareTerms { Members = members }, sheets, asked.Output!);
        }

        return ExitCode.Done;
    }

    private static void PrintChannel(PriceBook book, Channel channel, decimal? members, decimal? elasticity)
    {
        if (channel.Kind == ChannelKind.Share)
        {
            ShareTerms share = new() { Members = members };
            SharePricing shares = SharesOf(book, channel, share);
            Console.Out.WriteLine(ShareTables.Weeks(book, shares).ToPlainText());
            Console.Out.WriteLine(ShareTables.Price(book, shares, share).ToPlainText());
            return;
        }

        Console.Out.WriteLine(PriceTables.Prices(book, channel).ToPlainText());
        if (elasticity is { } e)
        {
            Console.Out.WriteLine(PriceWords.Elastic(book, channel, e).ToPlainText());
        }
    }

    private static IReadOnlyList<PlannedItem> ReadPlan(string plan, NumberOption? members)
    {
        if (members is null)
        {
            throw new WrongUseException("--plan needs --members: how many full boxes go out each week.");
        }

        try
        {
            return SharePlanFile.Read(plan);
        }
        catch (FormatException wrong)
        {
            throw new WrongUseException(wrong.Message);
        }
    }

    private static void PrintPlan(PriceBook book, IReadOnlyList<PlannedItem> plan, decimal members)
    {
        Channel share = book.Review.Records.Channels.Find(item => item.Kind == ChannelKind.Share)
            ?? throw new WrongUseException("--plan needs a channel of kind share in the channels table.");
        try
        {
            ShareTerms terms = new() { Members = members };
            SharePricing shares = SharePricing.Of(book, ShareContents.FromPlan(book, share, plan, members), terms);
            Console.Out.WriteLine($"The planned boxes of {share.Name}, at the list prices and costs of {book.Season.CropYear}:");
            Console.Out.WriteLine(ShareTables.Weeks(book, shares).ToPlainText());
            Console.Out.WriteLine(ShareTables.Price(book, shares, terms).ToPlainText());
        }
        catch (ArgumentException wrong)
        {
            throw new WrongUseException(wrong.Message);
        }
    }

    private static List<Channel> Wanted(PriceBook book, string? channel)
    {
        List<Channel> sold = PriceSheet.Channels(book).ToList();
        if (string.IsNullOrWhiteSpace(channel))
        {
            return sold;
        }

        Channel? found = sold.Find(item => string.Equals(item.Name, channel.Trim(), StringComparison.OrdinalIgnoreCase));
        if (found is not null)
        {
            return [found];
        }

        string? nearest = NearestName.Find(channel, sold.Select(item => item.Name));
        throw new WrongUseException($"Nothing of {book.Season.CropYear} was sold through {channel}." + (nearest is not null
            ? $" Did you mean {nearest}?"
            : $" Channels something was sold through: {string.Join(", ", sold)}."));
    }

    private static SharePricing SharesOf(PriceBook book, Channel channel, ShareTerms terms) =>
        SharePricing.Of(book, ShareContents.Recorded(book, channel), terms);

    private static void WriteSheets(PriceBook book, List<Channel> channels, ShareTerms terms, OutputFolder folder, string output)
    {
        List<(Channel Channel, string File)> sheets = channels.ConvertAll(channel => (channel, FileName(channel)));
        File.WriteAllText(Path.Combine(folder.Path, PageShell.FontsFile), PageShell.Fonts);
        foreach ((Channel channel, string file) in sheets)
        {
            List<PageTab> nav = sheets.ConvertAll(sheet => new PageTab(sheet.Channel.Name, sheet.File, sheet.Channel == channel));
            string body =
                channel.Kind == ChannelKind.Share
                    ? PriceSheet.Body(book, SharesOf(book, channel, terms), terms)
                    : PriceSheet.Body(book, channel);
            PageFrame frame = new(PriceSheet.Title(book, channel), book.Season.Settings.FarmName, $"{book.Season.CropYear}")
            {
                IsMetric = book.Season.Settings.LengthUnit == LengthUnit.M,
                Tabs = nav,
                Footer = [ProofTables.Cautions],
            };
            File.WriteAllText(Path.Combine(folder.Path, file), PageShell.Render(frame, body));
        }

        folder.SwapIn();
        foreach ((_, string file) in sheets)
        {
            Console.Out.WriteLine($"Open {Path.Combine(output, file)}");
        }
    }

    /// <summary>A channel's name made safe for any file system; its place in the table keeps two names apart that come out alike.</summary>
    private static string FileName(Channel channel)
    {
        string name = new(channel.Name.ToLowerInvariant().Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '-').ToArray());
        return $"prices-{channel.Index + 1}-{name.Trim('-')}.html";
    }
}
