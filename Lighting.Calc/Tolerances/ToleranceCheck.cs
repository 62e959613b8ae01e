using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>How sure the answers about a bike are: bikes drawn at random within the spreads of their parts, each solved in every setting.</summary>
/// <remarks>
/// <para>Spreads: <c>tables/tolerances.csv</c>, each row with its source. Parts differ independently; lamps of one row, runs of one size of wire and the
/// joints of one run go together.</para>
/// <para>Variance shares: the squared correlation of a part's value with the result. For independent parts that is the squared standardised regression
/// coefficient, and, where the result is a straight line in the part, Sobol's first-order index (A. Saltelli et al., "Global Sensitivity Analysis: The Primer",
/// 2008, section 1.2). Limits: what a curved effect or two parts together add is not in any share but in what they leave; the random error of a share is about
/// twice its root over that of the samples.</para>
/// <para>Repeatable: seed, samples and bike fix the answer, whatever the number of threads. The values drawn and
/// the powers in the results are made of sums, products and quotients, each rounded by itself: the same bits on every machine.</para>
/// </remarks>
public static class ToleranceCheck
{
    /// <summary>Draws bikes and sums up what they do.</summary>
    /// <param name="bike">The bike as listed, fed by a battery.</param>
    /// <param name="options">What the check is told besides; null for the defaults.</param>
    /// <param name="progress">Told the share that is done, from any thread, out of order.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">The bike has direct lighting, its circuit or condition leaves nothing to solve, or it is too large for so many samples.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is outside its range.</exception>
    /// <exception cref="NetworkNotSolvedException">A bike that was drawn has no operating point.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ToleranceReport Evaluate(Bike bike, ToleranceOptions? options = null, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        options ??= new ToleranceOptions();
        options.Check();
        if (bike.Lighting == LightingSupply.Direct)
            throw new ArgumentException("Tolerances are reckoned for lamps on a battery only: a lighting coil's volts come from its load, and no spread is known for it.", nameof(bike));
        BikeSolution solution = BikeSolution.Solve(bike, options.When, options.Supply, cancellation);
        if (solution.Points.IsEmpty)
            throw new ArgumentException($"No setting could be solved: {solution.NotSolved[0].Message}", nameof(bike));
        ImmutableArray<FuseSuitability> fuses = FuseCheck.Evaluate(bike, solution.Points, options.Fuses, cancellation);
        var uncertain = new UncertainBike(bike, options.Supply, options.Scale.DecimalFractions);
        SamplingPlan plan = SamplingPlan.Of(uncertain, solution.Network, solution.Points, options);
        var run = new SampleRun(plan, options, [.. fuses.Select(f => f.Steady.UsableCurrent.Amperes)]);
        run.Run(progress, cancellation);
        return Report(plan, run, fuses, cancellation);
    }

    private static ToleranceReport Report(SamplingPlan plan, SampleRun run, ImmutableArray<FuseSuitability> fuses, CancellationToken cancellation)
    {
        Bike bike = plan.Bike;
        var places = new QuantityPlaces(plan);
        var summary = new SpreadSummary(run, plan.Uncertain.Parts);
        double[][] percentiles = summary.Percentiles(plan.Options.Threads);
        return new ToleranceReport
        {
            Bike = bike,
            Samples = plan.Options.Samples,
            Seed = plan.Options.Seed,
            States = plan.IsAskedFor.Count(a => a),
            Parts = plan.Uncertain.Parts,
            Lamps =
            [
                .. plan.Lamps.Select((lamp, i) => new LampTolerance
                {
                    Lamp = bike.Lamps[lamp],
                    Voltage = Spread(places.LampVolts(i), v => ElectricPotential.FromVolts(v)),
                    Drop = Spread(places.LampDrop(i), v => Ratio.FromDecimalFractions(v)),
                    RelativeLight = bike.Lamps[lamp].Specification.Type is LampType.Fixed or LampType.Resistor ? null : Spread(places.LampLight(i), v => Ratio.FromDecimalFractions(v)),
                }),
            ],
            Fuses =
            [
                .. fuses.Select((fuse, i) => new FuseTolerance
                {
                    Fuse = fuse.Fuse,
                    Current = Spread(places.FuseAmperes(i), v => ElectricCurrent.FromAmperes(v)),
                    UsableCurrent = fuse.Steady.UsableCurrent,
                    Verdict = fuse.Verdict,
                }),
            ],
            BreakEven = plan.HasBreakEven ? Spread(places.BreakEvenRpm, v => RotationalSpeed.FromRevolutionsPerMinute(v)) : null,
            RideBalance = plan.HasRide ? Spread(places.RideAmpereHours, v => ElectricCharge.FromAmpereHours(v)) : null,
            Verdicts = [.. Verdicts(plan, run, fuses, places, cancellation).OrderBy(v => v.Probability.DecimalFractions)],
        };

        ResultSpread<T> Spread<T>(int quantity, Func<double, T> unit)
            where T : struct, IQuantity
            => summary.Of(quantity, percentiles[quantity], unit);
    }

    private static IEnumerable<VerdictTolerance> Verdicts(SamplingPlan plan, SampleRun run, ImmutableArray<FuseSuitability> fuses, QuantityPlaces places, CancellationToken cancellation)
    {
        Bike bike = plan.Bike;
        if (!fuses.IsEmpty)
        {
            var odds = new FuseVerdictOdds(plan.Uncertain, plan.Options, run, cancellation);
            for (int f = 0; f < fuses.Length; f++)
                yield return new VerdictTolerance(fuses[f].Fuse.Name, fuses[f].VerdictText, odds.Of(f, fuses[f].Verdict, Good(places.FuseCarries(f))));
        }

        for (int i = 0; i < plan.Lamps.Length; i++)
        {
            FittedLamp lamp = bike.Lamps[plan.Lamps[i]];
            if (bike.HasNetwork)
                yield return Verdict(lamp.Lamp, places.DropHolds(i), "loses no more than allowed", "loses more than allowed");
            if (lamp.Specification.Type is LampType.Filament or LampType.Halogen)
                yield return Verdict(lamp.Lamp, places.LampHolds(i), "stands its volts", "burns out");
            else if (lamp.Specification.Type == LampType.Led)
                yield return Verdict(lamp.Lamp, places.LampHolds(i), "its driver holds its power", "its driver drops out");
        }

        if (plan.HasBreakEven)
            yield return Verdict("charging", places.Covered, "the load is covered at some speed of the curve", "the load is covered at no speed of the curve");
        if (plan.HasRide)
            yield return Verdict("ride", places.RideHolds, "does not drain the battery", "drains the battery");
        yield return Verdict("the bike", places.All, "nothing of load, drops, volts and balance is against it", "something of load, drops, volts and balance is against it");

        VerdictTolerance Verdict(string subject, int verdict, string good, string bad) => run.ListedVerdicts[verdict]
            ? new VerdictTolerance(subject, good, Good(verdict))
            : new VerdictTolerance(subject, bad, Ratio.FromDecimalFractions(1 - Good(verdict).DecimalFractions));

        Ratio Good(int verdict) => Ratio.FromDecimalFractions((double)run.Sums.Good[verdict] / plan.Options.Samples);
    }
}
