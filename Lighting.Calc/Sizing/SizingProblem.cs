using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The numbers of one sizing in SI: for every run and size its resistance, copper and rating; the states; the
/// limits.</summary>
internal sealed class SizingProblem
{
    public const double Tolerance = 1e-9;

    public SizingProblem(HarnessNetwork network, WireSizingOptions options, CancellationToken cancellationToken)
    {
        Cancellation = cancellationToken;
        Network = network;
        Options = options;
        bool isOff = options.Check.Engine == EngineState.Off;
        SupplyVolts = (options.Check.Supply ?? (isOff ? Bike.BatteryVoltage : Bike.ChargingVoltage)).Volts;
        SourceOhms = isOff ? Bike.BatteryResistance.Ohms : 0;
        Limits = [.. Bike.Lamps.Select(l => AllowedFor(l).DecimalFractions)];
        Allowed = Limits;
        bool keeps = Bike.Runs.Any(r => r.WireIsOpen);
        Runs = [.. Enumerable.Range(0, Bike.Runs.Length).Where(i => !keeps || Bike.Runs[i].WireIsOpen)];
        ImmutableArray<WireSize> offered = options.Stock.IsDefaultOrEmpty ? Family(Bike, options) : options.Stock;
        Sizes =
        [
            .. offered
                .Concat(Enumerable.Range(0, Bike.Runs.Length).Except(Runs).Select(i => Bike.Runs[i].Wire))
                .Distinct()
                .OrderBy(s => s.CopperArea.SquareMillimeters),
        ];
        Offered = [.. Enumerable.Range(0, Sizes.Length).Where(i => offered.Contains(Sizes[i]))];
        Groups = new SettingGroups(network.Graph, SettingEnumeration.Of(Bike, options.Check.When));
        FeedStates = DownstreamGraph.States(Groups);
        _worked =
        [
            .. Groups.First.Select(
                new MomentarySwitches(Bike, options.Check.Fuses.MomentarySwitches).WorkedOf(network.Graph.Switches)
            ),
        ];
        _fewestWorked =
        [
            .. Bike.Lamps.Select(
                (_, lamp) => _worked.Where((_, state) => Groups.IsFed(lamp, state)).DefaultIfEmpty().Min()
            ),
        ];
        Ohms = OfEach((r, s) => s.Resistance(r.Length, Bike.WireTemperature).Ohms);
        Warms = WireHeat.IsOf(Bike);
        Growth = Warms ? OfEach((r, s) => WireGrowth.Of(Bike, r, s, options.HeatRule)) : [];
        Copper = OfEach((r, s) => s.CopperArea.SquareMillimeters * r.Length.Meters);
        Ratings = OfEach((r, s) => RatingOf(r, s).Current?.Amperes ?? double.NaN);
        (FuseOf, _isBatteryLead) = FeedingFuses(Bike);
        Kept = [.. Bike.Runs.Select((r, i) => Runs.Contains(i) ? -1 : Sizes.IndexOf(r.Wire))];
        StateVolts = VoltsOfStates();
    }

    private static readonly double s_batteryLead = Constants.Of("battery_lead_mm2");

    private readonly bool[] _isBatteryLead;

    // Of each state the momentary switches that are worked, and for each lamp the fewest with which it is fed.
    private readonly int[] _worked;
    private readonly int[] _fewestWorked;

    public HarnessNetwork Network { get; }

    public CancellationToken Cancellation { get; }

    public Bike Bike => Network.Bike;

    public WireSizingOptions Options { get; }

    public double SupplyVolts { get; }

    /// <summary>Whether the engine runs and its generator joins the harness apart from the battery.</summary>
    public bool IsFedAtGenerator => Options.Check.IsFedByGenerator(Bike) && Network.AtGenerator.IsApart;

    /// <summary>For each lamp the limit of its drop as a fraction of the source voltage.</summary>
    public ImmutableArray<double> Limits { get; }

    /// <summary>For each lamp the drop that the wires are chosen for: its limit, or more where no listed wire keeps
    /// that.</summary>
    public ImmutableArray<double> Allowed { get; private set; }

    /// <summary>For each state the voltage of the source: with a charging list what generator and battery hold behind
    /// the largest wires, which draw the most.</summary>
    public double[] StateVolts { get; }

    /// <summary>Resistance of the source: the battery's with the engine off, none with the engine running.</summary>
    public double SourceOhms { get; }

