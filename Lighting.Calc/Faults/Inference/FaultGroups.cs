using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Faults that no test of the sheet can distinguish.</summary>
/// <remarks>
/// Two faults are alike when every severity of the one has a severity of the other from which no test differs by
/// <see cref="Apart"/> standard deviations, and the other way round.
/// </remarks>
internal sealed class FaultGroups
{
    /// <summary>Standard deviations that distinguish two faults.</summary>
    public const double Apart = 2;

    private readonly FaultModel _model;
    private readonly List<(TestPlace Test, Column Column)> _tests;
    private readonly ReadingScale _scale;

    private FaultGroups(FaultModel model, List<(TestPlace Test, Column Column)> tests)
    {
        _model = model;
        _tests = tests;
        _scale = new ReadingScale(model.Circuit);
    }

    /// <summary>For each family the index of the first family it is alike to: its own when there is none
    /// before.</summary>
    public static ImmutableArray<int> Of(FaultModel model, List<(TestPlace Test, Column Column)> tests)
    {
        var groups = new FaultGroups(model, tests);
        int[] of = [.. Enumerable.Range(0, model.Families.Length)];
        for (int f = 1; f < of.Length; f++)
            for (int g = 1; g < f; g++)
                if (of[g] == g && groups.Alike(f, g) && groups.Alike(g, f))
                {
                    of[f] = g;
                    break;
                }

        return [.. of];
    }

    private bool Alike(int f, int g)
    {
        for (int a = 0; a < _model.Families[f].Cases.Length; a++)
        {
            bool found = false;
            for (int b = 0; b < _model.Families[g].Cases.Length && !found; b++)
                found = SameReadings(_model.FirstOf[f] + a, _model.FirstOf[g] + b);
            if (!found)
                return false;
        }

        return true;
    }

    private bool SameReadings(int a, int b)
    {
        bool shorts = _model.Members[a].Family is ShortToFrame || _model.Members[b].Family is ShortToFrame;
        foreach ((TestPlace test, Column column) in _tests)
        {
            // Where a short may be, no ammeter goes in the fuse's place.
            if (shorts && test.Instrument == Calc.Instrument.Ammeter)
                continue;
            double own = test.Instrument.IsLook() ? LookScale.EyeSigma : _scale.Sigma(test.Instrument, column.Value[a]);
            double sigma = Math.Sqrt(own * own + column.Sigma[a] * column.Sigma[b] + column.OwnAt(a) * column.OwnAt(b));
            double va = column.Value[a],
                vb = column.Value[b];
            if (test.Instrument.IsLook())
                (va, vb) = (Math.Max(va, -6), Math.Max(vb, -6));
            if (Math.Abs(va - vb) > Apart * sigma)
                return false;
        }

        return true;
    }
}
