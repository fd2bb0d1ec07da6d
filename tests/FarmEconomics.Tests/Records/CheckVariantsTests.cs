using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Records;

/// <summary>One row of one table beside the sound folder, and the code and column of the one fault it must show.</summary>
public class CheckVariantsTests
{
    [Fact]
    public void Run_RecordsOf1985_AreSound()
    {
        string folder = TestFolders.MakeBad("sound");
        foreach (string file in Directory.EnumerateFiles(folder, "*.csv"))
        {
            File.WriteAllText(file, File.ReadAllText(file).Replace("2025-", "1985-", StringComparison.Ordinal).Replace("2024-", "1984-", StringComparison.Ordinal).Replace("2026-", "1986-", StringComparison.Ordinal));
        }

        FarmFolder farm = FarmFolder.Open(folder);

        Assert.Empty(farm.Problems);
        Assert.Equal([1985], farm.Review!.CropYears);
    }

    [Fact]
    public void Run_SaleFarFromTheOthers_IsToldWithTheYearsTheyCover()
    {
        string folder = TestFolders.MakeBad("sound");
        File.AppendAllText(Path.Combine(folder, "sales.csv"), "1985-05-10,lettuce,market,40,60.00\n");

        Assert.Contains("is far from 2025", FarmFolder.Open(folder).Problems.Single(problem => problem.Code == "E230").Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("crops", "crop,unit,store\nlettuce,head,\nkale,bunch,general overhead; cellar\n", "E205 store")]
    [InlineData("crops", "crop,unit,units_per_crate\nlettuce,head,0\nkale,bunch,\n", "E228 units_per_crate")]
    [InlineData("crops", "crop,unit,storage_days\nlettuce,head,-1\nkale,bunch,0\n", "E228 storage_days")]
    [InlineData("units", "crop,unit,base_units\nlettuce,case,0\n", "E228 base_units")]
    [InlineData("units", "crop,unit,base_units\nlettuce,head,2\n", "E227 unit")]
    [InlineData("units", "crop,unit,base_units\nlettuce,case,24\nLettuce,Case,12\n", "E227 unit")]
    [InlineData("units", "crop,unit,base_units\nbeet,case,24\n", "E201 crop")]
    [InlineData("beds", "bed,length_ft,from,to\nA1,100,2026-01-01,2025-01-01\n", "E232 to")]
    [InlineData("beds", "bed,length_ft,to\nA1,100,2025-09-01\n", "E226 out_of_bed")]
    [InlineData("beds", "bed,length_ft,to\nA1,100,2025-09-30\n", "")]
    [InlineData("plantings", "planting,crop,bed,bed_feet,in_bed,crop_year\nL1,lettuce,A1,50,2025-04-01,2025\nL1,lettuce,A1,10,2025-04-01,2026\nK1,kale,A1,40,2025-04-01,\n", "E222 crop_year")]
    [InlineData("plantings", "planting,crop,bed,bed_feet,in_bed,out_of_bed\nL1,lettuce,A1,50,2025-04-01,2025-04-01\nK1,kale,A1,50,2025-04-01,\n", "E224 out_of_bed")]
    [InlineData("plantings", "planting,crop,bed,bed_feet,in_bed,sown\nL1,lettuce,A1,50,2025-04-01,2025-04-01\nK1,kale,A1,50,2025-04-01,\n", "")]
    [InlineData("harvests", "date,crop,quantity\n2025-03-31,kale,4\n", "E223 date")]
    [InlineData("harvests", "date,crop,quantity,culled\n2025-05-01,kale,0,4\n", "")]
    [InlineData("harvests", "date,crop,quantity,culled\n2025-05-01,kale,4,-1\n", "E228 culled")]
    [InlineData("harvests", "date,crop,planting,quantity\n2025-05-01,kale,L1,4\n", "E221 planting")]
    [InlineData("channels", "channel,kind,values_from\nmarket,market,\nshares,share,stand\n", "E204 values_from")]
    [InlineData("channels", "channel,kind\nmarket,market\nMarket,stand\n", "E227 channel")]
    [InlineData("prices", "crop,price,unit\nlettuce,1.5,box\n", "E209 unit")]
    [InlineData("prices", "crop,price,from\nlettuce,1.5,\nlettuce,1.6,2025-05-01\nlettuce,1.7,2025-05-01\n", "E227 crop")]
    [InlineData("prices", "crop,price,reference\nlettuce,1.5,\nlettuce,1.6,yes\n", "")]
    [InlineData("prices", "crop,price\nlettuce,-1.5\n", "E228 price")]
    [InlineData("income", "date,channel,amount,crop_year\n2025-03-01,shares,500,2030\n", "E230 crop_year")]
    [InlineData("income", "date,channel,amount\n2025-03-01,shares,-20\n", "")]
    [InlineData("workers", "worker,kind,wage,from\nAda,hired,15,\nAda,hired,16,2025-06-01\nada,hired,17,2025-06-01\n", "E227 worker")]
    [InlineData("workers", "worker,kind,wage\nAda,hired,-1\n", "E228 wage")]
    [InlineData("tasks", "task,stage,pool\nmulching,grow,no such pool\n", "E205 pool")]
    [InlineData("tasks", "task,stage,pool\nmarket stall,sell,market (channel)\n", "")]
    [InlineData("labor", "date,worker,hours,task\n2025-05-10,Ada,0,harvest\n", "E228 hours")]
    [InlineData("labor", "date,worker,hours,task,channel\n2025-05-10,Ada,4,market,farm stand\n", "E204 channel")]
    [InlineData("labor_standards", "crop,stage,minutes,per\nlettuce,harvest,0,unit\n", "E228 minutes")]
    [InlineData("input_rates", "pool,crop,rate,per\nsed and plants,lettuce,1,tray\n", "E205 pool")]
    [InlineData("input_rates", "pool,crop,rate,per\nseed and plants,lettuce,-1,tray\n", "E228 rate")]
    [InlineData("expenses", "date,amount,category\n2025-03-01,-80.00,Compost\n", "")]
    [InlineData("expenses", "date,amount,category,farm_percent\n2025-03-01,80.00,compost,120\n", "E229 farm_percent")]
    [InlineData("expenses", "date,amount,category,channel,pool\n2025-03-01,80.00,compost,market,packaging\n", "E220 pool")]
    [InlineData("expenses", "date,amount,category\n1925-03-01,80.00,compost\n", "E230 date")]
    [InlineData("expenses", "date,amount,category\n2025-03-01,80.00,compost\n2025-03-01,80.00,compost\n", "W202 ")]
    [InlineData("expenses", "date,amount,category\n2025-03-02,80.00,compost\n2025-03-01,80.00,compost\n2025-03-02,80.00,Compost\n", "W202 ")]
    [InlineData("expenses", "date,amount,category\n2025-03-01,80.00,compost\n2025-03-02,80.00,compost\n2025-03-01,80.01,compost\n", "")]
    [InlineData("categories", "category,class,pool\nbees,operating,hives\n", "E205 pool")]
    [InlineData("pools", "pool,basis,statement_line,capacity\npower,measured,infrastructure,0\n", "E228 capacity")]
    [InlineData("use", "pool,user,quantity\ngeneral overhead,Household,10\n", "")]
    [InlineData("use", "pool,user,quantity\ngeneral overhead,K1,-10\n", "E228 quantity")]
    [InlineData("loads", "load,pool,user,watts,hours_per_day,from,to\nfan,general overhead,lettuce,60,25,2025-06-01,2025-06-30\n", "E123 hours_per_day")]
    [InlineData("assets", "asset,pool,in_service,cost,life_years\nbarn,general overhead,1950-01-01,8000,100\n", "")]
    [InlineData("assets", "asset,pool,in_service,cost,life_years\ntruck,general overhead,2020-01-01,8000,0\n", "E228 life_years")]
    [InlineData("assets", "asset,pool,in_service,cost,life_years,retired\ntruck,general overhead,2020-01-01,8000,5,2019-01-01\n", "E232 retired")]
    [InlineData("plantings", "planting,crop,bed,bed_feet,in_bed,out_of_bed\nL1,lettuce,A1,50.25,2025-04-01,2025-06-01\nK1,kale,A1,50.25,2025-04-01,2025-10-01\n", "")]
    [InlineData("plantings", "planting,crop,bed,bed_feet,in_bed,out_of_bed\nL1,lettuce,A1,50.25,2025-04-01,2025-06-01\nK1,kale,A1,50.26,2025-04-01,2025-10-01\n", "W201 bed_feet")]
    [InlineData("workers", "worker,kind,from\nAda,owner,1985-04-01\n", "")]
    [InlineData("expenses", "date,amount,category\n1985-03-01,80.00,compost\n", "E230 date")]
    [InlineData("totals", "table,measure,amount\nlabor,hours:harvest,100\nloads,kWh,5\n", "")]
    [InlineData("totals", "table,measure,amount\nlabour,hours,100\n", "E212 table")]
    public void Run_OneFaultyRow_IsTheOneFault(string table, string text, string expected)
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, $"{table}.csv"), text);
        RecordsReading reading = RecordsFolder.Read(folder);

        IReadOnlyList<Problem> problems = [.. reading.Problems, .. RecordChecks.Run(reading.Tables, reading.FarmSettings)];

        Assert.Equal(expected.Length == 0 ? [] : [expected], problems.Select(problem => $"{problem.Code} {problem.Column}"));
    }
}
