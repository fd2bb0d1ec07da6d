using System.Diagnostics;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>Runs a script in Python, an independent general-purpose tool.</summary>
internal static class IndependentPython
{
    /// <summary>What the script prints; null where there is no python3.</summary>
    internal static string? Run(string script, string input)
    {
        // The system's python first: it is the one distributions install numpy for.
        foreach (string tool in new[] { "/usr/bin/python3", "python3" })
        {
            try
            {
                using Process process =
                    Process.Start(new ProcessStartInfo(tool, ["-c", script])
                    {
                        RedirectStandardInput = true,
                        RedirectStandardOutput = true,
                        RedirectStandardError = true,
                    })!;
                Task<string> output = process.StandardOutput.ReadToEndAsync();
                Task<string> errors = process.StandardError.ReadToEndAsync();
                process.StandardInput.Write(input);
                process.StandardInput.Close();
                process.WaitForExit();
                Assert.True(process.ExitCode == 0, errors.Result);
                return output.Result;
            }
            catch (System.ComponentModel.Win32Exception)
            {
            }
        }

        return null;
    }

    /// <summary>
    /// What a script that needs numpy prints; skips the test, with the reason, where numpy isn't there. FARMECONOMICS_REQUIRE_NUMPY=1 makes
    /// that a failure.
    /// </summary>
    internal static string Numpy(string script, string input)
    {
        bool required = Environment.GetEnvironmentVariable("FARMECONOMICS_REQUIRE_NUMPY") == "1";
        string? there = Run("import importlib.util\nprint('yes' if importlib.util.find_spec('numpy') else 'no')", "");
        if (there?.Trim() != "yes")
        {
            Assert.False(required, "FARMECONOMICS_REQUIRE_NUMPY is set, but there is no python3 with numpy.");
            Assert.Skip("No python3 with numpy here: the figures were not worked out a second time.");
        }

        return Run(script, input)!;
    }
}
