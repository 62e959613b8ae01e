using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Which switches and loads of a bike are momentary.</summary>
internal sealed class MomentaryLoads
{
    /// <summary>Largest share of time on of a flashing lamp.</summary>
    public static readonly double LongestOnShare = Constants.Of("flash_on_max") / 100;

    private readonly Bike _bike;
    private readonly FuseOptions _options;
    private readonly MomentarySwitches _switches;
    private readonly ImmutableArray<bool> _contacts;
    private readonly ImmutableArray<bool> _lamps;

    public MomentaryLoads(Bike bike, FuseOptions options)
    {
        (_bike, _options, _switches) = (bike, options, new MomentarySwitches(bike, options.MomentarySwitches));
        _contacts = [.. bike.Switches.Select(c => !c.IsRelay && _switches.Contains(c.Switch))];
        _lamps = [.. bike.Lamps.Select(IsLamp)];
    }

    /// <summary>Whether a lamp of a bike without runs is on only momentarily.</summary>
    public bool IsMomentary(int lamp) => !_bike.HasNetwork && _lamps[lamp];

    /// <summary>For each lamp whether it is only ever on while a momentary switch is worked.</summary>
    public ImmutableArray<bool> OnlyMomentary(HarnessGraph graph)
    {
        if (!_bike.HasNetwork)
            return _lamps;
        if (!_contacts.Contains(true))
            return [.. _lamps.Select(_ => false)];
        var definitions = SettingEnumeration.SwitchesOf(_bike).ToDictionary(s => s.Name, Name.Comparer);
        bool[] open =
        [
            .. _bike.Switches.Select(
                (c, i) => _contacts[i] && !c.ClosedIn.Contains(definitions[c.Switch].Rest, Name.Comparer)
            ),
        ];
        ImmutableArray<bool> only = NotReached();
        // The contacts of a relay whose coil is momentary are momentary too.
        while (RelaysOf(only) is { Length: > 0 } more)
        {
            foreach (int contact in more)
                open[contact] = true;
            only = NotReached();
        }

        return only;

        int[] RelaysOf(ImmutableArray<bool> momentary) =>
            [
                .. _bike
                    .Switches.Index()
                    .Where(c =>
                        c.Item.IsRelay
                        && !open[c.Index]
                        && !c.Item.ClosedIn.Contains(Relay.Out, Name.Comparer)
                        && _bike.Lamps.Index().Any(l => Name.Equal(l.Item.Lamp, c.Item.Switch) && momentary[l.Index])
                    )
                    .Select(c => c.Index),
            ];

        ImmutableArray<bool> NotReached()
        {
            Reached live = graph.From(graph.Live, Cost),
                earth = graph.From(graph.Earth, Cost);
            return [.. graph.Lamps.Select(l => !(live.Reaches(l.A) && earth.Reaches(l.B)))];
        }

        double Cost(HarnessPart part) =>
            part.Kind == HarnessPartKind.Lamp || part.Kind == HarnessPartKind.Contact && open[part.Index]
                ? HarnessGraph.NoWay
                : 1;
    }

    /// <summary>Whether no momentary contact is closed.</summary>
    public bool IsContinuous(Setting setting)
    {
        for (int i = 0; i < _contacts.Length; i++)
            if (_contacts[i] && _bike.Switches[i].IsClosed(setting))
                return false;
        return true;
    }

    /// <summary>The points to take the continuous load from: those without a closed momentary contact, or all where the
    /// condition holds one closed in each.</summary>
    public IReadOnlyList<OperatingPoint> Continuous(IReadOnlyList<OperatingPoint> points) =>
        points.Where(p => IsContinuous(p.Setting)).ToArray() is { Length: > 0 } continuous ? continuous : points;

    /// <summary>Current of a fuse without the lamps that are momentary on a bike without runs; where lamps behind it
    /// flash, its rms value.</summary>
    /// <remarks>√(d·I² + (1 − d)·J²): I with the flashing lamps, J without, d the largest share of time on (Joule's
    /// law; tables/constants.csv).</remarks>
    public double ContinuousAmperes(SolvedCircuit point, int fuse, IReadOnlySet<int> fed)
    {
        double on =
            point.FuseAmperes(fuse)
            - (_bike.HasNetwork ? 0 : Amperes(point, Enumerable.Range(0, _lamps.Length).Where(i => _lamps[i])));
        double flashing = Amperes(
            point,
            _bike.HasNetwork ? fed.Where(IsFlashing) : Enumerable.Range(0, _lamps.Length).Where(IsFlashing)
        );
        double off = Math.Max(0, on - flashing);
        return flashing == 0 ? on : Math.Sqrt(LongestOnShare * on * on + (1 - LongestOnShare) * off * off);
    }

    /// <summary>The loads that are only ever on with a momentary contact closed, of some that a fuse feeds.</summary>
    public ImmutableArray<string> Of(IReadOnlyList<OperatingPoint> points, IReadOnlySet<int> fed)
    {
        if (!_bike.HasNetwork)
            return [.. _bike.Lamps.Where((_, i) => _lamps[i]).Select(l => l.Lamp)];
        IReadOnlyList<OperatingPoint> continuous = Continuous(points);
        return
        [
            .. fed.Order()
                .Where(i => points.Any(p => IsOn(p, i)) && !continuous.Any(p => IsOn(p, i)))
                .Select(i => _bike.Lamps[i].Lamp),
        ];
    }

    private static double Amperes(SolvedCircuit point, IEnumerable<int> lamps) =>
        lamps.Sum(i => Math.Abs(point.LampAmperes(i)));

    /// <summary>Whether a lamp is switched on again and again: it flashes, or a momentary contact lights it.</summary>
    public bool IsRepeated(int lamp) => _lamps[lamp] || _options.IsFlashing(_bike.Lamps[lamp]);

    // Without runs a momentary lamp is left out already.
    private bool IsFlashing(int lamp) =>
        _options.IsFlashing(_bike.Lamps[lamp]) && (_bike.HasNetwork || !_lamps[lamp]);

    private static bool IsOn(OperatingPoint point, int lamp) => Math.Abs(point.Solved.LampAmperes(lamp)) > 1e-9;

    private bool IsLamp(FittedLamp lamp) =>
        lamp.Momentary
        ?? (
            lamp.LitWhen.Terms.IsEmpty
                ? _switches.IsNamed(lamp.Lamp) || _switches.IsNamed(lamp.Circuit)
                : lamp.LitWhen.Terms.Any(t => _switches.Contains(t.Switch))
        );
}
