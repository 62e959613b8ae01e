using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A relay: the rows of one name in <c>relays.csv</c>.</summary>
/// <remarks>
/// <see cref="Bike.WithRelay"/> fits it: its coil becomes a load of the bike and each
/// of its contacts a contact (<see cref="SwitchContact.IsRelay"/>), so that every calculation takes both into account.
/// A contact is where the wiring puts its coil: pulled in where closed contacts join the coil to both terminals of the
/// battery and its voltage reaches <see cref="PullInVoltage"/>, else at rest.
/// </remarks>
public sealed record Relay
{
    internal const string In = "in";
    internal const string Out = "out";
    internal const string Circuit = "relays";

    // Contact resistance and coil of a 12 V relay where its list states none.
    internal static readonly double TypicalContactOhms = Constants.Of("relay_contact_mohm") / 1000;
    private static readonly double s_coilOhms = Constants.Of("relay_coil_12");
    private static readonly double s_pullIn = Constants.Of("relay_pull_in_12");
    private static readonly double s_dropOut = Constants.Of("relay_drop_out_12");

    /// <summary>Name, unique among relays and lamps.</summary>
    public required string Name { get; init; }

    /// <summary>One end of the coil, terminal 86 of DIN 72552; either end may be the positive one.</summary>
    public required string CoilFrom { get; init; }

    /// <summary>The other end of the coil, terminal 85.</summary>
    public required string CoilTo { get; init; }

    /// <summary>Resistance of the coil, above zero.</summary>
    public required ElectricResistance CoilResistance { get; init; }

    /// <summary>Voltage at the coil from which the relay pulls in, above zero.</summary>
    public required ElectricPotential PullInVoltage { get; init; }

    /// <summary>Voltage at the coil below which it drops out again, above zero and at most
    /// <see cref="PullInVoltage"/>.</summary>
    public required ElectricPotential DropOutVoltage { get; init; }

    /// <summary>Its contacts, one or more.</summary>
    public required ImmutableArray<RelayContact> Contacts { get; init; }

    /// <summary>Remark of the list, which no calculation uses; null if there is none.</summary>
    public string? Notes { get; init; }

    /// <summary>A relay with one make contact and the typical figures of its system voltage (tables/constants.csv, a
    /// 12 V relay; on another system its voltages in proportion and its power the same), its points named after the
    /// terminals of DIN 72552.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="systemVoltage">Nominal system voltage, above zero.</param>
    public static Relay Typical(string name, ElectricPotential systemVoltage)
    {
        double share = systemVoltage.Volts / 12;
        return new Relay
        {
            Name = name,
            CoilFrom = $"{name} 86",
            CoilTo = $"{name} 85",
            CoilResistance = ElectricResistance.FromOhms(s_coilOhms * share * share),
            PullInVoltage = ElectricPotential.FromVolts(s_pullIn * share),
            DropOutVoltage = ElectricPotential.FromVolts(s_dropOut * share),
            Contacts = [RelayContact.Typical(name)],
        };
    }

    private object?[] Items => [Name, CoilFrom, CoilTo, CoilResistance, PullInVoltage, DropOutVoltage, Notes];

    /// <inheritdoc/>
    public bool Equals(Relay? other) =>
        other is not null && Items.AsSpan().SequenceEqual(other.Items) && Contacts.HoldsSame(other.Contacts);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Name, CoilFrom, CoilTo);
}
