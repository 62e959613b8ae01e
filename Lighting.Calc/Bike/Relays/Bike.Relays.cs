using System.Collections.Immutable;

namespace Lighting.Calc;

/// <content>Relays: coils among the loads, contacts among the contacts.</content>
public sealed partial record Bike
{
    /// <summary>The relays: those of the coils among <see cref="Lamps"/>, with their contacts among
    /// <see cref="Switches"/>. <see cref="WithRelay"/> fits one.</summary>
    public ImmutableArray<Relay> Relays =>
        [
            .. Lamps
                .Where(l => l.Coil is not null)
                .Select(l => new Relay
                {
                    Name = l.Lamp,
                    CoilFrom = l.Feed ?? "",
                    CoilTo = l.Return ?? "",
                    CoilResistance = l.Coil!.Resistance,
                    PullInVoltage = l.Coil.PullInVoltage,
                    DropOutVoltage = l.Coil.DropOutVoltage,
                    Notes = l.Notes,
                    Contacts =
                    [
                        .. Switches
                            .Where(c => c.IsRelay && Calc.Name.Equal(c.Switch, l.Lamp))
                            .Select(c => new RelayContact
                            {
                                From = c.From,
                                To = c.To,
                                IsBreak = c.ClosedIn is [Relay.Out],
                                Resistance = c.Resistance,
                                Notes = c.Notes,
                            }),
                    ],
                }),
        ];

    /// <summary>The same bike with a relay more: its coil as the last of <see cref="Lamps"/>, its contacts as the last
    /// of <see cref="Switches"/>.</summary>
    /// <param name="relay">The relay.</param>
    /// <exception cref="ArgumentNullException">There is none.</exception>
    public Bike WithRelay(Relay relay)
    {
        ArgumentNullException.ThrowIfNull(relay);
        return this with
        {
            Lamps =
            [
                .. Lamps,
                new FittedLamp
                {
                    Circuit = Relay.Circuit,
                    Lamp = relay.Name,
                    Specification = LampSpecification.FromCurrent(
                        LampType.Resistor,
                        SystemVoltage,
                        SystemVoltage / relay.CoilResistance
                    ),
                    Coil = new RelayCoil(relay.CoilResistance, relay.PullInVoltage, relay.DropOutVoltage),
                    Feed = relay.CoilFrom,
                    Return = relay.CoilTo,
                    Notes = relay.Notes,
                },
            ],
            Switches =
            [
                .. Switches,
                .. relay.Contacts.Select(c => new SwitchContact
                {
                    Switch = relay.Name,
                    IsRelay = true,
                    From = c.From,
                    To = c.To,
                    ClosedIn = [c.IsBreak ? Relay.Out : Relay.In],
                    Resistance = c.Resistance,
                    Notes = c.Notes,
                }),
            ],
        };
    }
}
