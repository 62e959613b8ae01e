using MathNet.Numerics.Interpolation;

namespace Lighting.Calc;

/// <summary>A filament below the voltages of the exponent law: the power it takes is the heat that it radiates and that
/// its leads and its gas conduct away.</summary>
/// <remarks>
/// P = a·(ε(T)·T⁴ − ε(T0)·T0⁴) + b·(T − T0), T0 = 300 K, with R(T) from tables/tungsten.csv: the sum of a term near T⁴
/// and one near T found on commercial lamps. Source: M. Carlà, American Journal of Physics 81, 2013. Radiation alone is
/// off by more than the exponent law. Nothing is fitted: temperature, a and b follow from the current, its slope and
/// the hot to cold ratio of <see cref="FilamentLaw"/> where the two laws meet, so that current and slope run on without
/// a step. There 14 % of the heat is conducted; small bulbs conduct more and draw up to a quarter more current at a
/// tenth of their voltage. Held as a cubic through 701 points (C. Hermite), whose integral is exact.
/// </remarks>
internal static class FilamentHeat
{
    private const int Steps = 700;
    private const int Marks = 4000;
    private const double Step = FilamentLaw.LowVoltsRatio / Steps;

    // Current, its slope and the integral of it at each step, in units of the reference point.
    private static readonly double[] s_current = new double[Steps + 1];
    private static readonly double[] s_slope = new double[Steps + 1];
    private static readonly double[] s_area = new double[Steps + 1];
    private static readonly LinearSpline s_powerOfResistance;

    static FilamentHeat()
    {
        const double k = FilamentLaw.CurrentExponent,
            low = FilamentLaw.LowVoltsRatio;
        double join = FilamentLaw.HotToColdRatio * Math.Pow(low, 1 - k),
            kelvin = Tungsten.KelvinAt(join);
        double steepness = SlopeOf(Tungsten.ResistanceRatio, kelvin) * (1 + k) / (1 - k),
            radiation = SlopeOf(Radiated, kelvin),
            conduction = SlopeOf(Conducted, kelvin);
        ConductedShare = (radiation - steepness) / (radiation - conduction);
        double[] volts = new double[Marks + 1],
            amperes = new double[Marks + 1],
            ohms = new double[Marks + 1],
            watts = new double[Marks + 1];
        ohms[0] = 1 / FilamentLaw.HotToColdRatio;
        for (int i = 1; i <= Marks; i++)
        {
            double t = Tungsten.ColdKelvin + (kelvin - Tungsten.ColdKelvin) * i / Marks * i / Marks,
                heat =
                    (1 - ConductedShare) * Radiated(t) / Radiated(kelvin)
                    + ConductedShare * Conducted(t) / Conducted(kelvin),
                resistance = Tungsten.ResistanceRatio(t) / join;
            volts[i] = low * Math.Sqrt(heat * resistance);
            amperes[i] = Math.Pow(low, k) * Math.Sqrt(heat / resistance);
            ohms[i] = Tungsten.ResistanceRatio(t) / FilamentLaw.HotToColdRatio;
            watts[i] = volts[i] * amperes[i];
        }

        s_powerOfResistance = LinearSpline.InterpolateSorted(ohms, watts);
        LinearSpline current = LinearSpline.InterpolateSorted(volts, amperes);
        for (int i = 0; i < Steps; i++)
            s_current[i] = current.Interpolate(i * Step);
        s_current[Steps] = Math.Pow(low, k);
        s_slope[0] = FilamentLaw.HotToColdRatio;
        for (int i = 1; i < Steps; i++)
            s_slope[i] = (s_current[i + 1] - s_current[i - 1]) / (2 * Step);
        s_slope[Steps] = k * Math.Pow(low, k - 1);
        for (int i = 0; i < Steps; i++)
            s_area[i + 1] = s_area[i] + AreaWithin(i, 1);
    }

    /// <summary>Share of the heat that is conducted where the two laws meet.</summary>
    public static double ConductedShare { get; }

    /// <summary>Current and slope in units of the reference point.</summary>
    /// <param name="voltsRatio">V/Vn, 0 to <see cref="FilamentLaw.LowVoltsRatio"/>.</param>
    public static (double Current, double Slope) At(double voltsRatio)
    {
        int i = Place(voltsRatio);
        double t = voltsRatio / Step - i,
            rise = s_current[i + 1] - s_current[i],
            from = Step * s_slope[i],
            to = Step * s_slope[i + 1],
            square = 3 * rise - 2 * from - to,
            cube = from + to - 2 * rise;
        return (
            s_current[i] + t * (from + t * (square + t * cube)),
            (from + t * (2 * square + 3 * t * cube)) / Step
        );
    }

    /// <summary>Integral of the current over the voltage, in units of the reference point.</summary>
    /// <param name="voltsRatio">V/Vn, 0 to <see cref="FilamentLaw.LowVoltsRatio"/>.</param>
    public static double AreaTo(double voltsRatio)
    {
        int i = Place(voltsRatio);
        return s_area[i] + AreaWithin(i, voltsRatio / Step - i);
    }

    /// <summary>Power over that at the reference point, from the resistance over that there, below the meeting of the
    /// two laws; none below the cold resistance.</summary>
    public static double PowerAt(double resistanceRatio) =>
        resistanceRatio <= 1 / FilamentLaw.HotToColdRatio ? 0 : s_powerOfResistance.Interpolate(resistanceRatio);

    private static int Place(double voltsRatio) => Math.Min((int)(voltsRatio / Step), Steps - 1);

    private static double AreaWithin(int i, double t)
    {
        double rise = s_current[i + 1] - s_current[i],
            from = Step * s_slope[i],
            to = Step * s_slope[i + 1];
        return Step
            * t
            * (s_current[i] + t * (from / 2 + t * ((3 * rise - 2 * from - to) / 3 + t * (from + to - 2 * rise) / 4)));
    }

    private static double Radiated(double kelvin) =>
        Tungsten.RadiatedWatts(kelvin) - Tungsten.RadiatedWatts(Tungsten.ColdKelvin);

    private static double Conducted(double kelvin) => kelvin - Tungsten.ColdKelvin;

    // d ln f/d ln T.
    private static double SlopeOf(Func<double, double> f, double kelvin) =>
        Math.Log(f(kelvin + 1) / f(kelvin - 1)) / Math.Log((kelvin + 1) / (kelvin - 1));
}
