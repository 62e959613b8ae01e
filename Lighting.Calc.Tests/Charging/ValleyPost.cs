using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc.Tests.Charging;

/// <summary>An invented machine of the Pinmoor Valley Post for the charging tests.</summary>
internal static class ValleyPost
{
    public static Bike Bike(params (double Rpm, double Amperes, string When)[] points) =>
        new()
        {
            Name = "valley post",
            BatteryCapacity = ElectricCharge.FromAmpereHours(10),
            Charging =
            [
                .. points.Select(p => new ChargingPoint(
                    Rpm(p.Rpm),
                    ElectricCurrent.FromAmperes(p.Amperes),
                    Condition.Parse(p.When)
                )),
            ],
        };

    public static Bike Riding(this Bike bike, params (double Rpm, double Minutes, string When)[] stretches) =>
        bike with
        {
            Ride =
            [
                .. stretches.Select(
                    (s, i) =>
                        new RideStretch(
                            $"stretch {i + 1}",
                            Rpm(s.Rpm),
                            Duration.FromMinutes(s.Minutes),
                            Condition.Parse(s.When)
                        )
                ),
            ],
        };

    /// <summary>A load of the same amps in every setting and at every voltage.</summary>
    public static AverageLoad Load(double amperes) => (_, _) => ElectricCurrent.FromAmperes(amperes);

    public static RotationalSpeed Rpm(double rpm) => RotationalSpeed.FromRevolutionsPerMinute(rpm);

    public static Setting In(this Bike bike, string condition) =>
        SettingEnumeration.Held(bike, Condition.Parse(condition));

    public static ImmutableArray<ChargingPoint> PointsOf(PermanentMagnetAlternator machine, params double[] rpm) =>
        [.. rpm.Select(n => new ChargingPoint(Rpm(n), machine.OutputAt(Rpm(n)), Condition.Always))];
}
