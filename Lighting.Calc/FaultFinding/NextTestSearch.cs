using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.FaultFinding;

/// <summary>Finds the test with the largest expected information for its effort, and says what each outcome would mean.</summary>
internal sealed class NextTestSearch(FaultModel model, List<(TestPlace Test, Column Column)> tests)
{
    private const double LeastBits = 0.03;
    private const double LeastOutcome = 0.02;

    // An ammeter in the place of a fuse that a short has blown is itself the fuse.
    private const double LeastShort = 0.01;

    public NextTest? Find(Posterior posterior, IReadOnlyList<Evidence> evidence, Explainer explainer, CancellationToken cancellation)
    {
        FaultFindingOptions options = model.Circuit.Options;
        var taken = evidence.Select(e => e.Place).ToHashSet();
        var settings = evidence.Select(e => e.Place.Setting).ToHashSet();
        double shorts = Enumerable.Range(0, model.Families.Length).Where(f => model.Families[f].Kind is FaultKind.ShortToFrame).Sum(f => posterior.FamilyWeights[f]);
        double work = options.Effort("other setting");
        var efforts = new Dictionary<Instrument, double>();
        foreach (Instrument instrument in Enum.GetValues<Instrument>())
            efforts[instrument] = options.Effort(FaultWords.InstrumentWord(instrument));
        (TestPlace Test, Column Column, double Bits, double Effort)? best = null;
        var allBits = new double[tests.Count];
        Parallel.For(
            0,
            tests.Count,
            new ParallelOptions { CancellationToken = cancellation },
            () => new InformationGain(model, posterior),
            (i, _, own) =>
            {
                if (!taken.Contains(tests[i].Test) && (tests[i].Test.Instrument != Instrument.Ammeter || shorts <= LeastShort))
                    allBits[i] = own.Bits(tests[i].Test, tests[i].Column);
                return own;
            },
            _ => { });
        for (int i = 0; i < tests.Count; i++)
        {
            (TestPlace test, Column column) = tests[i];
            double bits = allBits[i];
            double effort = efforts[test.Instrument] + (settings.Contains(test.Setting) ? 0 : work);
            if (bits >= LeastBits && (best is not { } b || bits / effort > b.Bits / b.Effort * (1 + 1e-9)))
                best = (test, column, bits, effort);
        }

        if (best is not { } found)
            return null;
        var gain = new InformationGain(model, posterior);
        gain.Bits(found.Test, found.Column);
        var faultTest = new FaultTest(found.Test.Setting, model.NameOf(found.Test), found.Test.Instrument);
        return new NextTest(faultTest, found.Bits, found.Effort, FaultWords.Instruction(faultTest), Outcomes(found.Test, gain, explainer));
    }

    private ImmutableArray<TestOutcome> Outcomes(in TestPlace test, InformationGain gain, Explainer explainer)
    {
        var outcomes = new List<TestOutcome>();
        Instrument instrument = test.Instrument;
        if (instrument is Instrument.Eye or Instrument.TestLamp)
        {
            for (int look = 0; look < 4; look++)
                Add(FaultWords.Look((Brightness)look, instrument == Instrument.TestLamp), look, look);
        }
        else
        {
            double[] bins = new double[InformationGain.Bins];
            for (int i = 0; i < gain.Joint.Length; i++)
                bins[i % bins.Length] += gain.Joint[i];
            foreach ((int first, int last) in Ranges(bins))
                Add(Range(instrument, gain.Lowest + first * gain.Width, gain.Lowest + (last + 1) * gain.Width), first, last);
        }

        return [.. outcomes.OrderByDescending(o => o.Probability)];

        void Add(string name, int first, int last)
        {
            double[] families = new double[model.Families.Length];
            for (int f = 0; f < families.Length; f++)
                for (int b = first; b <= last; b++)
                    families[f] += gain.Joint[f * InformationGain.Bins + b];
            double probability = families.Sum();
            if (probability < LeastOutcome)
                return;
            ImmutableArray<FaultExplanation> likely =
            [
                .. Enumerable.Range(0, families.Length).OrderByDescending(f => families[f]).Take(3)
                    .Where(f => families[f] > 0.02 * probability)
                    .Select(f => Named(f, families[f] / probability)),
            ];
            outcomes.Add(new TestOutcome(name, probability, likely, $"{name}: {string.Join("; ", likely.Select(l => $"{l.Sentence} ({FaultWords.Percent(l.Probability)})"))}"));
        }

        FaultExplanation Named(int family, double probability)
        {
            Fault fault = explainer.FaultOf(family);
            // The severity is what the test is to tell: only the part is named.
            string words = fault.Kind is FaultKind.PoorJoint or FaultKind.PoorGround or FaultKind.PoorContact or FaultKind.PoorFuseHolder
                ? $"{fault.Words} poor or open"
                : fault.Kind is FaultKind.BatteryFlat ? "the battery flat" : fault.Kind is FaultKind.BatteryWeak ? "the battery weak"
                : explainer.Head(fault, family).Replace(": ", " ", StringComparison.Ordinal);
            return new FaultExplanation([fault], probability, words);
        }
    }

    // Outcomes are the heaps of the histogram: they end where hardly anything falls.
    private static IEnumerable<(int First, int Last)> Ranges(double[] bins)
    {
        const double empty = 0.002;
        int first = -1;
        for (int b = 0; b <= bins.Length; b++)
        {
            bool here = b < bins.Length && bins[b] > empty;
            if (here && first < 0)
                first = b;
            if (!here && first >= 0)
            {
                yield return (first, b - 1);
                first = -1;
            }
        }
    }

    private string Range(Instrument instrument, double low, double high)
    {
        FaultFindingOptions options = model.Circuit.Options;
        string from = FaultWords.Value(instrument, instrument == Instrument.Ohmmeter ? low : Math.Max(0, Rounded(low)), options);
        string to = FaultWords.Value(instrument, instrument == Instrument.Ohmmeter ? high : Math.Max(0, Rounded(high)), options);
        return from == to ? from : $"{from} to {to}";
    }

    private static double Rounded(double value) => Math.Round(value, 1);
}
