using System.Diagnostics;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Electrical and light data of a lamp: its current–voltage law and the reference point of the law. One
/// filament of a two-filament lamp.</summary>
/// <remarks>
/// The reference point is the published test or design voltage with the current there, not the power marked on the cap;
/// for a lamp with only voltage and power published it is those two.
/// </remarks>
public sealed record LampSpecification
{
    private LampSpecification(
        LampType type,
        ElectricPotential referenceVoltage,
        ElectricCurrent referenceCurrent,
        ElectricPotential? minimumVoltage
    )
    {
        Type = type;
        ReferenceVoltage = referenceVoltage;
        ReferenceCurrent = referenceCurrent;
        MinimumVoltage = minimumVoltage;
    }

    /// <summary>Current–voltage law.</summary>
    public LampType Type { get; }

    /// <summary>Voltage of the reference point, above zero.</summary>
    public ElectricPotential ReferenceVoltage { get; }

    /// <summary>Current of one lamp at <see cref="ReferenceVoltage"/>, above zero.</summary>
    public ElectricCurrent ReferenceCurrent { get; }

    /// <summary>Drop-out voltage of an LED driver, or forward voltage of an LED with series resistor; otherwise
    /// null.</summary>
    public ElectricPotential? MinimumVoltage { get; }

    /// <summary>The published code, such as <c>P21/5W stop</c>; null for a lamp described by its figures.</summary>
    public string? Code { get; init; }

    /// <summary>Light of one lamp at the reference voltage, above zero; null if not published.</summary>
    public LuminousFlux? ReferenceFlux { get; init; }

    /// <summary>Voltage at which the light is published, above zero; null where that is
    /// <see cref="ReferenceVoltage"/>.</summary>
    public ElectricPotential? FluxVoltage { get; init; }

    /// <summary>Maximum continuous voltage of an LED, highest supply voltage of a halogen lamp; null if
    /// unknown.</summary>
    public ElectricPotential? MaximumVoltage { get; init; }

    /// <summary>Whether it is one to look at: no ignition, no horn.</summary>
    internal bool GivesLight => RelativeLightAt(ReferenceVoltage) is not null;

    /// <summary>Whether it is an LED, which depends on polarity.</summary>
    internal bool HasPolarity => Type is LampType.Led or LampType.LedResistor;

    /// <summary>Power of one lamp at the reference point.</summary>
    public Power ReferencePower => ReferenceVoltage * ReferenceCurrent;

