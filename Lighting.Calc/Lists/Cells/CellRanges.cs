using UnitsNet;

namespace Lighting.Calc;

/// <summary>The ranges that columns accept: wide enough for any motorcycle, narrow enough to catch a wrong
/// unit.</summary>
internal static class CellRanges
{
    public static readonly QuantityText<ElectricPotential> SystemVolts = QuantityText.Voltage.Within(
        BikeRanges.SystemVolts
    );
    public static readonly QuantityText<ElectricPotential> SourceVolts = QuantityText.Voltage.Within(
        BikeRanges.SourceVolts
    );
    public static readonly QuantityText<ElectricPotential> OpenVolts = QuantityText.Voltage.Within(
        BikeRanges.OpenVolts
    );
    public static readonly QuantityText<ElectricCharge> Capacity = QuantityText.Charge.Within(BikeRanges.Capacity);
    public static readonly QuantityText<ElectricResistance> Ohms = QuantityText.Resistance.Within(BikeRanges.Ohms);
    public static readonly QuantityText<ElectricResistance> CoilOhms = QuantityText.Resistance.Within(
        BikeRanges.CoilOhms
    );
    public static readonly QuantityText<Temperature> AirDegrees = QuantityText.Temperature.Within(
        BikeRanges.AirDegrees
    );

    public static readonly QuantityText<Temperature> WireDegrees = QuantityText.Temperature.Within(
        BikeRanges.WireDegrees
    );
    public static readonly QuantityText<Ratio> Drop = QuantityText.Percent.Within(BikeRanges.Drop);
    public static readonly QuantityText<Ratio> BundleLoading = QuantityText.Percent.Within(BikeRanges.BundleLoading);
    public static readonly QuantityText<ElectricPotential> LampVolts = QuantityText.Voltage.Within(
        BikeRanges.LampVolts
    );
    public static readonly QuantityText<Power> LampWatts = QuantityText.Power.Within(BikeRanges.LampWatts);
    public static readonly QuantityText<ElectricCurrent> LampAmps = QuantityText.Current.Within(BikeRanges.LampAmps);
    public static readonly QuantityText<Length> RunLength = QuantityText.Length.Within(BikeRanges.Metres);
    public static readonly QuantityText<ElectricCurrent> FuseAmps = QuantityText.Current.Within(BikeRanges.FuseAmps);
    public static readonly QuantityText<RotationalSpeed> Rpm = QuantityText.Speed.Within(BikeRanges.Rpm);
    public static readonly QuantityText<ElectricCurrent> OutputAmps = QuantityText.Current.Within(
        BikeRanges.OutputAmps
    );
    public static readonly QuantityText<Duration> Minutes = QuantityText.Duration.Within(BikeRanges.Minutes);
    public static readonly QuantityText<ElectricPotential> MeterVolts = QuantityText.Voltage.Within(-200, 200);
    public static readonly QuantityText<ElectricCurrent> MeterAmps = QuantityText.Current.Within(-1000, 1000);
    public static readonly QuantityText<ElectricResistance> MeterOhms = QuantityText
        .Resistance.Within(1e-6, 1e9)
        .OrZero();
}
