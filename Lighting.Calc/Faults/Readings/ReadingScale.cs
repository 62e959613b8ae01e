namespace Lighting.Calc;

/// <summary>The error of each instrument and the range over which a blunder may lie.</summary>
internal sealed class ReadingScale(FaultCircuit circuit)
{
    /// <summary>Maximum current of an ammeter: a higher current blows its fuse. Common practice, no source.</summary>
    public const double MostAmperes = 20;

    private readonly FaultFindingOptions _options = circuit.Options;

    public double SupplyTolerance => circuit.Supply.Tolerance;

    public double Blunder => _options.BlunderShare.DecimalFractions;

    /// <summary>Standard deviation of the instrument; a limit of error ±a is taken as uniform, a/√3.</summary>
    public double Sigma(Instrument instrument, double value)
    {
        double accuracy = _options.MeterAccuracy.DecimalFractions / Math.Sqrt(3);
        return instrument switch
        {
            Instrument.Meter => Math.Sqrt(Math.Pow(accuracy * value, 2) + Math.Pow(_options.MeterFloor.Volts, 2)),
            Instrument.Ammeter => Math.Sqrt(Math.Pow(accuracy * value, 2) + Math.Pow(_options.AmmeterFloor.Amperes, 2)),
            _ => accuracy,
        };
    }

    /// <summary>Density of a reading that is plainly wrong, uniform over what the instrument can show.</summary>
    public double BlunderDensity(Instrument instrument) =>
        instrument switch
        {
            Instrument.Meter => 1 / (1.1 * circuit.Supply.OpenVolts),
            Instrument.Ammeter => 1 / (1.1 * MostAmperes),
            Instrument.Ohmmeter => 1
                / (OhmScale.Logarithm(double.PositiveInfinity, _options) - OhmScale.Logarithm(0, _options)),
            _ => 0.25,
        };
}
