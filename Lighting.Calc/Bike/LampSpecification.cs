using System.Diagnostics;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>What a lamp draws and gives: its law and the reference point that fixes the law. One filament of a two-filament lamp.</summary>
/// <remarks>
/// The reference point is the published test or design volts with the amps there, not the watts on the cap;
/// for a lamp known only by volts and watts it is those two. Build one with the factory methods.
/// </remarks>
public sealed record LampSpecification
{
    private LampSpecification(LampType type, ElectricPotential referenceVoltage, ElectricCurrent referenceCurrent, ElectricPotential? minimumVoltage)
    {
        Type = type;
        ReferenceVoltage = referenceVoltage;
        ReferenceCurrent = referenceCurrent;
        MinimumVoltage = minimumVoltage;
    }

    /// <summary>How the current answers to the volts.</summary>
    public LampType Type { get; }

    /// <summary>Volts of the reference point, above zero.</summary>
    public ElectricPotential ReferenceVoltage { get; }

    /// <summary>Current of one lamp at <see cref="ReferenceVoltage"/>, above zero.</summary>
    public ElectricCurrent ReferenceCurrent { get; }

    /// <summary>LED driver: the volts below which it cannot hold its power. LED ballast: the forward volts. Otherwise null.</summary>
    public ElectricPotential? MinimumVoltage { get; }

    /// <summary>The published code, such as <c>P21/5W stop</c>; null for a lamp described by its figures.</summary>
    public string? Code { get; init; }

    /// <summary>Light of one lamp at the reference volts, above zero; null where none is published.</summary>
    public LuminousFlux? ReferenceFlux { get; init; }

    /// <summary>Voltage at which the light is published, above zero; null where that is <see cref="ReferenceVoltage"/>.</summary>
    public ElectricPotential? FluxVoltage { get; init; }

    /// <summary>The most volts an LED stands without end; null where its limit is not known.</summary>
    public ElectricPotential? MaximumVoltage { get; init; }

    /// <summary>Whether it is an LED, which lights one way round only.</summary>
    internal bool HasPolarity => Type is LampType.Led or LampType.LedBallast;

    /// <summary>Power of one lamp at the reference point.</summary>
    public Power ReferencePower => ReferenceVoltage * ReferenceCurrent;

    /// <summary>Makes a lamp from the volts and watts of its reference point.</summary>
    /// <param name="type">The law, one of <see cref="LampType"/>. For <see cref="LampType.Led"/> the watts are the constant power.</param>
    /// <param name="voltage">Reference volts, above zero.</param>
    /// <param name="power">Watts at those volts, above zero.</param>
    /// <param name="minimumVoltage">Drop-out volts of an LED driver or forward volts of an LED with a ballast, above zero and
    /// below <paramref name="voltage"/>; needed by those two types only (see <see cref="DefaultMinimumVoltage"/>).</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static LampSpecification FromPower(LampType type, ElectricPotential voltage, Power power, ElectricPotential? minimumVoltage = null)
    {
        if (!(voltage.Volts > 0))
            throw new ArgumentOutOfRangeException(nameof(voltage), voltage, "A lamp's reference volts are above zero.");
        return FromCurrent(type, voltage, power / voltage, minimumVoltage);
    }

    /// <summary>Makes a lamp from the volts and amps of its reference point.</summary>
    /// <param name="type">The law, one of <see cref="LampType"/>. For <see cref="LampType.Led"/> volts times amps are the constant power.</param>
    /// <param name="voltage">Reference volts, above zero.</param>
    /// <param name="current">Amps at those volts, above zero.</param>
    /// <param name="minimumVoltage">As in <see cref="FromPower"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static LampSpecification FromCurrent(LampType type, ElectricPotential voltage, ElectricCurrent current, ElectricPotential? minimumVoltage = null)
    {
        if (!(voltage.Volts > 0))
            throw new ArgumentOutOfRangeException(nameof(voltage), voltage, "A lamp's reference volts are above zero.");
        if (!Enum.IsDefined(type))
            throw new ArgumentOutOfRangeException(nameof(type), type, "A lamp follows one of the known laws.");
        if (!(current.Amperes > 0))
            throw new ArgumentOutOfRangeException(nameof(current), current, "A lamp's reference current is above zero.");
        bool needsMinimum = type is LampType.Led or LampType.LedBallast;
        ElectricPotential? minimum = needsMinimum ? minimumVoltage ?? DefaultMinimumVoltage(type, voltage) : null;
        if (minimum is { } m && !(m.Volts > 0 && m.Volts < voltage.Volts))
            throw new ArgumentOutOfRangeException(nameof(minimumVoltage), m, "The minimum volts of an LED lie above zero and below its reference volts.");
        return new LampSpecification(type, voltage, current, minimum);
    }

