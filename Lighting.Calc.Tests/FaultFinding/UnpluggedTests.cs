namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>A connector pulled apart, or a lamp taken out, while a reading is taken.</summary>
public class UnpluggedTests
{
    private const string Twin = "valley-twin";
    private static readonly Bike s_twin = DemoBikes.Load(Twin);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    // Parallel resistances, 1/R = Σ 1/Rᵢ: 6 Ω, 12 Ω and a leak of 4 Ω are 2 Ω; without the lamp of 6 Ω 3 Ω, without
    // the wire to that of 12 Ω 2.4 Ω; without the wire that leads to all of them nothing is joined.
    [Theory]
    [InlineData(null, 2)]
    [InlineData("large", 3)]
    [InlineData("small wire", 2.4)]
    [InlineData("feed wire", double.PositiveInfinity)]
    public void What_is_unplugged_leaves_the_other_resistances_in_parallel(string? unplugged, double ohms)
    {
        FaultModel model = new FaultFinder(TwoResistors(), cancellationToken: Cancellation).Model;
        FaultCircuit circuit = model.Circuit;
        FaultFamily leak = model.Families.Single(f => f.Kind == FaultKind.LeakToFrame && f.PartName == "large feed");
        var test = new TestPlace(
            model.AllOff,
            Instrument.Ohmmeter,
            circuit.NodeOf("fuse out"),
            circuit.FrameNode,
            Unplugged: circuit.MeasuredParts.ToList().FindIndex(p => p.Name == unplugged)
        );
        double shown = new ColdNetwork(circuit)
            .Set(model.AllOff, new FaultMember(leak, leak.Cases[0] with { Ohms = 4 }), null, test)
            .Between(test.Index, test.To);
        Assert.Equal(ohms, shown, 0.002);
    }

    [Fact]
    public void A_bulb_comes_out_with_both_filaments()
    {
        FaultModel model = DemoBikes.Finder(Twin).Model;
        FaultCircuit circuit = model.Circuit;
        Setting low = new(model.AllOff.Positions.Select(p => p.Switch == "dip" ? p with { Position = "low" } : p));
        double At(string point, string unplugged)
        {
            var test = new TestPlace(
                low,
                Instrument.Ohmmeter,
                circuit.NodeOf(point),
                circuit.FrameNode,
                Unplugged: circuit.MeasuredParts.ToList().FindIndex(p => p.Name == unplugged)
            );
            return new ColdNetwork(circuit)
                .Set(low, model.Members[0], null, test)
                .Between(test.Index, test.To);
        }

        Assert.Equal(double.PositiveInfinity, At("headlamp low feed", "headlamp low"));
        Assert.Equal(double.PositiveInfinity, At("headlamp low feed", "headlamp high"));
        Assert.InRange(At("headlamp low feed", "tail lamp"), 0.1, 1);
    }

