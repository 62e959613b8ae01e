using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A winding by a fitted law, whichever it is: amps that rise with the speed towards a limit.</summary>
/// <param name="When">The settings in which it works.</param>
/// <param name="FirstRpm">Slowest point it was fitted to.</param>
/// <param name="LastRpm">Fastest point it was fitted to.</param>
/// <param name="LimitAmperes">The amps it tends to.</param>
/// <param name="Amperes">Amps at rpm.</param>
/// <param name="RpmFor">Rpm at amps below the limit.</param>
internal sealed record FittedWinding(
    Condition When,
    double FirstRpm,
    double LastRpm,
    double LimitAmperes,
    Func<double, double> Amperes,
    Func<double, double> RpmFor
)
{
    public static FittedWinding Of(PermanentMagnetFit fit) =>
        new(
            fit.When,
            First(fit.Residuals),
            Last(fit.Residuals),
            fit.Machine.MaximumCurrent.Amperes,
            rpm => fit.Machine.OutputAt(RotationalSpeed.FromRevolutionsPerMinute(rpm)).Amperes,
            amperes => fit.Machine.SpeedFor(ElectricCurrent.FromAmperes(amperes))!.Value.RevolutionsPerMinute
        );

    public static FittedWinding Of(AlternatorEquivalentFit fit) =>
        new(
            fit.When,
            First(fit.Residuals),
            Last(fit.Residuals),
            fit.Source.MaximumCurrent.Amperes,
            rpm =>
                fit.Source.CurrentAt(RotationalSpeed.FromRevolutionsPerMinute(rpm), fit.TerminalVoltage)?.Amperes ?? 0,
            amperes =>
                fit.Source.SpeedFor(
                    ElectricCurrent.FromAmperes(amperes),
                    fit.TerminalVoltage
                )!.Value.RevolutionsPerMinute
        );

    private static double First(ImmutableArray<FitResidual> residuals) => residuals[0].Point.Speed.RevolutionsPerMinute;

    private static double Last(ImmutableArray<FitResidual> residuals) => residuals[^1].Point.Speed.RevolutionsPerMinute;
}
