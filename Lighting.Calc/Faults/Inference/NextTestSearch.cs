namespace Lighting.Calc;

/// <summary>Finds the test with the largest expected information for its cost, and says what each outcome would
/// mean.</summary>
internal sealed class NextTestSearch(FaultModel model, IReadOnlyList<TestPlace> tests, Column[] columns)
{
    private const double LeastBits = 0.03;

    /// <summary>Probability of a short from which on no test may feed it.</summary>
    public const double LeastShort = 0.01;

    // A resistance is measured only where no live test tells about as much.
    private const double AsMuch = 0.8;

    /// <summary>Whether a test feeds a short: an ammeter in the place of a blown fuse is itself the fuse, and a jumper
    /// is past it.</summary>
    public static bool FeedsShort(TestPlace test) => test.Instrument == Instrument.Ammeter || test.HasJumper;

    public NextTest? Find(
        Hypotheses hypotheses,
        IReadOnlyCollection<TestPlace> taken,
        IReadOnlyCollection<Setting> settings,
        CancellationToken cancellationToken
    )
    {
        var costs = new TestCosts(model.Circuit, settings);
        var done = taken.ToHashSet();
        var allBits = new double[tests.Count];
        Parallel.For(
            0,
            tests.Count,
            new ParallelOptions { CancellationToken = cancellationToken },
            () => new InformationGain(model, hypotheses),
            (i, _, own) =>
            {
                if (!done.Contains(tests[i]))
                    allBits[i] = own.Bits(tests[i], columns[i]);
                return own;
            },
            _ => { }
        );
        double cost(int i) => costs.Of(tests[i]);
        int best = Best(_ => true, LeastBits);
        if (best < 0)
            return null;
        if (
            tests[best].Instrument == Instrument.Ohmmeter
            && Best(i => tests[i].Instrument != Instrument.Ohmmeter, AsMuch * allBits[best]) is >= 0 and var live
        )
            best = live;
        var gain = new InformationGain(model, hypotheses);
        double bits = gain.Bits(tests[best], columns[best]);
        return new NextTest(
            model,
            tests[best],
            bits,
            cost(best),
            FaultWords.Instruction(tests[best], model),
            new TestOutcomes(model, hypotheses, gain).Of(tests[best], columns[best])
        );

        int Best(Func<int, bool> isAllowed, double least)
        {
            int found = -1;
            for (int i = 0; i < allBits.Length; i++)
                if (
                    allBits[i] >= least
                    && isAllowed(i)
                    && (found < 0 || allBits[i] / cost(i) > allBits[found] / cost(found) * (1 + 1e-9))
                )
                    found = i;
            return found;
        }
    }
}
