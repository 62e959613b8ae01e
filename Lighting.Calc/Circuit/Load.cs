// One load of the solver: which law, its numbers in SI, how many in parallel and which way round.

namespace Lighting.Calc;

/// <summary>A load between two nodes: the law it follows, its two numbers, the quantity in parallel and its
/// polarity.</summary>
/// <remarks>Build one with the factory of its kind; the default value is "no load" and carries no current.</remarks>
internal readonly record struct Load
{
    private Load(LampType kind, double volts, double strength, double quantity, bool reversed, double emf = 0)
    {
        Kind = kind;
        Volts = volts;
        Strength = strength;
        Quantity = quantity;
        Reversed = reversed;
        Emf = emf;
    }

    public LampType Kind { get; }

    /// <summary>Reference voltage of a filament, minimum voltage of a driver, forward voltage of an LED with series
    /// resistor; else unused.</summary>
    public double Volts { get; }

    /// <summary>Reference current of a filament, power of a driver, resistance of a series or plain resistor, current
    /// of a fixed load.</summary>
    public double Strength { get; }

    /// <summary>Equal loads in parallel on the same two nodes; 0 for the default value, which is no load.</summary>
    public double Quantity { get; }

    /// <summary>True when the load's own plus sits on the return node; matters to all but filaments and
    /// resistors.</summary>
    public bool Reversed { get; }

    /// <summary>Voltage at which a resistor carries no current: that of a battery behind its resistance.</summary>
    public double Emf { get; }

    public bool IsBattery => Emf != 0;

    public static Load Filament(double referenceVolts, double referenceAmperes, double quantity = 1) =>
        Create(LampType.Filament, referenceVolts, referenceAmperes, quantity);

    public static Load Led(double powerWatts, double minimumVolts, double quantity = 1) =>
        Create(LampType.Led, minimumVolts, powerWatts, quantity);

    public static Load LedResistor(double forwardVolts, double ballastOhms, double quantity = 1) =>
        Create(LampType.LedResistor, forwardVolts, ballastOhms, quantity);

    public static Load Fixed(double amperes, double quantity = 1) =>
        Create(LampType.Fixed, FixedLoadLaw.RampVolts, amperes, quantity);

    public static Load Resistor(double resistanceOhms, double quantity = 1) =>
        Create(LampType.Resistor, 1, resistanceOhms, quantity);

    /// <summary>A battery: its current counts into its plus, below zero while it discharges.</summary>
    public static Load Battery(double emfVolts, double resistanceOhms)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(resistanceOhms);
        return new Load(LampType.Resistor, 1, resistanceOhms, 1, reversed: false, emfVolts);
    }

    /// <summary>The same load with its two wires exchanged.</summary>
    public Load Reverse() => new(Kind, Volts, Strength, Quantity, !Reversed, Emf);

    /// <summary>Current and slope with the voltage from the load's own plus to its own minus.</summary>
    public LawPoint At(double volts)
    {
        LawPoint one = Kind switch
        {
            LampType.Filament or LampType.Halogen => FilamentLaw.At(volts, Volts, Strength),
            LampType.Led => LedDriverLaw.At(volts, Strength, Volts),
            LampType.LedResistor => LedResistorLaw.At(volts, Volts, Strength),
            LampType.Fixed => FixedLoadLaw.At(volts, Strength),
            _ => new LawPoint((volts - Emf) / Strength, 1 / Strength),
        };
        return new LawPoint(Quantity * one.CurrentAmperes, Quantity * one.SlopeSiemens);
    }

    /// <summary>Co-content ∫₀ᵛ I dV in watts: the solver goes downhill on the sum of it over all elements.</summary>
    /// <remarks>Source: W. Millar, "Some general theorems for non-linear systems possessing resistance",
    /// 1951.</remarks>
    public double CoContentWatts(double volts) =>
        Quantity
        * Kind switch
        {
            LampType.Filament or LampType.Halogen => FilamentLaw.CoContentWatts(volts, Volts, Strength),
            LampType.Led => LedDriverLaw.CoContentWatts(volts, Strength, Volts),
            LampType.LedResistor => LedResistorLaw.CoContentWatts(volts, Volts, Strength),
            LampType.Fixed => FixedLoadLaw.CoContentWatts(volts, Strength),
            _ => (volts - Emf) * (volts - Emf) / (2 * Strength),
        };

    private static Load Create(LampType kind, double volts, double strength, double quantity)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(volts);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(quantity);
        if (kind is LampType.LedResistor or LampType.Resistor)
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(strength);
        else
            ArgumentOutOfRangeException.ThrowIfNegative(strength);
        if (!double.IsFinite(volts + strength + quantity))
            throw new ArgumentOutOfRangeException(nameof(strength), "A load's numbers must be finite.");
        return new Load(kind, volts, strength, quantity, reversed: false);
    }
}
