using Microsoft.AspNetCore.Http;

namespace FarmEconomics.Page.Faults;

/// <summary>What a reader is told when a request can't be answered: what happened and what to do.</summary>
/// <param name="Status">The HTTP status.</param>
/// <param name="Title">What happened, in a few words.</param>
/// <param name="Happened">The same in a sentence.</param>
/// <param name="ToDo">What the reader can do.</param>
internal sealed record FaultAnswer(int Status, string Title, string Happened, string ToDo)
{
    private const string Back = "Go back to the farm and start again from there.";

    /// <summary>The answer to a fault.</summary>
    /// <param name="fault">What was thrown.</param>
    /// <param name="folder">The records folder or workbook.</param>
    internal static FaultAnswer Of(Exception fault, string folder) => fault switch
    {
        BadHttpRequestException request => Of(request.StatusCode),
        IOException or UnauthorizedAccessException => Unread(fault, Path.GetFileName(Path.TrimEndingDirectorySeparator(folder))),
        _ => new(StatusCodes.Status500InternalServerError, "Something went wrong", $"The program could not make this page: {fault.Message}",
            "Your records were not touched. Go back to the farm and try again. If it happens again, it is a fault of the program: "
                + "the line in the terminal says where."),
    };

    /// <summary>The answer to a request that can't be understood.</summary>
    /// <param name="status">The HTTP status.</param>
    internal static FaultAnswer Of(int status) => status switch
    {
        StatusCodes.Status404NotFound => new(status, "Not found", "There is no such page.", Back),
        StatusCodes.Status413PayloadTooLarge => new(status, "Too much was sent", "More was sent than the fields of these pages hold.",
            "Shorten the longest text and send it again."),
        StatusCodes.Status414UriTooLong => new(status, "The address is too long",
            "The address holds more than the fields of these pages do.", Back),
        StatusCodes.Status415UnsupportedMediaType => new(status, "Not a form", "What was sent is not what a form of these pages sends.",
            Back),
        >= StatusCodes.Status500InternalServerError => new(status, "Something went wrong", "The program could not make this page.", Back),
        _ => new(status, "Not understood", "What was sent can't be read as the fields of a page.", Back),
    };

    private static FaultAnswer Unread(Exception fault, string name)
    {
        const int Status = StatusCodes.Status503ServiceUnavailable;
        const string Title = "Your records can’t be read";
        return fault switch
        {
            DirectoryNotFoundException or FileNotFoundException or DriveNotFoundException => new(
                Status,
                Title,
                $"{name} is not there any more.",
                "If it lies on a USB stick or a network drive, connect it again; if you moved it, move it back. Then load this page again."
            ),
            UnauthorizedAccessException => new(
                Status,
                Title,
                $"This program may not read {name}: {fault.Message}",
                "Give yourself the right to read it, then load this page again."
            ),
            _ => new(
                Status,
                Title,
                $"Reading {name} failed: {fault.Message}",
                "Close other programs that hold the files, or connect the drive again. Then load this page again."
            ),
        };
    }
}
