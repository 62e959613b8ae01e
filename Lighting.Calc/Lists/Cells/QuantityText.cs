using UnitsNet;

namespace Lighting.Calc;

/// <summary>Kinds of quantity in lists and options, with the units each accepts.</summary>
/// <remarks>The first word of a kind is its bare unit: the unit of a number that stands alone.</remarks>
internal static class QuantityText
{
    /// <summary>Voltage: V, mV, kV; a bare number is in V. From −1000 V to 1000 V.</summary>
    public static QuantityText<ElectricPotential> Voltage { get; } =
        new(
            "a number of volts",
            x => ElectricPotential.FromVolts(x),
            v => v.Volts,
            -1000,
            1000,
            [.. Bare("V", "v", "volt", "volts"), .. Thousandth("mV"), .. Thousandfold("kV")]
        );

    /// <summary>Current: A, mA; a bare number is in A. From −10 000 A to 10 000 A.</summary>
    public static QuantityText<ElectricCurrent> Current { get; } =
        new(
            "a number of amps",
            x => ElectricCurrent.FromAmperes(x),
            i => i.Amperes,
            -10_000,
            10_000,
            [.. Bare("A", "a", "amp", "amps"), .. Thousandth("mA")]
        );

    /// <summary>Power: W, mW, kW; a bare number is in W. From −100 kW to 100 kW.</summary>
    public static QuantityText<Power> Power { get; } =
        new(
            "a number of watts",
            x => UnitsNet.Power.FromWatts(x),
            p => (double)p.Watts,
            -100_000,
            100_000,
            [.. Bare("W", "w", "watt", "watts"), .. Thousandth("mW"), .. Thousandfold("kW")]
        );

    /// <summary>Charge: Ah, mAh; a bare number is in Ah. From 0 to 100 000 Ah.</summary>
    public static QuantityText<ElectricCharge> Charge { get; } =
        new(
            "a number of ampere-hours",
            x => ElectricCharge.FromAmpereHours(x),
            q => q.AmpereHours,
            0,
            100_000,
            [.. Bare("Ah", "ah", "AH"), .. Thousandth("mAh", "mah")]
        );

    /// <summary>Resistance: Ω or ohm, mΩ or mohm, kΩ or kohm, MΩ or Mohm; a bare number is in Ω. From 0 to 1
    /// GΩ.</summary>
    public static QuantityText<ElectricResistance> Resistance { get; } =
        new(
            "a number of ohms",
            x => ElectricResistance.FromOhms(x),
            r => r.Ohms,
            0,
            1e9,
            [
                .. Bare("Ω", "ohm", "\u2126", "ohms", "Ohm", "Ohms"),
                .. Thousandth("mΩ", "mohm", "m\u2126", "mohms", "mOhm"),
                .. Thousandfold("kΩ", "kohm", "k\u2126", "kohms", "kOhm", "k"),
                .. Words(x => x * 1e6, "MΩ", "Mohm", "M\u2126", "Mohms", "MOhm"),
            ]
        );

    /// <summary>Length: m, cm, mm, ft or ', in or "; a bare number is in m. From 0 to 10 km.</summary>
    public static QuantityText<Length> Length { get; } =
        new(
            "a number of metres",
            x => UnitsNet.Length.FromMeters(x),
            l => l.Meters,
            0,
            10_000,
            [
                .. Bare("m"),
                .. Words(x => x / 100, "cm"),
                .. Thousandth("mm"),
                .. Words(x => x * 0.3048, "ft", "'", "foot", "feet"),
                .. Words(x => x * 0.0254, "in", "\"", "inch", "inches"),
            ]
        );

    /// <summary>Temperature: °C or C, °F or F, K; a bare number is in °C. From −273.15 °C to 1000 °C.</summary>
    public static QuantityText<Temperature> Temperature { get; } =
        new(
            "a number of degrees",
            x => UnitsNet.Temperature.FromDegreesCelsius(x),
            t => t.DegreesCelsius,
            -273.15,
            1000,
            [
                .. Bare("°C", "C", "degC"),
                .. Words(x => (x - 32) / 1.8, "°F", "F", "degF"),
                .. Words(x => x - 273.15, "K"),
            ]
        );

    /// <summary>A share: a bare number is a fraction, so that 1 is the whole; % is accepted. From 0 to 1.</summary>
    public static QuantityText<Ratio> Fraction { get; } =
        new(
            "a share",
            x => Ratio.FromDecimalFractions(x),
            r => r.DecimalFractions,
            0,
            1,
            [.. Words(x => x, ""), .. Words(x => x / 100, "%")]
        );

    /// <summary>Per cent: a bare number is in %. From −100 % to 1000 %.</summary>
    public static QuantityText<Ratio> Percent { get; } =
        new("a percentage", x => Ratio.FromPercent(x), r => r.Percent, -100, 1000, [.. Bare("%")]);

    /// <summary>Engine speed: rpm; a bare number is in rpm. From 0 to 100 000 rpm.</summary>
    public static QuantityText<RotationalSpeed> Speed { get; } =
        new(
            "a number of revolutions per minute",
            x => RotationalSpeed.FromRevolutionsPerMinute(x),
            n => n.RevolutionsPerMinute,
            0,
            100_000,
            [.. Bare("rpm", "RPM", "r/min", "/min")]
        );

    /// <summary>Time: min, s, h; a bare number is in minutes. From 0 to 100 000 min.</summary>
    public static QuantityText<Duration> Duration { get; } =
        new(
            "a number of minutes",
            x => UnitsNet.Duration.FromMinutes(x),
            t => t.Minutes,
            0,
            100_000,
            [
                .. Bare("min", "minute", "minutes"),
                .. Words(x => x / 60, "s", "sec", "seconds"),
                .. Words(x => x * 60, "h", "hr", "hour", "hours"),
            ]
        );

    private static UnitWord[] Bare(params string[] words) => Words(x => x, words);

    private static UnitWord[] Thousandth(params string[] words) => Words(x => x / 1000, words);

    private static UnitWord[] Thousandfold(params string[] words) => Words(x => x * 1000, words);

    private static UnitWord[] Words(Func<double, double> toBare, params string[] words) =>
        [.. words.Select((word, index) => new UnitWord(word, toBare, index == 0 && word.Length > 0))];
}
