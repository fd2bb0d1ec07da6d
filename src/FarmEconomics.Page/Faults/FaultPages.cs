using FarmEconomics.Page.Runs;
using FarmEconomics.Page.Views;
using FarmEconomics.Reports.Frame;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;

namespace FarmEconomics.Page.Faults;

/// <summary>Stands before all pages, so that no request ends in an empty answer: the reader gets a page, the terminal a line.</summary>
internal sealed class FaultPages(IReadOnlyList<NotebookEntry> notebooks, PageServerOptions options)
{
    /// <summary>The longest address that is answered: no form of these pages makes a longer one.</summary>
    internal const int LongestAddress = 64 * 1024;

    internal async Task GuardAsync(HttpContext context, RequestDelegate next)
    {
        try
        {
            if (context.Features.Get<IHttpRequestFeature>() is { RawTarget.Length: > LongestAddress })
            {
                throw new BadHttpRequestException("The address is too long.", StatusCodes.Status414UriTooLong);
            }

            await next(context).ConfigureAwait(false);
            HttpResponse made = context.Response;
            if (made is { HasStarted: false, StatusCode: >= StatusCodes.Status400BadRequest, ContentType: null, ContentLength: null })
            {
                await AnswerAsync(context, FaultAnswer.Of(made.StatusCode)).ConfigureAwait(false);
            }
        }
#pragma warning disable CA1031 // Do not catch general exception types: whatever goes wrong is said on a page, and the server goes on
        catch (Exception fault)
#pragma warning restore CA1031
        {
            // Nobody waits any more for the answer to a request that was given up.
            if (!context.RequestAborted.IsCancellationRequested)
            {
                FaultAnswer answer = FaultAnswer.Of(fault, options.Records);
                Log(context.Request, answer, fault);
                await AnswerAsync(context, answer).ConfigureAwait(false);
            }
        }
    }

    private async Task AnswerAsync(HttpContext context, FaultAnswer answer)
    {
        if (context.Response.HasStarted)
        {
            context.Abort();
            return;
        }

        bool byScript = context.Request.Headers.Accept.ToString().StartsWith("application/json", StringComparison.Ordinal);
        string body = $"<h1>{PageShell.Encode(answer.Title)}</h1>\n<p>{PageShell.Encode(answer.Happened)}</p>\n"
            + $"<p>{PageShell.Encode(answer.ToDo)}</p>\n<p><a href=\"/\">Back to the farm</a></p>";
        context.Response.StatusCode = answer.Status;
        context.Response.ContentType = byScript ? "text/plain; charset=utf-8" : "text/html; charset=utf-8";
        string text = byScript
            ? $"{answer.Happened} {answer.ToDo}"
            : LiveShell.Render(new PageFrame(answer.Title, "", "") { Tabs = Nav.Of(notebooks, "") }, body);
        await context.Response.WriteAsync(text).ConfigureAwait(false);
    }

    private void Log(HttpRequest request, FaultAnswer answer, Exception fault)
    {
        string at = answer.Status == StatusCodes.Status500InternalServerError ? $" ({fault.GetType().Name}{Place(fault)})" : "";
        string line = $"{request.Method} {request.Path}: {answer.Status}, {fault.Message}{at}";
        options.Log.WriteLine(string.Concat(line.Select(c => char.IsControl(c) ? ' ' : c)));
    }

    private static string Place(Exception fault) => fault.StackTrace?.Split('\n').FirstOrDefault() is { } first ? " " + first.Trim() : "";
}
