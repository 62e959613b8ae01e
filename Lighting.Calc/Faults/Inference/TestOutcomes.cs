using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Outcomes of a test and what each would mean.</summary>
internal sealed class TestOutcomes(FaultModel model, Hypotheses hypotheses, InformationGain gain)
{
    private const double LeastOutcome = 0.01;

    // Share of full voltage, or of an ammeter's range, below which a reading counts as nothing.
    private const double Nothing = 0.03;

    /// <summary>The outcomes of the test that <see cref="InformationGain.Bits"/> was last asked for, likeliest
    /// first.</summary>
    public ImmutableArray<TestOutcome> Of(in TestPlace test, Column column)
    {
        var outcomes = new List<TestOutcome>();
        Instrument instrument = test.Instrument;
        if (instrument == Instrument.Wiggle)
        {
            Add(FaultWords.Wiggled(Brightness.Dim), (int)Brightness.Dark, (int)Brightness.Dim);
            Add(FaultWords.Wiggled(Brightness.Normal), (int)Brightness.Normal, (int)Brightness.Bright);
        }
        else if (instrument.IsLook())
        {
            for (int look = 0; look < 4; look++)
                Add(FaultWords.Look((Brightness)look, instrument == Instrument.TestLamp), look, look);
        }
        else
        {
            double[] bins = new double[InformationGain.Bins];
            for (int i = 0; i < gain.Joint.Length; i++)
                bins[i % bins.Length] += gain.Joint[i];
            (int low, int high) = Expected(instrument, column);
            foreach ((int first, int last) in Ranges(bins, NothingTo(instrument), low, high))
                Add(Range(test, first, last) + (first >= low && last <= high ? ", normal" : ""), first, last);
        }

        return [.. outcomes.OrderByDescending(o => o.Probability)];

        void Add(string name, int first, int last)
        {
            double[] families = new double[hypotheses.List.Count];
            for (int f = 0; f < families.Length; f++)
                for (int b = first; b <= last; b++)
                    families[f] += gain.Joint[f * gain.Used + b];
            if (Outcome(name, families) is { } outcome)
                outcomes.Add(outcome);
        }
    }

    private bool IsNotListed(int hypothesis) =>
        hypothesis < hypotheses.List.Families.Length
        && model.Families[hypotheses.List.Families[hypothesis]].IsBroad;

    private TestOutcome? Outcome(string name, double[] families)
    {
        double probability = families.Sum();
        if (probability < LeastOutcome)
            return null;
        ImmutableArray<FaultExplanation> likely =
        [
            .. Enumerable
                .Range(0, families.Length)
                .OrderBy(f => IsNotListed(f) && families[f] < FaultGroup.NotListedLeads * probability)
                .ThenByDescending(f => families[f])
                .Take(3)
                .Where(f => families[f] > 0.02 * probability)
                .Select(f => hypotheses.Named(f, families[f] / probability)),
        ];
        return new TestOutcome(name, probability, likely, Words(likely));
    }

    /// <summary>The outcomes of the round that <see cref="InformationGain.BitsOfRound"/> was last asked for: the lamps
    /// that do not look as they should.</summary>
    public ImmutableArray<TestOutcome> OfRound(TestPlace[] looks)
    {
        Brightness[] expected = [.. looks.Select(l => RoundOfLamps.Expected(model, l))];
        // What hardly happens stands together.
        double[] rest = new double[hypotheses.List.Count];
        foreach ((_, double[] joint) in gain.Round.Where(IsRest))
            for (int f = 0; f < rest.Length; f++)
                rest[f] += joint[f];
        return
        [
            .. gain
                .Round.Where(r => !IsRest(r))
                .Select(r =>
                    Outcome(
                        string.Join(
                            ", ",
                            looks
                                .Select((l, i) => (Name: model.NameOf(l), Seen: r.Looks[i], Expected: expected[i]))
                                .Where(l => l.Seen != l.Expected)
                                .Select(l => $"{l.Name} {FaultWords.Look(l.Seen, testLamp: false)}")
                        ) is { Length: > 0 } odd
                            ? odd
                            : "every lamp as it should be",
                        r.Joint
                    )
                )
                .Append(Outcome("other lamps", rest))
                .OfType<TestOutcome>()
                .OrderByDescending(o => o.Probability),
        ];

        static bool IsRest((Brightness[] Looks, double[] Joint) round) =>
            round.Looks.Length == 0 || round.Joint.Sum() < LeastOutcome;
    }

    /// <summary>Likely faults in words.</summary>
    public static string Words(ImmutableArray<FaultExplanation> likely) =>
        string.Join("; ", likely.Select(l => $"{l.Sentence} ({FaultWords.Percent(l.Probability)})"));

    // The bins into which a healthy bike falls.
    private (int Low, int High) Expected(Instrument instrument, Column column)
    {
        (double mean, double sigma) = (gain.Mean(column, 0), gain.Sigma(instrument, column, 0));
        return (Bin(mean - 2 * sigma), Bin(mean + 2 * sigma));
    }

    // The last bin near zero; −1 where an outcome is neither a voltage nor a current.
    private int NothingTo(Instrument instrument) =>
        instrument switch
        {
            Instrument.Meter => Bin(Nothing * model.Circuit.Supply.FullVolts),
            Instrument.Ammeter => Bin(Nothing * ReadingScale.MostAmperes / 10),
            _ => -1,
        };

    private int Bin(double value) =>
        Math.Clamp((int)Math.Floor((value - gain.Lowest) / gain.Width), -1, InformationGain.Bins);

    // Outcomes are the heaps of the histogram, which end where hardly anything falls, cut where nothing ends and where
    // what should be begins and ends.
    private static IEnumerable<(int First, int Last)> Ranges(double[] bins, int nothing, int low, int high)
    {
        const double empty = 0.001;
        int first = -1;
        for (int b = 0; b <= bins.Length; b++)
        {
            bool here = b < bins.Length && bins[b] > empty,
                cut = b == low || b == high + 1 || (b == nothing + 1 && nothing < low);
            if (first >= 0 && (!here || cut))
            {
                yield return (first, b - 1);
                first = -1;
            }

            if (here && first < 0)
                first = b;
        }
    }

    private string Range(in TestPlace test, int first, int last)
    {
        Instrument instrument = test.Instrument;
        // Between two points, as to the frame of a positive earth, a voltage may be below zero.
        bool isSigned = instrument == Instrument.Meter && test.To >= 0;
        double low = gain.Lowest + first * gain.Width,
            high = gain.Lowest + (last + 1) * gain.Width;
        FaultFindingOptions options = model.Circuit.Options;
        string from = FaultWords.Value(instrument, Rounded(low), options),
            to = FaultWords.Value(instrument, Rounded(high), options);
        return from == to ? from : $"{from} to {to}";

        double Rounded(double value) =>
            instrument == Instrument.Ohmmeter ? value
            : isSigned ? Math.Round(value, 1)
            : Math.Max(0, Math.Round(value, 1));
    }
}
