namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>A part moved by hand while its lamps are watched.</summary>
public class WiggleTests
{
    private const string Twin = "valley-twin";
    private const string Parked = "ignition=on; lights=park; dip=low";
    private static readonly Bike s_twin = DemoBikes.Load(Twin);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public void Lamps_that_flicker_make_the_moved_joint_likelier_and_steady_ones_less_likely()
    {
        double before = Of(null),
            flickers = Of(Brightness.Dim),
            steady = Of(Brightness.Normal);
        Assert.True(flickers > 2 * before, $"{before:F3} {flickers:F3}");
        Assert.True(steady < before, $"{before:F3} {steady:F3}");

        static double Of(Brightness? seen) =>
            DemoBikes
                .Finder(Twin)
                .Diagnose(
                    [
                        ReadingOf.Seen(Parked, "tail lamp", Brightness.Dim),
                        .. seen is { } look
                            ? [ReadingOf.Seen(Parked, "tail wire", look, Instrument.Wiggle)]
                            : Array.Empty<Reading>(),
                    ],
                    Cancellation
                )
                .Ranked.Where(g => g.Best.Faults is [{ Part: "tail wire" }])
                .Sum(g => g.Probability);
    }

    // It may flicker or not: two faults that only this tells apart stay one group.
    [Fact]
    public void Moving_a_part_tells_no_group_apart()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        Diagnosis diagnosis = finder.Diagnose(
            [
                ReadingOf.Meter("ignition=on; dip=low; indicators=right", "indicator in", 0),
                ReadingOf.Meter("ignition=on; dip=low; indicators=right", "ignition out", 12.4),
                ReadingOf.Meter("ignition=on; dip=low; indicators=left", "indicator in", 0),
            ],
            Cancellation
        );
        Assert.Contains(finder.Tests, t => t.Instrument == Instrument.Wiggle);
        Assert.Contains(
            diagnosis.Ranked[0].Alternatives,
            a => a.Faults is [{ Kind: FaultKind.FlasherDead }]
        );
        Assert.Contains(
            diagnosis.Ranked[0].Alternatives,
            a => a.Faults is [{ Kind: FaultKind.HighResistanceJoint, Part: "flasher feed" }]
        );
    }

    [Theory]
    [InlineData(
        "ignition=on; lights=park: wiggle tail wire flickers",
        "flickers while tail wire is moved",
        Brightness.Dim
    )]
    [InlineData("lights=park: wiggle lights steady", "steady while lights is moved", Brightness.Normal)]
    [InlineData(
        "lights=park: wiggle holder of the tail lamp and stop lamp flickering",
        "flickers while holder of the tail lamp and stop lamp is moved",
        Brightness.Dim
    )]
    public void It_is_said_on_the_line(string text, string said, Brightness seen)
    {
        Reading reading = Assert.Single(ReadingText.Read(s_twin, text).Readings);
        Assert.Equal((Instrument.Wiggle, seen), (reading.Instrument, reading.Seen));
        Assert.Equal(said, FaultWords.Of(reading));
        Assert.Empty(DemoBikes.Finder(Twin).Diagnose([reading], Cancellation).Findings);
        ListResult<BikeLists> back = ReadingOf.ReadBack(s_twin, reading);
        Assert.Empty(back.Faults);
        Assert.Equal([reading], back.Value.Readings);
    }

    [Theory]
    [InlineData("lights=park: wiggle tail lamp flickers", "is a lamp: move its holder")]
    [InlineData("lights=main: wiggle lights flickers", "has several contacts")]
    [InlineData("lights=park: wiggle tail wir flickers", "did you mean 'tail wire'?")]
    public void What_cannot_be_moved_is_refused(string text, string said)
    {
        Reading reading = Assert.Single(ReadingText.Read(s_twin, text).Readings);
        Finding finding = Assert.Single(DemoBikes.Finder(Twin).Diagnose([reading], Cancellation).Findings);
        Assert.Contains(said, finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("steady", Brightness.Normal)]
    [InlineData("Flickers", Brightness.Dim)]
    [InlineData("no change", Brightness.Normal)]
    public void It_is_answered_in_words(string answer, Brightness seen)
    {
        Reading row = ReadingOf.Seen(Parked, "tail wire", Brightness.Bright, Instrument.Wiggle);
        Assert.Equal(seen, ReadingText.Answered(row, answer)?.Seen);
        Assert.Null(ReadingText.Answered(row, "12.4"));
    }
}
