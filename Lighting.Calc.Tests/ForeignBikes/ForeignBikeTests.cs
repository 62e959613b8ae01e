using UnitsNet;

namespace Lighting.Calc.Tests.ForeignBikes;

/// <summary>Bikes that nothing was tuned to: loads, limits, wires and shorts as worked out by hand and with an
/// independent solver.</summary>
/// <remarks>
/// Engine running, the charging voltage at the battery's terminals; where a list is silent 14.2 V, 5 mΩ a joint and 10
/// mΩ a contact, and for shorts 20 mΩ in the battery. Wires are held to the fuse alone, before any factor of a bundle.
/// </remarks>
public class ForeignBikeTests
{
    [Theory]
    [InlineData("three-phase", "main", 15.9, 22.5, 28.2, FuseVerdict.TooLargeForTheWire)]
    [InlineData("three-phase", "signals", 0.2, 7.5, 12.7, FuseVerdict.Overloaded)]
    [InlineData("three-phase", "tail", 2.1, 7.5, 2.1, FuseVerdict.Suits)]
    [InlineData("three-phase", "ignition", 3.5, 7.5, 3.5, FuseVerdict.Suits)]
    [InlineData("three-phase", "accessory", 4.4, 7.5, 4.4, FuseVerdict.Suits)]
    [InlineData("old-twin", "Main", 14.67, 11.25, 18.43, FuseVerdict.Overloaded)]
    [InlineData("builder", "main", 6.07, 15, 15.4, FuseVerdict.TooLargeForTheWire)]
    [InlineData("commuter", "main", 6.12, 11.25, 11.65, FuseVerdict.Suits)]
    [InlineData("postal-trike", "Main", 8.79, 18.75, 22.16, FuseVerdict.Suits)]
    [InlineData("postal-trike", "Front", 4.21, 7.5, 4.21, FuseVerdict.Suits)]
    [InlineData("postal-trike", "Rear", 1.58, 11.25, 11.03, FuseVerdict.TooLargeForTheWire)]
    [InlineData("fenland-six", "main", 4.92, 5.625, 6.89, FuseVerdict.TooLargeForTheWire)]
    [InlineData("trail-hack", "main", 5.59, 11.25, 13.35, FuseVerdict.Suits)]
    public void The_continuous_load_is_held_to_75_percent_and_the_peak_to_the_rating(
        string bike,
        string fuse,
        double continuous,
        double usable,
        double peak,
        FuseVerdict verdict
    )
    {
        FuseSuitability judged = Check(bike, fuse);
        Assert.Equal(continuous, judged.Steady.ContinuousCurrent.Amperes, 0.1);
        Assert.Equal(usable, judged.Steady.UsableCurrent.Amperes, 1e-9);
        Assert.Equal(peak, judged.Steady.WorstCurrent.Amperes, 0.1);
        Assert.Equal(judged.ContinuousRating.Amperes, judged.Steady.PeakLimit.Amperes, 1e-9);
        Assert.Equal(verdict, judged.Verdict);
    }

    [Fact]
    public void Without_its_fog_lamps_the_old_twin_suits_its_fuse()
    {
        Bike bike = Read("old-twin");
        FuseSuitability judged = Judge(bike with { Lamps = bike.Lamps.RemoveAll(l => l.Lamp == "Fog lamps") }, "Main");
        Assert.Equal(8.75, judged.Steady.ContinuousCurrent.Amperes, 0.05);
        Assert.Equal(12.6, judged.Steady.WorstCurrent.Amperes, 0.1);
        Assert.Equal(FuseVerdict.Suits, judged.Verdict);
    }

