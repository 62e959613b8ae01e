using System.Collections.Immutable;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Looks over the direct lighting of one setting.</summary>
internal static class DirectLightingReporter
{
    /// <summary>Volts over the reference volts above which a filament lives less than a quarter of its time, (V/Vn)^−13: 1.11.</summary>
    private static readonly double s_shortLife = Math.Pow(0.25, 1 / FilamentLaw.LifeExponent);

    /// <summary>Volts over the reference volts at which the filament laws end.</summary>
    private const double BurnsOut = 1.2;

    public static DirectLightingReport Report(DirectLighting lighting, Setting setting, IEnumerable<RotationalSpeed> speeds)
    {
        ImmutableArray<RotationalSpeed> ordered = [.. speeds.OrderBy(s => s.RevolutionsPerMinute)];
        if (ordered.IsEmpty)
            throw new ArgumentException("Direct lighting is looked at over one or more engine speeds.", nameof(speeds));
        ImmutableArray<DirectLightingPoint> points = lighting.Over(ordered, setting);
        RotationalSpeed fastest = ordered[^1];
        ImmutableArray<DirectLightingChange> losses = [.. points[^1].Lamps.Where(IsLit).Select(l => lighting.Lost(l.Lamp.Lamp, fastest, setting))];
        ShuntRegulatorLoad regulator = lighting.Shunt(lighting.Bike.ChargingVoltage, fastest, setting);
        return new DirectLightingReport
        {
            Setting = setting,
            Points = points,
            Losses = losses,
            Regulator = regulator,
            Findings = [.. points[^1].Lamps.Where(IsLit).SelectMany(l => OfLamp(l, points)).Concat(losses.SelectMany(OfLoss)).Concat(OfRegulator(regulator, points[^1])).Concat(OfFit(lighting.Fit)).OrderByDescending(f => f.Severity)],
        };
    }

    private static bool IsLit(LampState state) => state.Current.Amperes > 1e-3;

    private static IEnumerable<Finding> OfLamp(LampState fast, ImmutableArray<DirectLightingPoint> points)
    {
        string rpm = Text(points[^1].Speed.RevolutionsPerMinute, "0");
        LampSpecification lamp = fast.Lamp.Specification;
        if (lamp.Type is LampType.Led or LampType.LedResistor)
            yield return new Finding(Severity.Caution, fast.Lamp.Lamp, "An LED on alternating current lights in one half of the wave unless it has a rectifier of its own, and sees the peak, 1.4 times the volts given here.");
        if (!IsFilament(fast))
            yield break;
        double ratio = Over(fast);
        if (ratio > s_shortLife)
            yield return new Finding(
                ratio > BurnsOut ? Severity.Fault : Severity.Caution,
                fast.Lamp.Lamp,
                ratio > BurnsOut
                    ? $"At {rpm} rpm it gets {Text(fast.Voltage.Volts, "0.0")} V, {Text(ratio, "0.00")} times its {Text(lamp.ReferenceVoltage.Volts, "0.0")} V: it burns out."
                    : $"At {rpm} rpm it gets {Text(fast.Voltage.Volts, "0.0")} V and lives {Text(lamp.RelativeLifeAt(fast.Voltage)!.Value.Percent, "0")} % of its time.");
        DirectLightingPoint? good = points.FirstOrDefault(p => p.Lamps.First(l => l.Lamp == fast.Lamp).RelativeLight is { DecimalFractions: >= 0.5 });
        yield return new Finding(
            good is null ? Severity.Caution : Severity.Note,
            fast.Lamp.Lamp,
            good is null ? $"It gives less than half its light up to {rpm} rpm." : $"It gives half its light from about {Text(good.Speed.RevolutionsPerMinute, "0")} rpm on.");
    }

    private static IEnumerable<Finding> OfLoss(DirectLightingChange loss)
    {
        LampState? hit = loss.After.Lamps.Where(l => IsLit(l) && IsFilament(l)).MaxBy(Over);
        LampState? before = hit is null ? null : loss.Before.Lamps.First(l => l.Lamp == hit.Lamp);
        // A lamp that burns out anyway is reported by itself.
        if (hit is null || before is null || Over(hit) <= s_shortLife || Over(before) > BurnsOut)
            yield break;
        string mend = loss.EquivalentResistor is { } resistor ? $" A resistor of {Text(resistor.Resistance.Ohms, "0.0")} Ω in its place takes {Text((double)resistor.Power.Watts, "0")} W and keeps the volts." : "";
        yield return new Finding(
            Severity.Caution,
            loss.Lamp.Lamp,
            $"If it fails at {Text(loss.Before.Speed.RevolutionsPerMinute, "0")} rpm, {hit.Lamp.Lamp} goes from {Text(before.Voltage.Volts, "0.0")} V to {Text(hit.Voltage.Volts, "0.0")} V and {(Over(hit) > BurnsOut ? "burns out after it" : "lives a shorter time")}.{mend}");
    }

    private static IEnumerable<Finding> OfRegulator(ShuntRegulatorLoad regulator, DirectLightingPoint fast)
    {
        if (regulator.Current.Amperes > 0)
            yield return new Finding(Severity.Note, "regulator", $"To hold {Text(regulator.Limit.Volts, "0.0")} V at {Text(fast.Speed.RevolutionsPerMinute, "0")} rpm a regulator across the coil takes {Text(regulator.Current.Amperes, "0.0")} A, {Text((double)regulator.Power.Watts, "0")} W if it burns them.");
    }

    private static IEnumerable<Finding> OfFit(AlternatorEquivalentFit? fit)
    {
        if (fit?.Residuals.MaxBy(r => Math.Abs(r.Residual.Amperes)) is not { } worst)
            yield break;
        bool poor = worst.IsPoor(fit.Source.MaximumCurrent);
        yield return new Finding(
            poor ? Severity.Caution : Severity.Note,
            "lighting coil",
            $"The fitted coil has {Text(1000 * fit.Source.OpenVoltageAt(RotationalSpeed.FromRevolutionsPerMinute(1)).Volts, "0.0")} V open and {Text(1000 * fit.Source.ReactanceAt(RotationalSpeed.FromRevolutionsPerMinute(1)).Ohms, "0.00")} Ω of reactance for every 1000 rpm; the farthest point, {Text(worst.Point.Speed.RevolutionsPerMinute, "0")} rpm, is {Text(worst.Residual.Amperes, "+0.00;-0.00;0.00")} A from it{(poor ? ": it does not describe the list well" : "")}.");
    }

    private static bool IsFilament(LampState state) => state.Lamp.Specification.Type is LampType.Filament or LampType.Halogen;

    private static double Over(LampState state) => Math.Abs(state.Voltage.Volts) / state.Lamp.Specification.ReferenceVoltage.Volts;

    private static string Text(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
