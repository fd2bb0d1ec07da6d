using System.Text;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace FarmEconomics.Files.Workbooks;

/// <summary>Notes of a sheet: the texts, and the drawing that older and newer spreadsheets alike want beside them.</summary>
internal static class WorkbookNotes
{
    internal static void Add(WorksheetPart part, SheetXml sheet)
    {
        if (sheet.Notes.Count == 0)
        {
            return;
        }

        WorksheetCommentsPart comments = part.AddNewPart<WorksheetCommentsPart>("notes");
        comments.Comments = new Comments(
            new Authors(new Author("")),
            new CommentList(
                sheet.Notes.Select(note => new Comment(new CommentText(new Text(note.Text))) { Reference = note.Cell, AuthorId = 0 })
            )
        );
        VmlDrawingPart drawing = part.AddNewPart<VmlDrawingPart>("notesdrawing");
        StringBuilder vml = new(
            """<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" """
                + """xmlns:x="urn:schemas-microsoft-com:office:excel">"""
                + """<v:shapetype id="note" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"/>""");
        for (int i = 0; i < sheet.Notes.Count; i++)
        {
            (_, int row, int column, _) = sheet.Notes[i];
            vml.Append("<v:shape id=\"note").Append(i)
                .Append("\" type=\"#note\" style=\"position:absolute;width:220pt;height:70pt;visibility:hidden\" fillcolor=\"#ffffe1\" "
                    + "o:insetmode=\"auto\"><x:ClientData ObjectType=\"Note\"><x:SizeWithCells/><x:AutoFill>False</x:AutoFill><x:Row>")
                .Append(row - 1).Append("</x:Row><x:Column>").Append(column).Append("</x:Column></x:ClientData></v:shape>");
        }

        vml.Append("</xml>");
        using MemoryStream bytes = new(Encoding.UTF8.GetBytes(vml.ToString()));
        drawing.FeedData(bytes);
        part.Worksheet!.Append(new LegacyDrawing { Id = "notesdrawing" });
    }
}
