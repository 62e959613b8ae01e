using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Verdicts;

/// <summary>How a bike is wired, as its lists name it: parts, points, switch positions and conditions, none of their values.</summary>
/// <remarks>Two bikes of equal keys have the same circuit, the same settings, and the same things to be said of their wiring.</remarks>
internal sealed class WiringKey : IEquatable<WiringKey>
{
    private readonly List<string?> _texts = new(256);
    // How many texts belong together, so that none is taken for a part of the next.
    private readonly List<int> _counts = new(64);
    private readonly int _hash;

    /// <param name="bike">The bike.</param>
    /// <param name="when">The settings that are looked at.</param>
    public WiringKey(Bike bike, Condition when)
    {
        _counts.AddRange([(int)bike.Earth, (int)bike.Lighting, bike.Runs.Length, bike.Switches.Length, bike.Fuses.Length, bike.Lamps.Length]);
        Add(when);
        foreach (Run run in bike.Runs)
            _texts.AddRange([run.Name, run.From, run.To]);
        foreach (SwitchContact contact in bike.Switches)
        {
            _texts.AddRange([contact.Switch, contact.From, contact.To]);
            _counts.Add(contact.HasOff ? 1 : 0);
            Add(contact.ClosedIn);
        }

        foreach (Fuse fuse in bike.Fuses)
            _texts.AddRange([fuse.Name, fuse.From, fuse.To]);
        foreach (FittedLamp lamp in bike.Lamps)
        {
            _texts.AddRange([lamp.Lamp, lamp.Feed, lamp.Return]);
            Add(lamp.LitWhen);
        }

        foreach (ChargingPoint point in bike.Charging)
            Add(point.When);
        foreach (RideStretch stretch in bike.Ride)
            Add(stretch.When);
        // Lengths and first letters tell most wirings apart, and are had sooner than a hash of every letter.
        foreach (string? text in _texts)
            _hash = unchecked(31 * _hash + (text is { Length: > 0 } ? (text[0] << 8) + text.Length : 0));
    }

    public bool Equals(WiringKey? other) => other is not null && _hash == other._hash && _counts.SequenceEqual(other._counts) && _texts.SequenceEqual(other._texts);

    public override bool Equals(object? obj) => Equals(obj as WiringKey);

    public override int GetHashCode() => _hash;

    private void Add(Condition condition)
    {
        _counts.Add(condition.Parts.Length);
        foreach (ImmutableArray<ConditionTerm> part in condition.Parts)
        {
            _counts.Add(part.Length);
            foreach (ConditionTerm term in part)
            {
                _texts.Add(term.Switch);
                Add(term.Positions);
            }
        }
    }

    private void Add(ImmutableArray<string> positions)
    {
        _counts.Add(positions.Length);
        _texts.AddRange(positions);
    }
}
