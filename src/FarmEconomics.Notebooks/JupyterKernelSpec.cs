using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace FarmEconomics.Notebooks;

/// <summary>Describes the pinned C# kernel to Jupyter, so that the notebooks run there unchanged.</summary>
/// <remarks>
/// The kernel is the tool <c>Microsoft.dotnet-interactive</c> of the tool manifest (<c>dotnet tool restore</c>). Its own installer
/// writes a description that expects the tool on the path, listens on every network interface and sends usage data; this one
/// runs the manifest's version, listens on this machine only and sends nothing.
/// </remarks>
public static class JupyterKernelSpec
{
    /// <summary>The name notebooks ask for.</summary>
    public const string Name = ".net-csharp";

    private const int LowestPort = 10_000;
    private const int PortsInRange = 20;
    private const int PortRanges = 1_000;

    private static readonly JsonSerializerOptions Format = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>
    /// Writes <c>kernels/.net-csharp/kernel.json</c> under a Jupyter data folder (one that <c>JUPYTER_PATH</c> names, say).
    /// </summary>
    /// <param name="dir">The Jupyter data folder.</param>
    /// <param name="manifestFolder">The folder whose <c>.config/dotnet-tools.json</c> pins the tool; by default
    /// <see cref="FindProject"/>.</param>
    /// <returns>The path of the file.</returns>
    public static string Write(string dir, string? manifestFolder = null)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(dir);
        string manifest = Path.Combine(manifestFolder ?? FindProject(), ".config", "dotnet-tools.json");
        // `dotnet tool run` finds its manifest upward from the working directory, which for a kernel is the notebook's
        // folder: so a notebook lies in the project, or in a folder with a copy of the manifest (JupyterFolder).
        if (!File.Exists(manifest))
        {
            throw new NotebookException($"{manifest} is not there: it says which kernel to use");
        }

        JsonObject spec = new()
        {
            ["argv"] = new JsonArray(
                "dotnet", "tool", "run", "dotnet-interactive", "--", "jupyter", "--default-kernel", "csharp", "{connection_file}",
                "--http-local-only", "--http-port-range", PortsOf(dir)),
            ["display_name"] = ".NET (C#)",
            ["language"] = "C#",
            ["env"] = new JsonObject
            {
                ["DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT"] = "1",
                ["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1",
                ["DOTNET_NOLOGO"] = "1",
                // A review ends before recompiling by what was seen at run time pays, and one reader needs no server's memory: a tenth
                // of a notebook's processor time and of its memory.
                ["DOTNET_TieredPGO"] = "0",
                ["DOTNET_gcServer"] = "0",
            },
        };
        string folder = Path.Combine(dir, "kernels", Name);
        Directory.CreateDirectory(folder);
        string file = Path.Combine(folder, "kernel.json");
        File.WriteAllText(file, spec.ToJsonString(Format) + "\n", new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        return file;
    }

    /// <summary>The project's folder: the first above the program, else above the working directory, that pins the kernel.</summary>
    /// <exception cref="NotebookException">There is none.</exception>
    public static string FindProject() =>
        Above(AppContext.BaseDirectory) ?? Above(Directory.GetCurrentDirectory())
        ?? throw new NotebookException("no .config/dotnet-tools.json above the program or here: it says which kernel to use");

    // A kernel takes the first port of its range that is free when it looks: two that start at one moment take the same one, and the
    // second ends. So the kernels of each folder look in a range of their own, the same at every writing, below the ports that
    // systems give out themselves (Linux: from 32768; IANA, RFC 6335: from 49152).
    private static string PortsOf(string dir)
    {
        byte[] hash = SHA256.HashData(Encoding.UTF8.GetBytes(Path.GetFullPath(dir)));
        int start = LowestPort + (BinaryPrimitives.ReadUInt16LittleEndian(hash) % PortRanges * PortsInRange);
        return string.Create(CultureInfo.InvariantCulture, $"{start}-{start + PortsInRange - 1}");
    }

    private static string? Above(string start)
    {
        for (DirectoryInfo? folder = new(start); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, ".config", "dotnet-tools.json")))
            {
                return folder.FullName;
            }
        }

        return null;
    }
}
