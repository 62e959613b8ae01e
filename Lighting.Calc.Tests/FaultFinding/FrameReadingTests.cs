using UnitsNet;

namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>On positive earth many read between a point and the frame and leave out the sign.</summary>
public class FrameReadingTests
{
    private static readonly Bike s_single = DemoBikes.Load("chapel-single");

    private static readonly FaultFinder s_finder = new(s_single);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    // The live side is near battery minus: 6.2 V at brake out and none behind the wire fit no fault from there, but an
    // open stop wire from the frame.
    [Fact]
    public void Readings_that_fit_from_the_frame_are_told()
    {
        Diagnosis diagnosis = Diagnose(("brake out", 6.2), ("stop feed", 0));
        Finding told = Assert.Single(diagnosis.Findings, f => f.Kind == FindingKind.ReadingsFromFrame);
        Assert.Contains("'stop wire'", told.Message, StringComparison.Ordinal);
        Assert.Contains("Taken from 'frame'", diagnosis.Summary, StringComparison.Ordinal);
        Diagnosis signed = s_finder.Diagnose(
            [Reading("brake out", -6.2, "frame"), Reading("stop feed", 0, "frame")],
            Cancellation
        );
        Assert.Equal("stop wire", signed.Ranked[0].Best.Faults[0].Part);
    }

    [Fact]
    public void Readings_that_are_explained_as_they_are_say_nothing_of_it() =>
        Assert.DoesNotContain(
            Diagnose(("brake out", 0.1), ("stop feed", 6.2)).Findings,
            f => f.Kind == FindingKind.ReadingsFromFrame
        );

    private static Diagnosis Diagnose(params (string Point, double Volts)[] readings) =>
        s_finder.Diagnose(readings.Select(r => Reading(r.Point, r.Volts)), Cancellation);

    private static Reading Reading(string point, double volts, string? to = null) =>
        new()
        {
            When = Condition.Parse("lights=head; dip=low; brake=on"),
            Point = point,
            To = to,
            Instrument = Instrument.Meter,
            Voltage = ElectricPotential.FromVolts(volts),
        };
}
