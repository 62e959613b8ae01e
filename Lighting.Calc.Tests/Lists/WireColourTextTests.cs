namespace Lighting.Calc.Tests.Lists;

/// <summary>Colours of wires as people write them.</summary>
public class WireColourTextTests
{
    // The base stands before the tracer: the order tells two wires apart.
    [Theory]
    [InlineData("GN/RD", "GN/RD", "green with red tracer", "GN", "RD")]
    [InlineData("rd/gn", "RD/GN", "red with green tracer", "RD", "GN")]
    [InlineData("green/red", "GN/RD", "green with red tracer", "GN", "RD")]
    [InlineData("Red with Green tracer", "RD/GN", "red with green tracer", "RD", "GN")]
    [InlineData("white red", "WH/RD", "white with red tracer", "WH", "RD")]
    [InlineData("WH-RD", "WH/RD", "white with red tracer", "WH", "RD")]
    [InlineData("black", "BK", "black", "BK", null)]
    [InlineData("Gray", "GY", "grey", "GY", null)]
    [InlineData("purple", "VT", "violet", "VT", null)]
    [InlineData("blue and red", "RDBU", "red and blue", null, null)]
    [InlineData("yellow and green", "GNYE", "green and yellow", null, null)]
    [InlineData("GN/YE", "GN/YE", "green with yellow tracer", "GN", "YE")]
    public void Base_and_tracer_are_kept_apart(string text, string code, string words, string? @base, string? tracer)
    {
        Assert.True(WireColour.TryFind(text, out WireColour? colour));
        Assert.Equal((code, words, @base, tracer), (colour.Code, colour.Description, colour.Base, colour.Tracer));
        Assert.True(WireColour.TryFind(colour.Code, out WireColour? again));
        Assert.Same(colour, again);
    }
}
