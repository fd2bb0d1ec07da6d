using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>Who gets in: the person who started the program, from this machine, with its own pages, and nobody else.</summary>
/// <remarks>The dangers are those of any server on the loopback address: other users of the machine, other sites' pages in the same browser, and DNS rebinding (OWASP, cross-site request forgery and DNS rebinding).</remarks>
public class AccessTests(OpenDemoFarm farm)
{
    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("0123456789abcdef0123456789abcdef0123456789abcdef")]
    public async Task Request_WithoutTheRightToken_IsForbidden(string? token)
    {
        OpenProgram open = await farm.Program();
        using HttpClient client = new() { BaseAddress = new Uri(open.Base) };
        foreach (string path in new[] { "/", "/tables/crops.csv", "/drop-or-grow", "/live.js", $"/enter?token={token}" })
        {
            using HttpRequestMessage request = new(HttpMethod.Get, path);
            if (token is not null)
            {
                request.Headers.Add("Cookie", $"farm-page-{open.Port}={token}");
            }

            using HttpResponseMessage answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
            Assert.DoesNotContain("Quillfrost", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("farm.example")]
    [InlineData("127.0.0.1")]
    [InlineData("localhost.example:80")]
    public async Task Request_ForAnotherHost_IsForbidden(string host)
    {
        using HttpClient client = (await farm.Program()).Client();
        using HttpRequestMessage request = new(HttpMethod.Get, "/");
        request.Headers.Host = host;
        using HttpResponseMessage answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Theory]
    [InlineData("GET", "http://farm.example")]
    [InlineData("GET", "null")]
    [InlineData("POST", "https://farm.example")]
    [InlineData("POST", null)]
    public async Task Request_FromAnotherSitesPage_IsForbidden(string method, string? origin)
    {
        using HttpClient client = (await farm.Program()).Client();
        using HttpRequestMessage request = new(new HttpMethod(method), method == "POST" ? "/scenarios" : "/drop-or-grow");
        if (origin is not null)
        {
            request.Headers.Add("Origin", origin);
        }

        using HttpResponseMessage answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Fact]
    public async Task Request_WithKeyHostAndOrigin_Passes()
    {
        OpenProgram open = await farm.Program();
        using HttpClient client = open.Client();
        using HttpRequestMessage request = new(HttpMethod.Post, "/scenarios/remove") { Content = new FormUrlEncodedContent([KeyValuePair.Create("name", "none"), KeyValuePair.Create("_query", "year=2024")]) };
        request.Headers.Add("Origin", open.Base);
        using HttpResponseMessage answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        Assert.Equal("/what-if?year=2024", answer.Headers.Location?.ToString());
    }

    [Fact]
    public async Task Answer_Always_CarriesTheStrictRules()
    {
        using HttpClient client = (await farm.Program()).Client();
        foreach (string path in new[] { "/", "/live.css", "/tables/crops.csv", "/nothing" })
        {
            using HttpResponseMessage answer = await client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
            string policy = answer.Headers.GetValues("Content-Security-Policy").Single();
            Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
            Assert.Equal("no-store", answer.Headers.CacheControl?.ToString());
        }
    }

    [Theory]
    [InlineData("/tables/..%2f..%2ffarm.csv")]
    [InlineData("/tables/%2e%2e/farm.csv")]
    [InlineData("/notebook/..%2f..%2fREADME/page.html")]
    [InlineData("/../../etc/passwd")]
    [InlineData("/fix/row?file=..%2fREADME.md&line=1")]
    [InlineData("/fix/row/..%2f..%2fetc%2fpasswd/1")]
    public async Task Path_OutOfTheFolder_IsNotFound(string path)
    {
        using HttpClient client = (await farm.Program()).Client();
        using HttpResponseMessage answer = await client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Theory]
    [InlineData("/etc/passwd")]
    [InlineData("../README.md")]
    [InlineData("sub/plan.csv")]
    public async Task FileField_OutOfTheRecordsFolder_IsRefusedBesideTheField(string file)
    {
        using HttpClient client = (await farm.Program()).Client();
        using HttpResponseMessage answer = await client.GetAsync(new Uri($"/prices?members=30&plan={Uri.EscapeDataString(file)}", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("in the records folder", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Port_FromAnotherAddressOfThisMachine_IsNotOpen()
    {
        OpenProgram open = await farm.Program();
        IPAddress? outside = NetworkInterface.GetAllNetworkInterfaces().SelectMany(card => card.GetIPProperties().UnicastAddresses).Select(address => address.Address)
            .FirstOrDefault(address => address.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(address));
        Assert.SkipWhen(outside is null, "This machine has no address but the loopback one.");
        using TcpClient client = new();
        await Assert.ThrowsAnyAsync<SocketException>(() => client.ConnectAsync(outside, open.Port, TestContext.Current.CancellationToken).AsTask());
    }
}
