using FarmEconomics.Cli;
using FarmEconomics.Notebooks;

// The hidden verb: this same program runs notebooks as its own child, so that a cell that never comes back can be ended.
return args.Length > 0 && args[0] == NotebookWorker.Verb
    ? await NotebookWorker.RunAsync(args[1..]).ConfigureAwait(false)
    : await CommandLineApp.RunAsync(args).ConfigureAwait(false);
