using UnitsNet;

namespace Lighting.Calc;

/// <summary>The volts of new LEDs against their limit, at the regulator's worst.</summary>
internal static class LedVolts
{
    // A tenth over the rated current is worth a word: common practice, no source.
    private const double WarmRatio = 1.1;

    /// <summary>The highest volts that a sound regulator leaves: the upper end of the usual window, or the bike's charging volts where they are higher.</summary>
    public static ElectricPotential Worst(Bike bike) =>
        ElectricPotential.FromVolts(Math.Max(bike.ChargingVoltage.Volts, SwapConstants.HighestRegulatedVolts * bike.SystemVoltage.Volts / 12));

    public static IEnumerable<Finding> Findings(IReadOnlyCollection<FittedLamp> leds, Bike bike, DirectLightingReport? direct)
    {
        ElectricPotential worst = direct?.Points is { IsEmpty: false } points ? points.MaxBy(p => p.TerminalVoltage.Volts)!.TerminalVoltage : Worst(bike);
        string source = direct is null ? "the regulator" : "the lighting coil";
        foreach (FittedLamp lamp in leds)
        {
            LampSpecification led = lamp.Specification;
            if (led.MaximumVoltage is { } most && worst.Volts > most.Volts)
                yield return new Finding(Severity.Fault, lamp.Lamp, Said($"{source} may give {worst.Volts:0.0#} V, more than the {most.Volts:0.0#} V that it stands."));
        }

        FittedLamp[] warm = [.. leds.Where(l => l.Specification.Type == LampType.LedResistor && CurrentRatio(l.Specification, worst) > WarmRatio)];
        if (warm.Length > 0)
            yield return new Finding(Severity.Note, "LED ballast", Said($"at {worst.Volts:0.0#} V, the highest of {source}, the ballast lets through more than its rated current: {string.Join(", ", warm.Select(l => Said($"{l.Lamp} {CurrentRatio(l.Specification, worst):0.00} times")))}."));
        string[] unknown = [.. leds.Where(l => l.Specification.MaximumVoltage is null).Select(l => l.Lamp)];
        if (unknown.Length > 0)
            yield return new Finding(Severity.Note, "LED volts", Said($"the most volts are not known of {string.Join(", ", unknown)}: see that they stand {worst.Volts:0.0#} V, the highest of {source}."));
    }

    private static double CurrentRatio(LampSpecification led, ElectricPotential voltage) => led.CurrentAt(voltage).Amperes / led.ReferenceCurrent.Amperes;

    private static string Said(FormattableString text) => FormattableString.Invariant(text);
}
