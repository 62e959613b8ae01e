using System.Collections.Immutable;
using Lighting.Calc.Harness;

namespace Lighting.Calc.FaultFinding;

/// <summary>A part with two ends for an ohmmeter.</summary>
/// <param name="Name">Its name in readings; the contacts of a switch share the switch's.</param>
/// <param name="From">One end.</param>
/// <param name="To">The other.</param>
/// <param name="Contact">Its index when it is a contact; −1 otherwise.</param>
/// <param name="Lamp">Its index when it is a lamp; −1 otherwise.</param>
internal sealed record MeasuredPart(string Name, string From, string To, int Contact = -1, int Lamp = -1)
{
    /// <summary>Lamps, runs, fuses and contacts, in this order.</summary>
    public static ImmutableArray<MeasuredPart> Of(Bike bike) =>
    [
        .. bike.Lamps.Select((l, i) => new MeasuredPart(l.Lamp, l.Feed!, l.Return!, Lamp: i)),
        .. bike.Runs.Select(r => new MeasuredPart(r.Name, r.From, r.To)),
        .. bike.Fuses.Select(f => new MeasuredPart(f.Name, f.From!, f.To!)),
        .. bike.Switches.Select((s, i) => new MeasuredPart(s.Switch, s.From, s.To, Contact: i)),
    ];
}
