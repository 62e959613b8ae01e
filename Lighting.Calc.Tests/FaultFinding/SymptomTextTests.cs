namespace Lighting.Calc.Tests.FaultFinding;

public class SymptomTextTests
{
    private static readonly Bike s_twin = DemoBikes.Load("valley-twin");

    [Fact]
    public void A_riders_words_become_readings_of_the_eye()
    {
        SymptomText symptoms = SymptomText.Parse(s_twin, "tail dark, headlamp good");
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
        SymptomText symptoms = SymptomText.Parse(
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
        SymptomText symptoms = SymptomText.Parse(
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
        Assert.Single(SymptomText.Parse(s_twin, " ").Findings);
        Assert.Contains(
            "not a setting",
            SymptomText.Parse(s_twin, "night: tail lamp dark").Findings[0].Message,
            StringComparison.Ordinal
        );
    }
}
