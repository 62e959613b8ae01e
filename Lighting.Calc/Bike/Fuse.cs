using UnitsNet;

namespace Lighting.Calc;

/// <summary>A fuse: one row of <c>fuses.csv</c>.</summary>
public sealed record Fuse
{
    /// <summary>Name, unique on the bike.</summary>
    public required string Name { get; init; }

    /// <summary>The point on the supply side; null for the one fuse of a bike without runs.</summary>
    public string? From { get; init; }

    /// <summary>The point on the load side; null for the one fuse of a bike without runs.</summary>
    public string? To { get; init; }

    /// <summary>Rated current, above zero.</summary>
    public required ElectricCurrent Rating { get; init; }

    /// <summary>Construction.</summary>
    public FuseStyle Style { get; init; } = FuseStyle.Blade;

    /// <summary>Whether the rating on a glass fuse is the current at which it blows, as on some British ones: it is
    /// rated at half of it continuously. Blades are never so marked.</summary>
    public bool IsMarkedWithBlowingCurrent { get; init; }

    /// <summary>Cold resistance, zero or more; null takes the published typical value of its style and
    /// rating.</summary>
    public ElectricResistance? Resistance { get; init; }

    /// <summary>Remark of the list, which no calculation uses; null if there is none.</summary>
    public string? Notes { get; init; }
}
