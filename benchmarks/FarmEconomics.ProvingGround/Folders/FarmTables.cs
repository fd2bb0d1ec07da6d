using FarmEconomics.ProvingGround.World;

namespace FarmEconomics.ProvingGround.Folders;

/// <summary>The tables that don't grow with the seasons.</summary>
internal static class FarmTables
{
    internal const string Boxes = "Boxes";
    internal const string Food = "Food Pantry";
    internal const string Compost = "Compost";
    internal const string Owner = "Owner";
    internal const string Hand = "Hand";

    internal static void Write(Farm farm, string folder)
    {
        Table settings = new("farm", "setting,value");
        settings.Row($"farm_name,World {farm.Seed}");
        settings.Row($"owner_wage,{farm.Labor.OwnerWage}");
        settings.Row($"interest_percent,5");
        settings.Row($"as_of,{RecordsWriter.LastYear}-12-31");
        settings.Save(folder);
        WriteCrops(farm, folder);
        WriteBeds(farm, folder);
        Table channels = new("channels", "channel,kind,fee_percent,values_from");
        foreach (Outlet outlet in farm.Outlets)
        {
            channels.Row($"{outlet.Name},{outlet.Kind},{Math.Round(outlet.Fee * 100, 2)},");
        }

        channels.Row($"{Boxes},share,,{farm.Outlets[0].Name}");
        channels.Row($"{Food},donation,,");
        channels.Row($"{Compost},waste,,");
        channels.Save(folder);
        WriteWork(farm, folder);
        Table categories = new("categories", "category,class,statement_line,pool,varies_with");
        categories.Row($"bought-in produce,operating,selling,selling general,nothing");
        categories.Save(folder);
    }

    private static void WriteCrops(Farm farm, string folder)
    {
        Table crops = new("crops", "crop,unit,storage_days,units_per_crate");
        Table prices = new("prices", "crop,price,channel,from");
        foreach (Crop crop in farm.Crops)
        {
            crops.Row($"{crop.Name},unit,{7 * crop.Time.Keeps},{crop.UnitsPerCrate}");
            for (int year = RecordsWriter.LastYear - 2; year <= RecordsWriter.LastYear; year++)
            {
                double level = RecordsWriter.Level(farm, year);
                for (int o = 0; o < farm.Outlets.Length; o++)
                {
                    prices.Row($"{crop.Name},{Math.Round(crop.Demands[o].Price * level, 2)},{farm.Outlets[o].Name},{year}-01-01");
                }
            }
        }

        crops.Save(folder);
        prices.Save(folder);
    }

    private static void WriteBeds(Farm farm, string folder)
    {
        Table beds = new("beds", "bed,length_ft,structure");
        for (int cover = 0; cover < Farm.Covers; cover++)
        {
            foreach ((string name, double feet) in BedBook.BedsOf(farm, cover))
            {
                beds.Row($"{name},{feet},{(cover == 1 ? "Tunnel" : "")}");
            }
        }

        beds.Save(folder);
    }

    private static void WriteWork(Farm farm, string folder)
    {
        Table workers = new("workers", "worker,kind,wage,from");
        workers.Row($"{Owner},owner,{farm.Labor.OwnerWage},");
        for (int year = RecordsWriter.LastYear - 2; year <= RecordsWriter.LastYear; year++)
        {
            workers.Row($"{Hand},hired,{Math.Round(farm.Labor.HiredWage * RecordsWriter.Level(farm, year), 2)},{year}-01-01");
        }

        workers.Save(folder);
        Table limits = new("limits", "limit,amount,unit,from,to");
        limits.Row($"labor,{farm.Labor.Own + farm.Labor.Hired},hours a week,{RecordsWriter.LastYear}-03-26,{RecordsWriter.LastYear}-11-25");
        limits.Row($"labor,{farm.Labor.Own},hours a week,{RecordsWriter.LastYear}-11-26,{RecordsWriter.LastYear + 1}-03-25");
        limits.Save(folder);
        Table assets = new("assets", "asset,pool,in_service,cost,life_years");
        assets.Row($"Cooler,general overhead,2019-04-01,6000,15");
        assets.Row($"Tunnel,general overhead,2019-04-01,{10 * farm.BedFeet[1]},20");
        assets.Row($"Van,general overhead,2020-04-01,14000,10");
        assets.Save(folder);
    }
}
