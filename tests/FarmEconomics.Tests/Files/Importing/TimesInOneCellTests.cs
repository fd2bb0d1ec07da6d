using FarmEconomics.Files.Importing;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>
/// Hours noted as people note them: from when to when, on a clock of twelve hours. Worked out by hand; every row is invented.
/// </summary>
public class TimesInOneCellTests
{
    [Theory]
    [InlineData("7:30-12", "4.5")]
    [InlineData("7:30 - 12:00", "4.5")]
    [InlineData("7:30–4", "8.5")]
    [InlineData("8-12, 1-5", "8")]
    [InlineData("8-12 & 1-4:30", "7.5")]
    [InlineData("7 to 11:15", "4.25")]
    [InlineData("7am-3pm", "8")]
    [InlineData("7 am to noon", "5")]
    [InlineData("10-2", "4")]
    [InlineData("1-5, 8-9", "5")]
    [InlineData("12:30-1", "0.5")]
    [InlineData("06:28,12:00,12:30,15:02", "8.0666666667")]
    [InlineData("6:30 12:00", "5.5")]
    [InlineData("7.5", "7.5")]
    public void Hours_FromWhenToWhen_AreWorkedOut(string noted, string hours) =>
        Assert.Equal([$"2025-06-02 Ada {hours} harvest"], Drafted.Rows(Sheet("Hours", noted, "8-12")).Take(1));

    /// <summary>What can be read two ways, or no way, is held back.</summary>
    [Theory]
    [InlineData("07:30-04:00")]
    [InlineData("15:30-7")]
    [InlineData("9-9")]
    [InlineData("8-12, 1")]
    [InlineData("8 AM-5 AM")]
    [InlineData("8-12, 30")]
    public void Hours_ThatDontFollowEachOther_AreHeldBack(string noted)
    {
        ImportPlan plan = Sheet("Hours", noted, "8:00-12");

        Assert.Equal(["2025-06-03 Ada 4 harvest"], Drafted.Rows(plan));
        Assert.Equal(2, Assert.Single(plan.HeldBack).Line);
    }

    /// <summary>Three to four hours, or from three to four? A half hour, or one to two? Seven and a half, or seven to five?</summary>
    [Theory]
    [InlineData("3-4")]
    [InlineData("1/2")]
    [InlineData("7/12")]
    public void Hours_ThatMayBeNumbers_AreNoTimes(string noted) => Assert.Empty(Sheet("Hours", noted, "8-12").Rows);

    [Fact]
    public void Hours_WithADecimalComma_AreNoTimes() =>
        Assert.Equal(["2025-06-02 Ada 7.5 harvest", "2025-06-03 Ada 6.25 harvest"], Drafted.Rows(Sheet("Hours", "7,5", "6,25")));

    [Fact]
    public void Time_OfATimeSheet_IsItsHours()
    {
        ImportPlan plan = Sheet("Time", "7:30-12", "1-3:15");

        Assert.Equal("labor", plan.Table);
        Assert.Equal(["2025-06-02 Ada 4.5 harvest", "2025-06-03 Ada 2.25 harvest"], Drafted.Rows(plan));
    }

    [Theory]
    [InlineData("7:30", "4:00", "8.5")]
    [InlineData("7", "3:30", "8.5")]
    [InlineData("7am", "3pm", "8")]
    [InlineData("10:00", "14:00", "4")]
    public void StartAndEnd_OnAClockOfTwelve_RunIntoTheAfternoon(string start, string end, string hours)
    {
        string rows = $"2025-06-02,Ada,{start},{end},harvest\n2025-06-03,Ada,8,12,harvest\n";
        ImportPlan plan = Drafted.PlanText("hours.csv", "Date,Who,Start,End,What\n" + rows, null);

        Assert.Equal([$"2025-06-02 Ada {hours} harvest", "2025-06-03 Ada 4 harvest"], Drafted.Rows(plan));
    }

    [Theory]
    [InlineData("07:30", "04:00")]
    [InlineData("15:30", "7:30")]
    [InlineData("7:30 PM", "4:00 PM")]
    public void StartAndEnd_OfAClockOfTwentyFour_DontRunBack(string start, string end) =>
        Assert.Empty(Drafted.PlanText("hours.csv", $"Date,Who,Start,End,What\n6/15/2025,Ada,{start},{end},harvest\n", null).Rows);

    private static ImportPlan Sheet(string heading, string first, string second) => Drafted.PlanText("hours.csv",
        $"Date,Who,{heading},What\n2025-06-02,Ada,\"{first}\",harvest\n2025-06-03,Ada,\"{second}\",harvest\n", null);
}