    /// <summary>The runs to choose for: those whose wire is open, or all where none is.</summary>
    public ImmutableArray<int> Runs { get; }

    /// <summary>For each run the size that it keeps; −1 where it is to be chosen.</summary>
    public ImmutableArray<int> Kept { get; }

    /// <summary>The sizes to choose from and those that are kept, smallest first.</summary>
    public ImmutableArray<WireSize> Sizes { get; }

    /// <summary>Those of <see cref="Sizes"/> to choose from.</summary>
    public ImmutableArray<int> Offered { get; }

    /// <summary>How many different sizes may be chosen.</summary>
    public int MostSizes =>
        Options.MostSizes ?? (Options.Stock.IsDefaultOrEmpty ? WireSizingOptions.FewSizes : Offered.Length);

    public SettingGroups Groups { get; }

    /// <summary>The states that differ in what fuses feed.</summary>
    public ImmutableArray<FeedState> FeedStates { get; }

    /// <summary>Wire ohms by run and size, without current.</summary>
    public double[][] Ohms { get; }

    /// <summary>Whether the wires warm with their current.</summary>
    public bool Warms { get; }

    /// <summary>How the ohms grow, by run and size; empty where no wire warms.</summary>
    public WireGrowth[][] Growth { get; }

    /// <summary>mm²·m by run and size.</summary>
    public double[][] Copper { get; }

    /// <summary>Amperes by run and size; not a number where nothing is published.</summary>
    public double[][] Ratings { get; }

    /// <summary>For each run the fuse of the largest rating that feeds it or whose lamps return by it, or that a
    /// battery lead leads to; null where none does.</summary>
    public Fuse?[] FuseOf { get; }

    /// <summary>Whether the drop of a lamp is held to its limit in a state: it is fed, and no momentary switch is
    /// worked that it does not need (see <see cref="IntendedOnStates"/>).</summary>
    public bool JudgesDrop(int lamp, int state) =>
        Groups.IsFed(lamp, state) && _worked[state] == _fewestWorked[lamp];

    public CurrentRating RatingOf(Run run, WireSize size) =>
        run.RatingOf(size, Options.Check.Fuses.AirRoundWires(Bike), run.Cable ?? Bike.Cable);

    public double FuseAmperes(int run) =>
        FuseOf[run] is { } fuse ? FuseJudge.ContinuousAmperes(fuse, Options.Check.Fuses) : 0;

    /// <summary>Least area of a run in mm²: what the builder wants for strength; of a battery lead, which no fuse
    /// protects, at least the usual one.</summary>
    public double LeastArea(int run) =>
        Math.Max(Options.MinimumArea.SquareMillimeters, _isBatteryLead[run] ? s_batteryLead : 0);

    public bool IsStrongEnough(int run, int size) =>
        Sizes[size].CopperArea.SquareMillimeters >= LeastArea(run) - Tolerance;

    /// <summary>Allows a lamp more than its limit, which no listed wire keeps.</summary>
    public void Ease(int lamp, double allowed) => Allowed = Allowed.SetItem(lamp, allowed);

    /// <summary>Whether a size holds the fuse that feeds a run; a size without a published rating never does.</summary>
    public bool MeetsFuse(int run, int size) => Ratings[run][size] >= FuseAmperes(run) - Tolerance;

    /// <summary>The smallest of some sizes, in their order, from which on each is strong enough and holds the fuse of a
    /// run; −1 where the largest is not.</summary>
    public int Smallest(int run, IReadOnlyList<int> of)
    {
        int place = of.Count;
        while (place > 0 && IsStrongEnough(run, of[place - 1]) && MeetsFuse(run, of[place - 1]))
            place--;
        return place < of.Count ? of[place] : -1;
    }

    /// <summary>A size for each run to choose for; the others keep theirs.</summary>
    public int[] Choice(Func<int, int> sizeOf) => [.. Kept.Select((kept, run) => kept >= 0 ? kept : sizeOf(run))];

    public double CopperOf(int[] sizes) => Runs.Sum(r => Copper[r][sizes[r]]);

    /// <summary>The bike with other wires.</summary>
    public Bike With(int[] sizes) =>
        Bike with
        {
            Runs = [.. Bike.Runs.Select((r, i) => r with { Wire = Sizes[sizes[i]], WireIsOpen = false })],
        };

