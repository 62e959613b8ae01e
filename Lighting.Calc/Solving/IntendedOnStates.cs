using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The settings in which a lamp's voltage counts: where it is fed and meant to be lit.</summary>
/// <remarks>A lamp in series with another, as with one indicator lamp for both sides, is fed a little where it should
/// be dark; that is no drop.</remarks>
internal static class IntendedOnStates
{
    public static IEnumerable<OperatingPoint> Of(Bike bike, IReadOnlyList<OperatingPoint> settings, int lamp)
    {
        OperatingPoint[] fed = [.. settings.Where(s => s.Lamps[lamp].Drop is not null)];
        Condition litWhen = bike.Lamps[lamp].LitWhen;
        OperatingPoint[] meant = litWhen.Terms.IsEmpty ? fed : [.. fed.Where(s => litWhen.Holds(s.Setting))];
        return meant.Length > 0 ? meant : fed;
    }

    /// <summary>For each lamp of the bike its <see cref="Worst"/>.</summary>
    public static ImmutableArray<OperatingPoint?> WorstOfEach(Bike bike, IReadOnlyList<OperatingPoint> settings) =>
        [.. Enumerable.Range(0, bike.Lamps.Length).Select(lamp => Worst(bike, settings, lamp))];

    /// <summary>The one of <see cref="Of"/> in which the lamp loses most, the first of several; null when it is never
    /// fed.</summary>
    public static OperatingPoint? Worst(Bike bike, IReadOnlyList<OperatingPoint> settings, int lamp)
    {
        if (settings.Count == 0)
            return null;
        Func<Setting, bool> isMeant = settings[0].Solved.Graph.Switches.TestOf(bike.Lamps[lamp].LitWhen);
        OperatingPoint? meant = null,
            fed = null;
        double meantDrop = double.NegativeInfinity,
            fedDrop = double.NegativeInfinity;
        foreach (OperatingPoint point in settings)
        {
            if (point.Solved.LampDrop(lamp) is not { } drop)
                continue;
            if (drop > fedDrop)
                (fed, fedDrop) = (point, drop);
            if (drop > meantDrop && isMeant(point.Setting))
                (meant, meantDrop) = (point, drop);
        }

        return meant ?? fed;
    }
}
