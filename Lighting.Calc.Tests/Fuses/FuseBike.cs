using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc.Tests.Fuses;

/// <summary>Short forms for the invented bikes of these tests.</summary>
internal static class FuseBike
{
    public static WireSize Wire(string name) =>
        WireTable.TryFind(name, out WireSize? wire) ? wire! : throw new ArgumentException(name);

    public static Run Run(
        string name,
        string from,
        string to,
        string wire,
        double metres,
        double jointMilliohms = 0,
        int bundle = 1
    ) =>
        new()
        {
            Name = name,
            From = from,
            To = to,
            Wire = Wire(wire),
            Length = Length.FromMeters(metres),
            Joints = jointMilliohms > 0 ? 1 : 0,
            JointResistance = ElectricResistance.FromMilliohms(jointMilliohms),
            Bundle = bundle,
        };

    public static SwitchContact Contact(string name, string from, string to, string closedIn, double milliohms = 0) =>
        new()
        {
            Switch = name,
            From = from,
            To = to,
            ClosedIn = [.. closedIn.Split('|')],
            Resistance = ElectricResistance.FromMilliohms(milliohms),
        };

    public static Fuse Fuse(
        string name,
        double amperes,
        string? from = null,
        string? to = null,
        FuseStyle style = FuseStyle.Blade
    ) =>
        new()
        {
            Name = name,
            Rating = ElectricCurrent.FromAmperes(amperes),
            From = from,
            To = to,
            Style = style,
        };

    public static FittedLamp Load(
        string name,
        LampType type,
        double volts,
        double amperes,
        string? feed = null,
        string? returns = null,
        string litWhen = "",
        int quantity = 1
    ) =>
        new()
        {
            Circuit = name,
            Lamp = name,
            Specification = LampSpecification.FromCurrent(
                type,
                ElectricPotential.FromVolts(volts),
                ElectricCurrent.FromAmperes(amperes)
            ),
            Feed = feed,
            Return = returns,
            LitWhen = Condition.Parse(litWhen),
            Quantity = quantity,
        };

    /// <summary>The Pinmoor Valley Post's round bike: two loads of constant current behind one blade fuse.</summary>
    public static Bike Round(double fuse = 15, string tailWire = "0.75 mm2", double tailMetres = 2) =>
        new()
        {
            Name = "Pinmoor round bike",
            BatteryVoltage = ElectricPotential.FromVolts(12.65),
            BatteryResistance = ElectricResistance.FromMilliohms(20),
            Runs =
            [
                Run("battery lead", Bike.BatteryPlus, "fuse in", "2.5 mm2", 0.5),
                Run("feed", "fuse out", "switch in", "1.5 mm2", 2),
                Run("headlamp feed", "switch out", "headlamp +", "1 mm2", 1, jointMilliohms: 2),
                Run("headlamp earth", "headlamp -", Bike.BatteryMinus, "1 mm2", 1.5),
                Run("tail feed", "switch out", "tail +", tailWire, tailMetres),
                Run("tail earth", "tail -", Bike.BatteryMinus, "0.75 mm2", 2),
            ],
            Switches = [Contact("lights", "switch in", "switch out", "on", 10)],
            Fuses = [Fuse("main", fuse, "fuse in", "fuse out")],
            Lamps =
            [
                Load("headlamp", LampType.Fixed, 12, 5, "headlamp +", "headlamp -"),
                Load("tail", LampType.Fixed, 12, 0.5, "tail +", "tail -"),
            ],
        };

    /// <summary>The round bike with a wire past its fuse.</summary>
    public static Bike Bypassed()
    {
        Bike bike = Round();
        return bike with { Runs = bike.Runs.Add(Run("old bypass", "fuse in", "fuse out", "1 mm2", 0.1)) };
    }

    /// <summary>The round bike with a horn fed from a point of it and switched in its way back.</summary>
    public static Bike WithHorn(string from, double contactMilliohms = 0)
    {
        Bike bike = Round();
        return bike with
        {
            Runs = bike.Runs.Add(Run("horn feed", from, "horn +", "1 mm2", 1)),
            Lamps = bike.Lamps.Add(Load("horn", LampType.Fixed, 12, 3, "horn +", "horn -")),
            Switches = bike.Switches.Add(Contact("horn", "horn -", Bike.BatteryMinus, "on", contactMilliohms)),
        };
    }

    public static ImmutableArray<OperatingPoint> Solve(Bike bike)
    {
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        return [.. SettingEnumeration.Of(bike, Condition.Always).Select(solver.Solve)];
    }

    public static ImmutableArray<UnfusedRun> Unfused(Bike bike) =>
        UnfusedRuns.Of(
            DownstreamScopes.Of(
                bike,
                SettingEnumeration.Of(bike, Condition.Always),
                TestContext.Current.CancellationToken
            ),
            TestContext.Current.CancellationToken
        );

    public static ImmutableArray<FuseSuitability> Check(Bike bike, FuseOptions? options = null) =>
        FuseCheck.Evaluate(bike, Solve(bike), options, cancellationToken: TestContext.Current.CancellationToken);
}
