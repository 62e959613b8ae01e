using UnitsNet;

namespace Lighting.Calc;

/// <summary>The ranges that columns accept: wide enough for any motorcycle, narrow enough to catch a wrong
/// unit.</summary>
internal static class CellRanges
{
    public static readonly QuantityText<ElectricPotential> SystemVolts = QuantityText.Voltage.Within(4, 60);
    public static readonly QuantityText<ElectricPotential> SourceVolts = QuantityText.Voltage.Within(1, 100);
    public static readonly QuantityText<ElectricCharge> Capacity = QuantityText.Charge.Within(0.1, 1000);
    public static readonly QuantityText<ElectricResistance> Ohms = QuantityText.Resistance.Within(1e-6, 100).OrZero();
    public static readonly QuantityText<Temperature> AirDegrees = QuantityText.Temperature.Within(-40, 85);

    public static readonly QuantityText<Temperature> WireDegrees = QuantityText.Temperature.Within(-60, 250);
    public static readonly QuantityText<Ratio> Drop = QuantityText.Percent.Within(0.1, 100);
    public static readonly QuantityText<ElectricPotential> LampVolts = QuantityText.Voltage.Within(0.5, 100);
    public static readonly QuantityText<Power> LampWatts = QuantityText.Power.Within(0.001, 2000);
    public static readonly QuantityText<ElectricCurrent> LampAmps = QuantityText.Current.Within(0.0001, 200);
    public static readonly QuantityText<Length> RunLength = QuantityText.Length.Within(0.001, 100).OrZero();
    public static readonly QuantityText<ElectricCurrent> FuseAmps = QuantityText.Current.Within(0.01, 500);
    public static readonly QuantityText<RotationalSpeed> Rpm = QuantityText.Speed.Within(1, 30_000).OrZero();
    public static readonly QuantityText<ElectricCurrent> OutputAmps = QuantityText.Current.Within(0.001, 500).OrZero();
    public static readonly QuantityText<Duration> Minutes = QuantityText.Duration.Within(0.01, 10_000);
    public static readonly QuantityText<ElectricPotential> MeterVolts = QuantityText.Voltage.Within(-200, 200);
    public static readonly QuantityText<ElectricCurrent> MeterAmps = QuantityText.Current.Within(-1000, 1000);
    public static readonly QuantityText<ElectricResistance> MeterOhms = QuantityText
        .Resistance.Within(1e-6, 1e9)
        .OrZero();
}
