using System.Text.Json;
using FarmEconomics.EndToEnd.Tests.Support;
using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Notebooks;

/// <summary>What one code cell shows in the window.</summary>
internal sealed record ShownCell
{
    /// <summary>What stands before it: <c>In [3]:</c> once it ran.</summary>
    public string Prompt { get; init; } = "";

    /// <summary>The words and numbers of every output that is a text or a table.</summary>
    public string[] Texts { get; init; } = [];

    /// <summary>The natural width of every picture, 0 for one that isn't shown.</summary>
    public int[] Pictures { get; init; } = [];

    /// <summary>Error outputs and red text.</summary>
    public string[] Red { get; init; } = [];
}

/// <summary>A notebook in Jupyter's window, worked by its menus as a person would.</summary>
internal static class JupyterWindow
{
    private const float PatienceMilliseconds = 180_000;

    /// <summary>
    /// Opens a notebook, has all cells run, and reads what is shown. All of one server run in one kernel, one after another.
    /// </summary>
    /// <param name="browser">The browser.</param>
    /// <param name="server">The Jupyter.</param>
    /// <param name="notebook">The notebook's file name.</param>
    /// <param name="restarted">Whether its kernel is restarted first, which takes as long as a start.</param>
    /// <returns>The code cells that hold something, in order.</returns>
    public static async Task<IReadOnlyList<ShownCell>> RunAllAsync(
        IBrowser browser, JupyterServer server, string notebook, bool restarted = false)
    {
        IPage page = await browser.NewPageAsync(new() { ViewportSize = new() { Width = 1300, Height = 900 } });
        page.SetDefaultTimeout(PatienceMilliseconds);
        try
        {
            await server.ShareKernelAsync(notebook);
            await page.GotoAsync(server.AddressOf(notebook));
            await page.Locator(".kernel_idle_icon").WaitForAsync(new() { State = WaitForSelectorState.Attached });
            Assert.Equal(".NET (C#)", (await page.Locator(".kernel_indicator_name").InnerTextAsync()).Trim());
            await RunAllAsync(page, restarted);
            await page.WaitForFunctionAsync(Finished);
            IReadOnlyList<ShownCell> cells = JsonSerializer.Deserialize<ShownCell[]>(await page.EvaluateAsync<string>(Shown), JsonSerializerOptions.Web)!;
            await PictureAsync(page, notebook);
            return cells;
        }
        finally
        {
            await page.CloseAsync();
        }
    }

    private static async Task RunAllAsync(IPage page, bool restarted)
    {
        await page.GetByRole(AriaRole.Link, new() { Name = restarted ? "Kernel" : "Cell", Exact = true }).ClickAsync();
        await page.GetByText(restarted ? "Restart & Run All" : "Run All", new() { Exact = true }).ClickAsync();
        if (restarted)
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Restart and Run All Cells" }).ClickAsync();
        }
    }

    // A cell that waits shows "In [*]"; one that was given up after an error shows "In [ ]" while the kernel is idle. Its answer and its
    // outputs come on two channels, the answer sometimes first: Jupyter marks what it asked once the outputs have ended.
    private const string Finished =
        """
        () => {
          const cells = [...document.querySelectorAll('.code_cell')].filter(cell => cell.querySelector('.CodeMirror').CodeMirror.getValue().trim());
          const asked = Jupyter.notebook.get_cells().map(cell => Jupyter.notebook.kernel._msg_callbacks[cell.last_msg_id]);
          const ran = cells.every(cell => /\[\d+\]/.test(cell.querySelector('.input_prompt').textContent));
          return document.querySelector('.kernel_idle_icon') && (ran || document.querySelector('.output_error'))
            && asked.every(question => !question || question.iopub_done)
            && ![...document.querySelectorAll('.output_area img')].some(image => !image.complete);
        }
        """;

    private const string Shown =
        """
        () => JSON.stringify([...document.querySelectorAll('.code_cell')].filter(cell => cell.querySelector('.CodeMirror').CodeMirror.getValue().trim()).map(cell => ({
          prompt: cell.querySelector('.input_prompt').textContent.trim(),
          texts: [...cell.querySelectorAll('.output_html, .output_text')].map(part => part.textContent),
          pictures: [...cell.querySelectorAll('.output_area img')].map(image => image.naturalWidth),
          red: [...cell.querySelectorAll('.output_error, .output_stderr')].map(part => part.textContent),
        })))
        """;

    /// <summary>A picture of the whole notebook for whoever wants to look: into the folder that FARMECONOMICS_SCREENSHOTS names.</summary>
    private static async Task PictureAsync(IPage page, string notebook)
    {
        if (Environment.GetEnvironmentVariable("FARMECONOMICS_SCREENSHOTS") is { Length: > 0 } folder)
        {
            int height = await page.EvaluateAsync<int>("() => document.querySelector('#notebook').scrollHeight + 200");
            await page.SetViewportSizeAsync(1300, height);
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, Path.ChangeExtension(notebook, ".png")) });
        }
    }
}
