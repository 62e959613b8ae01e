using System.Collections.Immutable;
using System.Globalization;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The whole verdict on a bike: load, fuses, drops, charging and what the lists say against each
/// other.</summary>
public static class BikeCheck
{
    /// <summary>Checks a bike.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="options">Options of the check; null for the defaults.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">The bike has no circuit, its charging list is no curve, or the condition
    /// names what it does not have, leaves too many settings or none that can be solved.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option, or a value of the bike, is outside its
    /// range.</exception>
    /// <exception cref="NetworkNotSolvedException">A stretch of the ride, or direct lighting in its heaviest setting,
    /// has no operating point.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static BikeReport Evaluate(
        Bike bike,
        CheckOptions? options = null,
        CancellationToken cancellationToken = default
    )
    {
        options ??= new CheckOptions();
        return Evaluate(bike, new Wiring(bike, options.When), options, cancellationToken);
    }

    /// <summary>The same of a bike whose wiring, in the settings of the options, is known.</summary>
    internal static BikeReport Evaluate(
        Bike bike,
        Wiring wiring,
        CheckOptions options,
        CancellationToken cancellationToken
    )
    {
        BikeSolution solution = BikeSolution.Solve(bike, wiring, options, cancellationToken);
        if (solution.Points.IsEmpty)
            throw new ArgumentException($"No setting could be solved: {solution.NotSolved[0].Message}", nameof(bike));
        bool allAreSolved = solution.NotSolved.IsEmpty;
        SettingGroups groups = allAreSolved
            ? wiring.Groups
            : SettingGroups.Of(bike, [.. solution.Points.Select(p => p.Setting)]);
        var feeds = DownstreamScopes.Of(bike, groups, cancellationToken);
        ImmutableArray<OperatingPoint> distinct = OperatingPoint.FirstOfEachCurrents(solution.Points);
        ImmutableArray<FuseSuitability> fuses = FuseCheck.Evaluate(
            feeds,
            solution.FusePoints,
            OperatingPoint.FirstOfEachCurrents(solution.FusePoints),
            options.Fuses
        );
        ImmutableArray<OperatingPoint?> worst = IntendedOnStates.WorstOfEach(
            bike,
            solution.Points,
            options.Fuses.MomentarySwitches
        );
        ImmutableArray<VoltageDropBreakdown> drops = VoltageDropAnalysis.WorstBreakdowns(bike, worst);
        cancellationToken.ThrowIfCancellationRequested();
        bool isDirect = bike.Lighting == LightingSupply.Direct;
        ChargingReport? charging =
            bike.Charging.IsEmpty || isDirect
                ? null
                : ChargingSystem
                    .WithLoads(
                        bike,
                        AverageLoads.Of(
                            solution.Network,
                            solution.Held,
                            allAreSolved ? wiring.Places : Wiring.PlacesOf(solution.Points.Select(p => p.Setting))
                        ),
                        options.Charging,
                        wiring.Switches,
                        solution.Network.Graph
                    )
                    .Report(solution.Settings);
        DirectLightingReport? direct =
            bike.Charging.IsEmpty || !isDirect ? null : DirectLightingOf(bike, solution.Points, options.Fuses);
        Lazy<EngineReport>? engine =
            charging is null || !options.IsFedByGenerator(bike)
                ? null
                : new Lazy<EngineReport>(() => EngineReport.Of(bike, solution.Points, options.Charging, options.Fuses));
        Finding[] findings =
        [
            .. solution.NotSolved,
            .. solution.NotSteady,
            .. NoSwitches(bike) is { } missing ? [missing]
            : bike.HasNetwork ? LitReview.Of(bike, solution.Points, groups)
            : [],
            .. allAreSolved ? wiring.Review : WiringReview.Evaluate(bike, groups),
            .. fuses.SelectMany(f => f.Findings),
            .. isDirect ? [] : UnfusedRuns.Findings(feeds, cancellationToken),
            .. RelayReview.Of(bike, solution.Points, solution.Network, options.Engine != EngineState.Off),
            .. LampChecks.Of(bike, distinct, worst, groups.Graph).TogetherByKind(),
            .. (charging?.Findings ?? direct?.Findings ?? []).Where(f =>
                f.Severity != Severity.Note && f.Kind != FindingKind.ChargingNotSolved
            ),
            .. bike.RegulatorRating is null && bike.RegulatorResistance.Ohms == 0 ? [] : engine?.Value.Findings ?? [],
            .. NotIncluded(bike),
            .. options.When.Terms.IsEmpty
                ? Array.Empty<Finding>()
                : [new Finding(FindingKind.OnlySomeSettings, Severity.Caution, options.When.ToString())],
        ];
        return new BikeReport
        {
            Bike = bike,
            Network = solution.Network,
            SupplyVoltage = solution.Supply,
            When = options.When,
            Settings = solution.Points,
            Fuses = fuses,
            WorstDrops = drops,
            Charging = charging,
            LazyEngine = engine,
            DirectLighting = direct,
            Findings = [.. findings.OrderByDescending(f => f.Severity)],
            NotJudged = [.. NotJudged(bike, solution, fuses)],
        };
    }

    /// <summary>The direct lighting of a bike in its heaviest lasting setting, with no momentary switch worked where
    /// there is one, over the speeds of its charging list.</summary>
    internal static DirectLightingReport DirectLightingOf(
        Bike bike,
        IReadOnlyList<OperatingPoint> settings,
        FuseOptions fuses
    )
    {
        var momentary = new MomentarySwitches(bike, fuses.MomentarySwitches);
        OperatingPoint heaviest =
            settings
                .Where(p => momentary.AreAtRest(p.Setting) && p.TotalCurrent.Amperes > 0)
                .MaxBy(p => p.TotalCurrent.Amperes)
            ?? settings.MaxBy(p => p.TotalCurrent.Amperes)!;
        return DirectLighting
            .Of(bike, coilResistance: null)
            .Report(heaviest.Setting, bike.Charging.Select(c => c.Speed).Distinct());
    }

    private static IEnumerable<string> NotJudged(
        Bike bike,
        BikeSolution solution,
        ImmutableArray<FuseSuitability> fuses
    )
    {
        if (bike.Lighting == LightingSupply.Battery && fuses.IsEmpty)
            yield return $"no fuse is listed. {FullLoad(bike, solution.Points)}";
        foreach (FuseSuitability fuse in fuses.Where(f => f.Verdict == FuseVerdict.NotJudged))
            yield return $"no setting joins the fuse '{fuse.Fuse.Name}' to the battery.";
        if (bike is { Lighting: LightingSupply.Direct, HasNetwork: false, Charging.IsEmpty: true })
            yield return "neither runs nor a charging list say what reaches the lamps.";
        if (!solution.NotSolved.IsEmpty)
            yield return $"{solution.Settings.Length - solution.Points.Length} of {solution.Settings.Length} settings "
                + $"have no operating point.";
    }

    // 15 A is the usual single main fuse of an older motorcycle: common practice, no source.
    private static string FullLoad(Bike bike, ImmutableArray<OperatingPoint> points)
    {
        OperatingPoint heaviest = points.MaxBy(p => p.TotalCurrent.Amperes)!;
        double load = heaviest.TotalCurrent.Amperes,
            usable = 15 * new FuseOptions().ContinuousLoadFactor.DecimalFractions;
        string draws = bike.CountsAllLampsTogether ? "All lamps together draw" : "The heaviest setting draws";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{draws} {load:0.##} A; a 15 A fuse would {(load > usable ? "be overloaded" : "carry that")} (limit "
                + $"{usable:0.##} A)."
        );
    }

    // Every lamp would be found dark, or lit where it should not be: the one cause is told instead.
    private static Finding? NoSwitches(Bike bike)
    {
        string[] named =
        [
            .. bike.Lamps.SelectMany(l => l.LitWhen.Terms).Select(t => t.Switch).Distinct(Name.Comparer),
        ];
        return bike.HasNetwork && bike.Switches.IsEmpty && named.Length > 0
            ? new Finding(FindingKind.NoSwitchList, Severity.Fault, "switches.csv") { Parts = [.. named] }
            : null;
    }

    /// <summary>The caution that a bike with a battery lists no fuse.</summary>
    internal static IEnumerable<Finding> NoFuse(Bike bike) =>
        bike.Fuses.IsEmpty && bike.Lighting == LightingSupply.Battery
            ? [new Finding(FindingKind.NoFuse, Severity.Caution, "fuses.csv")]
            : [];

    private static IEnumerable<Finding> NotIncluded(Bike bike)
    {
        if (!bike.HasNetwork)
            yield return new Finding(FindingKind.NoRuns, Severity.Note, "runs.csv");
        if (
            !bike.HasNetwork
            && (
                bike.Lamps.Any(l => l.Feed is not null || l.Return is not null)
                || bike.Fuses.Any(f => f.From is not null)
                || !bike.Switches.IsEmpty
            )
        )
            yield return new Finding(FindingKind.PointsIgnored, Severity.Note, "runs.csv");
        Run[] assumed = [.. bike.Runs.Where(r => r.AssumesJoints)];
        if (assumed.Length > 0)
            yield return new Finding(FindingKind.JointsAssumed, Severity.Note, "runs.csv")
            {
                Value = assumed[0].JointResistance,
                Figures = [Scalar.FromAmount(assumed.Sum(r => r.Joints))],
                Parts = [.. assumed.Select(r => r.Name)],
            };
        string[] ideal =
        [
            .. bike
                .Switches.Where(c => !c.IsRelay && c.Resistance.Ohms == 0)
                .Select(c => c.Switch)
                .Distinct(Name.Comparer),
        ];
        if (bike.HasNetwork && ideal.Length > 0)
            yield return new Finding(FindingKind.ContactsWithoutResistance, Severity.Note, "switches.csv")
            {
                Parts = [.. ideal],
            };
        if (bike.CountsAllLampsTogether)
            yield return new Finding(FindingKind.NoLitWhen, Severity.Note, "lamps.csv");
        foreach (Finding finding in NoFuse(bike))
            yield return finding;
        if (bike.Charging.IsEmpty)
            yield return new Finding(FindingKind.NoChargingList, Severity.Note, "charging.csv");
    }
}
