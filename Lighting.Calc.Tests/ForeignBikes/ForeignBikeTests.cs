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
        Assert.Equal(judged.Fuse.Rating.Amperes, judged.Steady.PeakLimit.Amperes, 1e-9);
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
