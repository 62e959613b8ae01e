namespace Lighting.Calc;

/// <summary>Finds the test with the largest expected information for its cost, and says what each outcome would
/// mean.</summary>
internal sealed class NextTestSearch(FaultModel model, List<(TestPlace Test, Column Column)> tests)
{
    private const double LeastBits = 0.03;

    // An ammeter in the place of a fuse that a short has blown is itself the fuse.
    private const double LeastShort = 0.01;

    public NextTest? Find(Hypotheses hypotheses, IReadOnlyList<Evidence> evidence, CancellationToken cancellationToken)
    {
        FaultFindingOptions options = model.Circuit.Options;
        var taken = evidence.Select(e => e.Place).ToHashSet();
        var settings = evidence.Select(e => e.Place.Setting).ToHashSet();
        double other = options.Cost("other setting");
        var costs = new Dictionary<Instrument, double>();
        foreach (Instrument instrument in Enum.GetValues<Instrument>())
            costs[instrument] = options.Cost(FaultWords.InstrumentWord(instrument));
        (TestPlace Test, Column Column, double Bits, double Cost)? best = null;
        var allBits = new double[tests.Count];
        Parallel.For(
            0,
            tests.Count,
            new ParallelOptions { CancellationToken = cancellationToken },
            () => new InformationGain(model, hypotheses),
            (i, _, own) =>
            {
                if (
                    !taken.Contains(tests[i].Test)
                    && (tests[i].Test.Instrument != Instrument.Ammeter || hypotheses.Shorts <= LeastShort)
                )
                    allBits[i] = own.Bits(tests[i].Test, tests[i].Column);
                return own;
            },
            _ => { }
        );
        for (int i = 0; i < tests.Count; i++)
        {
            (TestPlace test, Column column) = tests[i];
            double bits = allBits[i];
            double cost = costs[test.Instrument] + (settings.Contains(test.Setting) ? 0 : other);
            if (bits >= LeastBits && (best is not { } b || bits / cost > b.Bits / b.Cost * (1 + 1e-9)))
                best = (test, column, bits, cost);
        }

        if (best is not { } found)
            return null;
        var gain = new InformationGain(model, hypotheses);
        gain.Bits(found.Test, found.Column);
        var faultTest = new FaultTest(found.Test.Setting, model.NameOf(found.Test), found.Test.Instrument);
        return new NextTest(
            faultTest,
            found.Bits,
            found.Cost,
            FaultWords.Instruction(faultTest, model.Circuit),
            new TestOutcomes(model, hypotheses, gain).Of(found.Test, found.Column)
        );
    }
}
