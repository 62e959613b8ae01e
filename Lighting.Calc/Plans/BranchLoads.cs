using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>What groups of lamps draw in every setting of a solved bike.</summary>
internal sealed class BranchLoads
{
    /// <summary>What wires that are not listed, or still open, are taken to allow: 15 A, the usual single fuse of an
    /// older motorcycle (common practice, no source).</summary>
    public const double UnknownWireAmperes = 15;

    private readonly Bike _bike;
    private readonly MomentaryLoads _momentary;
    private readonly ImmutableArray<OperatingPoint> _peak;
    private readonly ImmutableArray<OperatingPoint> _continuous;

    private BranchLoads(Bike bike, FusePlanOptions options, BikeSolution solution)
    {
        (_bike, _momentary) = (bike, new MomentaryLoads(bike, options.Check.Fuses));
        _peak = OperatingPoint.FirstOfEachCurrents(solution.Points);
        _continuous = [.. _momentary.Continuous(_peak)];
    }

    /// <summary>The loads of a bike; null, with the reason, where a setting has no solution: what flows there is not
    /// known, and no fuse is planned by it.</summary>
    public static BranchLoads? Of(
        Bike bike,
        FusePlanOptions options,
        CancellationToken cancellationToken,
        out string problem
    )
    {
        BikeSolution solution = BikeSolution.Solve(bike, options.Check, cancellationToken);
        problem = solution.NotSolved is [var first, ..]
            ? $"a setting cannot be solved, to be put right first: {first.Message.TrimEnd('.')}"
            : "";
        return solution.NotSolved.IsEmpty ? new BranchLoads(bike, options, solution) : null;
    }

    public DealtBranch Of(
        int source,
        ImmutableArray<int> lamps,
        double wireAmperes = UnknownWireAmperes
    ) =>
        new(
            source,
            Draws(_continuous, lamps, isContinuous: true),
            Draws(_peak, lamps, isContinuous: false),
            wireAmperes,
            Kinds(lamps)
        );

    /// <summary>The circuits of some lamps.</summary>
    public ImmutableArray<string> Circuits(IEnumerable<int> lamps) =>
        [.. lamps.Select(l => _bike.Lamps[l].Circuit).Distinct(Name.Comparer)];

    private ImmutableArray<double> Draws(
        ImmutableArray<OperatingPoint> points,
        ImmutableArray<int> lamps,
        bool isContinuous
    ) =>
        [
            .. points.Select(p =>
                lamps
                    .Where(l => !isContinuous || !_momentary.IsMomentary(l))
                    .Sum(l => Math.Abs(p.Solved.LampAmperes(l)))
            ),
        ];

    private ApartLoads Kinds(ImmutableArray<int> lamps) =>
        lamps.Aggregate(ApartLoads.None, (kinds, l) => kinds | KindOf(_bike.Lamps[l]));

    private ApartLoads KindOf(FittedLamp lamp)
    {
        if (lamp.Specification.Type is LampType.Fixed or LampType.Resistor)
            return HasWord(lamp.Circuit, "ignition", "coil", "coils") || HasWord(lamp.Lamp, "ignition", "coil", "coils")
                ? ApartLoads.Ignition
                : ApartLoads.None;
        if (!LampUses.IsHeadlamp(lamp, _bike.SystemVoltage))
            return ApartLoads.None;
        string words = $"{lamp.Lamp} {lamp.Specification.Code}";
        return ApartLoads.Headlamp
            | (HasWord(words, "low", "dip", "dipped") ? ApartLoads.Dip : ApartLoads.None)
            | (HasWord(words, "high", "main") ? ApartLoads.Main : ApartLoads.None);
    }

    private static bool HasWord(string text, params ReadOnlySpan<string> words)
    {
        foreach (string word in text.Split([' ', '-', '/'], StringSplitOptions.RemoveEmptyEntries))
            foreach (string known in words)
                if (Name.Equal(word, known))
                    return true;
        return false;
    }
}
