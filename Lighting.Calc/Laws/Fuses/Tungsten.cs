using System.Collections.Immutable;
using MathNet.Numerics.Interpolation;

namespace Lighting.Calc;

/// <summary>Tungsten from cold to lamp temperature.</summary>
/// <remarks>
/// Resistance: tables/tungsten.csv (Jones and Langmuir 1927), linear between its points, 300 K to 3200 K.
/// From memory, each good to a few percent: density 19.25 g/cm³; heat capacity c = 0.125 + 2.4e-5·T J/(g·K)
/// (0.132 at 300 K, 0.185 at 2500 K); total emissivity ε = 0.26 + 7.4e-5·(T − 2000), from 0.26 at 2000 K to 0.33 at
/// 3000 K.
/// </remarks>
internal static class Tungsten
{
    public const double ColdKelvin = 300;
    public const double HottestKelvin = 3200;
    public const double GramsPerCubicCentimetre = 19.25;
    private const double StefanBoltzmannWattsPerSquareCentimetre = 5.670374e-12;

    private static readonly ImmutableArray<TableRow> s_rows = [.. PublishedTable.Load("tungsten").Read()];
    private static readonly double[] s_kelvins = [.. s_rows.Select(r => r.Number("temperature_k"))];
    private static readonly double[] s_ratios = [.. s_rows.Select(r => r.Number("resistance_ratio"))];
    private static readonly LinearSpline s_ratio = LinearSpline.InterpolateSorted(s_kelvins, s_ratios);
    private static readonly LinearSpline s_resistivity = LinearSpline.InterpolateSorted(
        s_kelvins,
        [.. s_rows.Select(r => r.Number("resistivity_uohm_cm"))]
    );
    private static readonly LinearSpline s_kelvin = LinearSpline.InterpolateSorted(s_ratios, s_kelvins);

    /// <summary>Resistance against that at 300 K.</summary>
    public static double ResistanceRatio(double kelvin) => s_ratio.Interpolate(Checked(kelvin));

    /// <summary>The temperature of a resistance ratio of 1 to 17.62.</summary>
    public static double KelvinAt(double resistanceRatio) =>
        resistanceRatio >= s_ratios[0] && resistanceRatio <= s_ratios[^1]
            ? s_kelvin.Interpolate(resistanceRatio)
            : throw new ArgumentOutOfRangeException(
                nameof(resistanceRatio),
                resistanceRatio,
                $"The table of tungsten runs from {s_ratios[0]} to {s_ratios[^1]}."
            );

    /// <summary>Resistivity in Ω·cm.</summary>
    public static double OhmCentimetres(double kelvin) => s_resistivity.Interpolate(Checked(kelvin)) * 1e-6;

    public static double JoulesPerGramKelvin(double kelvin) => 0.125 + 2.4e-5 * Checked(kelvin);

    /// <summary>Heat radiated by a square centimetre, W.</summary>
    public static double RadiatedWatts(double kelvin) =>
        (0.26 + 7.4e-5 * (Checked(kelvin) - 2000)) * StefanBoltzmannWattsPerSquareCentimetre * Math.Pow(kelvin, 4);

    private static double Checked(double kelvin) =>
        kelvin is >= ColdKelvin and <= HottestKelvin
            ? kelvin
            : throw new ArgumentOutOfRangeException(
                nameof(kelvin),
                kelvin,
                $"The table of tungsten runs from {ColdKelvin} K to {HottestKelvin} K."
            );
}