    private double[] VoltsOfStates()
    {
        if (!Options.Check.IsFedByGenerator(Bike))
            return [.. Groups.First.Select(_ => SupplyVolts)];
        var engine = RunningEngine.Of(With(Choice(_ => Sizes.Length - 1)), Options.Check.Charging);
        return [.. Groups.First.Select(s => engine.AtMostOutput(s).SupplyVoltage.Volts)];
    }

    // Old inch sizes and imperial gauges are not what a new harness is made of; strand counts are metric cable.
    public static WireConstruction FamilyOf(WireConstruction fitted) =>
        fitted is WireConstruction.SolidGauge or WireConstruction.StrandedGauge ? fitted : WireConstruction.MetricCable;

    /// <summary>The sizes of a kind, smallest first; of gauges the even ones unless the odd ones are wanted
    /// too.</summary>
    public static ImmutableArray<WireSize> SizesOf(WireConstruction family, bool includeOddGauges)
    {
        ImmutableArray<WireSize> all = WireTable.Of(family);
        return family is not (WireConstruction.SolidGauge or WireConstruction.StrandedGauge) || includeOddGauges
            ? all
            : [.. all.Where((_, i) => i % 2 == (AmericanWireGauge.Smallest % 2))];
    }

    // What check holds a lamp to, unless told otherwise. A limit that is advice only limits no wire.
    private UnitsNet.Ratio AllowedFor(FittedLamp lamp) =>
        Options.AllowedDrop
        ?? (
            DropLimit.Of(Bike, lamp, UnitsNet.ElectricPotential.FromVolts(SupplyVolts)) is { IsAdvice: false } limit
                ? limit.Share
                : UnitsNet.Ratio.FromPercent(100)
        );

    private T[][] OfEach<T>(Func<Run, WireSize, T> value) =>
        [.. Bike.Runs.Select(r => Sizes.Select(s => value(r, s)).ToArray())];

    private static ImmutableArray<WireSize> Family(Bike bike, WireSizingOptions options)
    {
        ImmutableArray<WireSize> all = SizesOf(
            options.Family
                ?? bike.Runs.Where(r => !r.WireIsOpen)
                    .GroupBy(r => FamilyOf(r.Wire.Construction))
                    .OrderByDescending(g => g.Count())
                    .ThenBy(g => g.Key)
                    .Select(g => g.Key)
                    .FirstOrDefault(WireConstruction.MetricCable),
            options.IncludeOddGauges
        );
        return options.LargestArea is { } largest
            ? [.. all.Where(w => w.CopperArea.SquareMillimeters <= largest.SquareMillimeters + Tolerance)]
            : all;
    }

    /// <summary>Takes the fuses that runs are behind with some sizes into account, where they are larger than those
    /// known so far.</summary>
    /// <returns>Whether any is; then other sizes may be needed.</returns>
    public bool TakesFusesOf(int[] sizes)
    {
        Fuse?[] with = FeedingFuses(With(sizes)).FuseOf;
        bool isAny = false;
        for (int i = 0; i < with.Length; i++)
            if (
                with[i] is { } fuse
                && FuseJudge.ContinuousAmperes(fuse, Options.Check.Fuses) > FuseAmperes(i) + Tolerance
            )
                (FuseOf[i], isAny) = (fuse, true);
        return isAny;
    }

    private (Fuse?[] FuseOf, bool[] IsBatteryLead) FeedingFuses(Bike bike)
    {
        DownstreamScopes scopes = DownstreamScopes.Of(bike, Groups, Cancellation);
        var found = new Fuse?[bike.Runs.Length];
        for (int i = 0; i < Bike.Fuses.Length; i++)
        {
            FuseScope scope = scopes.Scopes[i];
            foreach (int run in scope.Runs.Keys.Concat(scope.ReturnRuns))
                if (
                    found[run] is not { } known
                    || FuseJudge.ContinuousAmperes(Bike.Fuses[i], Options.Check.Fuses)
                        > FuseJudge.ContinuousAmperes(known, Options.Check.Fuses)
                )
                    found[run] = Bike.Fuses[i];
        }

        var isLead = new bool[found.Length];
        foreach (UnfusedRun lead in UnfusedRuns.Of(scopes, Cancellation).Where(u => u.IsBatteryLead))
        {
            int run = bike.Runs.IndexOf(lead.Run);
            isLead[run] = true;
            found[run] ??= lead.LargestFuse;
        }

        return (found, isLead);
    }
}
