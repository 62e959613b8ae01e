using System.Globalization;
using Lighting.Calc.Harness;
using Lighting.Calc.Lamps;

namespace Lighting.Calc.Network;

/// <summary>Lamps that are lit or dark against their <c>lit when</c>. A blank one claims nothing.</summary>
internal sealed class LitReview
{
    private readonly Bike _bike;
    private readonly IReadOnlyList<OperatingPoint> _points;
    private readonly SettingGroups _groups;
    private readonly HarnessLink[] _links;

    private LitReview(Bike bike, IReadOnlyList<OperatingPoint> points, SettingGroups groups) => (_bike, _points, _groups, _links) = (bike, points, groups, [.. HarnessLink.Of(bike)]);

    /// <summary>Compares what the lists say with what the circuit does.</summary>
    /// <param name="bike">A bike with runs.</param>
    /// <param name="points">Its operating points.</param>
    /// <param name="groups">The groups of their settings, in the same order.</param>
    public static IEnumerable<Finding> Of(Bike bike, IReadOnlyList<OperatingPoint> points, SettingGroups groups)
    {
        var review = new LitReview(bike, points, groups);
        return Enumerable.Range(0, bike.Lamps.Length).Where(l => !bike.Lamps[l].LitWhen.Terms.IsEmpty).SelectMany(review.OfLamp);
    }

    private IEnumerable<Finding> OfLamp(int lamp)
    {
        string name = _bike.Lamps[lamp].Lamp;
        var litWhen = new ConditionTest(_bike.Lamps[lamp].LitWhen);
        var isLit = new Dictionary<SolvedCircuit, bool>();
        List<OperatingPoint> dark = [], lit = [], through = [];
        for (int p = 0; p < _points.Count; p++)
        {
            OperatingPoint point = _points[p];
            if (!isLit.TryGetValue(point.Solved, out bool on))
                isLit.Add(point.Solved, on = IsLit(point.Solved, lamp));
            bool meant = litWhen.Holds(point.Setting);
            if (meant && on && !_groups.IsFed(lamp, _groups.GroupOf[p]))
                through.Add(point);
            // A driver that gives up is a finding of its own.
            else if (meant && !on && !point.Solved.LampDroppedOut(lamp))
                dark.Add(point);
            else if (!meant && on)
                lit.Add(point);
        }

        if (dark.Count > 0)
            yield return new Finding(Severity.Fault, name, $"'lit when' says lit in the setting '{dark[0].Setting}'{Others(dark)}, but the wiring leaves it dark: {WhyDark(dark[0], lamp)}.");
        if (through.Count > 0)
            yield return new Finding(Severity.Note, name, $"in the setting '{through[0].Setting}'{Others(through)} its current also flows through another lamp.");
        if (lit.Count > 0)
            yield return new Finding(Severity.Fault, name, $"'lit when' says dark in the setting '{lit[0].Setting}'{Others(lit)}, but the wiring feeds it: {WhyLit(lit[0], lamp)}.");
    }

    private bool IsLit(SolvedCircuit solved, int lamp) => solved.LampAmperes(lamp) != 0
        && LitRule.IsLit(_bike.Lamps[lamp].Specification, UnitsNet.ElectricPotential.FromVolts(solved.LampVolts(lamp)), UnitsNet.ElectricPotential.FromVolts(solved.SupplyVolts));

    private string WhyDark(OperatingPoint point, int lamp)
    {
        if (Math.Abs(point.Solved.LampVolts(lamp)) > 1e-3)
            return Across(point, lamp);
        FittedLamp fitted = _bike.Lamps[lamp];
        foreach ((string from, string to) in new[] { (_bike.LivePoint, fitted.Feed!), (fitted.Return!, _bike.EarthPoint) })
        {
            // The way with fewest open contacts shows which of them would have to close.
            IReadOnlyList<HarnessStep>? way = HarnessPath.Cheapest(_links, from, to, l => IsOpen(l, point) ? 1000 : 1);
            if (way is null)
                return $"nothing joins '{from}' to '{to}'";
            string[] openContacts = [.. way.Where(s => IsOpen(s.Link, point)).Select(s => $"'{s.Link.Name}'")];
            if (openContacts.Length > 0)
                return $"open contact {string.Join(" and ", openContacts)} on the way {WiringReview.Described(way, from)}";
        }

        return Across(point, lamp);
    }

    private string WhyLit(OperatingPoint point, int lamp) =>
        HarnessPath.Cheapest(_links, _bike.LivePoint, _bike.Lamps[lamp].Feed!, l => IsOpen(l, point) ? null : 1) is { } way
            ? WiringReview.Described(way, _bike.LivePoint)
            : $"{Across(point, lamp)}, through another lamp";

    private static string Across(OperatingPoint point, int lamp) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(point.Solved.LampVolts(lamp)):0.00} V across it{(point.Solved.LampVolts(lamp) < 0 && point.Lamps[lamp].Lamp.Specification.HasPolarity ? ", the wrong way round" : "")}");

    private bool IsOpen(HarnessLink link, OperatingPoint point) => link.Kind == HarnessLinkKind.Contact && !_bike.Switches[link.Index].IsClosed(point.Setting);

    private static string Others(List<OperatingPoint> points) => points.Count > 1 ? $" (and {points.Count - 1} more)" : "";
}
