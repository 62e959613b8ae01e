namespace Lighting.Calc.Tests.FaultFinding;

public class SymptomTextTests
{
    private static readonly Bike s_twin = DemoBikes.Load("valley-twin");

    [Fact]
    public void A_riders_words_become_readings_of_the_eye()
    {
        SymptomText symptoms = SymptomText.Read(s_twin, "tail dark, headlamp low good");
        Assert.Empty(symptoms.Findings);
        Assert.Equal(
            [("tail lamp", Brightness.Dark), ("headlamp low", Brightness.Normal)],
            symptoms.Readings.Select(r => (r.Point, r.Seen!.Value))
        );
        Assert.All(symptoms.Readings, r => Assert.Equal(Instrument.Visual, r.Instrument));
        Assert.Equal("ignition=on; lights=park; dip=low", symptoms.Readings[0].When.ToString());
        Assert.Equal("ignition=on; lights=main; dip=low", symptoms.Readings[1].When.ToString());
        Assert.Equal(
            2,
            DemoBikes
                .Finder("valley-twin")
                .Diagnose(symptoms.Readings, TestContext.Current.CancellationToken)
                .Used.Length
        );
    }

    [Fact]
    public void A_setting_before_a_colon_holds_for_all_that_follows()
    {
        SymptomText symptoms = SymptomText.Read(
            s_twin,
            "ignition=on; lights=main; dip=high: headlamp dim, stop lamp dark"
        );
        Assert.Empty(symptoms.Findings);
        Assert.Equal(["headlamp high", "stop lamp"], symptoms.Readings.Select(r => r.Point));
        Assert.All(symptoms.Readings, r => Assert.Equal("ignition=on; lights=main; dip=high", r.When.ToString()));
    }

    [Fact]
    public void What_cannot_be_understood_is_said_all_at_once()
    {
        SymptomText symptoms = SymptomText.Read(
            s_twin,
            "stpo lamp dark, tail lamp yellow, winker dark, tail lamp dim"
        );
        Assert.Equal("tail lamp", Assert.Single(symptoms.Readings).Point);
        Assert.Collection(
            symptoms.Findings,
            f => Assert.Equal("The bike has no lamp 'stpo lamp'; did you mean 'stop lamp'?", f.Message),
            f => Assert.Contains("expected dark, dim, good or bright", f.Message, StringComparison.Ordinal),
            f => Assert.Contains("the lamps are headlamp low", f.Message, StringComparison.Ordinal)
        );
        Assert.Single(SymptomText.Read(s_twin, " ").Findings);
        Assert.Contains(
            "not a setting",
            SymptomText.Read(s_twin, "night: tail lamp dark").Findings[0].Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("brake light not working", "stop lamp", Brightness.Dark)]
    [InlineData("tail light weak", "tail lamp", Brightness.Dim)]
    [InlineData("the tail lamp flickers", "tail lamp", Brightness.Dim)]
    [InlineData("tail lamp is out", "tail lamp", Brightness.Dark)]
    [InlineData("speedometer lamp works", "speedometer lamp", Brightness.Normal)]
    [InlineData("ignition=on; indicators=left: turn signals dead", "left indicators", Brightness.Dark)]
    [InlineData("ignition=on; lights=main; dip=low: headlight dim", "headlamp low", Brightness.Dim)]
    public void Peoples_words_are_those_of_the_lists(string text, string lamp, Brightness seen)
    {
        SymptomText symptoms = SymptomText.Read(s_twin, text);
        Assert.Empty(symptoms.Findings);
        Assert.Equal((lamp, seen), symptoms.Readings.Select(r => (r.Point, r.Seen!.Value)).Single());
    }

    [Theory]
    [InlineData("headlight dark", "'headlight' may be headlamp low or headlamp high: which one?")]
    [InlineData("turn signals out", "'turn signals' may be left indicators or right indicators: which one?")]
    public void A_word_that_fits_several_lamps_asks(string text, string asked)
    {
        SymptomText symptoms = SymptomText.Read(s_twin, text);
        Assert.Empty(symptoms.Readings);
        Assert.Equal(asked, Assert.Single(symptoms.Findings).Message);
    }

    [Fact]
    public void Nothing_works_is_every_lamp_dark_where_it_should_be_lit()
    {
        SymptomText symptoms = SymptomText.Read(s_twin, "nothing works");
        Assert.Equal(9, symptoms.Readings.Length);
        Assert.All(symptoms.Readings, r => Assert.Equal(Brightness.Dark, r.Seen));
        Assert.All(symptoms.Readings, r => Assert.NotEmpty(r.When.Terms));
    }
}
