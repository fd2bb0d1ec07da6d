using System.Globalization;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using FarmEconomics.Funding;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Pricing;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.WholeWay.Tests.Ends;

/// <summary>What the schema allows must be safe everywhere: each column at its least and greatest value, by itself and all at once, goes the whole way.</summary>
public class ColumnRangeTests
{
    public static TheoryData<string> Tables => [.. RecordSchema.Tables.Where(table => table.Columns.Any(HasEnds)).Select(table => table.Name)];

    [Theory]
    [MemberData(nameof(Tables))]
    public void Review_EveryColumnOfATableAtItsEnds_AnswersWithoutAFault(string table)
    {
        foreach (ColumnSchema column in RecordSchema.Find(table)!.Columns.Where(HasEnds))
        {
            foreach (string end in Ends(column))
            {
                Run($"{table}.{column.Name} = {end}", [(table, column.Name, end)]);
            }
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Review_AllNumbersAtTheirEndsAtOnce_AnswersWithoutAFault(int end)
    {
        (string, string, string)[] values = [.. RecordSchema.Tables.SelectMany(table => table.Columns.Where(column => column.Range is not null && !Fixed(table.Name, column.Name)).Select(column => (table.Name, column.Name, column.Range!.Low < 0m ? Ends(column)[1] : Ends(column)[end])))];

        Assert.NotNull(Run($"all at end {end}", values).Review);
    }

    [Fact]
    public void Review_SmallDividedByLarge_AnswersWithoutAFault()
    {
        string[] small = ["quantity", "base_units", "bed_feet", "length_ft", "units_per_crate", "hours", "capacity", "life_years", "width_in", "trays"];
        foreach (bool smallIsSmall in new[] { true, false })
        {
            (string, string, string)[] values = [.. RecordSchema.Tables.SelectMany(table => table.Columns.Where(column => column.Range is not null && !Fixed(table.Name, column.Name))
                .Select(column => (table.Name, column.Name, small.Contains(column.Name) == smallIsSmall && column.Range!.Low >= 0m ? Ends(column)[0] : Ends(column)[1])))];
            Assert.NotNull(Run($"small over large: {!smallIsSmall}", values).Review);
        }
    }

    [Fact]
    public void Schema_EveryNumber_HasARange() =>
        Assert.All(RecordSchema.Tables.SelectMany(table => table.Columns), column =>
            Assert.Equal(column.Type is ColumnType.Number or ColumnType.Hours or ColumnType.Money or ColumnType.Price or ColumnType.Rate or ColumnType.Percent, column.Range is not null));

    [Theory]
    [InlineData("assets", "life_years", "1000000000", "E123")]
    [InlineData("assets", "cost", "20000000000", "E123")]
    [InlineData("plantings", "out_of_bed", "0001-01-01", "E230")]
    [InlineData("plantings", "in_bed", "9999-12-31", "E230")]
    [InlineData("assets", "in_service", "1899-12-31", "E230")]
    [InlineData("harvests", "quantity", "0.0000000001", "E123")]
    [InlineData("units", "base_units", "0", "E228")]
    [InlineData("channels", "fee_percent", "100.0001", "E229")]
    [InlineData("income", "crop_year", "2100", "E117")]
    public void Read_ValueBeyondTheEnds_IsAnErrorOfItsRow(string table, string column, string value, string code)
    {
        RecordsReading reading = RecordsFolder.Read(Folder([(table, column, value)]));

        Assert.Equal([(code, column)], reading.Problems.Select(problem => (problem.Code, problem.Column)).Distinct());
    }

    private static bool HasEnds(ColumnSchema column) => column.Range is not null || column.Type is ColumnType.Date or ColumnType.Year;

    // Payments that can't be counted are another fault. Money may be below 0 in the books; here it is as large as it may be.
    private static bool Fixed(string table, string column) => (table, column) is ("loans", "years" or "payments_per_year") or ("totals", _) or ("limits", _);

    private static string[] Ends(ColumnSchema column) => column.Type switch
    {
        ColumnType.Date => [$"{ColumnSchema.FirstYear}-01-01", $"{ColumnSchema.LastYear}-12-31"],
        ColumnType.Year => [$"{ColumnSchema.FirstYear}", $"{ColumnSchema.LastYear}"],
        _ => [Text(column.Range!.Low), Text(column.Range.High), .. column.Range.OrZero ? ["0"] : Array.Empty<string>()],
    };

    private static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);

    private static FarmFolder Run(string what, (string Table, string Column, string Value)[] values)
    {
        try
        {
            FarmFolder farm = FarmFolder.Open(Folder(values));
            foreach (int year in farm.Review?.CropYears ?? [])
            {
                Work(farm, farm.Review!.Season(year), year);
            }

            return farm;
        }
        catch (Exception fault)
        {
            throw new InvalidOperationException($"{what}: {fault.GetType().Name}: {fault.Message}", fault);
        }
    }

    private static void Work(FarmFolder farm, SeasonReview season, int year)
    {
        ResultTables.Write(season, farm.ProblemsWith(season), TestFolders.Make());
        Assert.All(season.Reconciliation, check => Assert.True(check.Holds, $"{check.Check}: {check.Left} against {check.Right}"));
        SeasonCosts costs = SeasonCosts.Of(season);
        Verdicts verdicts = Verdicts.Of(farm.Review!, costs, null, new SimulationSettings { Draws = 200 });
        Assert.NotEmpty(DecisionSentences.VerdictLines(verdicts));
        PriceBook book = PriceBook.Of(farm.Review!, year);
        foreach (Channel channel in PriceSheet.Channels(book))
        {
            _ = channel.Kind == ChannelKind.Share
                ? PriceSheet.Body(book, SharePricing.Of(book, ShareContents.Recorded(book, channel), new ShareTerms { Members = 10m }), new ShareTerms { Members = 10m })
                : PriceSheet.Body(book, channel);
        }

        FundingWriteUp writeUp = FundingWriteUp.Of(farm.Review!, year, farm.Review!.Records.Tables.Funding.Select(row => row.Project).FirstOrDefault(), FundingAssumptions.Parse("", ""));
        Assert.NotEmpty(LenderReport.Html(writeUp));
    }

    // One farm with every table, every column filled.
    private static string Folder((string Table, string Column, string Value)[] values)
    {
        string folder = TestFolders.Make();
        foreach ((string table, string[] lines) in Small)
        {
            string[] headings = lines[0].Split(',');
            string[] rows = [.. lines[1..].Select(line =>
            {
                string[] fields = line.Split(',');
                foreach ((_, string column, string value) in values.Where(value => value.Table == table))
                {
                    int at = Array.IndexOf(headings, column);
                    fields[at] = at >= 0 && fields[at].Length > 0 ? value : fields[at];
                }

                return string.Join(',', fields);
            })];
            File.WriteAllLines(Path.Combine(folder, $"{table}.csv"), [lines[0], .. rows]);
        }

        return folder;
    }

    private static readonly Dictionary<string, string[]> Small = new()
    {
        ["farm"] =
        [
            "setting,value",
            "owner_wage,20",
            "interest_percent,6",
            "latitude,45",
            "panel_kw,2",
            "panel_yield,1;2;3;4;5;5;5;4;3;2;1;1",
            "battery_kwh,10",
        ],
        ["crops"] =
        [
            "crop,unit,storage_days,store,water_need,units_per_crate,perennial,kc_ini,kc_mid,kc_end,ky,ky_ini,ky_dev,ky_mid,ky_late,bearing_years,establishment_cost",
            "lettuce,head,7,cold room,1,24,no,0.7,1,0.95,1,0.4,0.4,1.3,0.5,,",
            "kale,bunch,5,cold room,1.5,20,no,,,,,,,,,,",
            "asparagus,lb,5,cold room,1,20,yes,,,,,,,,,12,3.5",
        ],
        ["units"] = ["crop,unit,base_units", "lettuce,case,24"],
        ["beds"] = ["bed,length_ft,width_in,block,structure,from,to", "A1,100,36,North,tunnel,2024-01-01,2026-12-31", "A2,100,36,South,,,"],
        ["plantings"] = ["planting,crop,bed,bed_feet,in_bed,out_of_bed,sown,trays,crop_year", "L1,lettuce,A1,50,2025-04-01,2025-06-01,2025-03-01,4,2025", "K1,kale,A2,50,2025-04-01,2025-10-01,2025-03-01,3,", "P1,asparagus,A2,20,2022-04-01,,,,"],
        ["harvests"] = ["date,crop,planting,quantity,unit,culled", "2025-05-10,,L1,40,,2", "2025-05-11,,L1,2,case,1", "2025-06-10,kale,,30,,1"],
        ["sales"] = ["date,crop,channel,quantity,unit,unit_price,amount,planting", "2025-05-10,lettuce,market,20,,1.5,,L1", "2025-05-12,lettuce,market,1,case,,40,", "2025-06-10,kale,market,10,,,25,", "2025-06-10,kale,box,10,,,,", "2025-06-11,kale,home,2,,,,"],
        ["channels"] = ["channel,kind,fee_percent,values_from,elasticity", "market,market,5,,2", "box,share,3,market,", "home,household,,market,", "other,other,,,"],
        ["prices"] = ["crop,price,unit,channel,from,reference", "kale,2.5,,market,2025-01-01,no", "lettuce,2,,,,no"],
        ["income"] = ["date,channel,amount,crop_year,note", "2025-03-01,box,500,2025,x", "2025-04-01,other,50,,"],
        ["labor"] =
        [
            "date,worker,hours,task,crop,planting,channel,pool,through",
            "2025-05-10,Ada,3,picking,lettuce,,,,",
            "2025-06-10,Bo,4,picking,,K1,,,2025-06-11",
            "2025-06-11,Ada,2,market,,,market,,",
            "2025-06-12,Bo,1.5,weeding,,,,,",
            "2025-06-12,Bo,1,repairs,,,,cold room,",
        ],
        ["workers"] = ["worker,kind,wage,from", "Ada,owner,25,2024-01-01", "Bo,hired,18,2024-01-01"],
        ["tasks"] = ["task,stage,pool", "cooling,pack,cold room"],
        ["labor_standards"] = ["crop,stage,minutes,per", "kale,pack,0.5,unit", "lettuce,nursery,10,tray", "kale,grow,1,bed_foot"],
        ["input_rates"] = ["pool,crop,rate,per", "seed and plants,lettuce,0.5,bed_foot", "packaging,kale,2,unit"],
        ["expenses"] = ["date,amount,category,payee,crop,planting,channel,pool,farm_percent,crop_year,note", "2025-03-01,80,seed,x,lettuce,,,,90,2025,x", "2025-04-01,30,compost,,,,,,,,", "2025-05-01,20,market fees,,,,market,,,,", "2025-05-01,60,wages,,,,,,,,", "2025-05-01,40,electricity,,,,,cold room,,,"],
        ["categories"] = ["category,class,statement_line,tax_line,pool,varies_with", "netting,operating,materials,Supplies,fertility and crop supplies,area"],
        ["pools"] = ["pool,basis,statement_line,structure,capacity,varies_with", "cold room,crate-days,infrastructure,,100,nothing", "power,measured,infrastructure,,1000,nothing", "tunnel,bed-foot-days,infrastructure,tunnel,,area"],
        ["use"] = ["pool,user,quantity,crop_year", "power,lettuce,10,2025", "power,tunnel,5,", "power,household,3,2025"],
        ["loads"] = ["load,pool,user,watts,hours_per_day,from,to,shed_order", "compressor,power,cold room,600,8,2025-04-01,2025-10-31,2"],
        ["assets"] = ["asset,pool,in_service,cost,life_years,salvage,farm_percent,grant,repairs_percent,insurance_tax_percent,retired,replacement_value,sold_for", "cooler,cold room,2022-03-01,4000,10,200,90,500,2,1,2030-01-01,6000,300", "panels,power,2020-01-01,9000,20,0,100,1000,1,0.5,,,"],
        ["limits"] = ["limit,amount,unit,from,to", "labor,60,hours a week,2025-01-01,2025-12-31"],
        ["weather"] = ["date,rain_in,tmin_f,tmax_f,et0_in,solar_mj,wind_mph,dewpoint_f", "2025-06-01,0.2,50,80,,20,4,55", "2025-06-02,,51,82,0.2,,,"],
        ["watering"] = ["date,block,bed,gallons,sprinkler_hours", "2025-06-01,North,,300,", "2025-06-02,,A2,,12"],
        ["blocks"] = ["block,soil_water_in_ft,efficiency_percent,sprinkler_gph,set_gallons", "North,1.5,70,60,", "South,2,80,90,400"],
        ["power_made"] = ["date,pool,kwh,generator_hours", "2025-06-01,power,9,1"],
        ["plan"] = ["crop_year,planting,crop,bed,bed_feet,in_bed,out_of_bed,sown,trays,yield,hours,cost", "2025,L1,lettuce,A1,50,2025-04-01,2025-06-01,2025-03-01,4,60,5,30", "2026,L2,lettuce,A1,40,2026-04-01,2026-06-01,2026-03-01,3,50,4,20"],
        ["plan_sales"] = ["crop_year,crop,channel,quantity,unit,price,from,weeks", "2025,lettuce,market,30,,1.5,2025-05-05,4", "2026,lettuce,market,2,case,40,2026-05-05,2"],
        ["projects"] = ["project,cost,task,pool,hours_saved_percent,losses_saved_percent,power_saved_kwh,life_years,salvage", "cooling,5000,cooling,cold room,20,30,100,10,50"],
        ["totals"] = ["table,measure,amount,from,to,tolerance", "labor,hours:harvest,100,2025-01-01,2025-12-31,1", "sales,quantity,100,,,1"],
        ["loans"] = ["loan,principal,annual_percent,years,payments_per_year,first_payment,repayment,asset", "note,5000,5.25,10,12,2022-04-01,level-payment,cooler"],
        ["balances"] = ["date,item,class,amount", "2025-12-31,cash,current-asset,3000", "2024-12-31,cash,current-asset,2000", "2025-12-31,note,long-term-liability,3000"],
        ["funding"] = ["project,item,object_class,amount,funder_percent,budget_year,quarter,note", "cooling,cooler,equipment,5000,50,1,2,x"],
    };
}
