using UnitsNet;

namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>Parts measured by themselves: a lamp or a fuse that is out, a lamp holder, the whole live side with every
/// lamp out, the voltage dropped from the battery, and the current in the battery's lead.</summary>
public class PartAloneTests
{
    private const string Twin = "valley-twin";
    private static readonly Bike s_twin = DemoBikes.Load(Twin);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    // A cold filament has a 12.5th of its hot resistance, here 13.5 V over its current: the lamps beside it do not
    // matter, nor does the wire that is open.
    [Fact]
    public void A_lamp_by_itself_is_its_cold_filament()
    {
        FaultModel model = DemoBikes.Finder(Twin).Model;
        int lamp = s_twin.Lamps.ToList().FindIndex(l => l.Lamp == "tail lamp");
        LampSpecification tail = s_twin.Lamps[lamp].Specification;
        double cold = (tail.ReferenceVoltage / tail.ReferenceCurrent).Ohms / FilamentLaw.HotToColdRatio;
        var test = new TestPlace(model.AllOff, Instrument.Ohmmeter, lamp, Unplugged: lamp);
        FaultMember open = Member(model, FaultKind.HighResistanceJoint, "tail wire", f => f.Cases[^1]),
            dead = Member(model, FaultKind.LampDead, "tail lamp", f => f.Cases[0]);
        Assert.Equal(cold, Ohms(model, open, test), cold * 1e-6);
        Assert.Equal(double.PositiveInfinity, Ohms(model, dead, test));
    }

    [Fact]
    public void Its_own_resistance_tells_a_lamp_of_another_power()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        FaultMember wrong = Member(finder.Model, FaultKind.WrongLamp, "tail lamp", f => f.Cases.MaxBy(Watts)!);
        double leads = finder.Model.Circuit.Options.OhmmeterLeads.Ohms;
        double listed = ColdNetwork.ColdOhms(s_twin.Lamps.Single(l => l.Lamp == "tail lamp").Specification, 1)!.Value;
        double before = Of([]),
            right = Of([Alone("tail lamp", listed + leads)]),
            other = Of([Alone("tail lamp", ColdNetwork.ColdOhms(wrong.Case.Lamp!, 1)!.Value + leads)]);
        Assert.True(other > 5 * before && right < before / 2, $"{before:F3} {right:F3} {other:F3}");

        double Of(Reading[] readings) =>
            finder
                .Diagnose(
                    [ReadingOf.Seen("ignition=on; lights=park; dip=low", "tail lamp", Brightness.Bright), .. readings],
                    Cancellation
                )
                .Ranked.Where(g => g.Best.Faults is [{ Kind: FaultKind.WrongLamp, Part: "tail lamp" }])
                .Sum(g => g.Probability);

