using System.Collections.Immutable;

namespace Lighting.Calc.Cli.Rendering.Drawing;

/// <summary>The parts of a bike that a check found unsuitable, by their names.</summary>
internal sealed record UnsuitableParts(
    ImmutableHashSet<string> Fuses,
    ImmutableHashSet<string> Runs,
    ImmutableHashSet<string> Lamps
)
{
    private static readonly ImmutableHashSet<string> s_empty = ImmutableHashSet.Create<string>(
        StringComparer.OrdinalIgnoreCase
    );

    public static UnsuitableParts None { get; } = new(s_empty, s_empty, s_empty);

    /// <summary>What the faults of a report are about.</summary>
    public static UnsuitableParts Of(BikeReport report)
    {
        Finding[] faults = [.. report.Findings.Where(f => f.Severity == Severity.Fault)];
        ImmutableHashSet<string> fuses = s_empty.Union(
                report
                    .Fuses.Where(f => f.Verdict is not (FuseVerdict.Suits or FuseVerdict.NotJudged))
                    .Select(f => f.Fuse.Name)
            ),
            lamps = s_empty.Union(report.Bike.Lamps.Select(l => l.Lamp)),
            runs = s_empty.Union(report.Bike.Runs.Select(r => r.Name));
        return new UnsuitableParts(
            fuses,
            runs.Intersect(faults.Where(IsOfWires).SelectMany(f => f.Parts.Prepend(f.Subject))),
            lamps.Intersect(faults.Where(f => !IsOfWires(f)).SelectMany(f => f.Parts.Prepend(f.Subject)))
        );
    }

    private static bool IsOfWires(Finding finding) =>
        finding.Kind
            is FindingKind.WiresRatedBelowFuse
                or FindingKind.WiresUnratedBehindFuse
                or FindingKind.ShortDoesNotClear
                or FindingKind.ShortNotShownToClear
                or FindingKind.RunOverloaded
                or FindingKind.RunUnfused;
}
