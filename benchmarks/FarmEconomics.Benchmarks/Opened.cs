using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace FarmEconomics.Benchmarks;

/// <summary>
/// The review in a browser, as far as the program goes: pages asked for over HTTP of a process of its own, one after another.
/// </summary>
internal static partial class Opened
{
    private const int Changes = 7;

    /// <summary>Says how long the first page, every page once all are there, and a changed field take.</summary>
    /// <param name="cli">The command line's assembly.</param>
    /// <param name="folder">The records.</param>
    internal static async Task MeasureAsync(string cli, string folder)
    {
        long start = Stopwatch.GetTimestamp();
        using Process process = Process.Start(
            new ProcessStartInfo("dotnet", [cli, "open", folder, "--no-browser"]) { RedirectStandardOutput = true })!;
        try
        {
            Match door = await DoorAsync(process);
            double address = Seconds(start);
            using HttpClient client = new(new HttpClientHandler { UseCookies = false }) { BaseAddress = new Uri(door.Groups[1].Value) };
            client.DefaultRequestHeaders.Add("Cookie", $"farm-page-{client.BaseAddress.Port}={door.Groups[2].Value}");
            double first = await AskAsync(client, "/");
            double fromStart = Seconds(start);
            string[] tabs = await TabsAsync(client);
            foreach (string tab in tabs)
            {
                await AskAsync(client, $"{tab}?_wait=1");
            }

            double pages = 0.0;
            foreach (string tab in tabs)
            {
                pages = Math.Max(pages, await AskAsync(client, tab));
            }

            // Each asks something nobody asked before, and the first of them makes what the program makes once.
            double[] changed = new double[Changes];
            for (int i = 0; i < Changes; i++)
            {
                string percent = (7.1 + i / 10.0).ToString("0.0", CultureInfo.InvariantCulture);
                changed[i] = await AskAsync(client, $"/?set.interest_percent={percent}");
            }

            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"seconds={changed.Order().ElementAt(Changes / 2):0.000} address={address:0.000} first={first:0.000} "
                    + $"from_start={fromStart:0.000} page={pages:0.000} tabs={tabs.Length}"));
        }
        finally
        {
            process.Kill(entireProcessTree: true);
        }
    }

    private static async Task<Match> DoorAsync(Process process)
    {
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (Address().Match(line) is { Success: true } door)
            {
                return door;
            }
        }

        throw new InvalidOperationException("No address was printed.");
    }

    private static async Task<double> AskAsync(HttpClient client, string path)
    {
        long from = Stopwatch.GetTimestamp();
        await client.GetByteArrayAsync(path);
        return Seconds(from);
    }

    /// <summary>The pages the first one leads to in its head.</summary>
    private static async Task<string[]> TabsAsync(HttpClient client)
    {
        string page = await client.GetStringAsync("/");
        string head = page[..page.IndexOf("<main", StringComparison.Ordinal)];
        return [.. Tab().Matches(head).Select(match => match.Groups[1].Value).Distinct()];
    }

    private static double Seconds(long from) => Stopwatch.GetElapsedTime(from).TotalSeconds;

    [GeneratedRegex("(http://[^/]+)/enter\\?token=([0-9a-f]+)")]
    private static partial Regex Address();

    [GeneratedRegex("href=\"(/[a-z-]*)\"")]
    private static partial Regex Tab();
}
