using System.Text;
using FarmEconomics.Notebooks;
using FarmEconomics.Notebooks.Pages;
using FarmEconomics.Page.Fields;
using FarmEconomics.Page.Runs;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Page.Views;

/// <summary>A notebook's page: its question, the fields to change, how a run is getting on, and what came out.</summary>
internal static class NotebookView
{
    /// <summary>What the page holds below the fields.</summary>
    /// <param name="Title">The title of the window.</param>
    /// <param name="Body">The body of the page.</param>
    internal sealed record Page(string Title, string Body);

    /// <summary>Writes the page.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="form">The fields.</param>
    /// <param name="run">How the run stands that the address asks for; null when a field is wrong.</param>
    /// <param name="shownForm">The fields of the page that is shown while the run goes on; null: none.</param>
    /// <param name="shown">What is shown meanwhile.</param>
    /// <param name="after">HTML below the fields.</param>
    internal static Page Render(
        NotebookEntry notebook,
        FieldForm form,
        RunStanding? run,
        FieldForm? shownForm,
        NotebookRun? shown,
        string after = ""
    )
    {
        string address = notebook.Address;
        bool ready = run is { Result: not null };
        NotebookRun? below = ready ? run!.Result : shown;
        FieldForm? belowForm = ready ? form : shownForm;
        NotebookBody? body = below is { } result ? NotebookPage.Body(result.Document, notebook.Question, result.Failure) : null;
        StringBuilder html = new();
        html.Append(body?.Heading ?? $"<h1>{PageShell.Encode(notebook.Question)}</h1>\n");
        html.Append(FormView.Render(form, address, belowForm?.Query ?? ""));
        html.Append(Status(run, ready, below is not null)).Append(after);
        if (body is not null)
        {
            html.Append($"<div class=\"result\" data-result>\n{CropLinks.Add(body.Content, YearAndSettings(belowForm!))}</div>\n");
            html.Append(Downloads(notebook, belowForm!));
        }

        return new(notebook.Question, html.ToString());
    }

    /// <summary>The year and the settings of a form, to go along to pages that take no other field.</summary>
    internal static string YearAndSettings(FieldForm form) =>
        string.Join(
            '&',
            form.Query.Split('&')
                .Where(pair =>
                    pair.StartsWith("year=", StringComparison.Ordinal)
                    || pair.StartsWith("skip_bad_rows=", StringComparison.Ordinal)
                    || pair.StartsWith(SettingFields.Prefix, StringComparison.Ordinal)
                )
        );

    /// <summary>How a run is getting on, in a few words.</summary>
    internal static string Words(RunStanding run) => run.State switch
    {
        RunState.Waiting => "Waiting for its turn…",
        RunState.Running when run.Cell == 0 => "Starting…",
        RunState.Running => $"Working it out: step {run.Cell} of {run.Of}…",
        RunState.Done => "Done.",
        RunState.CalledOff => run.Why ?? "Stopped. Nothing was changed.",
        _ => $"It stopped: {run.Why}.",
    };

    // The place where a run is told of; the script fills it when the reader starts one.
    private static string Status(RunStanding? run, bool ready, bool something)
    {
        bool hidden = run is null || ready;
        bool going = run is { HasEnded: false };
        string words = run is null || ready ? "" : Words(run) + (something && going ? " Below stands the page as it was." : "");
        string cancel = $"<form method=\"post\" action=\"{(going ? $"/runs/{run!.Id}/cancel" : "/runs/none/cancel")}\" "
            + $"data-cancel{(going ? "" : " hidden")}><button type=\"submit\">Cancel</button></form>";
        return $"<div class=\"working\" data-working data-run-id=\"{(going ? run!.Id : "")}\"{(hidden ? " hidden" : "")}>\n"
            + $"<progress aria-label=\"Steps worked out\" max=\"{Math.Max(run?.Of ?? 1, 1)}\" value=\"{(going ? run!.Cell : 0)}\""
            + $"{(going ? "" : " hidden")}></progress>\n"
            + $"<p role=\"status\" data-words>{PageShell.Encode(words)}</p>\n{cancel}\n</div>\n";
    }

    private static string Downloads(NotebookEntry notebook, FieldForm form)
    {
        string Link(string kind) => PageShell.Encode(Nav.Address($"{notebook.Address}/{kind}", form.Query));
        string tables = PageShell.Encode(Nav.Address("/tables", YearAndSettings(form)));
        return "<section class=\"downloads\" aria-labelledby=\"keep\"><h2 id=\"keep\">Keep a copy</h2>\n<ul>\n"
            + $"<li><a href=\"{Link("page.html")}\" download>This page as a file</a>, to print, to save as PDF or to send</li>\n"
            + $"<li><a href=\"{Link("notebook.ipynb")}\" download>The notebook as it was run</a>, for Jupyter</li>\n"
            + $"<li><a href=\"{tables}\">The tables behind it</a>, for a spreadsheet or another program</li>\n</ul></section>\n";
    }
}
