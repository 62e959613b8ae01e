using Lighting.Calc.Tests.Lists;

namespace Lighting.Calc.Tests.Published;

/// <summary>The letter codes of IEC 60757, as printed in GOST 28763-90 (IEC 757-83), and the rule of IEC 60757:2021,
/// 5.1, by which two are joined.</summary>
public class WireColourTests
{
    [Theory]
    [InlineData("BK", "black")]
    [InlineData("BN", "brown")]
    [InlineData("RD", "red")]
    [InlineData("OG", "orange")]
    [InlineData("YE", "yellow")]
    [InlineData("GN", "green")]
    [InlineData("BU", "blue")]
    [InlineData("VT", "violet")]
    [InlineData("GY", "grey")]
    [InlineData("WH", "white")]
    [InlineData("PK", "pink")]
    [InlineData("GD", "gold")]
    [InlineData("TQ", "turquoise")]
    [InlineData("SR", "silver")]
    public void IEC_60757_table_1(string printedCode, string printedColour)
    {
        Assert.True(WireColour.TryFind(printedCode, out WireColour? colour));
        Assert.Equal((printedCode, printedColour), (colour.Code, colour.Description));
    }

    // IEC 60757:2021, 5.1: in the sequence of the table, red and blue being RDBU; green and yellow is GNYE.
    [Theory]
    [InlineData("RDBU", "red and blue")]
    [InlineData("GNYE", "green and yellow")]
    public void IEC_60757_2021_5_1_printed_pairs(string printedCode, string colours)
    {
        Assert.True(WireColour.TryFind(printedCode.ToLowerInvariant(), out WireColour? colour));
        Assert.Equal((printedCode, colours), (colour.Code, colour.Description));
    }

    [Theory]
    [InlineData("BURD")]
    [InlineData("YEGN")]
    [InlineData("RDRD")]
    [InlineData("RDBUWH")]
    [InlineData("")]
    [InlineData(null)]
    public void IEC_60757_2021_5_1_nothing_else_is_a_code(string? text) =>
        Assert.False(WireColour.TryFind(text, out _));

    [Fact]
    public void A_list_gives_a_run_its_colour_and_gets_it_back()
    {
        BikeLists lists = BikeLists.Read(ListSamples.Whole).Value;
        Assert.Equal([null, "RDBU", "BK"], lists.Bike.Runs.Select(r => r.Colour?.Code));
        Assert.Contains(",4,,RDBU,,,\n", BikeListsWriter.Write(lists)["runs.csv"], StringComparison.Ordinal);
    }
}