    [Theory]
    [InlineData("three-phase", "main", null, "relay supply|relay out wire|low wire|high wire|headlamp earth")]
    [InlineData(
        "three-phase",
        "main",
        CableKind.ThinWall,
        "relay supply|relay out wire|low wire|high wire|headlamp earth"
    )]
    [InlineData("three-phase", "tail", null, "")]
    [InlineData("three-phase", "tail", CableKind.Ordinary, "tail wire|tail supply")]
    [InlineData("three-phase", "accessory", CableKind.Ordinary, "usb wire")]
    [InlineData("three-phase", "accessory", CableKind.ThinWall, "")]
    [InlineData("old-twin", "Main", null, "")]
    [InlineData("old-twin", "Main", CableKind.ThinWall, "fog|tail|stop|left|right")]
    [InlineData(
        "old-twin",
        "Main",
        CableKind.Ordinary,
        "ignition feed|light feed|high|low|fog|tail|stop|left|right|head earth"
    )]
    [InlineData("builder", "main", null, "*")]
    [InlineData("builder", "main", CableKind.ThinWall, "*")]
    [InlineData("commuter", "main", null, "")]
    [InlineData("postal-trike", "Rear", CableKind.ThinWall, "Board return")]
    [InlineData("postal-trike", "Rear", CableKind.FreeAir, "Board return")]
    [InlineData("postal-trike", "Front", CableKind.ThinWall, "")]
    [InlineData("postal-trike", "Main", CableKind.ThinWall, "")]
    [InlineData("fenland-six", "main", CableKind.Ordinary, "tail wire")]
    [InlineData("fenland-six", "main", CableKind.ThinWall, "")]
    [InlineData("fenland-six", "main", CableKind.FreeAir, "")]
    public void Wires_rated_below_the_fuse_are_one_fault_returns_included(
        string bike,
        string fuse,
        CableKind? cable,
        string runs
    )
    {
        Bike read = Read(bike);
        string[] expected =
            runs == "*" ? [.. read.Runs.Select(r => r.Name)] : runs.Split('|', StringSplitOptions.RemoveEmptyEntries);
        FuseSuitability judged = Judge(read with { Cable = cable }, fuse);
        Finding[] faults = [.. judged.Findings.Where(f => f.Kind == FindingKind.WiresRatedBelowFuse)];
        Assert.True(faults.Length <= 1);
        Assert.Equal(expected.Order(), faults.SelectMany(f => f.Parts).Order());
    }

    [Theory]
    [InlineData("commuter", "main", 18)]
    [InlineData("old-twin", "Main", 10)]
    public void Where_only_the_ordinary_chart_is_too_low_the_kind_of_cable_is_asked_for(
        string bike,
        string fuse,
        int runs
    )
    {
        Finding caution = Check(bike, fuse).Findings.Single(f => f.Kind == FindingKind.CableKindNeeded);
        Assert.Equal(Severity.Caution, caution.Severity);
        Assert.True(caution.Parts.Length >= runs, string.Join('|', caution.Parts));
    }

    [Fact]
    public void Thin_wall_cable_of_three_quarters_of_a_square_is_too_small_for_the_commuter()
    {
        Bike bike = Read("commuter");
        FuseSuitability judged = Judge(bike with { Cable = CableKind.ThinWall }, "main");
        Finding fault = judged.Findings.Single(f => f.Kind == FindingKind.WiresRatedBelowFuse);
        Assert.Equal(14, ((ElectricCurrent)fault.Value!).Amperes, 1e-9);
        Assert.Contains("panel earth wire", fault.Parts);
        Assert.All(fault.Parts, p => Assert.Equal("0.75 mm2", bike.Runs.Single(r => r.Name == p).Wire.Name));
    }

    [Theory]
    [InlineData("three-phase")]
    [InlineData("old-twin")]
    [InlineData("builder")]
    [InlineData("commuter")]
    public void Every_dead_short_opens_its_fuse_before_a_wire_is_too_hot(string bike)
    {
        Bike read = Read(bike);
        foreach (
            FuseSuitability fuse in FuseCheck.Evaluate(
                read,
                Points(read),
                cancellationToken: TestContext.Current.CancellationToken
            )
        )
            Assert.All(fuse.Clearing, c =>
                Assert.True(c.Clears == true && c.LetThroughAmpereSquaredSeconds < c.WithstandAmpereSquaredSeconds)
            );
    }

    // All of its lamps return by the frame, as the short does.
    [Fact]
    public void Dead_shorts_of_the_builders_bike_draw_what_the_loop_leaves()
    {
        ShortCircuitCheck[] shorts = [.. Check("builder", "main").Clearing];
        Assert.Equal(78, shorts.Min(c => c.ProspectiveCurrent!.Value.Amperes), 1.0);
        Assert.Equal(164, shorts.Max(c => c.ProspectiveCurrent!.Value.Amperes), 1.0);
        Assert.Equal(6952, shorts.Max(c => c.LetThroughAmpereSquaredSeconds!.Value), 70.0);
        Assert.All(shorts, c => Assert.Equal(13225, c.WithstandAmpereSquaredSeconds, 1e-6));
    }

    [Fact]
    public void A_peak_just_above_the_rating_suits_a_blade_and_is_stated()
    {
        Bike bike = Read("builder");
        FuseSuitability judged = Judge(
            bike with
            {
                Cable = CableKind.ThinWall,
                Fuses = [bike.Fuses[0] with { Rating = ElectricCurrent.FromAmperes(15) }],
            },
            "main"
        );
        Assert.Equal(FuseVerdict.Suits, judged.Verdict);
        Assert.Equal(100, judged.Steady.PeakHeldFor!.Value.Hours, 1e-9);
        Assert.Contains(judged.Findings, f => f.Kind == FindingKind.FusePeakAboveRating);
    }

