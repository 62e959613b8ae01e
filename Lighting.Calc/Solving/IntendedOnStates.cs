using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The settings in which a lamp's voltage counts: where it is fed and meant to be lit.</summary>
/// <remarks>
/// A lamp in series with another, as with one indicator lamp for both sides, is fed a little where it should be dark;
/// that is no drop. The drop is judged where it lasts: with no momentary switch worked that the lamp does not need
/// (a headlamp without horn and brake, a stop lamp with the brake alone).
/// </remarks>
internal static class IntendedOnStates
{
    public static IEnumerable<OperatingPoint> Of(Bike bike, IReadOnlyList<OperatingPoint> settings, int lamp)
    {
        OperatingPoint[] fed = [.. settings.Where(s => s.Lamps[lamp].Drop is not null)];
        Condition litWhen = bike.Lamps[lamp].LitWhen;
        OperatingPoint[] meant = litWhen.Terms.IsEmpty ? fed : [.. fed.Where(s => litWhen.Holds(s.Setting))];
        return meant.Length > 0 ? meant : fed;
    }

    /// <summary>Those of <see cref="Of"/> that last: with the fewest momentary switches worked, as
    /// <see cref="MomentarySwitches.WorkedOf"/> counts them.</summary>
    public static IEnumerable<OperatingPoint> Lasting(
        IReadOnlyCollection<OperatingPoint> intended,
        Func<Setting, int> worked
    )
    {
        int fewest = intended.Select(p => worked(p.Setting)).DefaultIfEmpty().Min();
        return intended.Where(p => worked(p.Setting) == fewest);
    }

    /// <summary>For each lamp of the bike the one of <see cref="Lasting"/> in which it loses most, the first of
    /// several; null when it is never fed. The words are what momentary switches are called.</summary>
    public static ImmutableArray<OperatingPoint?> WorstOfEach(
        Bike bike,
        IReadOnlyList<OperatingPoint> settings,
        ImmutableArray<string> words
    )
    {
        if (settings.Count == 0)
            return [.. bike.Lamps.Select(_ => (OperatingPoint?)null)];
        Func<Setting, int> count = new MomentarySwitches(bike, words).WorkedOf(settings[0].Solved.Graph.Switches);
        int[] worked = [.. settings.Select(p => count(p.Setting))];
        return [.. Enumerable.Range(0, bike.Lamps.Length).Select(lamp => Worst(bike, settings, worked, lamp))];
    }

    /// <summary>For each lamp of the bike the one of <see cref="Of"/> in which it loses most, momentary or not;
    /// null when it is never fed.</summary>
    public static ImmutableArray<OperatingPoint?> WorstOfEachMomentary(
        Bike bike,
        IReadOnlyList<OperatingPoint> settings
    )
    {
        int[] none = new int[settings.Count];
        return [.. Enumerable.Range(0, bike.Lamps.Length).Select(lamp => Worst(bike, settings, none, lamp))];
    }

    private static OperatingPoint? Worst(Bike bike, IReadOnlyList<OperatingPoint> settings, int[] worked, int lamp)
    {
        if (settings.Count == 0)
            return null;
        Func<Setting, bool> isMeant = settings[0].Solved.Graph.Switches.TestOf(bike.Lamps[lamp].LitWhen);
        OperatingPoint? worst = null;
        (bool IsMeant, int Worked, double Drop) of = default;
        for (int i = 0; i < settings.Count; i++)
        {
            if (settings[i].Solved.LampDrop(lamp) is not { } drop)
                continue;
            (bool IsMeant, int Worked, double Drop) its = (isMeant(settings[i].Setting), worked[i], drop);
            if (worst is null || Counts(its, of))
                (worst, of) = (settings[i], its);
        }

        return worst;

        static bool Counts((bool IsMeant, int Worked, double Drop) a, (bool IsMeant, int Worked, double Drop) b) =>
            a.IsMeant != b.IsMeant ? a.IsMeant
            : a.Worked != b.Worked ? a.Worked < b.Worked
            : a.Drop > b.Drop;
    }
}