    // A live reading: the lamp behind the wire is without voltage, the point before it keeps it.
    [Fact]
    public void A_live_reading_is_of_the_circuit_with_the_wire_open()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        Reading[] readings =
        [
            ReadingOf.Meter("ignition=on; lights=main; dip=low", "tail feed", 0) with { Unplugged = "tail wire" },
            ReadingOf.Seen("ignition=on; lights=main; dip=low", "tail lamp", Brightness.Dark) with
            {
                Unplugged = "tail wire",
            },
        ];
        Assert.True(finder.Diagnose(readings, Cancellation).Ranked[0].Conflicting.IsEmpty);
        Diagnosis together = finder.Diagnose(readings.Select(r => r with { Unplugged = null }), Cancellation);
        Assert.DoesNotContain(together.Ranked, g => g.IsNothing && g.Probability > 0.05);
    }

    // A cold headlamp of a third of an ohm hides a short: with it taken out, the short is found in fewer tests than
    // where nobody would take a lamp out.
    [Fact]
    public void A_short_before_a_bright_headlamp_is_found_in_fewer_tests()
    {
        BenchmarkRun run = Find(s => s),
            without = Find(s => s.Test == "unplugged" ? s with { Cost = 1e6 } : s);
        Assert.True(run.Found, run.Last.Summary);
        Assert.Contains(run.Last.Used, r => r.Unplugged is not null && r.Instrument == Instrument.Ohmmeter);
        Assert.True(run.Tests <= 8 && run.Tests < without.Tests, $"{run.Tests} tests, {without.Tests} without");

        static BenchmarkRun Find(Func<TestCost, TestCost> cost)
        {
            var finder = new FaultFinder(
                s_twin,
                new FaultFindingOptions { TestCosts = [.. FaultFindingOptions.PublishedTestCosts.Select(cost)] },
                Cancellation
            );
            FaultFamily family = finder.Model.Families.Single(f =>
                f.Kind == FaultKind.ShortToFrame && f.PartName == "main beam line"
            );
            return new FaultBenchmark(finder, seed: 20).Run(
                new FaultMember(family, family.Cases[0]),
                FaultBenchmark.Complaint
            );
        }
    }

    // Without a connector apart the ohmmeter shows a short anywhere on the wires that meet at 'ignition out' alike.
    [Fact]
    public void Of_wires_that_meet_the_one_that_is_shorted_is_named()
    {
        FaultFinder finder = DemoBikes.FewestTests(Twin);
        FaultFamily family = finder.Model.Families.Single(f =>
            f.Kind == FaultKind.ShortToFrame && f.PartName == "brake in"
        );
        BenchmarkRun run = new FaultBenchmark(finder, seed: 20).Run(
            new FaultMember(family, family.Cases[0]),
            FaultBenchmark.Complaint
        );
        FaultExplanation only = Assert.Single(run.Last.Ranked[0].Alternatives);
        Assert.Equal((FaultKind.ShortToFrame, "brake in"), (only.Faults[0].Kind, only.Faults[0].Part));
        Assert.Contains(run.Last.Used, r => finder.Bike.Runs.Any(w => w.Name == r.Unplugged));
    }

    // A connector is pulled apart only where the frame may be touched.
    [Fact]
    public void Nothing_is_unplugged_where_no_short_and_no_leak_is_likely()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        Reading[] dark = [ReadingOf.Seen("ignition=on; lights=main; dip=low", "tail lamp", Brightness.Dark)];
        Assert.Null(finder.Diagnose(dark, Cancellation).Next!.Unplugged);
        Assert.Contains(finder.Tests, t => t.IsUnplugged);
        Assert.All(
            finder.Tests.Where(t => t.IsToFrameUnplugged),
            t => Assert.Equal((Instrument.Ohmmeter, finder.Model.Circuit.FrameNode), (t.Instrument, t.To))
        );
    }

    [Fact]
    public void It_is_written_read_back_and_said()
    {
        Reading said = Assert.Single(
            ReadingText.Read(s_twin, "fuse out to frame 0.3 ohm with tail wire unplugged").Readings
        );
        Assert.Equal(("fuse out", "frame", "tail wire"), (said.Point, said.To, said.Unplugged));
        Assert.Equal("0.3 Ω from fuse out to frame with tail wire unplugged", FaultWords.Of(said));
        ListResult<BikeLists> back = ReadingOf.ReadBack(s_twin, said);
        Assert.Empty(back.Faults);
        Assert.Equal([said], back.Value.Readings);
    }

    [Theory]
    [InlineData(",fuse out,ohmmeter,2,frame,tail wir", "or 'every lamp'; did you mean 'tail wire'?")]
    [InlineData(",tail lamp,bench,dark,,tail wire", "goes with a reading on the harness")]
    [InlineData(",every lamp,visual,good,,tail wire", "goes with a reading on the harness")]
    public void What_cannot_be_unplugged_is_refused_in_the_list(string row, string said) =>
        Assert.Contains(
            Read($"when,point,instrument,reading,to,unplugged\n{row}\n").Faults,
            f => f.ToString().Contains(said, StringComparison.Ordinal)
        );

    [Theory]
    [InlineData("fuse out to frame 2 ohm with tail wir unplugged", "did you mean 'tail wire'?")]
    [InlineData("tail wire 2 ohm with tail wire unplugged", "is itself unplugged")]
    public void What_cannot_be_unplugged_is_refused_by_the_diagnosis(string text, string said)
    {
        Reading reading = Assert.Single(ReadingText.Read(s_twin, text).Readings);
        Finding wrong = Assert.Single(DemoBikes.Finder(Twin).Diagnose([reading], Cancellation).Findings);
        Assert.Contains(said, wrong.Message, StringComparison.Ordinal);
    }

    private static ListResult<BikeLists> Read(string text) =>
        new BikeLists { Bike = s_twin }.WithReadings(ListSource.Empty.With("readings.csv", text));

    private static Bike TwoResistors() =>
        BikeLists
            .Read(
                ListSource
                    .Empty.With(
                        "lamps.csv",
                        "circuit,lamp,type,volts,watts,lit when,feed,return\n"
                            + "a,large,resistor,12,24,,large feed,battery -\n"
                            + "b,small,resistor,12,12,,small feed,battery -\n"
                    )
                    .With(
                        "runs.csv",
                        "run,from,to,wire,length\n"
                            + "battery wire,battery +,fuse in,2.5 mm2,0.01\n"
                            + "feed wire,fuse out,large feed,2.5 mm2,0.01\n"
                            + "small wire,large feed,small feed,2.5 mm2,0.01\n"
                            + "frame wire,frame,battery -,2.5 mm2,0.01\n"
                    )
                    .With("fuses.csv", "fuse,from,to,rating\nmain,fuse in,fuse out,15\n")
                    .With("bike.csv", "item,value\nsystem voltage,12 V\n")
            )
            .Value.Bike;
}
