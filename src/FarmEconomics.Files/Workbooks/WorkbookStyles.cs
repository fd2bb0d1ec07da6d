using DocumentFormat.OpenXml.Spreadsheet;

namespace FarmEconomics.Files.Workbooks;

/// <summary>The style sheet of a workbook, built from the styles its cells use; the order is that of first use.</summary>
internal sealed class WorkbookStyles
{
    private const double PlainSize = 10;
    private const string Letters = "Arial";
    private readonly List<(WorkbookStyle? Style, bool Quoted)> formats = [];
    private readonly Dictionary<(WorkbookStyle? Style, bool Quoted), uint> indexes = [];
    private readonly List<WorkbookStyle> named = [];

    internal WorkbookStyles() => Index(null, quoted: false);

    /// <summary>The number of a cell format. <paramref name="quoted"/>: text that must stay text when the cell is edited.</summary>
    internal uint Index(WorkbookStyle? style, bool quoted)
    {
        if (indexes.TryGetValue((style, quoted), out uint index))
        {
            return index;
        }

        if (style is not null && !named.Contains(style))
        {
            if (named.Exists(other => other.Name == style.Name))
            {
                throw new ArgumentException($"Two different styles are named '{style.Name}'.", nameof(style));
            }

            named.Add(style);
        }

        formats.Add((style, quoted));
        return indexes[(style, quoted)] = (uint)(formats.Count - 1);
    }

    internal Stylesheet Make()
    {
        // Style 0 is the plain one; formats, fonts, fills and borders are one per named style, which keeps this readable.
        List<string> codes = named.Select(style => style.NumberFormat).OfType<string>().Distinct().ToList();
        Stylesheet sheet = new();
        AppendLooks(sheet, codes);
        AppendFormats(sheet, codes);
        return sheet;
    }

    private void AppendLooks(Stylesheet sheet, List<string> codes)
    {
        if (codes.Count > 0)
        {
            sheet.Append(
                new NumberingFormats(codes.Select((code, i) => new NumberingFormat { NumberFormatId = (uint)(164 + i), FormatCode = code }))
                { Count = (uint)codes.Count }
            );
        }

        sheet.Append(new Fonts(named.Select(FontOf).Prepend(FontOf(null))) { Count = (uint)named.Count + 1 });
        Fill[] fills =
        [
            new(new PatternFill { PatternType = PatternValues.None }),
            new(new PatternFill { PatternType = PatternValues.Gray125 }),
            .. named.Select(FillOf),
        ];
        sheet.Append(new Fills(fills) { Count = (uint)fills.Length });
        sheet.Append(new Borders(named.Select(BorderOf).Prepend(BorderOf(null))) { Count = (uint)named.Count + 1 });
    }

    private void AppendFormats(Stylesheet sheet, List<string> codes)
    {
        sheet.Append(
            new CellStyleFormats(
                named
                    .Select(style => FormatOf(style, codes, quoted: false, of: null))
                    .Prepend(FormatOf(null, codes, quoted: false, of: null))
            )
            { Count = (uint)named.Count + 1 }
        );
        sheet.Append(
            new CellFormats(formats.Select(format => FormatOf(format.Style, codes, format.Quoted, of: NumberOf(format.Style))))
            { Count = (uint)formats.Count }
        );
        sheet.Append(
            new CellStyles(
                named
                    .Select((style, i) => new DocumentFormat.OpenXml.Spreadsheet.CellStyle { Name = style.Name, FormatId = (uint)i + 1 })
                    .Prepend(new DocumentFormat.OpenXml.Spreadsheet.CellStyle { Name = "Normal", FormatId = 0, BuiltinId = 0 })
            )
            { Count = (uint)named.Count + 1 }
        );
    }

    private static Font FontOf(WorkbookStyle? style)
    {
        Font font = new();
        if (style?.Bold == true)
        {
            font.Append(new Bold());
        }

        if (style?.Italic == true)
        {
            font.Append(new Italic());
        }

        font.Append(new FontSize { Val = style?.Size ?? PlainSize }, new FontName { Val = Letters });
        return font;
    }

    private static Fill FillOf(WorkbookStyle style) => new(style.Fill is { } rgb
        ? new PatternFill(new ForegroundColor { Rgb = "FF" + rgb }) { PatternType = PatternValues.Solid }
        : new PatternFill { PatternType = PatternValues.None });

    private static Border BorderOf(WorkbookStyle? style) => new(
        new LeftBorder(),
        new RightBorder(),
        style?.LineAbove == true ? new TopBorder { Style = BorderStyleValues.Thin } : new TopBorder(),
        style?.LineBelow == true ? new BottomBorder { Style = BorderStyleValues.Thin } : new BottomBorder(),
        new DiagonalBorder());

    private CellFormat FormatOf(WorkbookStyle? style, List<string> codes, bool quoted, uint? of)
    {
        uint number = NumberOf(style);
        CellFormat format = new()
        {
            NumberFormatId = style?.NumberFormat is { } code ? (uint)(164 + codes.IndexOf(code)) : 0,
            FontId = number,
            FillId = number == 0 ? 0 : number + 1,
            BorderId = number,
            ApplyNumberFormat = true,
            ApplyFont = true,
            ApplyFill = true,
            ApplyBorder = true,
        };
        if (of is not null)
        {
            format.FormatId = of;
        }

        if (quoted)
        {
            format.QuotePrefix = true;
        }

        // At the top, so that the cells of a row with wrapped text still read across.
        format.ApplyAlignment = true;
        format.Append(style?.Wrap == true
            ? new Alignment { WrapText = true, Vertical = VerticalAlignmentValues.Top }
            : new Alignment { Vertical = VerticalAlignmentValues.Top });

        return format;
    }

    private uint NumberOf(WorkbookStyle? style) => style is null ? 0 : (uint)named.IndexOf(style) + 1;
}
