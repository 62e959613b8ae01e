namespace Lighting.Calc;

/// <summary>The ranges of a bike's figures: wide enough for any motorcycle, narrow enough to catch a wrong
/// unit.</summary>
internal static class BikeRanges
{
    public static readonly ValueRange SystemVolts = new(4, 60, "V");
    public static readonly ValueRange SourceVolts = new(1, 100, "V");
    public static readonly ValueRange OpenVolts = new(0.1, 500, "V");
    public static readonly ValueRange Capacity = new(0.1, 1000, "Ah");
    public static readonly ValueRange Ohms = new(1e-6, 100, "Ω", OrZero: true);
    public static readonly ValueRange CoilOhms = new(0.5, 10_000, "Ω");
    public static readonly ValueRange AirDegrees = new(-40, 85, "°C");
    public static readonly ValueRange WireDegrees = new(-60, 250, "°C");
    public static readonly ValueRange Drop = new(0.1, 100, "%");
    public static readonly ValueRange Share = new(0, 1, "");
    public static readonly ValueRange LampVolts = new(0.5, 100, "V");
    public static readonly ValueRange LampWatts = new(0.001, 2000, "W");
    public static readonly ValueRange LampAmps = new(0.0001, 200, "A");
    public static readonly ValueRange Metres = new(0.001, 100, "m", OrZero: true);
    public static readonly ValueRange FuseAmps = new(0.01, 500, "A");
    public static readonly ValueRange Rpm = new(1, 30_000, "rpm", OrZero: true);
    public static readonly ValueRange OutputAmps = new(0.001, 500, "A", OrZero: true);
    public static readonly ValueRange Minutes = new(0.01, 10_000, "min");
    public static readonly ValueRange Quantity = new(1, 1000, "");
    public static readonly ValueRange Joints = new(0, 1000, "");
    public static readonly ValueRange Bundle = new(1, 1000, "");
    public static readonly ValueRange BundleLoading = new(20, 100, "%");
}