    // Its standing lights are behind a series ballast, which is no drop of a wire; the battery's resistance is out of
    // the way.
    [Fact]
    public void The_commuter_suits()
    {
        BikeReport report = BikeCheck.Evaluate(
            Read("commuter"),
            cancellationToken: TestContext.Current.CancellationToken
        );
        Assert.Equal(
            (BikeVerdict.Suits, ""),
            (report.Verdict, string.Join("\n", report.Findings.Where(f => f.Severity == Severity.Fault)))
        );
    }

    // Steady: no momentary switch worked. A lamp that needs one has its worst alone. Hand arithmetic leaves out what
    // flows back through dark stop lamps and indicators, which takes up to 0.03 V off the board's drop.
    [Theory]
    [InlineData("postal-trike", "Headlamp low", 0.31, 0.51)]
    [InlineData("postal-trike", "Headlamp high", 0.34, 0.54)]
    [InlineData("postal-trike", "Pilot lamp", 0.09, 0.30)]
    [InlineData("postal-trike", "Speedometer lamp", 0.25, 0.45)]
    [InlineData("postal-trike", "Tail LED", 0.20, 0.55)]
    [InlineData("postal-trike", "Plate lamp", 0.20, 0.55)]
    [InlineData("postal-trike", "Stop LED", null, 0.79)]
    [InlineData("postal-trike", "Board tail", 0.36, 1.23)]
    [InlineData("postal-trike", "Board plate", 0.36, 1.23)]
    [InlineData("postal-trike", "Board stop", null, 1.60)]
    [InlineData("postal-trike", "Board left", null, 1.49)]
    [InlineData("postal-trike", "Board right", null, 1.49)]
    [InlineData("postal-trike", "Left front", null, 0.64)]
    [InlineData("postal-trike", "Left rear", null, 0.76)]
    [InlineData("postal-trike", "Coil", 0.15, 0.34)]
    [InlineData("postal-trike", "Horn", null, 0.42)]
    [InlineData("fenland-six", "headlamp low", 0.94, 1.00)]
    [InlineData("fenland-six", "headlamp high", 0.94, 1.00)]
    [InlineData("fenland-six", "pilot lamp", 0.08, 0.14)]
    [InlineData("fenland-six", "speedometer lamp", 0.22, 0.27)]
    [InlineData("fenland-six", "tail lamp", 0.26, 0.32)]
    [InlineData("fenland-six", "horn", null, 0.32)]
    public void Lamps_lose_what_hand_arithmetic_gives_steadily_and_for_moments(
        string name,
        string lamp,
        double? steady,
        double worst
    )
    {
        Bike bike = Read(name);
        OperatingPoint[] points = Points(bike);
        int index = bike.Lamps.IndexOf(bike.Lamps.Single(l => l.Lamp == lamp));
        Assert.Equal(worst, points.Max(p => Lost(p) ?? 0), 0.04);
        if (steady is { } volts)
            Assert.Equal(
                volts,
                VoltageDropAnalysis.WorstBreakdowns(bike, points).Single(d => d.Lamp.Lamp.Lamp == lamp).TotalDrop.Volts,
                0.03
            );

        double? Lost(OperatingPoint point) =>
            point.Solved.Graph.IsFed(point.Solved.Graph.Lamps[index], point.Closed)
                ? point.Lamps[index].Drop!.Value.DecimalFractions * point.SupplyVoltage.Volts
                : null;
    }

    [Fact]
    public void The_board_of_the_trike_is_what_does_not_suit()
    {
        BikeReport report = BikeCheck.Evaluate(
            Read("postal-trike"),
            cancellationToken: TestContext.Current.CancellationToken
        );
        Assert.Equal(BikeVerdict.DoesNotSuit, report.Verdict);
        Finding[] faults = [.. report.Findings.Where(f => f.Severity == Severity.Fault)];
        Assert.Equal(
            ["Board left", "Board right", "Board stop"],
            Parts(FindingKind.VoltageDropTooLarge)
        );
        Assert.Equal(["Plate lamp"], Parts(FindingKind.LampFedUnintended));
        FuseSuitability rear = report.Fuses.Single(f => f.Fuse.Name == "Rear");
        Assert.Equal(
            ["Board left wire", "Board right wire", "Board stop wire"],
            rear.Clearing.Where(c => c.Clears == false).Select(c => c.Run.Name).Distinct().Order()
        );
        Assert.All(
            report.Fuses.Where(f => f.Fuse.Name != "Rear"),
            f => Assert.All(f.Clearing, c => Assert.True(c.Clears))
        );
        Assert.Equal(
            ["Board plate", "Board tail"],
            report
                .Findings.Where(f => f.Kind == FindingKind.MomentaryVoltageDrop)
                .SelectMany(f => f.Parts.Prepend(f.Subject))
                .Order()
        );

        string[] Parts(FindingKind kind) =>
            [.. faults.Where(f => f.Kind == kind).SelectMany(f => f.Parts.Prepend(f.Subject)).Order()];
    }

