using System.Text;
using FarmEconomics.DemoFarm;

// Writes the tables into the folder named (demo-data by default); other files there, the README among them, are left alone.
var folder = args.Length > 0 ? args[0] : "demo-data";
var tables = DemoFarmGenerator.Generate();
Write(folder, tables);
Write(Path.Combine(folder, "messy"), MessyFarm.Generate());

Console.WriteLine($"{tables.Count} tables, {tables.Values.Sum(t => t.Count(c => c == '\n') - 1)} rows in {folder}");
return 0;

static void Write(string folder, IReadOnlyDictionary<string, string> tables)
{
    Directory.CreateDirectory(folder);
    foreach (var (name, content) in tables)
    {
        File.WriteAllText(Path.Combine(folder, name), content, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
    }
}
