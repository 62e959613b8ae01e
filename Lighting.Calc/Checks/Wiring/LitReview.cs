using System.Collections.Immutable;
using System.Globalization;

namespace Lighting.Calc;

/// <summary>Lamps that are lit or dark against their <c>lit when</c>. A blank one claims nothing.</summary>
internal sealed class LitReview
{
    private readonly Bike _bike;
    private readonly IReadOnlyList<OperatingPoint> _points;
    private readonly SettingGroups _groups;
    private readonly HarnessGraph _graph;

    // The solutions, each once, and for each point the place of its own among them.
    private readonly SolvedCircuit[] _solved;
    private readonly int[] _solvedAt;

    private LitReview(Bike bike, IReadOnlyList<OperatingPoint> points, SettingGroups groups)
    {
        (_bike, _points, _groups, _graph) = (bike, points, groups, groups.Graph);
        var places = new Dictionary<SolvedCircuit, int>();
        foreach (OperatingPoint point in points)
            places.TryAdd(point.Solved, places.Count);
        _solved = [.. places.Keys];
        _solvedAt = [.. points.Select(p => places[p.Solved])];
    }

    /// <summary>Compares what the lists say with what the circuit does.</summary>
    /// <param name="bike">A bike with runs.</param>
    /// <param name="points">Its operating points.</param>
    /// <param name="groups">The groups of their settings, in the same order.</param>
    public static IEnumerable<Finding> Of(Bike bike, IReadOnlyList<OperatingPoint> points, SettingGroups groups)
    {
        var review = new LitReview(bike, points, groups);
        return Enumerable
            .Range(0, bike.Lamps.Length)
            .Where(l => !bike.Lamps[l].LitWhen.Terms.IsEmpty)
            .SelectMany(review.OfLamp)
            .TogetherByCause();
    }

    private IEnumerable<Finding> OfLamp(int lamp)
    {
        string name = _bike.Lamps[lamp].Lamp;
        Func<Setting, bool> isMeant = _graph.Switches.TestOf(_bike.Lamps[lamp].LitWhen);
        bool[] isLit = [.. _solved.Select(s => IsLit(s, lamp))];
        List<OperatingPoint> dark = [],
            lit = [],
            through = [];
        for (int p = 0; p < _points.Count; p++)
        {
            OperatingPoint point = _points[p];
            bool on = isLit[_solvedAt[p]],
                meant = isMeant(point.Setting);
            if (meant && on && !_groups.IsFed(lamp, _groups.GroupOf[p]))
                through.Add(point);
            // A driver that gives up is a finding of its own.
            else if (meant && !on && !point.Solved.LampDroppedOut(lamp))
                dark.Add(point);
            else if (!meant && on)
                lit.Add(point);
        }

        if (dark.Count > 0)
            yield return Found(FindingKind.LampDark, Severity.Fault, dark, WhyDark(dark[0], lamp));
        if (through.Count > 0)
            yield return Found(FindingKind.LampInSeries, Severity.Note, through, null);
        if (lit.Count > 0)
            yield return Found(FindingKind.LampFedUnintended, Severity.Fault, lit, WhyLit(lit[0], lamp));

        Finding Found(FindingKind kind, Severity severity, List<OperatingPoint> points, string? why) =>
            new(kind, severity, name)
            {
                Setting = points[0].Setting,
                FurtherSettings = points.Count - 1,
                Detail = why,
            };
    }

    private bool IsLit(SolvedCircuit solved, int lamp) =>
        solved.LampAmperes(lamp) != 0
        && LitRule.IsLit(
            _bike.Lamps[lamp].Specification,
            UnitsNet.ElectricPotential.FromVolts(solved.LampVolts(lamp)),
            UnitsNet.ElectricPotential.FromVolts(solved.SupplyVolts)
        );

    private string WhyDark(OperatingPoint point, int lamp)
    {
        if (Math.Abs(point.Solved.LampVolts(lamp)) > 1e-3)
            return Across(point, lamp);
        HarnessPart part = _graph.Lamps[lamp];
        ContactSet closed = point.Closed;
        foreach ((int from, int to) in new[] { (_graph.Live, part.A), (part.B, _graph.Earth) })
        {
            // The way with fewest open contacts shows which of them would have to close.
            Reached ways = _graph.From(
                from,
                p =>
                    p.Joins(closed) ? 1
                    : p.Kind == HarnessPartKind.Contact ? 1000
                    : HarnessGraph.NoWay
            );
            if (!ways.Reaches(to))
                return $"nothing connects '{_graph.Points[from]}' to '{_graph.Points[to]}'";
            ImmutableArray<HarnessPart> way = ways.PathTo(to);
            string[] open = [.. way.Where(p => !p.Joins(closed)).Select(p => $"'{p.Name}'")];
            if (open.Length > 0)
                return $"open contact {string.Join(" and ", open)} on the way {_graph.Described(from, way)}";
        }

        return Across(point, lamp);
    }

    private string WhyLit(OperatingPoint point, int lamp)
    {
        Reached live = _graph.From(_graph.Live, point.Closed);
        int feed = _graph.Lamps[lamp].A;
        return live.Reaches(feed)
            ? _graph.Described(_graph.Live, live.PathTo(feed))
            : $"{Across(point, lamp)}, through another lamp";
    }

    private static string Across(OperatingPoint point, int lamp) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Math.Abs(point.Solved.LampVolts(lamp)):0.00} V across it"
                + $"{(IsReversed(point, lamp) ? ", the wrong way round" : "")}"
        );

    private static bool IsReversed(OperatingPoint point, int lamp) =>
        point.Solved.LampVolts(lamp) < 0 && point.Lamps[lamp].Lamp.Specification.HasPolarity;
}
