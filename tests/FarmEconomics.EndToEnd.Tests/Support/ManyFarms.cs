namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>A folder of farms for the tests: sound ones, one in error, one that sent nothing.</summary>
internal static class ManyFarms
{
    public const string Accented = "Źródło & Söhne's Hof";

    public static readonly string Demo = Path.Combine(Repository.Root, "demo-data");
    public static readonly string Sound = Path.Combine(Repository.Root, "tests", "FarmEconomics.Tests", "BadRecords", "sound");

    /// <summary>Seven places: five farms that can be reviewed, the demo farm and a metric one among them, one in error, one without records.</summary>
    public static string In(Scratch scratch)
    {
        string farms = scratch.File("farms");
        foreach (string name in new[] { "plain", "with spaces", Accented, "bad", "metric" })
        {
            Checksums.Copy(Sound, Path.Combine(farms, name));
        }

        File.AppendAllText(Path.Combine(farms, "bad", "sales.csv"), "2025-05-11,lettuse,market,4,6.00\n");
        File.WriteAllText(Path.Combine(farms, "metric", "farm.csv"), "setting,value\nlength_unit,m\ncurrency,EUR\nfarm_name,=Metre\n");
        foreach ((string table, string feet, string meters) in new[] { ("beds.csv", "length_ft", "length_m"), ("plantings.csv", "bed_feet", "bed_meters") })
        {
            string path = Path.Combine(farms, "metric", table);
            File.WriteAllText(path, File.ReadAllText(path).Replace(feet, meters, StringComparison.Ordinal));
        }

        Directory.CreateDirectory(Path.Combine(farms, "nothing came"));
        Directory.CreateDirectory(Path.Combine(farms, "demo"));
        foreach (string table in Directory.GetFiles(Demo, "*.csv"))
        {
            File.Copy(table, Path.Combine(farms, "demo", Path.GetFileName(table)));
        }

        return farms;
    }
}
