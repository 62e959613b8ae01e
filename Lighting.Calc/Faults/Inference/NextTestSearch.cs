namespace Lighting.Calc;

/// <summary>Finds the test with the largest expected information for its cost, and says what each outcome would
/// mean.</summary>
internal sealed class NextTestSearch(
    FaultModel model,
    IReadOnlyList<TestPlace> tests,
    Column[] columns,
    IReadOnlyList<TestPlace> rounds
)
{
    private const double LeastBits = 0.05;

    /// <summary>Probability of a short from which on no test may feed it.</summary>
    public const double LeastShort = 0.01;

    /// <summary>Probability of a short or a leak to the frame from which on a connector is pulled apart to look for
    /// it.</summary>
    public const double LeastToFrame = 0.05;

    // A resistance is measured only where no live test tells about as much.
    private const double AsMuch = 0.8;

    /// <summary>Whether a test feeds a short: an ammeter in the place of a blown fuse is itself the fuse, and a jumper
    /// is past it.</summary>
    public static bool FeedsShort(TestPlace test) => test.Instrument == Instrument.Ammeter || test.HasJumper;

    private TestPlace At(int index) => index < tests.Count ? tests[index] : rounds[index - tests.Count];

    // The looks of a round at lamps not seen before.
    private int[] Lamps(TestPlace round, HashSet<TestPlace> done) =>
        [
            .. Enumerable
                .Range(0, tests.Count)
                .Where(i =>
                    tests[i].Instrument == Instrument.Visual
                    && tests[i].IsAsListed
                    && tests[i].State == round.State
                    && !done.Contains(tests[i])
                ),
        ];

    public NextTest? Find(
        Hypotheses hypotheses,
        IReadOnlyCollection<TestPlace> taken,
        IReadOnlyCollection<Setting> settings,
        CancellationToken cancellationToken
    )
    {
        var costs = new TestCosts(model.Circuit, settings);
        var done = taken.ToHashSet();
        var allBits = new double[tests.Count + rounds.Count];
        Parallel.For(
            0,
            allBits.Length,
            new ParallelOptions { CancellationToken = cancellationToken },
            () => new InformationGain(model, hypotheses),
            (i, _, own) =>
            {
                if (!done.Contains(At(i)))
                    allBits[i] =
                        i < tests.Count ? own.Bits(tests[i], columns[i]) : own.BitsOfRound(Lamps(At(i), done), columns);
                return own;
            },
            own => own.Dispose()
        );
        double cost(int i) => costs.Of(At(i));
        int best = Best(_ => true, LeastBits);
        if (best < 0)
            return null;
        if (
            At(best).Instrument == Instrument.Ohmmeter
            && Best(i => At(i).Instrument != Instrument.Ohmmeter, AsMuch * allBits[best]) is >= 0 and var live
        )
            best = live;
        using var gain = new InformationGain(model, hypotheses);
        var outcomes = new TestOutcomes(model, hypotheses, gain);
        TestPlace chosen = At(best);
        int[] lamps = chosen.IsEveryLamp ? Lamps(chosen, done) : [];
        double bits = chosen.IsEveryLamp ? gain.BitsOfRound(lamps, columns) : gain.Bits(chosen, columns[best]);
        return new NextTest(
            model,
            chosen,
            bits,
            cost(best),
            FaultWords.Instruction(chosen, model),
            chosen.IsEveryLamp
                ? outcomes.OfRound([.. lamps.Select(l => tests[l])])
                : outcomes.Of(chosen, columns[best])
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