        static double Watts(FaultCase c) => (double)c.Lamp!.ReferencePower.Watts;
    }

    [Fact]
    public void A_fuse_by_itself_is_open_where_it_has_blown_and_not_where_its_holder_is_poor()
    {
        FaultModel model = DemoBikes.Finder(Twin).Model;
        int fuse = model.Parts.ToList().FindIndex(p => p.Name == "main");
        var test = new TestPlace(model.AllOff, Instrument.Ohmmeter, fuse, Unplugged: fuse);
        double own = FuseTable.ResistanceOf(s_twin.Fuses[0]).Ohms;
        Assert.Equal(
            double.PositiveInfinity,
            Ohms(model, Member(model, FaultKind.FuseBlown, "main", f => f.Cases[0]), test)
        );
        Assert.Equal(
            own,
            Ohms(model, Member(model, FaultKind.HighResistanceFuseHolder, "main", f => f.Cases[^1]), test),
            1e-9
        );
    }

    [Fact]
    public void A_blown_fuse_is_all_but_certain_once_it_was_measured()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        Reading[] readings =
        [
            ReadingOf.Seen("ignition=on; lights=main; dip=low", "headlamp low", Brightness.Dark),
            ReadingOf.Meter("ignition=on; dip=low", "fuse in", 12.6),
            ReadingOf.Meter("ignition=on; dip=low", "fuse out", 0),
            Alone("main", null),
        ];
        Assert.StartsWith("The fuse 'main' has blown (over 99 %)", finder.Diagnose(readings, Cancellation).Summary);
    }

    [Theory]
    [InlineData(1.2)]
    [InlineData(double.PositiveInfinity)]
    public void A_holder_is_measured_with_its_lamp_out(double ohms)
    {
        FaultModel model = DemoBikes.Finder(Twin).Model;
        int holder = model.Parts.ToList().FindIndex(p => p.Name == "holder of the tail lamp and stop lamp");
        var test = new TestPlace(
            model.AllOff,
            Instrument.Ohmmeter,
            holder,
            Unplugged: model.Circuit.Holders[model.Parts[holder].Holder].Lamps[0]
        );
        FaultMember poor = Member(
            model,
            FaultKind.HighResistanceLampHolder,
            "tail lamp and stop lamp",
            f => f.Cases[0] with { Ohms = ohms }
        );
        Assert.Equal(ohms, Ohms(model, poor, test), 1e-6);
        Assert.Equal(0, Ohms(model, model.Members[0], test));
    }

    // With every lamp out nothing but the leak joins the live side to the frame; the ignition, no lamp, stays in.
    [Fact]
    public void With_every_lamp_out_a_leak_is_alone()
    {
        FaultModel model = DemoBikes.Finder("fell-lightweight").Model;
        FaultMember leak = Member(model, FaultKind.LeakToFrame, "low feed", f => f.Cases[0] with { Ohms = 36 });
        Setting low = model.Cover.Single(s => s.PositionOf("lights") == "on" && s.PositionOf("dip") == "low");
        var test = new TestPlace(
            low,
            Instrument.Ohmmeter,
            model.Circuit.Graph.Live,
            model.Circuit.FrameNode,
            Unplugged: TestPlace.EveryLampOut
        );
        Assert.Contains(test, DemoBikes.Finder("fell-lightweight").Tests);
        Assert.InRange(Ohms(model, leak, test), 36, 36.2);
        Assert.Equal(double.PositiveInfinity, Ohms(model, model.Members[0], test));
    }

    // Behind a blown fuse the point floats: a meter of 10 MΩ from the battery shows its leak alone, of 12.65 V as of
    // 13.3 V some hundredths.
    [Fact]
    public void The_voltage_from_the_battery_to_a_floating_point_hardly_follows_the_battery()
    {
        FaultModel model = DemoBikes.Finder(Twin).Model;
        FaultMember shorted = Member(model, FaultKind.ShortToFrame, "high line", f => f.Cases[0]);
        var test = new TestPlace(model.AllOff, Instrument.Meter, HarnessGraph.Plus, model.Circuit.NodeOf("fuse out"));
        Prediction predicted = model.Of(test, Cancellation).At(model.Members.IndexOf(shorted));
        Assert.InRange(predicted.Value, 0.01, 0.1);
        Assert.InRange(predicted.Battery, 0, 1.01 * predicted.Value);
    }

    // 12.65 V over 4.5 Ω is 2.8 A before any fuse, which no ammeter in a fuse's place shows.
    [Fact]
    public void A_leak_before_the_fuse_is_found_in_the_lead_of_the_battery()
    {
        FaultFinder finder = DemoBikes.Finder(Twin);
        Assert.Contains(finder.Tests, t => finder.Model.Circuit.IsInBatteryLead(t));
        Reading[] readings =
        [
            Drain(BenchPoints.BatteryLead, 2.79),
            Drain("main", 0),
            new Reading
            {
                When = Condition.Always,
                Point = "fuse in",
                To = "frame",
                Instrument = Instrument.Ohmmeter,
                Resistance = ElectricResistance.FromOhms(4.7),
            },
        ];
        FaultGroup first = finder.Diagnose(readings, Cancellation).Ranked[0];
        Assert.Contains(first.Alternatives, a => a.Faults is [{ Kind: FaultKind.LeakToFrame, Part: "battery +" }]);

        static Reading Drain(string point, double amperes) =>
            new()
            {
                When = Condition.Always,
                Point = point,
                Instrument = Instrument.Ammeter,
                Current = ElectricCurrent.FromAmperes(amperes),
            };
    }

    [Theory]
    [InlineData("tail lamp 2.1 ohm with tail lamp unplugged", "2.1 Ω across tail lamp by itself")]
    [InlineData("main OL with main unplugged", "no connection across main by itself")]
    [InlineData(
        "battery + to frame OL with every lamp unplugged",
        "no connection from battery + to frame with every lamp unplugged"
    )]
    [InlineData("holder of the tail lamp and stop lamp 0.2 ohm", "0.2 Ω across holder of the tail lamp and stop lamp")]
    public void Such_readings_are_said_written_and_read_back(string text, string said)
    {
        Reading reading = Assert.Single(ReadingText.Read(s_twin, text).Readings);
        Assert.Equal(said, FaultWords.Of(reading));
        Assert.Empty(DemoBikes.Finder(Twin).Diagnose([reading], Cancellation).Findings);
        ListResult<BikeLists> back = ReadingOf.ReadBack(s_twin, reading);
        Assert.Empty(back.Faults);
        Assert.Equal([reading], back.Value.Readings);
    }

    private static double Ohms(FaultModel model, FaultMember fault, TestPlace test) =>
        new ColdNetwork(model.Circuit).Set(test.Setting, fault).Ohms(test);

    private static FaultMember Member(
        FaultModel model,
        FaultKind kind,
        string part,
        Func<FaultFamily, FaultCase> severity
    )
    {
        FaultFamily family = model.Families.First(f => f.Kind == kind && f.PartName == part);
        return new FaultMember(family, severity(family));
    }

    private static Reading Alone(string part, double? ohms) =>
        new()
        {
            When = Condition.Always,
            Point = part,
            Instrument = Instrument.Ohmmeter,
            Unplugged = part,
            IsOpen = ohms is null,
            Resistance = ohms is { } r ? ElectricResistance.FromOhms(r) : null,
        };
}
