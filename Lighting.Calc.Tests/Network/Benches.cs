using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc.Tests.Network;

/// <summary>Small invented harnesses of the Pinmoor Valley Post that many tests share.</summary>
internal static class Benches
{
    public static WireSize Wire(string name) =>
        WireTable.TryFind(name, out WireSize? wire) ? wire! : throw new ArgumentException(name);

    public static Run Run(
        string name,
        string from,
        string to,
        double metres,
        string wire = "1.5 mm2",
        int joints = 0,
        double jointOhms = 0
    ) =>
        new()
        {
            Name = name,
            From = from,
            To = to,
            Wire = Wire(wire),
            Length = Length.FromMeters(metres),
            Joints = joints,
            JointResistance = ElectricResistance.FromOhms(jointOhms),
        };

    public static FittedLamp Lamp(
        string name,
        string feed,
        string back,
        LampSpecification specification,
        string litWhen = "",
        int quantity = 1
    ) =>
        new()
        {
            Circuit = name,
            Lamp = name,
            Specification = specification,
            LitWhen = Condition.Parse(litWhen),
            Quantity = quantity,
            Feed = feed,
            Return = back,
        };

    public static LampSpecification Filament(double volts, double watts) =>
        LampSpecification.FromPower(LampType.Filament, ElectricPotential.FromVolts(volts), Power.FromWatts(watts));

    public static LampSpecification Led(double volts, double watts, double minimumVolts) =>
        LampSpecification.FromPower(
            LampType.Led,
            ElectricPotential.FromVolts(volts),
            Power.FromWatts(watts),
            ElectricPotential.FromVolts(minimumVolts)
        );

    public static SwitchContact Contact(string name, string from, string to, params string[] closedIn) =>
        new()
        {
            Switch = name,
            From = from,
            To = to,
            ClosedIn = [.. closedIn],
        };

    /// <summary>Battery, 15 A fuse, one switch, a headlamp of two filaments on one earth, a tail lamp on its
    /// own.</summary>
    public static Bike Sidecar(Earth earth = Earth.Negative)
    {
        string live = earth == Earth.Negative ? Bike.BatteryPlus : Bike.BatteryMinus;
        string back = earth == Earth.Negative ? Bike.BatteryMinus : Bike.BatteryPlus;
        return new Bike
        {
            Name = "sidecar",
            ChargingVoltage = ElectricPotential.FromVolts(13.5),
            BatteryResistance = ElectricResistance.FromMilliohms(20),
            Earth = earth,
            Lamps =
            [
                Lamp("low beam", "low feed", "head earth", Filament(12, 40), "lights=low|pass"),
                Lamp("high beam", "high feed", "head earth", Filament(12, 45), "lights=high|pass"),
                Lamp("tail", "tail feed", back, Filament(13.5, 5), "lights=low|high|pass"),
            ],
            Runs =
            [
                Run("feed", "fused", "lights in", 1.2, joints: 2, jointOhms: 0.005),
                Run("low wire", "low line", "low feed", 0.5),
                Run("high wire", "high line", "high feed", 0.5),
                Run("tail wire", "tail line", "tail feed", 1.5),
                Run("head earth wire", "head earth", back, 0.8, joints: 1, jointOhms: 0.01),
            ],
            Switches =
            [
                Contact("lights", "lights in", "low line", "low", "pass") with
                {
                    Resistance = ElectricResistance.FromMilliohms(10),
                },
                Contact("lights", "lights in", "high line", "high", "pass") with
                {
                    Resistance = ElectricResistance.FromMilliohms(10),
                },
                Contact("lights", "lights in", "tail line", "low", "high", "pass"),
            ],
            Fuses =
            [
                new Fuse
                {
                    Name = "main",
                    From = live,
                    To = "fused",
                    Rating = ElectricCurrent.FromAmperes(15),
                },
            ],
        };
    }

    public static Setting Set(Bike bike, string held) => SettingEnumeration.Held(bike, Condition.Parse(held));

    /// <summary>What the review of a harness finds over all its settings.</summary>
    public static ImmutableArray<Finding> Review(Bike bike)
    {
        ImmutableArray<OperatingPoint> points = BikeSolution
            .Solve(bike, new CheckOptions(), TestContext.Current.CancellationToken)
            .Points;
        var groups = SettingGroups.Of(bike, [.. points.Select(p => p.Setting)]);
        return
        [
            .. bike.HasNetwork ? LitReview.Of(bike, points, groups) : [],
            .. WiringReview.Evaluate(bike, groups),
        ];
    }
}
