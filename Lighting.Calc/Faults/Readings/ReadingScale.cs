namespace Lighting.Calc;

/// <summary>The error of each instrument and the range over which a blunder may lie.</summary>
internal sealed class ReadingScale(FaultCircuit circuit)
{
    /// <summary>Maximum current of an ammeter: a higher current blows its fuse. Common practice, no source.</summary>
    public const double MostAmperes = 20;

    /// <summary>Share of the readings that something not listed makes nothing: 0 V, 0 A, an open circuit.</summary>
    public const double NothingShare = 0.2;

    /// <summary>Share of those that it makes all: the battery's voltage, no resistance.</summary>
    public const double AllShare = 0.2;

    private readonly FaultFindingOptions _options = circuit.Options;

    public double SupplyTolerance => circuit.Supply.Tolerance;

    public double Blunder => _options.BlunderShare.DecimalFractions;

    // An ammeter on its range of milliamperes, in the lead of the battery.
    private const double DrainFloorAmperes = 0.001;

    /// <summary>Standard deviation of the instrument in its place.</summary>
    public double Sigma(in TestPlace place, double value) =>
        circuit.IsInBatteryLead(place)
            ? Math.Sqrt(
                Math.Pow(_options.MeterAccuracy.DecimalFractions / Math.Sqrt(3) * value, 2)
                    + Math.Pow(Math.Min(DrainFloorAmperes, _options.AmmeterFloor.Amperes), 2)
            )
            : place is { Instrument: Instrument.Meter, To: < 0, IsOnGenerator: false }
            && Math.Abs(value) < DeadVolts
            && circuit.Sides.IsLive(circuit.Points[place.Index])
                ? Math.Max(DeadVolts / 4, Sigma(place.Instrument, value))
            : Sigma(place.Instrument, value);

    /// <summary>What a wire that is dead, or joined to nothing, shows at most: common practice, no source.</summary>
    public const double DeadVolts = 0.2;

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
            Instrument.Meter => 1 / (1.1 * circuit.MostVolts),
            Instrument.Ammeter => 1 / (1.1 * MostAmperes),
            Instrument.Ohmmeter => 1
                / (OhmScale.Logarithm(double.PositiveInfinity, _options) - OhmScale.Logarithm(0, _options)),
            _ => 0.25,
        };

    /// <summary>The same in its place: no drain is a milliampere or less.</summary>
    public double BroadDensity(in TestPlace place, double value)
    {
        const double drain = 2 * DrainFloorAmperes;
        return circuit.IsInBatteryLead(place)
            ? NothingShare * Math.Exp(-Math.Pow(value / drain, 2) / 2) / (Math.Sqrt(2 * Math.PI) * drain)
                + (1 - NothingShare) * BlunderDensity(place.Instrument)
            : BroadDensity(place.Instrument, value);
    }

    /// <summary>Density of a reading that something not listed has changed: often nothing or all, such as 0 V or the
    /// battery's voltage, else anything; common practice, no source.</summary>
    public double BroadDensity(Instrument instrument, double value)
    {
        double volts = circuit.Supply.FullVolts,
            anything = BlunderDensity(instrument);
        return instrument switch
        {
            Instrument.Meter => NothingShare * At(0, 0.1)
                + AllShare * At(volts, 0.03 * volts)
                + (1 - NothingShare - AllShare) * anything,
            Instrument.Ammeter => NothingShare * At(0, 0.04) + (1 - NothingShare) * anything,
            Instrument.Ohmmeter => NothingShare * At(OhmScale.Logarithm(double.PositiveInfinity, _options), 0.3)
                + AllShare * At(OhmScale.Logarithm(0, _options), 0.5)
                + (1 - NothingShare - AllShare) * anything,
            _ => BroadLook((Brightness)(int)value),
        };

        double At(double mean, double sigma) =>
            Math.Exp(-Math.Pow((value - mean) / sigma, 2) / 2) / (Math.Sqrt(2 * Math.PI) * sigma);
    }

    /// <summary>Density of a reading that something not listed has made other than what it resembles: as on a healthy
    /// bike, or anything.</summary>
    public double ChangedDensity(TestPlace place, double value, in Prediction healthy)
    {
        double fits;
        if (place.Instrument.IsLook())
        {
            double sigma = Math.Sqrt(healthy.Sigma * healthy.Sigma + healthy.Own * healthy.Own);
            fits = LookScale.Probability((Brightness)(int)value, healthy.Value, sigma);
        }
        else
        {
            double own = Sigma(place, value),
                supply = healthy.Battery * SupplyTolerance,
                off = value - healthy.Value;
            double variance = own * own + healthy.Own * healthy.Own + healthy.Sigma * healthy.Sigma + supply * supply;
            fits = Math.Exp(-off * off / (2 * variance)) / Math.Sqrt(2 * Math.PI * variance);
        }

        return NotListed.Healthy * fits + (1 - NotListed.Healthy) * BroadDensity(place, value);
    }

    /// <summary>The same for a look.</summary>
    public static double BroadLook(Brightness look) =>
        look switch
        {
            Brightness.Dark => 0.5,
            Brightness.Bright => 0.1,
            _ => 0.2,
        };
}
