namespace Lighting.Calc;

/// <summary>A fitted lamp as the circuit's load.</summary>
internal static class CircuitLoad
{
    /// <remarks>On a positive-earth bike the feed is the negative side: a listed LED is taken as fitted the right way
    /// round.</remarks>
    public static Load Of(LampSpecification lamp, int quantity, Earth earth)
    {
        double volts = lamp.ReferenceVoltage.Volts,
            amperes = lamp.ReferenceCurrent.Amperes;
        Load load = lamp.Type switch
        {
            LampType.Filament or LampType.Halogen => Load.Filament(volts, amperes, quantity),
            LampType.Led => Load.Led(volts * amperes, lamp.MinimumVoltage!.Value.Volts, quantity),
            LampType.LedResistor => Load.LedResistor(
                lamp.MinimumVoltage!.Value.Volts,
                (volts - lamp.MinimumVoltage.Value.Volts) / amperes,
                quantity
            ),
            LampType.Fixed => Load.Fixed(amperes, quantity),
            LampType.Resistor => Load.Resistor(volts / amperes, quantity),
            _ => throw new InvalidOperationException($"Unknown lamp type {lamp.Type}."),
        };
        return earth == Earth.Negative ? load : load.Reverse();
    }
}
