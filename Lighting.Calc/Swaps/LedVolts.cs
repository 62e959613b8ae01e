using Lighting.Calc.Harness;
using Lighting.Calc.Lamps;
using UnitsNet;

namespace Lighting.Calc.Swaps;

/// <summary>The volts of new LEDs against their limit, at the regulator's worst.</summary>
internal static class LedVolts
{
    /// <summary>The highest volts that a sound regulator leaves: the upper end of the usual window, or the bike's charging volts where they are higher.</summary>
    public static ElectricPotential Worst(Bike bike) =>
        ElectricPotential.FromVolts(Math.Max(bike.ChargingVoltage.Volts, SwapConstants.HighestRegulatedVolts * bike.SystemVoltage.Volts / 12));

    public static IEnumerable<Finding> Findings(IReadOnlyCollection<FittedLamp> leds, Bike bike)
    {
        ElectricPotential worst = Worst(bike);
        foreach (FittedLamp lamp in leds)
        {
            LampSpecification led = lamp.Specification;
            if (led.MaximumVoltage is { } most && worst.Volts > most.Volts)
                yield return new Finding(Severity.Fault, lamp.Lamp, Said($"the regulator may leave {worst.Volts:0.0#} V, more than the {most.Volts:0.0#} V that it stands."));
            else if (led.Type == LampType.LedBallast && led.CurrentAt(worst).Amperes / led.ReferenceCurrent.Amperes is var ratio && ratio > 1.1)
                yield return new Finding(Severity.Note, lamp.Lamp, Said($"at the regulator's highest, {worst.Volts:0.0#} V, its ballast lets through {ratio:0.00} times the current of its {led.ReferenceVoltage.Volts:0.0#} V, and {(double)led.PowerAt(worst).Watts:0.00} W instead of {(double)led.ReferencePower.Watts:0.00} W make it warm."));
        }

        string[] unknown = [.. leds.Where(l => l.Specification.MaximumVoltage is null).Select(l => l.Lamp)];
        if (unknown.Length > 0)
            yield return new Finding(Severity.Note, "LED volts", Said($"the most volts are not known of {string.Join(", ", unknown)}: see that they stand {worst.Volts:0.0#} V, the regulator's highest."));
    }

    private static string Said(FormattableString text) => FormattableString.Invariant(text);
}
