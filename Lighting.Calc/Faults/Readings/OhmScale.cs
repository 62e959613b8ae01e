using UnitsNet;

namespace Lighting.Calc;

/// <summary>Resistance on a logarithmic scale, so that a joint of 3 Ω and an open one compare.</summary>
internal static class OhmScale
{
    /// <summary>What an ohmmeter shows as open.</summary>
    public const double OpenOhms = 20e6;

    /// <summary>Standard deviation of the logarithm for wires and joints: common practice, no source.</summary>
    public const double PartSigma = 0.15;

    // What is left of the leads' resistance when they are taken off the reading, and the last digit: common practice,
    // no source.
    private const double ZeroSigma = 0.1;

    /// <summary>The same for cold filaments, whose ratio to hot is published as 10 to 15.</summary>
    public const double LampSigma = 0.2;

    /// <summary>Logarithm of 1 kΩ, above which a driver or an ignition may show anything.</summary>
    public const double HighLogarithm = 6.9;

    /// <summary>Standard deviation of the logarithm there: a driver shows kilohms to megohms. Common practice, no
    /// source.</summary>
    public const double UnknownSigma = 3;

    /// <summary>The same of an ignition or a horn, which may show anything from an ohm on.</summary>
    public const double AnySigma = 8;

    public static double Logarithm(double ohms, FaultFindingOptions options) =>
        Math.Log(Math.Min(OpenOhms, ohms) + options.OhmmeterLeads.Ohms);

    /// <summary>Standard deviation of a logarithm, with what the zero of the meter adds.</summary>
    public static double Sigma(double logarithm, bool isLamp) =>
        Math.Sqrt(Math.Pow(isLamp ? LampSigma : PartSigma, 2) + Math.Pow(ZeroSigma * Math.Exp(-logarithm), 2));

    public static ElectricResistance? Ohms(double logarithm, FaultFindingOptions options)
    {
        double ohms = Math.Exp(logarithm) - options.OhmmeterLeads.Ohms;
        return ohms > OpenOhms / 2 ? null : ElectricResistance.FromOhms(Math.Max(0, ohms));
    }
}