    /// <summary>Minimum volts assumed where a list gives none: half the reference volts for a driver, 0.7 of them for a ballast.</summary>
    /// <remarks>Common practice, no source: buck drivers for 12 V hold to about 6 V; three white LEDs in series take about 9 V of 13 V.</remarks>
    /// <param name="type"><see cref="LampType.Led"/> or <see cref="LampType.LedBallast"/>; the others have none, and get a driver's.</param>
    /// <param name="voltage">Reference volts, above zero.</param>
    public static ElectricPotential DefaultMinimumVoltage(LampType type, ElectricPotential voltage) =>
        voltage * (type == LampType.LedBallast ? 0.7 : 0.5);

    /// <summary>Current of one lamp at the volts across it, feed to return.</summary>
    /// <remarks>Negative volts give a negative current in a filament and a leak in an LED.</remarks>
    /// <param name="voltage">Volts, feed to return; any sign.</param>
    public ElectricCurrent CurrentAt(ElectricPotential voltage) => ElectricCurrent.FromAmperes(At(voltage.Volts).CurrentAmperes);

    /// <summary>Power of one lamp at the volts across it.</summary>
    /// <param name="voltage">Volts, feed to return; any sign.</param>
    public Power PowerAt(ElectricPotential voltage) => Power.FromWatts(voltage.Volts * At(voltage.Volts).CurrentAmperes);

    /// <summary>Light against the light at the reference volts; null for a load that gives no light.</summary>
    /// <remarks>
    /// Filaments by the exponent law (V/Vn)^3.4 (tables/lamp-exponents.csv; from half to 1.2 times Vn), whatever the sign; an LED in proportion to the current through the diode
    /// (a driver's constant above its minimum volts).
    /// </remarks>
    /// <param name="voltage">Volts, feed to return; any sign.</param>
    public Ratio? RelativeLightAt(ElectricPotential voltage) => Type switch
    {
        LampType.Filament or LampType.Halogen => Ratio.FromDecimalFractions(FilamentLaw.RelativeLight(voltage.Volts, ReferenceVoltage.Volts)),
        LampType.Led => Ratio.FromDecimalFractions(voltage.Volts * At(voltage.Volts).CurrentAmperes / (ReferenceVoltage.Volts * ReferenceCurrent.Amperes)),
        LampType.LedBallast => Ratio.FromDecimalFractions(Math.Max(0, At(voltage.Volts).CurrentAmperes / ReferenceCurrent.Amperes)),
        _ => null,
    };

    /// <summary>Light against the published light, which is that at <see cref="FluxVoltage"/>; null for a load that gives no light, and for an LED whose light is not published.</summary>
    /// <remarks>By it lamps with different reference points compare at one voltage.</remarks>
    /// <param name="voltage">Voltage, feed to return; any sign.</param>
    public Ratio? PublishedLightAt(ElectricPotential voltage) => Type switch
    {
        LampType.Filament or LampType.Halogen => Ratio.FromDecimalFractions(FilamentLaw.RelativeLight(voltage.Volts, (FluxVoltage ?? ReferenceVoltage).Volts)),
        LampType.Led or LampType.LedBallast when ReferenceFlux is null => null,
        _ => RelativeLightAt(voltage),
    };

    /// <summary>Life against the life at the reference volts, filaments only: (V/Vn)^−13; null otherwise or below a tenth of the reference volts.</summary>
    /// <remarks>Source: tables/lamp-exponents.csv, for volts near the reference.</remarks>
    /// <param name="voltage">Volts, feed to return.</param>
    public Ratio? RelativeLifeAt(ElectricPotential voltage)
    {
        double ratio = voltage.Volts / ReferenceVoltage.Volts;
        return Type is LampType.Filament or LampType.Halogen && ratio >= 0.1
            ? Ratio.FromDecimalFractions(Math.Pow(ratio, FilamentLaw.LifeExponent))
            : null;
    }

    internal LawPoint At(double volts)
    {
        double vn = ReferenceVoltage.Volts, amperes = ReferenceCurrent.Amperes;
        return Type switch
        {
            LampType.Filament or LampType.Halogen => FilamentLaw.At(volts, vn, amperes),
            LampType.Led => LedDriverLaw.At(volts, vn * amperes, MinimumVoltage!.Value.Volts),
            LampType.LedBallast => LedBallastLaw.At(volts, MinimumVoltage!.Value.Volts, (vn - MinimumVoltage.Value.Volts) / amperes),
            LampType.Fixed => FixedLoadLaw.At(volts, amperes),
            LampType.Resistor => new LawPoint(amperes / vn * volts, amperes / vn),
            _ => throw new UnreachableException($"Unknown lamp type {Type}."),
        };
    }
}
