using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Tolerance analysis (Monte Carlo): bikes sampled within the tolerances of their parts, each solved in every
/// setting.</summary>
/// <remarks>
/// <para>Spreads: <c>tables/tolerances.csv</c>, each row with its source. Parts differ independently; lamps of one row,
/// runs of one size of wire and the joints of one run go together.</para>
/// <para>Variance shares: the squared correlation of a part's value with the result. For independent parts that is the
/// squared standardised regression coefficient, and, where the result is a straight line in the part, Sobol's
/// first-order index (A. Saltelli et al., "Global Sensitivity Analysis: The Primer", 2008, section 1.2). Limits: what a
/// curved effect or two parts together add is not in any share but in what they leave; the random error of a share is
/// about twice its root over that of the samples.</para>
/// <para>Repeatable: seed, samples and bike fix the answer, whatever the number of threads. The values drawn are the
/// same bits on every machine; results may differ there in their last digits, as powers do.</para>
/// </remarks>
public static class ToleranceCheck
{
    private const long MostNumbers = 200_000_000;

    /// <summary>Samples bikes and summarizes the results.</summary>
    /// <param name="bike">The bike as listed, fed by a battery.</param>
    /// <param name="options">Options; null for the defaults.</param>
    /// <param name="progress">Receives the share that is done, from any thread, out of order.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">The bike has direct lighting, its circuit or condition leaves nothing to
    /// solve, or it is too large for so many samples.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is outside its range.</exception>
    /// <exception cref="NetworkNotSolvedException">A bike that was drawn has no operating point.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ToleranceReport Evaluate(
        Bike bike,
        ToleranceOptions? options = null,
        IProgress<Ratio>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        options ??= new ToleranceOptions();
        options.Require();
        if (bike.Lighting == LightingSupply.Direct)
            throw new ArgumentException(
                "Tolerances are calculated for lamps on a battery only: a lighting coil's voltage depends on its load, "
                    + "and its spread is not published.",
                nameof(bike)
            );
        var uncertain = new UncertainBike(
            bike,
            options.Check.Supply,
            options.Check.Engine,
            options.Scale.DecimalFractions
        );
        BikeSolution solution = BikeSolution.Solve(bike, uncertain.CheckOptions(options), cancellationToken);
        if (solution.Points.IsEmpty)
            throw new ArgumentException($"No setting could be solved: {solution.NotSolved[0].Message}", nameof(bike));
        ImmutableArray<FuseSuitability> fuses = FuseCheck.Evaluate(
            bike,
            solution.FusePoints,
            options.Check.Fuses,
            cancellationToken
        );
        var plan = new SamplingPlan(uncertain, solution, options);
        long numbers = options.Samples * (plan.Uncertain.Parts.Length + 3L * bike.Lamps.Length + bike.Fuses.Length + 3);
        if (numbers > MostNumbers)
            throw new ArgumentException(
                $"{options.Samples} samples of this bike are {numbers} numbers, more than the limit of {MostNumbers}; "
                    + $"use fewer samples.",
                nameof(options)
            );
        SampledBike listed = new Sampler(plan).Solve(plan.Uncertain.Listed());
        SampledBike[] drawn = Sampler.Draw(plan, progress, cancellationToken);
        var summary = new SpreadSummary(plan.Uncertain.Parts, listed, drawn);
        return new ToleranceReport(bike)
        {
            Samples = options.Samples,
            Seed = options.Seed,
            States = plan.States.Length,
            Parts = plan.Uncertain.Parts,
            Lamps = [.. plan.Lamps.Select(lamp => LampOf(summary, bike.Lamps[lamp], lamp))],
            Fuses =
            [
                .. fuses.Select(
                    (fuse, i) =>
                        new FuseTolerance(fuse, summary.Of(b => b.FuseAmperes[i], v => ElectricCurrent.FromAmperes(v)))
                ),
            ],
            BreakEven = double.IsNaN(listed.BreakEvenRpm)
                ? null
                : summary.Of(b => b.BreakEvenRpm, v => RotationalSpeed.FromRevolutionsPerMinute(v)),
            RideBalance = double.IsNaN(listed.RideAmpereHours)
                ? null
                : summary.Of(b => b.RideAmpereHours, v => ElectricCharge.FromAmpereHours(v)),
            Verdicts =
            [
                .. new SampledVerdicts(plan, listed, drawn)
                    .Of(fuses, cancellationToken)
                    .OrderBy(v => v.Probability.DecimalFractions),
            ],
        };
    }

    private static LampTolerance LampOf(SpreadSummary summary, FittedLamp lamp, int index) =>
        new(
            lamp,
            summary.Of(b => b.LastingVolts[index], v => ElectricPotential.FromVolts(v)),
            summary.Of(b => b.MostDrop[index], v => Ratio.FromDecimalFractions(v)),
            lamp.Specification.PublishedLightAt(lamp.Specification.ReferenceVoltage) is null
                ? null
                : summary.Of(
                    b =>
                        lamp.Specification.PublishedLightAt(
                            ElectricPotential.FromVolts(b.LastingVolts[index])
                        )!.Value.DecimalFractions,
                    v => Ratio.FromDecimalFractions(v)
                )
        );
}
