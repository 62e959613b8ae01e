using System.Collections.Immutable;
using Lighting.Calc.Tests.FaultFinding;

namespace Lighting.Calc.Tests.Verdicts;

/// <summary>A thicker wire or a better joint makes a bike that suits no worse, except by what it lets more current
/// through to.</summary>
/// <remarks>Brighter lamps draw more: a neighbour on the same feed dims a little, and the fuse and the generator carry
/// more. Such a finding names the part that it concerns, and its figure has grown; nothing else may appear.</remarks>
public class ThickerWireTests
{
    private static readonly ImmutableHashSet<FindingKind> s_moreCurrent =
    [
        FindingKind.FuseContinuousLoadTooLarge,
        FindingKind.FusePeakTooLarge,
        FindingKind.FuseInrushTooLarge,
        FindingKind.LoadsExceedOutput,
        FindingKind.LampOvervoltage,
    ];

    public static TheoryData<string> Suiting => [.. All().Where(Suits)];

    [Fact]
    public void Some_bikes_suit() => Assert.True(All().Count(Suits) >= 2);

    [Theory]
    [MemberData(nameof(Suiting))]
    public void Only_a_dimmed_neighbour_or_a_larger_load_turns_suits_into_does_not_suit(string name)
    {
        Bike bike = Load(name);
        ImmutableArray<Finding> before = Faults(bike);
        Assert.Empty(before);
        for (int run = 0; run < bike.Runs.Length; run++)
            foreach (Run better in Better(bike.Runs[run]))
            {
                Bike changed = bike with { Runs = bike.Runs.SetItem(run, better) };
                foreach (Finding fault in Faults(changed))
                    Assert.True(
                        s_moreCurrent.Contains(fault.Kind)
                            || fault.Kind == FindingKind.VoltageDropTooLarge
                                && WorstDrop(changed, fault.Subject) > WorstDrop(bike, fault.Subject),
                        $"{better.Name} of {better.Wire}: {fault.Subject}: {fault.Message}"
                    );
            }
    }

    private static IEnumerable<Run> Better(Run run)
    {
        foreach (
            WireSize wire in WireTable
                .Of(run.Wire.Construction)
                .Where(w => w.CopperArea > run.Wire.CopperArea)
                .Take(2)
        )
            yield return run with { Wire = wire };
        if (run.TotalJointResistance.Ohms > 0)
            yield return run with { JointResistance = run.JointResistance / 2 };
    }

    private static double WorstDrop(Bike bike, string lamp) =>
        BikeCheck.Evaluate(bike).WorstDrops.Single(d => d.Lamp.Lamp.Lamp == lamp).Lamp.Drop!.Value.Percent;

    private static ImmutableArray<Finding> Faults(Bike bike) =>
        [.. BikeCheck.Evaluate(bike).Findings.Where(f => f.Severity == Severity.Fault)];

    private static bool Suits(string name) => BikeCheck.Evaluate(Load(name)).Verdict == BikeVerdict.Suits;

    private static IEnumerable<string> All() =>
        ["valley-twin", "chapel-single", "fell-lightweight", "commuter", "old-twin", "three-phase", "builder"];

    private static Bike Load(string name) =>
        name is "valley-twin" or "chapel-single" or "fell-lightweight"
            ? DemoBikes.Load(name)
            : BikeLists.Read(Path.Combine("Lighting.Calc.Tests", "ForeignBikes", name)).Value.Bike;
}
