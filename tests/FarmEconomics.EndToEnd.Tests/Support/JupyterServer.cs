using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text.Json.Nodes;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>Debian's Jupyter Notebook on a folder that the command <c>jupyter</c> wrote: on this machine only, with a token, without the user's own settings.</summary>
internal sealed class JupyterServer : IAsyncDisposable
{
    private const int PatienceSeconds = 60;
    private readonly Process process;
    private readonly Scratch home;
    private readonly string address;
    private readonly string token = Guid.NewGuid().ToString("N");
    private readonly Task<string> said;

    private JupyterServer(string program, string folder, Scratch home)
    {
        this.home = home;
        int port = FreePort();
        address = $"http://127.0.0.1:{port}/";
        ProcessStartInfo start = new(program, ["--no-browser", "--ip=127.0.0.1", $"--port={port}", "--NotebookApp.port_retries=0", Path.Combine(folder, "notebooks")])
        {
            RedirectStandardError = true,

            // What its kernels log is no part of what the test program says, which the runner of the tests reads line by line.
            RedirectStandardOutput = true,
            WorkingDirectory = home.Folder,
        };
        if (Environment.UserName == "root")
        {
            start.ArgumentList.Insert(0, "--allow-root");
        }

        start.Environment["JUPYTER_PATH"] = folder;
        start.Environment["JUPYTER_TOKEN"] = token;
        foreach (string place in new[] { "JUPYTER_CONFIG_DIR", "JUPYTER_DATA_DIR", "JUPYTER_RUNTIME_DIR", "IPYTHONDIR" })
        {
            start.Environment[place] = home.Folder;
        }

        process = Process.Start(start)!;
        said = process.StandardError.ReadToEndAsync();
        _ = process.StandardOutput.ReadToEndAsync();
    }

    /// <summary>Starts it and waits until it answers; the test is skipped where it isn't installed, or fails where it is required.</summary>
    /// <param name="folder">The folder that the command wrote.</param>
    public static async Task<JupyterServer> StartAsync(string folder)
    {
        string program = Tool.Require(Jupyter.Required, "the notebooks are not checked in Jupyter's own window", "jupyter-notebook");
        JupyterServer server = new(program, folder, new Scratch());
        try
        {
            await server.WaitAsync();
            return server;
        }
        catch
        {
            await server.DisposeAsync();
            throw;
        }
    }

    /// <summary>Where a notebook opens.</summary>
    public string AddressOf(string notebook) => $"{address}notebooks/{Uri.EscapeDataString(notebook)}?token={token}";

    /// <summary>
    /// Has a notebook run in the kernel that ran an earlier one, where there is one: starting one, and its compiler, is most of the time.
    /// </summary>
    /// <param name="notebook">The notebook's file name; it isn't open yet.</param>
    public async Task ShareKernelAsync(string notebook)
    {
        using HttpClient client = new();
        client.DefaultRequestHeaders.Authorization = new("token", token);
        JsonArray kernels = (await client.GetFromJsonAsync<JsonArray>($"{address}api/kernels", TestContext.Current.CancellationToken))!;
        if (kernels.Count > 0)
        {
            var session = new { path = notebook, name = "", type = "notebook", kernel = new { id = (string?)kernels[0]!["id"] } };
            using HttpResponseMessage answer =
                await client.PostAsJsonAsync($"{address}api/sessions", session, TestContext.Current.CancellationToken);
            answer.EnsureSuccessStatusCode();
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited)
        {
            process.Kill(entireProcessTree: true); // with the kernels it started
            await process.WaitForExitAsync();
        }

        process.Dispose();
        home.Dispose();
    }

    private async Task WaitAsync()
    {
        using HttpClient client = new();
        for (Stopwatch clock = Stopwatch.StartNew(); clock.Elapsed.TotalSeconds < PatienceSeconds; await Task.Delay(100, TestContext.Current.CancellationToken))
        {
            if (process.HasExited)
            {
                Assert.Fail(await said);
            }

            try
            {
                using HttpResponseMessage answer = await client.GetAsync(new Uri($"{address}api/kernels?token={token}"), TestContext.Current.CancellationToken);
                answer.EnsureSuccessStatusCode();
                return;
            }
            catch (HttpRequestException)
            {
                // not yet
            }
        }

        Assert.Fail($"Jupyter did not answer within {PatienceSeconds} s.");
    }

    private static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}

/// <summary>What the tests in Jupyter share.</summary>
internal static class Jupyter
{
    /// <summary>The variable that turns a missing Jupyter into a failure.</summary>
    public const string Required = "FARMECONOMICS_REQUIRE_JUPYTER";
}
