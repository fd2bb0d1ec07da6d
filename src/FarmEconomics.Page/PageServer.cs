using System.Net;
using FarmEconomics.Page.Access;
using FarmEconomics.Page.Farm;
using FarmEconomics.Page.Faults;
using FarmEconomics.Page.Importing;
using FarmEconomics.Page.Runs;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace FarmEconomics.Page;

/// <summary>Serves a farm's review to a browser on this machine, and to nobody else.</summary>
/// <remarks>It listens on the loopback address only and lets in who has the key of <see cref="Address"/>.</remarks>
public sealed class PageServer : IAsyncDisposable
{
    private readonly WebApplication app;
    private readonly RunBoard board;
    private readonly ImportSessions sessions;

    private PageServer(WebApplication app, RunBoard board, ImportSessions sessions, string address)
    {
        this.app = app;
        this.board = board;
        this.sessions = sessions;
        Address = address;
    }

    /// <summary>The address to open; it holds the key.</summary>
    public string Address { get; }

    /// <summary>Starts to serve.</summary>
    /// <param name="options">What to serve.</param>
    /// <param name="cancellation">Gives up starting.</param>
    /// <exception cref="IOException">The port is taken, or the records can't be read.</exception>
    /// <exception cref="Notebooks.NotebookException">A notebook can't be read.</exception>
    public static async Task<PageServer> StartAsync(PageServerOptions options, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        NotebookEntry[] notebooks = [.. options.Notebooks.Select(path => new NotebookEntry(path))];
        FarmCache cache = new(options.Records);
        WebApplication app = Build(options.Port);
        RunBoard board = new(options);
        FaultPages faults = new(notebooks, options);
        AccessGate? gate = null;
        app.Use((context, next) => GuardAsync(context, next, gate, faults));
        app.UseRouting();
        ImportSessions sessions = new();
        PageRoutes routes = new(options, cache, notebooks, board, sessions);
        routes.MapTo(app);
        try
        {
            await app.StartAsync(cancellation).ConfigureAwait(false);
        }
        catch
        {
            await app.DisposeAsync().ConfigureAwait(false);
            await board.DisposeAsync().ConfigureAwait(false);
            throw;
        }

        string bound = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        gate = new AccessGate(new Uri(bound).Port);
        if (options.WorksAhead)
        {
            _ = Task.Run(routes.WorkAheadAsync, CancellationToken.None);
        }

        return new PageServer(app, board, sessions, $"{bound}{AccessGate.Door}?token={gate.Token}");
    }

    private static async Task GuardAsync(HttpContext context, RequestDelegate next, AccessGate? gate, FaultPages faults)
    {
        SafeHeaders.AddTo(context.Response);
        string? refusal = gate is null ? "The program is still starting." : gate.Refusal(context.Request);
        if (refusal is not null)
        {
            await RefuseAsync(context, refusal).ConfigureAwait(false);
        }
        else if (context.Request.Path == AccessGate.Door)
        {
            await gate!.EnterAsync(context).ConfigureAwait(false);
        }
        else
        {
            await faults.GuardAsync(context, next).ConfigureAwait(false);
        }
    }

    private static WebApplication Build(int port)
    {
        WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel =>
        {
            kestrel.Listen(IPAddress.Loopback, port);
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = 64 * 1024;
            // Longer ones than are answered, so that they can be told of: the server itself would send an empty page.
            kestrel.Limits.MaxRequestLineSize = 8 * FaultPages.LongestAddress;
            kestrel.Limits.MaxRequestHeadersTotalSize = 8 * FaultPages.LongestAddress;
        });
        builder.Services.AddRoutingCore();
        builder.Logging.ClearProviders();
        // Whoever stops the program decides how: a signal handler of its own would take Ctrl+C from the command line.
        builder.Services.AddSingleton<IHostLifetime, NoLifetime>();
        return builder.Build();
    }

    /// <summary>Stops serving and ends every run.</summary>
    public async ValueTask DisposeAsync()
    {
        await board.DisposeAsync().ConfigureAwait(false);
        await app.StopAsync(new CancellationTokenSource(TimeSpan.FromSeconds(2)).Token).ConfigureAwait(false);
        await app.DisposeAsync().ConfigureAwait(false);
        sessions.Dispose();
    }

    private static async Task RefuseAsync(HttpContext context, string why)
    {
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        context.Response.ContentType = "text/plain; charset=utf-8";
        await context.Response.WriteAsync(why).ConfigureAwait(false);
    }

    private sealed class NoLifetime : IHostLifetime
    {
        public Task WaitForStartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
