using MathNet.Numerics.Interpolation;

namespace Lighting.Calc;

/// <summary>What a meter shows on the leads of the unplugged generator.</summary>
/// <remarks>
/// AC voltage between two leads: as listed, in proportion to the speed between and beyond the listed ones (EMF E = k·n,
/// Faraday's law; source: as that of <see cref="PermanentMagnetAlternator"/>) and to the strength of the magnets; none
/// where a phase of the pair is open. Resistance between two leads: as listed, open where a phase of the pair is; from
/// a lead to the frame open, unless the winding touches it. What is not listed is not known.
/// </remarks>
internal sealed class GeneratorBench
{
    // Tolerance of a stator's output (tables/tolerances.csv), taken as uniform.
    private static readonly double s_spread =
        PublishedTable
            .Load("tolerances")
            .Read()
            .First(r => r.Text("part") == "stator output")
            .Number("plus") / 100 / Math.Sqrt(3);

    // What an open lead picks up beside the others: common practice, no source.
    private const double StrayVolts = 0.5;

    private readonly IInterpolation? _openVolts;
    private readonly double? _ohms;

    public GeneratorBench(Bike bike)
    {
        _ohms = bike.GeneratorResistance?.Ohms;
        (double Rpm, double Volts)[] listed =
        [
            .. bike
                .Charging.Where(c => c.OpenVoltage is not null && c.Speed.RevolutionsPerMinute > 0)
                .Select(c => (c.Speed.RevolutionsPerMinute, c.OpenVoltage!.Value.Volts))
                .DistinctBy(c => c.RevolutionsPerMinute)
                .OrderBy(c => c.RevolutionsPerMinute),
        ];
        if (listed.Length > 0)
            _openVolts = LinearSpline.InterpolateSorted(
                [0, .. listed.Select(l => l.Rpm)],
                [0, .. listed.Select(l => l.Volts)]
            );
    }

    /// <summary>Whether the list states voltages.</summary>
    public bool HasVolts => _openVolts is not null;

    /// <summary>Whether the list states the resistance.</summary>
    public bool HasOhms => _ohms is not null;

    /// <summary>Voltage between two leads, rms.</summary>
    public double Volts(FaultyHarness harness, in TestPlace test) =>
        IsOpen(harness, test) ? 0 : harness.MagnetShare * Math.Max(0, _openVolts!.Interpolate(test.EngineRpm!.Value));

    /// <summary>Standard deviation of that voltage.</summary>
    public static double Spread(double volts) => Math.Sqrt(Math.Pow(s_spread * volts, 2) + StrayVolts * StrayVolts);

    /// <summary>Resistance between two leads, or from one to the frame.</summary>
    public double Ohms(FaultyHarness harness, in TestPlace test) =>
        test.To == 0 ? harness.IsWindingEarthed ? (_ohms ?? 0) / 2 : double.PositiveInfinity
        : IsOpen(harness, test) ? double.PositiveInfinity
        : _ohms!.Value;

    private static bool IsOpen(FaultyHarness harness, in TestPlace test) =>
        harness.OpenLead > 0 && (harness.OpenLead == test.Index || harness.OpenLead == test.To);
}
