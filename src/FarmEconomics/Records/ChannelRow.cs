using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>channels</c>.</summary>
    public Rows<ChannelRow> Channels => Of<ChannelRow>();
}

/// <summary>A row of <c>channels</c>.</summary>
public readonly record struct ChannelRow(RecordTable Home, int Index) : IRecordRow<ChannelRow>
{
    private static readonly TableDeclaration Declared = new("channels", 170, "a way goods leave the farm")
    {
        UnknownName = ProblemCodes.UnknownChannel,
        NamesOnce = true,
        Checks = () => [NamesAlike.Of(Schema)],
        ComesNext = true,
        Without = "Without channels.csv the kind and the fee of a channel are not known, so shares, household use, donations and "
            + "waste can't be told from sales.",
    };

    internal static readonly TextColumn ChannelColumn = Declared.Text(
        new("channel", ColumnType.Name, "The channel's name.") { Required = true });
    internal static readonly ChoiceColumn<ChannelKind> KindColumn = Declared.Choice<ChannelKind>(
        new("kind", ColumnType.Choice, "What kind of channel it is.") { Required = true });
    internal static readonly NumberColumn FeePercentColumn = Declared.Number(
        new("fee_percent", ColumnType.Percent, "The channel's fee, in percent of the sale.") { Range = NumberRanges.Part, Unit = "%" });
    internal static readonly TextColumn ValuesFromColumn = Declared.Text(
        new("values_from", ColumnType.Name, "The channel whose prices value goods that carry none.") { RefersTo = "channels" });
    internal static readonly NumberColumn ElasticityColumn = Declared.Number(
        new("elasticity", ColumnType.Number,
            "How much more the channel takes for a lower price: 2 means 2% more sold for a price 1% lower; blank: 2. "
            + "Only for market, stand and wholesale.")
        { Range = new NumberRange(0.01m, 1000m) });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<ChannelRow>();

    /// <summary>The channel's name.</summary>
    public string Channel => ChannelColumn.Of(Home, Index);

    /// <summary>What kind of channel it is.</summary>
    public ChannelKind Kind => KindColumn.Of(Home, Index);

    /// <summary>The channel's fee in percent of the sale (6.5 = 6.5 %).</summary>
    public decimal? FeePercent => FeePercentColumn.Maybe(Home, Index);

    /// <summary>Price elasticity of demand by size: 2 means 2% more sold for a price 1% lower; blank: 2.</summary>
    public decimal? Elasticity => ElasticityColumn.Maybe(Home, Index);

    /// <summary>The channel whose prices value goods that carry none.</summary>
    public string? ValuesFrom => ValuesFromColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static ChannelRow At(RecordTable table, int index) => new(table, index);
}
