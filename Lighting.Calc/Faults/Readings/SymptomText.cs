using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What a rider says of the lamps, as readings: <c>tail lamp dark, headlamp good</c> or <c>lights=low: tail lamp dim</c>.</summary>
/// <remarks>
/// Observations stand between commas or semicolons after an optional setting and a colon. A lamp may be called by its name, by the
/// name of its circuit, or by words its name begins with when no other's does. Without a setting the one is taken in which the
/// lamp is meant to be lit and fewest switches are on.
/// </remarks>
public sealed class SymptomText
{
    private SymptomText(ImmutableArray<Reading> readings, ImmutableArray<Finding> findings)
    {
        Readings = readings;
        Findings = findings;
    }

    /// <summary>The observations as readings of the eye.</summary>
    public ImmutableArray<Reading> Readings { get; }

    /// <summary>What could not be understood, all at once.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>Reads a text.</summary>
    /// <param name="bike">The bike; it needs runs.</param>
    /// <param name="text">The text.</param>
    /// <returns>The observations understood and, as <see cref="Findings"/>, those that were not: a text never throws.</returns>
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
                findings.Add(new Finding(Severity.Fault, text[..colon].Trim(), $"'{text[..colon].Trim()}' is not a setting: expected {expected}."));
        }

        foreach (string part in text[(colon + 1)..].Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            Take(bike, part, held, readings, findings);
        if (readings.Count == 0 && findings.Count == 0)
            findings.Add(new Finding(Severity.Fault, "symptom", "no observation was given: expected such as 'tail lamp dark, headlamp good'."));
        return new SymptomText(readings.ToImmutable(), findings.ToImmutable());
    }

    private static void Take(Bike bike, string part, Condition? held, ImmutableArray<Reading>.Builder readings, ImmutableArray<Finding>.Builder findings)
    {
        int space = part.LastIndexOf(' ');
        string lamp = space > 0 ? part[..space].Trim() : part, word = space > 0 ? part[(space + 1)..] : "";
        if (Look(word) is not { } seen)
        {
            findings.Add(new Finding(Severity.Fault, part, $"'{part}' does not end in how the lamp looks: expected dark, dim, good or bright."));
            return;
        }

        FittedLamp[] meant = Named(bike, lamp);
        if (meant.Length == 0)
        {
            ImmutableArray<string> near = SpellingSuggestions.Of(lamp, bike.Lamps.Select(l => l.Lamp));
            string offer = near.IsEmpty ? $"the lamps are {string.Join(", ", bike.Lamps.Select(l => l.Lamp))}." : SpellingSuggestions.Question(near.Select(n => $"'{n}'"));
            findings.Add(new Finding(Severity.Fault, lamp, $"the bike has no lamp '{lamp}'; {offer}"));
            return;
        }

        // Of a circuit's lamps one can be meant: that which the setting lights; without a setting, the first.
        Condition when = held ?? meant.Select(l => WhenLit(bike, l)).OfType<Condition>().FirstOrDefault() ?? Condition.Always;
        Setting setting = SettingEnumeration.Held(bike, when);
        FittedLamp one = meant.FirstOrDefault(l => IsLit(bike, l, setting)) ?? meant[0];
        readings.Add(new Reading { When = when, Point = one.Lamp, Instrument = Instrument.Visual, Seen = seen });
    }

    private static Brightness? Look(string word) => word.ToLowerInvariant() switch
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
        FittedLamp[] begins = [.. bike.Lamps.Where(l => l.Lamp.StartsWith(name + " ", StringComparison.OrdinalIgnoreCase))];
        return begins.Length == 1 ? begins : [];
    }

    private static Condition? WhenLit(Bike bike, FittedLamp lamp) => SettingEnumeration.Of(bike, Condition.Always)
        .Where(s => IsLit(bike, lamp, s))
        .MinBy(s => s.Positions.Count(p => !Name.Equal(p.Position, SwitchDefinition.Off)))?.AsCondition();

    private static bool IsLit(Bike bike, FittedLamp lamp, Setting setting)
    {
        var graph = new HarnessGraph(bike);
        ContactSet closed = graph.Switches.ClosedIn(setting);
        return graph.From(graph.Live, closed).Reaches(graph.NumberOf(lamp.Feed!)) && graph.From(graph.Earth, closed).Reaches(graph.NumberOf(lamp.Return!));
    }
}
