using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A part with two ends for an ohmmeter.</summary>
/// <param name="Name">Its name in readings; the contacts of a switch share the switch's.</param>
/// <param name="From">Node of one end.</param>
/// <param name="To">Node of the other.</param>
/// <param name="Conductor">Its conductor when it is no lamp; −1 otherwise.</param>
/// <param name="Contact">Its index when it is a contact; −1 otherwise.</param>
/// <param name="Lamp">Its index when it is a lamp; −1 otherwise.</param>
/// <param name="Holder">Its index when it is a lamp holder; −1 otherwise.</param>
internal sealed record MeasuredPart(
    string Name,
    int From,
    int To,
    int Conductor = -1,
    int Contact = -1,
    int Lamp = -1,
    int Holder = -1
)
{
    /// <summary>Lamps, runs, fuses, contacts and lamp holders, in this order.</summary>
    public static ImmutableArray<MeasuredPart> Of(FaultCircuit circuit)
    {
        Bike bike = circuit.Bike;
        return
        [
            .. bike.Lamps.Select(
                (l, i) =>
                    new MeasuredPart(
                        l.Lamp,
                        circuit.Circuit.LoadFeed[circuit.Lamps[i]],
                        circuit.NodeOf(l.Return!),
                        Lamp: i
                    )
            ),
            .. bike.Runs.Select((r, i) => Of(r.Name, circuit.Runs[i])),
            .. bike.Fuses.Select((f, i) => Of(f.Name, circuit.Fuses[i])),
            .. bike.Switches.Select((s, i) => Of(s.Switch, circuit.Contacts[i]) with { Contact = i }),
            .. circuit.Holders.Select(
                (h, i) => Of(h.NameIn(bike), circuit.HolderConductors[i]) with { Holder = i }
            ),
        ];

        MeasuredPart Of(string name, int conductor) =>
            new(name, circuit.Circuit.ConductorA[conductor], circuit.Circuit.ConductorB[conductor], conductor);
    }
}