    [Fact]
    public void The_six_volt_single_loses_its_headlamp_and_its_lists_disagree()
    {
        BikeReport report = BikeCheck.Evaluate(
            Read("fenland-six"),
            cancellationToken: TestContext.Current.CancellationToken
        );
        Assert.Equal(BikeVerdict.DoesNotSuit, report.Verdict);
        Finding drop = report.Findings.Single(f => f.Kind == FindingKind.VoltageDropTooLarge);
        Assert.Equal(["headlamp high", "headlamp low"], drop.Parts.Prepend(drop.Subject).Order());
        Assert.Equal(
            ["pilot lamp"],
            report.Findings.Where(f => f.Kind == FindingKind.LampDark).Select(f => f.Subject)
        );
        Assert.Contains(
            report.Findings,
            f => f is { Kind: FindingKind.ShortNotShownToClear, Severity: Severity.Caution }
        );
    }

    // By hand the rows of the list are joined by straight lines, here by a curve.
    [Theory]
    [InlineData("postal-trike", "ignition=on; lights=main; dip=low", 1769)]
    [InlineData("postal-trike", "ignition=on; lights=main; dip=high", 1857)]
    [InlineData("fenland-six", "lights=head; dip=low", 1884)]
    [InlineData("trail-hack", "ignition=on; lights=main; dip=low", 1379)]
    [InlineData("trail-hack", "ignition=on; lights=main; dip=high", 1398)]
    public void The_lights_are_covered_from_a_speed(string name, string when, double rpm)
    {
        Bike bike = Read(name);
        ChargingBalance balance = ChargingSystem
            .Of(bike)
            .BalanceIn(SettingEnumeration.Held(bike, Condition.Parse(when)));
        Assert.Equal(rpm, balance.BreakEven.Speed!.Value.RevolutionsPerMinute, 0.05 * rpm);
    }

    // The battery takes 0.35 A of what is left over, which hand arithmetic left to the regulator.
    [Fact]
    public void The_bulb_list_suits_as_far_as_listed()
    {
        BikeReport report = BikeCheck.Evaluate(
            Read("trail-hack"),
            cancellationToken: TestContext.Current.CancellationToken
        );
        Assert.Equal(BikeVerdict.Suits, report.Verdict);
        Assert.StartsWith(
            "Suits as far as listed. Not listed: wires, voltage drop.",
            report.Headline,
            StringComparison.Ordinal
        );
        Assert.Equal(2.70, report.Charging!.Ride!.NetCharge!.Value.AmpereHours, 0.1);
        Assert.Equal(112 - 0.35 * 14.2, (double)report.Engine!.Regulator!.Worst!.Bus!.RegulatorHeat.Watts, 1.0);
    }

    private static FuseSuitability Check(string bike, string fuse) => Judge(Read(bike), fuse);

    private static FuseSuitability Judge(Bike bike, string fuse) =>
        FuseCheck
            .Evaluate(bike, Points(bike), cancellationToken: TestContext.Current.CancellationToken)
            .Single(f => f.Fuse.Name == fuse);

    // With the engine running the battery's resistance is out of the way.
    private static OperatingPoint[] Points(Bike bike)
    {
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        solver.SetBatteryResistance(ElectricResistance.Zero);
        return [.. SettingEnumeration.Of(bike, Condition.Always).Select(solver.Solve)];
    }

    // What a list leaves out is filled in.
    private static Bike Read(string name)
    {
        Bike bike = BikeLists.Read(Path.Combine("Lighting.Calc.Tests", "ForeignBikes", name)).Value.Bike;
        string[] stated = [.. File.ReadLines(Path.Combine("Lighting.Calc.Tests", "ForeignBikes", name, "bike.csv"))];
        return bike with
        {
            ChargingVoltage = stated.Any(l => l.StartsWith("charging voltage", StringComparison.OrdinalIgnoreCase))
                ? bike.ChargingVoltage
                : ElectricPotential.FromVolts(14.2),
            BatteryResistance =
                bike.BatteryResistance.Ohms > 0 ? bike.BatteryResistance : ElectricResistance.FromMilliohms(20),
            Runs =
            [
                .. bike.Runs.Select(r =>
                    r with
                    {
                        JointResistance =
                            r.JointResistance.Ohms > 0 && !r.AssumesJoints
                                ? r.JointResistance
                                : ElectricResistance.FromMilliohms(5),
                    }
                ),
            ],
            Switches =
            [
                .. bike.Switches.Select(s =>
                    s with
                    {
                        Resistance = s.Resistance.Ohms > 0 ? s.Resistance : ElectricResistance.FromMilliohms(10),
                    }
                ),
            ],
        };
    }
}
