using UnitsNet;

namespace Lighting.Calc.Tests.FaultFinding;

public class ReadingTextTests
{
    private static readonly Bike s_twin = DemoBikes.Load("valley-twin");

    [Theory]
    [InlineData("ignition=on; lights=main: tail feed 11.9 V", Instrument.Meter, "tail feed", null)]
    [InlineData("ignition=on: ignition in to ignition out 80 mV", Instrument.Meter, "ignition in", "ignition out")]
    [InlineData("ignition=on: main 5.4 A", Instrument.Ammeter, "main", null)]
    [InlineData("rear earth 0.3 ohm", Instrument.Ohmmeter, "rear earth", null)]
    [InlineData("fuse out to frame OL", Instrument.Ohmmeter, "fuse out", "frame")]
    [InlineData("ignition=on: test lamp at coil feed lit", Instrument.TestLamp, "coil feed", null)]
    [InlineData("ignition=on; brake=on: brake light weak", Instrument.Visual, "stop lamp", null)]
    public void A_reading_in_words_names_instrument_and_points(
        string text,
        Instrument instrument,
        string point,
        string? to
    )
    {
        ReadingText read = ReadingText.Read(s_twin, text);
        Assert.Empty(read.Findings);
        Reading reading = Assert.Single(read.Readings);
        Assert.Equal((instrument, point, to), (reading.Instrument, reading.Point, reading.To));
    }

    [Fact]
    public void Its_value_is_read_with_its_unit()
    {
        Reading Of(string text) => Assert.Single(ReadingText.Read(s_twin, text).Readings);
        Assert.Equal(0.08, Of("ignition=on: ignition in to ignition out 80 mV").Voltage!.Value.Volts, 1e-12);
        Assert.Equal(ElectricResistance.FromOhms(0.3), Of("rear earth 0.3 ohm").Resistance);
        Assert.True(Of("fuse out to frame OL").IsOpen);
        Assert.Equal("ignition=on", Of("ignition=on: main 5.4 A").When.ToString());
    }

    [Fact]
    public void A_text_that_is_no_reading_says_what_was_expected()
    {
        Finding wrong = Assert.Single(ReadingText.Read(s_twin, "tail feed about twelve").Findings);
        Assert.Contains("expected for example 'tail feed 11.9 V'", wrong.Message, StringComparison.Ordinal);
        Assert.Contains(
            "not a setting",
            ReadingText.Read(s_twin, "night: tail feed 12 V").Findings[0].Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Points_that_the_bike_lacks_are_reported_by_the_diagnosis()
    {
        Reading reading = Assert.Single(ReadingText.Read(s_twin, "ignition=on: tail fed 12 V").Readings);
        Diagnosis diagnosis = DemoBikes
            .Finder("valley-twin")
            .Diagnose([reading], TestContext.Current.CancellationToken);
        Assert.Contains(
            "did you mean 'tail feed'?",
            Assert.Single(diagnosis.Findings).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Second_points_jumpers_and_skipped_tests_are_written_and_read_back()
    {
        Reading[] readings =
        [
            ReadingOf.Meter("ignition=on", "ignition in", 0.08) with { To = "ignition out" },
            ReadingOf.Seen("ignition=on", "tail lamp", Brightness.Normal) with
            {
                Jumper = new JumperLead("battery +", "tail feed"),
            },
            ReadingOf.Seen("", "tail lamp", Brightness.Dark, Instrument.Bench),
            new Reading
            {
                When = Condition.Always,
                Point = "main",
                Instrument = Instrument.TestLamp,
                IsSkipped = true,
            },
        ];
        string text = BikeListsWriter.Write(readings);
        ListResult<BikeLists> back = new BikeLists { Bike = s_twin }.WithReadings(
            ListSource.Empty.With("readings.csv", text)
        );
        Assert.Equal(readings, back.Value.Readings);
    }

    [Theory]
    [InlineData(",tail lamp,bench,dark,,battery + to tail feed", "goes with a live reading")]
    [InlineData(",tail feed,meter,12,,battery + to tail fed", "does not name two points of the bike")]
    [InlineData(",main,ammeter,2,frame,", "goes with a meter or an ohmmeter")]
    [InlineData(",tail feed,meter,2,frme,", "did you mean 'frame'?")]
    public void Second_points_and_jumpers_that_cannot_be_are_refused(string row, string said)
    {
        ListResult<BikeLists> read = new BikeLists { Bike = s_twin }.WithReadings(
            ListSource.Empty.With("readings.csv", $"when,point,instrument,reading,to,jumper\n{row}\n")
        );
        Assert.Contains(read.Faults, f => f.ToString().Contains(said, StringComparison.Ordinal));
    }
}
