using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records.Reading;

namespace FarmEconomics.Cli;

/// <summary>Examples below the help of every command, and a guess where a command or an option is mistyped.</summary>
internal static class CommandHelp
{
    private const string Program = "farm-economics";

    /// <summary>What a grower types, command by command; a test holds that each is understood.</summary>
    internal static readonly IReadOnlyDictionary<string, string[]> Examples = new Dictionary<string, string[]>
    {
        [""] = ["start my-farm --minimal", "check my-farm", "review my-farm --out results", "open my-farm"],
        ["start"] =
        [
            "start my-farm --minimal", "start my-farm --minimal --from picked.csv sold.csv",
            "start my-farm.xlsx --metric --currency EUR --decimal-comma",
        ],
        ["check"] =
        [
            "check my-farm",
            "check my-farm --all",
            "check my-farm --list problems.csv",
            "check my-farm --fix-names --out aliases.csv",
        ],
        ["review"] = ["review my-farm --out results", "review my-farm --year 2024 --out results-2024 --set owner_wage=22"],
        ["open"] = ["open my-farm", "open my-farm.xlsx --scenarios ideas.csv"],
        ["explain"] = ["explain my-farm --crop Carrots", "explain my-farm --year 2024 --crop \"Head lettuce\" --line infrastructure"],
        ["decide"] =
        [
            "decide my-farm",
            "decide my-farm --drop Broccoli",
            "decide my-farm --swap Broccoli Kale",
            "decide my-farm --grow Garlic --by 100",
        ],
        ["whatif"] =
        [
            "whatif my-farm --change \"price of Carrots=-10%\" --change wages=+5%",
            "whatif my-farm --change \"without Peppers\" --name \"no peppers\" --save ideas.csv",
        ],
        ["prices"] = ["prices my-farm --channel \"Saturday Market\"", "prices my-farm --members 40 --target-hour 25 --out price-sheets"],
        ["writeup"] =
        [
            "writeup my-farm --project \"Larger cold room\" --out for-the-bank",
            "writeup my-farm --out for-the-bank --assume hours_saved=60 --class \"Truck=5\"",
        ],
        ["import"] =
        [
            "import market.csv --into my-farm", "import market.csv --into my-farm --apply",
            "import july.csv --as sales --map register.map.csv --into my-farm",
        ],
        ["plan"] = ["plan my-farm --best", "plan my-farm --like-last-year --least \"Garlic=400\" --out plan-2026"],
        ["water"] = ["water my-farm --gallons 3000", "water my-farm --date 2025-07-15 --days 3 --sprinklers 8 --hours 6"],
        ["jupyter"] = ["jupyter my-farm --out notebooks", "jupyter my-farm --year 2024 --out notebooks-2024"],
        ["review-all"] = ["review-all farms --out results", "review-all farms --out results --parallel 4 --pages"],
    };

    /// <summary>Adds the examples to every command's help.</summary>
    internal static void AddTo(RootCommand root)
    {
        foreach (HelpOption help in root.Options.OfType<HelpOption>())
        {
            help.Action = new WithExamples((SynchronousCommandLineAction)help.Action!);
        }
    }

    /// <summary>
    /// What was probably meant, in sentences: the nearest command or option, or how the command is typed, where a word belongs to no
    /// option. Null: nothing was mistyped, or nothing is near.
    /// </summary>
    internal static string? Guess(ParseResult parsed)
    {
        Command command = parsed.CommandResult.Command;
        if (parsed.UnmatchedTokens.Count == 0)
        {
            return null;
        }

        string typed = parsed.UnmatchedTokens[0];
        bool isOption = typed.StartsWith('-');
        IEnumerable<string> known = isOption ? command.Options.Select(option => option.Name) : command.Subcommands.Select(one => one.Name);
        string kind = isOption ? "option" : "command";
        return NearestName.Find(typed, known) is { } nearest ? $"There is no {kind} {typed}. Did you mean {nearest}?"
            : isOption || command is RootCommand ? null
            : string.Join(Environment.NewLine,
            [
                $"\"{typed}\" belongs to no option of {command.Name}; a name with a space needs quotation marks. For example:",
                .. ExamplesOf(command),
            ]);
    }

    private static IEnumerable<string> ExamplesOf(Command command) =>
        Examples.GetValueOrDefault(command is RootCommand ? "" : command.Name, []).Select(example => $"  {Program} {example}");

    private sealed class WithExamples(SynchronousCommandLineAction help) : SynchronousCommandLineAction
    {
        /// <summary>Who asks for help need not have given everything.</summary>
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            int code = help.Invoke(parseResult);
            Command command = parseResult.CommandResult.Command;
            TextWriter output = parseResult.InvocationConfiguration.Output;
            if (command.Name == "whatif")
            {
                output.WriteLine("Changes:");
                Write(output, ScenarioText.Forms.Select(form => "  " + form));
            }

            output.WriteLine("Examples:");
            Write(output, ExamplesOf(command));

            return code;
        }

        private static void Write(TextWriter output, IEnumerable<string> lines)
        {
            foreach (string line in lines)
            {
                output.WriteLine(line);
            }

            output.WriteLine();
        }
    }
}
