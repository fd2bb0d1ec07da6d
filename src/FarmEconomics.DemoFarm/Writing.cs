namespace FarmEconomics.DemoFarm;

/// <summary>From the farm's year to the columns of the tables.</summary>
internal static class Writing
{
    public static CsvTable Crops()
    {
        var t = new CsvTable(
            "crop",
            "unit",
            "group",
            "family",
            "storage_days",
            "store",
            "water_need",
            "units_per_crate",
            "perennial",
            "bearing_years",
            "establishment_cost"
        );
        foreach (var c in CropList.All.Append(Berries.Crop))
        {
            t.Add(
                c.Name,
                c.Unit,
                c.Group,
                c.Family,
                c.StorageDays,
                c.Store,
                c.Water,
                c.PerCrate,
                c.Perennial ? "yes" : null,
                c.BearingYears,
                c.EstablishmentCost
            );
        }

        return t;
    }

    public static CsvTable Units()
    {
        var t = new CsvTable("crop", "unit", "base_units");
        foreach (var pack in SellingUnits.All)
        {
            t.Add(pack.Crop, pack.Unit, pack.Size);
        }

        return t;
    }

    public static CsvTable BedsTable()
    {
        var t = new CsvTable("bed", "length_ft", "width_in", "block", "structure", "from", "to");
        foreach (var bed in Beds.All.Append(Berries.Bed))
        {
            t.Add(bed.Name, bed.Length, bed.Width, bed.Block, bed.Structure, null, null);
        }

        return t;
    }

    public static CsvTable Plantings(IReadOnlyList<Planting> plantings)
    {
        var t = new CsvTable("planting", "crop", "bed", "bed_feet", "in_bed", "out_of_bed", "sown", "trays", "method", "crop_year");
        foreach (var p in plantings)
        {
            // Trays go with the beds they plant; the last bed takes what rounding left.
            var traysLeft = p.Trays;
            foreach (var (bed, feet) in p.Places)
            {
                var trays = p.Trays is { } all
                    ? (feet == p.Places[^1].Feet && bed == p.Places[^1].Bed ? traysLeft : Math.Floor(all * feet / p.Feet))
                    : null;
                traysLeft -= trays;
                t.Add(
                    p.Name,
                    p.Crop.Name,
                    bed.Name,
                    feet,
                    p.InBed,
                    p.OutLeftBlank ? null : p.OutOfBed,
                    p.Sown,
                    trays,
                    p.Method,
                    p.NamesCropYear ? p.CropYear : null
                );
            }
        }

        return t;
    }

    public static CsvTable Harvests(IReadOnlyList<HarvestBook.Pick> picks)
    {
        var t = new CsvTable("date", "crop", "planting", "quantity", "unit", "culled");
        foreach (var p in picks)
        {
            t.Add(
                p.Date,
                p.Planting.Crop.Name,
                p.NamesPlanting ? p.Planting.Name : null,
                p.Quantity,
                p.Planting.Crop.Unit,
                p.Culled > 0m ? p.Culled : null
            );
        }

        return t;
    }

    public static CsvTable Sales(IReadOnlyList<SalesBook.Sale> sales)
    {
        var t = new CsvTable("date", "crop", "channel", "quantity", "unit", "unit_price", "amount");
        foreach (var s in sales)
        {
            t.Add(s.Date, s.Crop.Name, s.Channel, s.Quantity, s.Unit, s.Price, s.Amount is { } amount ? CsvTable.Money(amount) : null);
        }

        return t;
    }

    public static CsvTable Income()
    {
        var t = new CsvTable("date", "channel", "amount", "crop_year", "note");
        foreach (var l in Incomes.All())
        {
            t.Add(l.Date, l.Channel, CsvTable.Money(l.Amount), l.CropYear, l.Note);
        }

        return t;
    }

    public static CsvTable Labor(IReadOnlyList<LaborBook.Entry> log)
    {
        var t = new CsvTable("date", "worker", "hours", "task", "crop", "planting", "channel", "pool");
        foreach (var e in log)
        {
            t.Add(e.Chore.Date, e.Worker, e.Hours, e.Chore.Task, e.Chore.Crop, e.Chore.Planting, e.Chore.Channel, e.Chore.Pool);
        }

        return t;
    }

    public static CsvTable Expenses(IReadOnlyList<BookLine> books)
    {
        var t = new CsvTable(
            "date",
            "amount",
            "category",
            "payee",
            "crop",
            "planting",
            "channel",
            "pool",
            "farm_percent",
            "crop_year",
            "note"
        );
        foreach (var b in books)
        {
            t.Add(
                b.Date,
                CsvTable.Money(b.Amount),
                b.Category,
                b.Payee,
                b.Crop,
                b.Planting,
                b.Channel,
                b.Pool,
                b.FarmPercent,
                b.CropYear,
                b.Note
            );
        }

        return t;
    }
}
