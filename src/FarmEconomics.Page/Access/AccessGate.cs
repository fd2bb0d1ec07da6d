using System.Net;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;

namespace FarmEconomics.Page.Access;

/// <summary>
/// Lets in only the person who started the program: the right token, this machine's own address, and no other site's page.
/// </summary>
/// <remarks>
/// A page of another site open in the same browser can send requests here, and a name of its own can be made to point here (DNS
/// rebinding). So: the Host must be this server's, an Origin, where there is one, as well; what changes something needs one; and the
/// token stands in a cookie that a browser sends only with this server's own pages.
/// </remarks>
internal sealed class AccessGate
{
    /// <summary>The path the first address has; the token is its query.</summary>
    internal const string Door = "/enter";

    private readonly byte[] token;
    private readonly string[] hosts;
    private readonly string[] origins;

    internal AccessGate(int port)
    {
        Token = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(24));
        token = Encoding.ASCII.GetBytes(Token);
        hosts = [$"127.0.0.1:{port}", $"localhost:{port}"];
        origins = [.. hosts.Select(host => "http://" + host)];
        // Cookies don't know ports: two farms open at once must not throw each other out.
        Cookie = $"farm-page-{port}";
    }

    internal string Token { get; }

    internal string Cookie { get; }

    /// <summary>Why a request is turned away, or null when it may pass.</summary>
    internal string? Refusal(HttpRequest request)
    {
        if (request.HttpContext.Connection.RemoteIpAddress is not { } from || !IPAddress.IsLoopback(from))
        {
            return "Only this machine may read these pages.";
        }

        if (!hosts.Contains(request.Host.Value, StringComparer.OrdinalIgnoreCase))
        {
            return "The address is not this program's own.";
        }

        string origin = request.Headers.Origin.ToString();
        bool changes = !HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method);
        if ((origin.Length > 0 || changes) && !origins.Contains(origin, StringComparer.OrdinalIgnoreCase))
        {
            return "Another site's page asked.";
        }

        return Holds(request.Cookies[Cookie]) || (request.Path == Door && Holds(request.Query["token"].ToString()))
            ? null
            : "Open the address that the program printed when it started: it holds the key to these pages.";
    }

    /// <summary>Hands out the cookie and leads to the first page.</summary>
    /// <remarks>
    /// A page of its own, not a redirect: after a link from outside, a browser would leave the cookie out of a redirect's request.
    /// </remarks>
    internal async Task EnterAsync(HttpContext context)
    {
        context.Response.Cookies.Append(
            Cookie,
            Token,
            new CookieOptions
            {
                HttpOnly = true,
                SameSite = SameSiteMode.Strict,
                Path = "/",
                IsEssential = true,
            }
        );
        context.Response.Headers["Refresh"] = "0; url=/";
        context.Response.ContentType = "text/html; charset=utf-8";
        await context.Response.WriteAsync(
            "<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>Opening the review</title></head><body><main>"
                + "<h1>Opening the review</h1><p><a href=\"/\">Go on to the review</a></p></main></body></html>")
            .ConfigureAwait(false);
    }

    private bool Holds(string? given) =>
        given is { Length: > 0 } && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(given), token);
}
