using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Visual readings of lamps in words: <c>tail lamp dark, headlamp good</c> or <c>lights=low: tail lamp
/// dim</c>.</summary>
/// <remarks>
/// Observations separated by commas or semicolons, after an optional setting and a colon. A lamp is named by its name,
/// by its circuit, by the first words of its name, or as people say (<c>brake light</c>); a name that fits several is
/// never taken for one of them, unless the setting lights only that one. Without a setting: the setting with the fewest
/// switches on in which the lamp should be lit.
/// <c>nothing works</c> is every lamp dark.
/// </remarks>
internal sealed class SymptomText
{
    private SymptomText(ImmutableArray<Reading> readings, ImmutableArray<Finding> findings)
    {
        Readings = readings;
        Findings = findings;
    }

    /// <summary>The observations as visual readings.</summary>
    public ImmutableArray<Reading> Readings { get; }

    /// <summary>Errors in the text.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>Reads a text.</summary>
    /// <param name="bike">The bike; it needs runs.</param>
    /// <param name="text">The text.</param>
    /// <returns>The observations understood and, as <see cref="Findings"/>, those that were not: a text never
    /// throws.</returns>
    /// <exception cref="ArgumentException">The bike has no runs, or the bike or the text is null.</exception>
    public static SymptomText Read(Bike bike, string text)
    {
        ArgumentNullException.ThrowIfNull(bike);
        ArgumentNullException.ThrowIfNull(text);
        FaultFinder.RequireRuns(bike);
        var readings = ImmutableArray.CreateBuilder<Reading>();
        var findings = ImmutableArray.CreateBuilder<Finding>();
        int colon = text.IndexOf(':', StringComparison.Ordinal);
        Condition? held = null;
        if (colon >= 0)
        {
            if (Condition.TryParse(text[..colon], out Condition condition, out string? expected))
                held = condition;
            else
                findings.Add(
                    new Finding(FindingKind.SymptomSettingUnknown, Severity.Fault, text[..colon].Trim())
                    {
                        Detail = expected,
                    }
                );
        }

        var graph = new HarnessGraph(bike);
        string[] parts = text[(colon + 1)..]
            .Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        foreach (string part in parts)
            if (PeopleWords.IsNothing(part))
                readings.AddRange(
                    bike.Lamps.Where(l => l.Specification.GivesLight)
                        .Select(l => Seen(l, held ?? WhenLit(bike, graph, l), Brightness.Dark))
                );
            else
                Take(bike, graph, part, held, readings, findings);
        if (readings.Count == 0 && findings.Count == 0)
            findings.Add(new Finding(FindingKind.SymptomMissing, Severity.Fault, "symptom"));
        return new SymptomText(readings.ToImmutable(), findings.ToImmutable());
    }

    private static void Take(
        Bike bike,
        HarnessGraph graph,
        string part,
        Condition? held,
        ImmutableArray<Reading>.Builder readings,
        ImmutableArray<Finding>.Builder findings
    )
    {
        if (PeopleWords.Observation(part) is not var (lamp, seen))
        {
            findings.Add(new Finding(FindingKind.SymptomLookUnknown, Severity.Fault, part));
            return;
        }

        FittedLamp[] meant = Named(bike, lamp);
        if (meant.Length == 0)
            meant = Named(bike, PeopleWords.Lamp(lamp));
        if (meant.Length == 0)
        {
            ImmutableArray<string> near = SpellingSuggestions.Of(lamp, bike.Lamps.Select(l => l.Lamp));
            findings.Add(
                near.IsEmpty
                    ? new Finding(FindingKind.SymptomLampUnknown, Severity.Fault, lamp)
                    {
                        Parts = [.. bike.Lamps.Select(l => l.Lamp)],
                    }
                    : new Finding(FindingKind.SymptomLampMisspelt, Severity.Fault, lamp) { Parts = near }
            );
            return;
        }

        // Of several lamps the setting may light one.
        if (
            meant.Length > 1
            && held is not null
            && SettingEnumeration.Held(bike, held) is var setting
            && meant.Where(l => IsLit(bike, graph, l, setting)).ToArray() is [var lit]
        )
            meant = [lit];
        if (meant.Length > 1)
        {
            findings.Add(
                new Finding(FindingKind.SymptomLampAmbiguous, Severity.Fault, lamp)
                {
                    Parts = [.. meant.Select(l => l.Lamp)],
                }
            );
            return;
        }

        readings.Add(Seen(meant[0], held ?? WhenLit(bike, graph, meant[0]), seen));
    }

    private static Reading Seen(FittedLamp lamp, Condition? when, Brightness seen) =>
        new()
        {
            When = when ?? Condition.Always,
            Point = lamp.Lamp,
            Instrument = Instrument.Visual,
            Seen = seen,
        };

    private static FittedLamp[] Named(Bike bike, string name)
    {
        FittedLamp[] exact = [.. bike.Lamps.Where(l => Name.Equal(l.Lamp, name))];
        if (exact.Length > 0)
            return exact;
        FittedLamp[] circuit = [.. bike.Lamps.Where(l => Name.Equal(l.Circuit, name))];
        return circuit.Length > 0
            ? circuit
            : [.. bike.Lamps.Where(l => l.Lamp.StartsWith(name + " ", StringComparison.OrdinalIgnoreCase))];
    }

    private static Condition? WhenLit(Bike bike, HarnessGraph graph, FittedLamp lamp) =>
        SettingEnumeration
            .Of(graph.Switches, Condition.Always)
            .Where(s => IsLit(bike, graph, lamp, s))
            .MinBy(s => s.Positions.Count(p => !Name.Equal(p.Position, SwitchDefinition.Off)))
            ?.AsCondition();

    private static bool IsLit(Bike bike, HarnessGraph graph, FittedLamp lamp, Setting setting) =>
        graph.IsFed(graph.Lamps[bike.Lamps.IndexOf(lamp)], graph.Switches.ClosedIn(setting));
}
