using CsvHelper;
using FarmEconomics.Files.Reading;
using FarmEconomics.Records;

// The library of the rows knows no CSV: these empty classes make the source generator write the mappers here. A column is found by
// its property's name (BedFeet reads bed_feet, since headings are compared without underscores), and every field is read by the
// converters below, which report instead of throwing, so that one row can report several bad fields. Projections let optional
// columns be left out.
[assembly: CsvRecordProjections]
[assembly: CsvConverter(typeof(TextConverter))]
[assembly: CsvConverter(typeof(NumberConverter))]
[assembly: CsvConverter(typeof(DateConverter))]
[assembly: CsvConverter(typeof(YearConverter))]
[assembly: CsvConverter(typeof(YesNoConverter))]
[assembly: CsvConverter(typeof(ChoiceConverter<ChannelKind>))]
[assembly: CsvConverter(typeof(ChoiceConverter<WorkerKind>))]
[assembly: CsvConverter(typeof(ChoiceConverter<Stage>))]
[assembly: CsvConverter(typeof(ChoiceConverter<ExpenseClass>))]
[assembly: CsvConverter(typeof(ChoiceConverter<StatementLine>))]
[assembly: CsvConverter(typeof(ChoiceConverter<CostDriver>))]
[assembly: CsvConverter(typeof(ChoiceConverter<RatePer>))]
[assembly: CsvConverter(typeof(ChoiceConverter<Repayment>))]
[assembly: CsvConverter(typeof(ChoiceConverter<BalanceClass>))]
[assembly: CsvConverter(typeof(ChoiceConverter<ObjectClass>))]

namespace FarmEconomics.Files.Reading;

[CsvRecordMap(typeof(SettingRow)), CsvIgnoreBase]
internal sealed partial class SettingMap;

[CsvRecordMap(typeof(CropRow)), CsvIgnoreBase]
internal sealed partial class CropMap;

[CsvRecordMap(typeof(UnitRow)), CsvIgnoreBase]
internal sealed partial class UnitMap;

[CsvRecordMap(typeof(BedRow)), CsvIgnoreBase]
internal sealed partial class BedMap;

[CsvRecordMap(typeof(PlantingRow)), CsvIgnoreBase]
internal sealed partial class PlantingMap;

[CsvRecordMap(typeof(HarvestRow)), CsvIgnoreBase]
internal sealed partial class HarvestMap;

[CsvRecordMap(typeof(SaleRow)), CsvIgnoreBase]
internal sealed partial class SaleMap;

[CsvRecordMap(typeof(ChannelRow)), CsvIgnoreBase]
internal sealed partial class ChannelMap;

[CsvRecordMap(typeof(PriceRow)), CsvIgnoreBase]
internal sealed partial class PriceMap;

[CsvRecordMap(typeof(IncomeRow)), CsvIgnoreBase]
internal sealed partial class IncomeMap;

[CsvRecordMap(typeof(LaborRow)), CsvIgnoreBase]
internal sealed partial class LaborMap;

[CsvRecordMap(typeof(WorkerRow)), CsvIgnoreBase]
internal sealed partial class WorkerMap;

[CsvRecordMap(typeof(TaskRow)), CsvIgnoreBase]
internal sealed partial class TaskMap;

[CsvRecordMap(typeof(LaborStandardRow)), CsvIgnoreBase]
internal sealed partial class LaborStandardMap;

[CsvRecordMap(typeof(InputRateRow)), CsvIgnoreBase]
internal sealed partial class InputRateMap;

[CsvRecordMap(typeof(ExpenseRow)), CsvIgnoreBase]
internal sealed partial class ExpenseMap;

[CsvRecordMap(typeof(CategoryRow)), CsvIgnoreBase]
internal sealed partial class CategoryMap;

[CsvRecordMap(typeof(PoolRow)), CsvIgnoreBase]
internal sealed partial class PoolMap;

[CsvRecordMap(typeof(UseRow)), CsvIgnoreBase]
internal sealed partial class UseMap;

[CsvRecordMap(typeof(LoadRow)), CsvIgnoreBase]
internal sealed partial class LoadMap;

[CsvRecordMap(typeof(AssetRow)), CsvIgnoreBase]
internal sealed partial class AssetMap;

[CsvRecordMap(typeof(LoanRow)), CsvIgnoreBase]
internal sealed partial class LoanMap;

[CsvRecordMap(typeof(BalanceRow)), CsvIgnoreBase]
internal sealed partial class BalanceMap;

[CsvRecordMap(typeof(FundingRow)), CsvIgnoreBase]
internal sealed partial class FundingMap;

[CsvRecordMap(typeof(LimitRow)), CsvIgnoreBase]
internal sealed partial class LimitMap;

[CsvRecordMap(typeof(TotalRow)), CsvIgnoreBase]
internal sealed partial class TotalMap;

[CsvRecordMap(typeof(AliasRow)), CsvIgnoreBase]
internal sealed partial class AliasMap;

[CsvRecordMap(typeof(ImportRow)), CsvIgnoreBase]
internal sealed partial class ImportMap;
