using UnitsNet;

namespace Lighting.Calc;

/// <summary>Voltage of new LEDs against their limit, at the regulator's worst case.</summary>
internal static class LedVolts
{
    // A tenth over the rated current is worth a word: common practice, no source.
    private const double WarmRatio = 1.1;

    /// <summary>Highest voltage that a sound regulator leaves: the upper end of the usual window, or the bike's
    /// charging or Zener voltage where that is higher.</summary>
    public static ElectricPotential Worst(Bike bike) =>
        ElectricPotential.FromVolts(
            Math.Max(
                Math.Max(bike.ChargingVoltage.Volts, bike.ZenerVoltage?.Volts ?? 0),
                ChargingConstants.HighestRegulatedVolts * bike.SystemVoltage.Volts / 12
            )
        );

    public static IEnumerable<Finding> Findings(
        IReadOnlyCollection<FittedLamp> leds,
        Bike bike,
        DirectLightingReport? direct
    )
    {
        ElectricPotential worst = direct?.Points is { IsEmpty: false } points
            ? points.MaxBy(p => p.TerminalVoltage.Volts)!.TerminalVoltage
            : Worst(bike);
        string source = direct is null ? "the regulator" : "the lighting coil";
        // The margin of each LED differs, so that each has its figure.
        foreach (FittedLamp led in leds.Where(l => l.Specification.MaximumVoltage is { } most && worst > most))
            yield return new Finding(FindingKind.LedOvervoltage, Severity.Fault, led.Lamp)
            {
                Value = worst,
                Limit = led.Specification.MaximumVoltage,
                Detail = source,
            };
        FittedLamp[] warm =
        [
            .. leds.Where(l =>
                l.Specification.Type == LampType.LedResistor && CurrentRatio(l.Specification, worst) > WarmRatio
            ),
        ];
        if (warm.Length > 0)
            yield return new Finding(FindingKind.LedCurrentHigh, Severity.Note, "LED current")
            {
                Value = worst,
                Figures =
                [
                    .. warm.Select(l =>
                        (IQuantity)Ratio.FromPercent(Math.Round(100 * CurrentRatio(l.Specification, worst)))
                    ),
                ],
                Parts = [.. warm.Select(l => l.Lamp)],
                Detail = source,
            };
        string[] unknown = [.. leds.Where(l => l.Specification.MaximumVoltage is null).Select(l => l.Lamp)];
        if (unknown.Length > 0)
            yield return new Finding(FindingKind.LedMaximumUnknown, Severity.Note, "LED voltage")
            {
                Value = worst,
                Parts = [.. unknown],
                Detail = source,
            };
    }

    private static double CurrentRatio(LampSpecification led, ElectricPotential voltage) =>
        led.CurrentAt(voltage).Amperes / led.ReferenceCurrent.Amperes;
}
