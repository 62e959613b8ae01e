using System.Collections.Immutable;
using MathNet.Numerics.RootFinding;

namespace Lighting.Calc;

/// <summary>A cold filament warming up behind a resistance: its current from the first instant on.</summary>
/// <remarks>
/// Heat balance C(T)·dT/dt = Pel − Ploss, started at 300 K. Pel = (V/(R + r))²·R with R(T) from the tungsten table and
/// r all resistance before the filament. Ploss = Pn·(R/Rn)^((1+k)/(1−k)), which is the exponent law I = In·(V/Vn)^k
/// solved for the heat given off, k = 0.55: about T⁴; where it is cooler that of <see cref="FilamentHeat"/>. The
/// balance has one unknown, so time is the integral of C·dT/(Pel − Ploss). Mass: a straight wire of resistance Rn at Tn
/// that radiates Pn, diameter³ = 4·ρ·Pn/(π²·q·Rn), volume = diameter·Pn/(4·q), q the heat radiated by a unit of
/// tungsten's surface. Tn is where R/R300 is 15 (2801 K): the upper end of the published cold-to-hot ratios, the
/// highest peak, and near the 2700 K to 2800 K that tungsten needs for the 18 lm/W of a 21 W signal lamp (from memory).
/// A 5 W lamp runs cooler, some 2450 K: its surge is weaker and about twice as long. Coiling (shaded surface, more
/// wire) and gas cooling (less wire) are left out; they pull opposite ways. </remarks>
internal sealed class FilamentInrush
{
    private const double HotToColdRatio = 15;
    private const int Steps = 100;
    private const double SmallestGap = 1e-3;

    // The second half's shares of the way from halfway to the end that are left.
    private static readonly ImmutableArray<double> s_gaps =
    [
        .. Enumerable.Range(1, Steps / 2).Select(i => Math.Pow(2 * SmallestGap, 2.0 * i / Steps)),
    ];

    private readonly double _coldOhms;
    private readonly double _hotOhms;
    private readonly double _hotWatts;
    private readonly double _grams;

    public FilamentInrush(LampSpecification lamp)
    {
        double hotKelvin = Tungsten.KelvinAt(HotToColdRatio);
        _hotOhms = lamp.ReferenceVoltage.Volts / lamp.ReferenceCurrent.Amperes;
        _hotWatts = lamp.ReferenceVoltage.Volts * lamp.ReferenceCurrent.Amperes;
        _coldOhms = _hotOhms / HotToColdRatio;
        double perArea = Tungsten.RadiatedWatts(hotKelvin);
        double diameter = Math.Cbrt(
            4 * Tungsten.OhmCentimetres(hotKelvin) * _hotWatts / (Math.PI * Math.PI * perArea * _hotOhms)
        );
        _grams = Tungsten.GramsPerCubicCentimetre * diameter * _hotWatts / (4 * perArea);
    }

    /// <summary>Resistance at 300 K.</summary>
    public double ColdOhms => _coldOhms;

    /// <summary>Current in the first instant.</summary>
    public double PeakAmperes(double volts, double seriesOhms) => PeakAmperes(volts, _coldOhms, seriesOhms);

    /// <summary>Current in the first instant of a filament of known cold resistance.</summary>
    public static double PeakAmperes(double volts, double coldOhms, double seriesOhms) =>
        volts / (coldOhms + seriesOhms);

    /// <summary>The current as it falls, to within a thousandth of the last temperature.</summary>
    /// <param name="volts">Volts of the source, above zero.</param>
    /// <param name="seriesOhms">Resistance before the filament, zero or more.</param>
    public WarmUpCurve Curve(double volts, double seriesOhms)
    {
        // So little current, as in series with another lamp, that it stays within some 15 K of the air.
        if (Net(1.05 * _hotOhms / FilamentLaw.HotToColdRatio, volts, seriesOhms) <= 0)
            return new WarmUpCurve([0], [PeakAmperes(volts, seriesOhms)], IsInTable: true);
        bool isInTable = Net(Ohms(Tungsten.HottestKelvin), volts, seriesOhms) < 0;
        double end = isInTable
            ? Brent.FindRoot(t => Net(Ohms(t), volts, seriesOhms), Tungsten.ColdKelvin, Tungsten.HottestKelvin, 1e-6)
            : Tungsten.HottestKelvin;
        var seconds = ImmutableArray.CreateBuilder<double>(Steps + 1);
        var amperes = ImmutableArray.CreateBuilder<double>(Steps + 1);
        double time = 0,
            last = double.NaN,
            before = double.NaN;
        foreach (double kelvin in Temperatures(end))
        {
            double ohms = Ohms(kelvin),
                slope = HeatCapacity(kelvin) / Net(ohms, volts, seriesOhms);
            if (seconds.Count > 0)
                time += (slope + last) / 2 * (kelvin - before);
            (last, before) = (slope, kelvin);
            seconds.Add(time);
            amperes.Add(volts / (ohms + seriesOhms));
        }

        return new WarmUpCurve(seconds.MoveToImmutable(), amperes.MoveToImmutable(), isInTable);
    }

    // Equal ratios of the temperature up to halfway, where the resistance changes fast, then of the gap to the end,
    // where time passes.
    private static IEnumerable<double> Temperatures(double end)
    {
        const double cold = Tungsten.ColdKelvin;
        double half = (cold + end) / 2,
            ratio = Math.Pow(half / cold, 2.0 / Steps),
            kelvin = cold;
        for (int i = 0; i < Steps / 2; i++, kelvin *= ratio)
            yield return kelvin;
        yield return half;
        foreach (double gap in s_gaps)
            yield return end - (end - half) * gap;
    }

    private double HeatCapacity(double kelvin) => _grams * Tungsten.JoulesPerGramKelvin(kelvin);

    private double Ohms(double kelvin) => _coldOhms * Tungsten.ResistanceRatio(kelvin);

    // Heat gained, at the filament's resistance.
    private double Net(double ohms, double volts, double seriesOhms)
    {
        double current = volts / (ohms + seriesOhms);
        return current * current * ohms - _hotWatts * FilamentLaw.PowerAt(ohms / _hotOhms);
    }
}