    /// <summary>Creates a lamp from the voltage and power of its reference point.</summary>
    /// <param name="type">The law, one of <see cref="LampType"/>. For <see cref="LampType.Led"/> the power is
    /// constant.</param>
    /// <param name="voltage">Reference voltage, above zero.</param>
    /// <param name="power">Power at that voltage, above zero.</param>
    /// <param name="minimumVoltage">Drop-out voltage of an LED driver or forward voltage of an LED with series
    /// resistor, above zero and below <paramref name="voltage"/>; needed by those two types only (see
    /// <see cref="DefaultMinimumVoltage"/>).</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static LampSpecification FromPower(
        LampType type,
        ElectricPotential voltage,
        Power power,
        ElectricPotential? minimumVoltage = null
    )
    {
        if (!(voltage.Volts > 0))
            throw new ArgumentOutOfRangeException(
                nameof(voltage),
                voltage,
                "Reference voltage must be greater than zero."
            );
        return FromCurrent(type, voltage, power / voltage, minimumVoltage);
    }

    /// <summary>Creates a lamp from the voltage and current of its reference point.</summary>
    /// <param name="type">The law, one of <see cref="LampType"/>. For <see cref="LampType.Led"/> voltage times current
    /// is the constant power.</param>
    /// <param name="voltage">Reference voltage, above zero.</param>
    /// <param name="current">Current at that voltage, above zero.</param>
    /// <param name="minimumVoltage">As in <see cref="FromPower"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static LampSpecification FromCurrent(
        LampType type,
        ElectricPotential voltage,
        ElectricCurrent current,
        ElectricPotential? minimumVoltage = null
    )
    {
        if (!(voltage.Volts > 0))
            throw new ArgumentOutOfRangeException(
                nameof(voltage),
                voltage,
                "Reference voltage must be greater than zero."
            );
        if (!Enum.IsDefined(type))
            throw new ArgumentOutOfRangeException(nameof(type), type, "Lamp type must be one of the enumeration.");
        if (!(current.Amperes > 0))
            throw new ArgumentOutOfRangeException(
                nameof(current),
                current,
                "Reference current must be greater than zero."
            );
        bool needsMinimum = type is LampType.Led or LampType.LedResistor;
        ElectricPotential? minimum = needsMinimum ? minimumVoltage ?? DefaultMinimumVoltage(type, voltage) : null;
        if (minimum is { } m && !(m.Volts > 0 && m.Volts < voltage.Volts))
            throw new ArgumentOutOfRangeException(
                nameof(minimumVoltage),
                m,
                "Minimum voltage must be between zero and the reference voltage."
            );
        return new LampSpecification(type, voltage, current, minimum);
    }

    /// <summary>Minimum voltage assumed where a list gives none: half the reference voltage for a driver, 0.7 of it
    /// with a series resistor.</summary>
    /// <remarks>Common practice, no source: buck drivers for 12 V hold to about 6 V; three white LEDs in series take
    /// about 9 V of 13 V.</remarks>
    /// <param name="type"><see cref="LampType.Led"/> or <see cref="LampType.LedResistor"/>; for other types the value
    /// of a driver.</param>
    /// <param name="voltage">Reference voltage, above zero.</param>
    public static ElectricPotential DefaultMinimumVoltage(LampType type, ElectricPotential voltage) =>
        voltage * (type == LampType.LedResistor ? 0.7 : 0.5);

    /// <summary>Current of one lamp at the voltage across it, feed to return.</summary>
    /// <remarks>A negative voltage gives a negative current in a filament and a leakage current in an LED.</remarks>
    /// <param name="voltage">Voltage, feed to return; any sign.</param>
    public ElectricCurrent CurrentAt(ElectricPotential voltage) =>
        ElectricCurrent.FromAmperes(At(voltage.Volts).CurrentAmperes);

    /// <summary>Power of one lamp at the voltage across it.</summary>
    /// <param name="voltage">Voltage, feed to return; any sign.</param>
    public Power PowerAt(ElectricPotential voltage) =>
        Power.FromWatts(voltage.Volts * At(voltage.Volts).CurrentAmperes);

    /// <summary>Light relative to that at the reference voltage; null for a load that gives no light.</summary>
    /// <remarks>
    /// Filaments by the exponent law (V/Vn)^3.4, of halogen lamps (V/Vn)^3 (tables/lamp-exponents.csv; from half to 1.2
    /// times Vn), whatever the sign; an LED in proportion to the current through the diode (a driver's constant above
    /// its minimum voltage).
    /// </remarks>
    /// <param name="voltage">Voltage, feed to return; any sign.</param>
    public Ratio? RelativeLightAt(ElectricPotential voltage) =>
        Type switch
        {
            LampType.Filament or LampType.Halogen => Ratio.FromDecimalFractions(
                FilamentLaw.RelativeLight(Type, voltage.Volts, ReferenceVoltage.Volts)
            ),
            LampType.Led => Ratio.FromDecimalFractions(
                voltage.Volts * At(voltage.Volts).CurrentAmperes / (ReferenceVoltage.Volts * ReferenceCurrent.Amperes)
            ),
            LampType.LedResistor => Ratio.FromDecimalFractions(
                Math.Max(0, At(voltage.Volts).CurrentAmperes / ReferenceCurrent.Amperes)
            ),
            _ => null,
        };

    /// <summary>Light against the published light, which is that at <see cref="FluxVoltage"/>; null for a load that
    /// gives no light, and for an LED whose light is not published.</summary>
    /// <remarks>By it lamps with different reference points compare at one voltage.</remarks>
    /// <param name="voltage">Voltage, feed to return; any sign.</param>
    public Ratio? PublishedLightAt(ElectricPotential voltage) =>
        Type switch
        {
            LampType.Filament or LampType.Halogen => Ratio.FromDecimalFractions(
                FilamentLaw.RelativeLight(Type, voltage.Volts, (FluxVoltage ?? ReferenceVoltage).Volts)
            ),
            LampType.Led or LampType.LedResistor when ReferenceFlux is null => null,
            _ => RelativeLightAt(voltage),
        };

    /// <summary>Life relative to that at the reference voltage, filaments only: (V/Vn)^−13; null otherwise, below a
    /// tenth of the reference voltage, and of a halogen lamp below nine tenths, where its cycle stops.</summary>
    /// <remarks>
    /// Source: tables/lamp-exponents.csv, for voltages near the reference; the floor of the halogen cycle from memory.
    /// </remarks>
    /// <param name="voltage">Voltage, feed to return.</param>
    public Ratio? RelativeLifeAt(ElectricPotential voltage)
    {
        double ratio = voltage.Volts / ReferenceVoltage.Volts;
        return
            (Type == LampType.Filament && ratio >= 0.1)
            || (Type == LampType.Halogen && ratio >= FilamentLaw.HalogenCycleRatio)
            ? Ratio.FromDecimalFractions(Math.Pow(ratio, FilamentLaw.LifeExponent))
            : null;
    }

    internal LawPoint At(double volts)
    {
        double vn = ReferenceVoltage.Volts,
            amperes = ReferenceCurrent.Amperes;
        return Type switch
        {
            LampType.Filament or LampType.Halogen => FilamentLaw.At(volts, vn, amperes),
            LampType.Led => LedDriverLaw.At(volts, vn * amperes, MinimumVoltage!.Value.Volts),
            LampType.LedResistor => LedResistorLaw.At(
                volts,
                MinimumVoltage!.Value.Volts,
                (vn - MinimumVoltage.Value.Volts) / amperes
            ),
            LampType.Fixed => FixedLoadLaw.At(volts, amperes),
            LampType.Resistor => new LawPoint(amperes / vn * volts, amperes / vn),
            _ => throw new UnreachableException($"Unknown lamp type {Type}."),
        };
    }
}
