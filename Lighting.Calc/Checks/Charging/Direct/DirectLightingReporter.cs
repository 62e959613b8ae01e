using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Looks over the direct lighting of one setting.</summary>
internal static class DirectLightingReporter
{
    /// <summary>Voltage over the reference voltage above which a filament lives less than a quarter of its time,
    /// (V/Vn)^−13: 1.11.</summary>
    private static readonly double s_shortLife = Math.Pow(0.25, 1 / FilamentLaw.LifeExponent);

    /// <summary>Voltage over the reference voltage at which the filament laws end.</summary>
    private const double BurnsOut = 1.2;

    public static DirectLightingReport Report(
        DirectLighting lighting,
        Setting setting,
        IEnumerable<RotationalSpeed> speeds
    )
    {
        ImmutableArray<RotationalSpeed> ordered = [.. speeds.OrderBy(s => s.RevolutionsPerMinute)];
        if (ordered.IsEmpty)
            throw new ArgumentException("At least one engine speed is needed.", nameof(speeds));
        ImmutableArray<DirectLightingPoint> points = lighting.Over(ordered, setting);
        RotationalSpeed fastest = ordered[^1];
        ImmutableArray<DirectLightingChange> losses =
        [
            .. points[^1].Lamps.Where(IsLit).Select(l => lighting.Lost(l.Lamp, points[^1], setting)),
        ];
        ShuntRegulatorLoad regulator = lighting.Shunt(lighting.Bike.ChargingVoltage, fastest, setting);
        return new DirectLightingReport
        {
            Setting = setting,
            Points = points,
            Losses = losses,
            Regulator = regulator,
            Findings =
            [
                .. Findings(points)
                    .Concat(losses.SelectMany(OfLoss))
                    .Concat(OfRegulator(regulator, points[^1]))
                    .Concat(OfFit(lighting.Fit))
                    .OrderByDescending(f => f.Severity),
            ],
        };
    }

    private static IEnumerable<Finding> Findings(ImmutableArray<DirectLightingPoint> points)
    {
        Finding[] findings = [.. points[^1].Lamps.Where(IsLit).SelectMany(l => OfLamp(l, points))];
        // LEDs on alternating current are one cause; the figures of the others are each lamp's own.
        return findings
            .Where(f => f.Kind != FindingKind.LedOnAlternatingCurrent)
            .Concat(findings.Where(f => f.Kind == FindingKind.LedOnAlternatingCurrent).TogetherByCause());
    }

    private static bool IsLit(LampState state) => state.Current.Amperes > 1e-3;

    private static IEnumerable<Finding> OfLamp(LampState fast, ImmutableArray<DirectLightingPoint> points)
    {
        RotationalSpeed speed = points[^1].Speed;
        string name = fast.Lamp.Lamp;
        LampSpecification lamp = fast.Lamp.Specification;
        if (lamp.HasPolarity)
            yield return new Finding(FindingKind.LedOnAlternatingCurrent, Severity.Caution, name);
        if (!IsFilament(fast))
            yield break;
        double ratio = Over(fast);
        if (ratio > BurnsOut)
            yield return new Finding(FindingKind.LampBurnsOut, Severity.Fault, name)
            {
                Value = fast.Voltage,
                Limit = lamp.ReferenceVoltage,
                Figures = [speed],
            };
        else if (ratio > s_shortLife)
            yield return new Finding(FindingKind.LampLifeShortened, Severity.Caution, name)
            {
                Value = fast.Voltage,
                Limit = lamp.ReferenceVoltage,
                Figures = [speed, lamp.RelativeLifeAt(fast.Voltage)!.Value],
            };
        yield return points.FirstOrDefault(p =>
            p.Lamps.First(l => l.Lamp == fast.Lamp).RelativeLight is { DecimalFractions: >= 0.5 }
        )
            is { } good
            ? new Finding(FindingKind.HalfLight, Severity.Note, name) { Value = good.Speed }
            : new Finding(FindingKind.HalfLightNotReached, Severity.Caution, name) { Value = speed };
    }

    private static IEnumerable<Finding> OfLoss(DirectLightingChange loss)
    {
        LampState? hit = loss.After.Lamps.Where(l => IsLit(l) && IsFilament(l)).MaxBy(Over);
        LampState? before = hit is null ? null : loss.Before.Lamps.First(l => l.Lamp == hit.Lamp);
        // A lamp that burns out anyway is a finding of its own.
        if (hit is null || before is null || Over(hit) <= s_shortLife || Over(before) > BurnsOut)
            yield break;
        yield return new Finding(
            Over(hit) > BurnsOut ? FindingKind.FailureBurnsOutAnother : FindingKind.FailureShortensLife,
            Severity.Caution,
            loss.Lamp.Lamp
        )
        {
            Value = hit.Voltage,
            Limit = before.Voltage,
            Figures = loss.EquivalentResistor is { } resistor
                ? [loss.Before.Speed, resistor.Resistance, resistor.Power]
                : [loss.Before.Speed],
            Parts = [hit.Lamp.Lamp],
        };
    }

    private static IEnumerable<Finding> OfRegulator(ShuntRegulatorLoad regulator, DirectLightingPoint fast)
    {
        if (regulator.Current.Amperes > 0)
            yield return new Finding(FindingKind.RegulatorAcrossCoil, Severity.Note, "regulator")
            {
                Value = regulator.Current,
                Limit = regulator.Limit,
                Figures = [fast.Speed, regulator.Power],
            };
    }

    private static IEnumerable<Finding> OfFit(AlternatorEquivalentFit? fit)
    {
        if (fit?.Residuals.MaxBy(r => Math.Abs(r.Residual.Amperes)) is not { } worst)
            yield break;
        var thousand = RotationalSpeed.FromRevolutionsPerMinute(1000);
        yield return new Finding(
            FindingKind.CoilFit,
            worst.IsPoor(fit.Source.MaximumCurrent) ? Severity.Caution : Severity.Note,
            "lighting coil"
        )
        {
            Value = worst.Residual,
            Figures = [fit.Source.OpenVoltageAt(thousand), fit.Source.ReactanceAt(thousand), worst.Point.Speed],
        };
    }

    private static bool IsFilament(LampState state) =>
        state.Lamp.Specification.Type is LampType.Filament or LampType.Halogen;

    private static double Over(LampState state) =>
        Math.Abs(state.Voltage.Volts) / state.Lamp.Specification.ReferenceVoltage.Volts;
}
