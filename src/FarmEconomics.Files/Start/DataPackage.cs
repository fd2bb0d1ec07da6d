using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Start;

/// <summary>
/// The tables as a Frictionless Data Package (Data Package and Table Schema, https://datapackage.org/standard/), so that other software
/// can check the files too. It is stricter than this program in one way: words and names must be written as documented, case included.
/// </summary>
public static class DataPackage
{
    private static readonly JsonSerializerOptions Layout = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The descriptor of some tables.</summary>
    /// <param name="tables">The tables; all of them make the package the project ships.</param>
    /// <param name="farm">Whose unit of length and decimal mark hold; null: feet and decimal points.</param>
    /// <returns>JSON text that ends in a line break.</returns>
    public static string Write(IReadOnlyList<TableSchema> tables, FarmSettings? farm = null)
    {
        farm ??= new FarmSettings();
        ArgumentNullException.ThrowIfNull(tables);
        var package = new JsonObject
        {
            ["$schema"] = "https://datapackage.org/profiles/2.0/datapackage.json",
            ["profile"] = "tabular-data-package",
            ["name"] = "farm-records",
            ["title"] = "The records of a small vegetable farm",
            ["resources"] = new JsonArray([.. tables.Select(table => Resource(table.For(farm.LengthUnit), tables, farm))]),
        };
        return package.ToJsonString(Layout).ReplaceLineEndings("\n") + "\n";
    }

    private static JsonObject Resource(TableSchema table, IReadOnlyList<TableSchema> tables, FarmSettings farm)
    {
        var resource = new JsonObject
        {
            ["name"] = table.Name.Replace('_', '-'),
            ["path"] = $"{table.Name}.csv",
            ["profile"] = "tabular-data-resource",
            ["title"] = $"One row is {table.OneRowIs}",
            ["encoding"] = "utf-8",
            ["schema"] = Schema(table, tables, farm),
        };
        if (RecordsTemplate.Separator(farm) is var separator and not ',')
        {
            resource["dialect"] = new JsonObject { ["delimiter"] = separator.ToString() };
        }

        return resource;
    }

    private static JsonObject Schema(TableSchema table, IReadOnlyList<TableSchema> tables, FarmSettings farm)
    {
        var schema = new JsonObject
        {
            ["fieldsMatch"] = "partial",
            ["missingValues"] = new JsonArray(""),
            ["fields"] = new JsonArray([.. table.Columns.Select(column => Field(column, farm))]),
        };
        if (table.NamesOnce)
        {
            schema["primaryKey"] = table.Columns[0].Name;
        }

        JsonNode[] references =
        [
            .. table
                .Columns.Where(column =>
                    !column.Several && tables.FirstOrDefault(known => known.Name == column.RefersTo)?.HoldsAllNames == true
                )
                .Select(Reference),
        ];
        if (references.Length > 0)
        {
            schema["foreignKeys"] = new JsonArray(references);
        }

        return schema;
    }

    private static JsonObject Reference(ColumnSchema column) =>
        new()
        {
            ["fields"] = column.Name,
            ["reference"] = new JsonObject
            {
                ["resource"] = column.RefersTo,
                ["fields"] = RecordSchema.Find(column.RefersTo!)!.Columns[0].Name,
            },
        };

    private static JsonObject Field(ColumnSchema column, FarmSettings farm)
    {
        var field = new JsonObject
        {
            ["name"] = column.Name,
            ["type"] = column.Type switch
            {
                ColumnType.Date => "date",
                ColumnType.Year => "year",
                ColumnType.YesNo => "boolean",
                ColumnType.Text or ColumnType.Name or ColumnType.Choice or ColumnType.Basis => "string",
                _ => "number",
            },
            ["description"] = column.Description + (column.Unit is { } unit ? $" Unit: {unit}." : ""),
        };
        if (column.Type == ColumnType.YesNo)
        {
            field["trueValues"] = new JsonArray("yes", "y", "true", "1");
            field["falseValues"] = new JsonArray("no", "n", "false", "0");
        }

        if (column.IsMoney)
        {
            field["bareNumber"] = false;
            field["groupChar"] = farm.DecimalMark == ',' ? "." : ",";
        }

        if (farm.DecimalMark != '.' && (string?)field["type"] == "number")
        {
            field["decimalChar"] = farm.DecimalMark.ToString();
        }

        JsonObject constraints = Constraints(column, farm);
        if (constraints.Count > 0)
        {
            field["constraints"] = constraints;
        }

        return field;
    }

    private static JsonObject Constraints(ColumnSchema column, FarmSettings farm)
    {
        var constraints = new JsonObject();
        if (column.Required)
        {
            constraints["required"] = true;
        }

        if (column.Type is ColumnType.Choice or ColumnType.Basis)
        {
            constraints["enum"] = new JsonArray([
                .. (column.Type == ColumnType.Basis ? Basis.Allowed.Select(word => farm.LengthUnit.Label(word)) : column.Allowed).Select(
                    word => JsonValue.Create(word)
                ),
            ]);
        }

        return constraints;
    }
}
