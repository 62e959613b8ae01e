using Lighting.Calc.Tests.Cli;
using Lighting.Calc.Tests.Fuses;

namespace Lighting.Calc.Tests.Tolerances;

/// <summary>Bikes and short forms of the tolerance tests.</summary>
internal static class ToleranceBikes
{
    /// <summary>Half widths of the spreads of a resistor load and of the regulator, both normal with the limits at two
    /// standard deviations: tables/tolerances.csv.</summary>
    public const double ResistorLimit = 0.05;

    public const double RegulatorLimit = 0.03;

    /// <summary>Variance of a normal distribution of standard deviation 1 with its tails beyond 2 cut off: 1 −
    /// 4·φ(2)/(2·Φ(2) − 1).</summary>
    public const double CutVariance = 1 - 4 * 0.053990966513188063 / 0.95449973610364158;

    public static Bike Demo(string name) =>
        BikeLists.Read(CliProcess.Bike(name)).TryGetValue(out BikeLists? lists)
            ? lists.Bike
            : throw new InvalidOperationException(name);

    /// <summary>Resistor loads straight on the battery behind one fuse: a linear network, I = V·Σ(amps at 12
    /// V)/12.</summary>
    public static Bike Resistors(params double[] amperes) =>
        Bike.ForSystem(UnitsNet.ElectricPotential.FromVolts(12)) with
        {
            ChargingVoltage = UnitsNet.ElectricPotential.FromVolts(12),
            Lamps = [.. amperes.Select((a, i) => FuseBike.Load($"heater {i + 1}", LampType.Resistor, 12, a))],
            Fuses = [FuseBike.Fuse("main", 15)],
        };

    public static ToleranceReport Report(Bike bike, ToleranceOptions options) =>
        ToleranceCheck.Evaluate(bike, options, null, TestContext.Current.CancellationToken);

    public static SampledBike[] Drawn(Bike bike, ToleranceOptions options) =>
        Sampler.Draw(EliminationPlan(bike, options), null, TestContext.Current.CancellationToken);

    public static SamplingPlan EliminationPlan(Bike bike, ToleranceOptions options) =>
        new(
            new UncertainBike(bike, options.Check.Supply, options.Check.Engine, options.Scale.DecimalFractions),
            BikeSolution.Solve(bike, options.Check, TestContext.Current.CancellationToken),
            options
        );
}
