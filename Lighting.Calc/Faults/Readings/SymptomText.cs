using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Visual readings of lamps in words: <c>tail lamp dark, headlamp good</c> or <c>lights=low: tail lamp
/// dim</c>.</summary>
/// <remarks>
/// Observations separated by commas or semicolons, after an optional setting and a colon. A lamp is named by its name,
/// by its circuit, or by the first words of its name where they are unique. Without a setting: the setting with the
/// fewest switches on in which the lamp should be lit.
/// </remarks>
public sealed class SymptomText
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
    public static SymptomText Parse(Bike bike, string text)
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

        foreach (
            string part in text[(colon + 1)..]
                .Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
        )
            Take(bike, part, held, readings, findings);
        if (readings.Count == 0 && findings.Count == 0)
            findings.Add(new Finding(FindingKind.SymptomMissing, Severity.Fault, "symptom"));
        return new SymptomText(readings.ToImmutable(), findings.ToImmutable());
    }

    private static void Take(
        Bike bike,
        string part,
        Condition? held,
        ImmutableArray<Reading>.Builder readings,
        ImmutableArray<Finding>.Builder findings
    )
    {
        int space = part.LastIndexOf(' ');
        string lamp = space > 0 ? part[..space].Trim() : part,
            word = space > 0 ? part[(space + 1)..] : "";
        if (Look(word) is not { } seen)
        {
            findings.Add(new Finding(FindingKind.SymptomLookUnknown, Severity.Fault, part));
            return;
        }

        FittedLamp[] meant = Named(bike, lamp);
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

        // Of a circuit's lamps one can be meant: that which the setting lights; without a setting, the first.
        Condition when =
            held ?? meant.Select(l => WhenLit(bike, l)).OfType<Condition>().FirstOrDefault() ?? Condition.Always;
        Setting setting = SettingEnumeration.Held(bike, when);
        FittedLamp one = meant.FirstOrDefault(l => IsLit(bike, l, setting)) ?? meant[0];
        readings.Add(
            new Reading
            {
                When = when,
                Point = one.Lamp,
                Instrument = Instrument.Visual,
                Seen = seen,
            }
        );
    }

    private static Brightness? Look(string word) =>
        word.ToLowerInvariant() switch
        {
            "dark" or "out" or "off" => Brightness.Dark,
            "dim" => Brightness.Dim,
            "good" or "lit" or "ok" => Brightness.Normal,
            "bright" => Brightness.Bright,
            _ => null,
        };

    private static FittedLamp[] Named(Bike bike, string name)
    {
        FittedLamp[] exact = [.. bike.Lamps.Where(l => Name.Equal(l.Lamp, name))];
        if (exact.Length > 0)
            return exact;
        FittedLamp[] circuit = [.. bike.Lamps.Where(l => Name.Equal(l.Circuit, name))];
        if (circuit.Length > 0)
            return circuit;
        FittedLamp[] begins =
        [
            .. bike.Lamps.Where(l => l.Lamp.StartsWith(name + " ", StringComparison.OrdinalIgnoreCase)),
        ];
        return begins.Length == 1 ? begins : [];
    }

    private static Condition? WhenLit(Bike bike, FittedLamp lamp) =>
        SettingEnumeration
            .Of(bike, Condition.Always)
            .Where(s => IsLit(bike, lamp, s))
            .MinBy(s => s.Positions.Count(p => !Name.Equal(p.Position, SwitchDefinition.Off)))
            ?.AsCondition();

    private static bool IsLit(Bike bike, FittedLamp lamp, Setting setting)
    {
        var graph = new HarnessGraph(bike);
        return graph.IsFed(graph.Lamps[bike.Lamps.IndexOf(lamp)], graph.Switches.ClosedIn(setting));
    }
}
