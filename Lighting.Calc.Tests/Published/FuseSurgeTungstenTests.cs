using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>Cold filaments against the tungsten table of Forsythe and Worthing (1925, as reprinted in the CRC
/// Handbook) and what the trade says of lamps.</summary>
public class FuseSurgeTungstenTests
{
    [Theory]
    [InlineData(300, 1.00, 5.65)]
    [InlineData(1000, 4.41, 24.93)]
    [InlineData(2000, 10.03, 56.67)]
    [InlineData(2500, 13.08, 73.91)]
    [InlineData(2800, 14.99, 84.70)]
    [InlineData(3200, 17.62, 99.54)]
    [Against("tungsten", "Forsythe and Worthing 1925, as reprinted in the CRC Handbook", CheckKind.Copied)]
    public void Forsythe_and_Worthing_points(double kelvin, double printedRatio, double printedMicroOhmCentimetres)
    {
        Publication.Meets(printedRatio, Tungsten.ResistanceRatio(kelvin), 1e-9);
        Publication.Meets(printedMicroOhmCentimetres, Tungsten.OhmCentimetres(kelvin) * 1e6, 1e-9);
        Publication.Meets(kelvin, Tungsten.KelvinAt(printedRatio), 1e-6);
    }

    [Theory]
    [InlineData(299.9)]
    [InlineData(3200.1)]
    public void Outside_the_table_of_tungsten_is_refused(double kelvin) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Tungsten.ResistanceRatio(kelvin));

    // Jones and Langmuir, heat radiated by tungsten: 24 W/cm² at 2000 K, 153 W/cm² at 3000 K (from memory).
    [Theory]
    [InlineData(2000, 24, 0.6)]
    [InlineData(3000, 153, 2)]
    [Against("tungsten", "Jones and Langmuir 1927, radiated heat (from memory)", CheckKind.Model)]
    public void Jones_and_Langmuir_radiated_heat(double kelvin, double printedWatts, double tolerance) =>
        Publication.Meets(printedWatts, Tungsten.RadiatedWatts(kelvin), tolerance);

    // 0.15 s to 0.25 s to nine tenths of the light, 21 W signal lamp: common practice, no source. Light goes with
    // (V/Vn)^3.4 and R with (V/Vn)^0.45.
    [Fact]
    public void Common_practice_a_21_W_signal_lamp_gives_90_percent_light_after_150_to_250_ms()
    {
        LampSpecification p21w = LampSpecification.FromPower(
            LampType.Filament,
            ElectricPotential.FromVolts(13.5),
            Power.FromWatts(25)
        );
        WarmUpCurve curve = new FilamentInrush(p21w).Curve(13.5, 0);
        double amperesAt90 = 25 / 13.5 / Math.Pow(0.9, 0.45 / 3.4);
        double seconds = curve.Seconds[curve.Amperes.ToList().FindIndex(a => a <= amperesAt90)];
        Assert.InRange(seconds, 0.15, 0.25);
    }

    // Inrush gone to within a tenth after 0.02 s to 0.1 s, small vehicle lamps: common practice, no source.
    [Fact]
    public void Common_practice_the_surge_of_a_5_W_lamp_is_within_a_tenth_after_20_to_100_ms()
    {
        LampSpecification w5w = LampSpecification.FromPower(
            LampType.Filament,
            ElectricPotential.FromVolts(13.5),
            Power.FromWatts(5)
        );
        WarmUpCurve curve = new FilamentInrush(w5w).Curve(13.5, 0);
        double seconds = curve.Seconds[curve.Amperes.ToList().FindIndex(a => a <= 1.1 * 5 / 13.5)];
        Assert.InRange(seconds, 0.02, 0.1);
    }
}
