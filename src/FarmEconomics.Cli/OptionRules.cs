using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using FarmEconomics.Records;

namespace FarmEconomics.Cli;

/// <summary>What holds for options of every command: none is given empty, and a number is one, within what makes sense.</summary>
internal static class OptionRules
{
    /// <summary>An option that takes a number.</summary>
    internal static Option<NumberOption?> Number(string name, string help, decimal least, decimal most, string description) => new(name)
    {
        Description = description,
        HelpName = help,
        CustomParser = result => Read(result, least, most),
    };

    /// <summary>An option that takes a whole number.</summary>
    internal static Option<int?> Whole(string name, string help, int least, int most, string description) => new(name)
    {
        Description = description,
        HelpName = help,
        CustomParser = result => ReadWhole(result, least, most),
    };

    /// <summary>An option that says yes by being given.</summary>
    internal static Option<bool> Flag(string name, string description) => new(name) { Description = description };

    /// <summary>An option that takes words.</summary>
    internal static Option<string?> Text(string name, string help, string description) =>
        new(name) { Description = description, HelpName = help };

    /// <summary>An option that takes words, and what holds without it.</summary>
    internal static Option<string> Text(string name, string help, string usual, string description) =>
        new(name) { Description = description, HelpName = help, DefaultValueFactory = _ => usual };

    /// <summary>An option that may be given several times.</summary>
    internal static Option<string[]> Many(string name, string help, string description) =>
        new(name) { Description = description, HelpName = help };

    /// <summary>
    /// Has no argument and no option of any command taken empty: a script with a variable that isn't set would do something else than
    /// meant.
    /// </summary>
    internal static void AddTo(RootCommand root)
    {
        foreach (Command command in root.Subcommands)
        {
            foreach (Option option in command.Options)
            {
                option.Validators.Add(result => RefuseEmpty(result, result.Tokens, option.Name));
            }

            foreach (Argument argument in command.Arguments)
            {
                argument.Validators.Add(result => RefuseEmpty(result, result.Tokens, argument.Name));
            }
        }
    }

    private static void RefuseEmpty(SymbolResult result, IEnumerable<Token> tokens, string name)
    {
        if (tokens.Any(token => string.IsNullOrWhiteSpace(token.Value)))
        {
            result.AddError($"{name} is empty; give it a value{(name.StartsWith('-') ? ", or leave it out" : "")}.");
        }
    }

    private static NumberOption? Read(ArgumentResult result, decimal least, decimal most)
    {
        NumberOption given = new(Name(result), result.Tokens[^1].Value, least, most);
        if (given.Number('.') is not null || given.Number(',') is not null)
        {
            return given;
        }

        result.AddError(given.Fault(Notation.Default));
        return null;
    }

    private static int? ReadWhole(ArgumentResult result, int least, int most)
    {
        string text = result.Tokens[^1].Value;
        if (
            int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int number)
            && number >= least
            && number <= most
        )
        {
            return number;
        }

        result.AddError($"{Name(result)} takes a whole number from {least} to {most}, not '{text}'.");
        return null;
    }

    private static string Name(ArgumentResult result) => result.Parent is OptionResult option ? option.Option.Name : result.Argument.Name;
}
