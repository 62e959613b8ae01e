using UnitsNet;

namespace Lighting.Calc;

/// <summary>One contact of a relay.</summary>
public sealed record RelayContact
{
    /// <summary>The point on the supply side, terminal 30 of DIN 72552.</summary>
    public required string From { get; init; }

    /// <summary>The point on the load side, terminal 87, of a break contact 87a.</summary>
    public required string To { get; init; }

    /// <summary>Whether it is closed while the relay is at rest; false for one that closes when it pulls in.</summary>
    public bool IsBreak { get; init; }

    /// <summary>Resistance of the closed contact, zero or more.</summary>
    public ElectricResistance Resistance { get; init; } = ElectricResistance.Zero;

    /// <summary>Remark of the list, which no calculation uses; null if there is none.</summary>
    public string? Notes { get; init; }

    internal static RelayContact Typical(string relay, bool isBreak = false) =>
        new()
        {
            From = $"{relay} 30",
            To = isBreak ? $"{relay} 87a" : $"{relay} 87",
            IsBreak = isBreak,
            Resistance = ElectricResistance.FromOhms(Relay.TypicalContactOhms),
        };
}
