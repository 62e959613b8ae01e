using UnitsNet;

namespace Lighting.Calc;

/// <summary>One row of the published lamp table: one filament of a lamp category or trade number.</summary>
public sealed record PublishedLamp
{
    /// <summary>The code lists use, filament included: <c>P21W</c>, <c>P21/5W stop</c>, <c>1157 major</c>.</summary>
    public required string Code { get; init; }

    /// <summary>Which filament of a lamp that has two, such as <c>major</c>; empty for a lamp of one.</summary>
    public required string Filament { get; init; }

    /// <summary>Nominal system voltage, 6 V or 12 V. The same code may exist for both.</summary>
    public required ElectricPotential SystemVoltage { get; init; }

    /// <summary>Electrical and light data.</summary>
    public required LampSpecification Specification { get; init; }

    /// <summary>Rated power, as marked on the cap; null for a trade number rated by current.</summary>
    public Power? RatedPower { get; init; }

    /// <summary>Maximum power at the reference voltage; null if not published.</summary>
    public Power? MaximumPower { get; init; }

    /// <summary>Tolerance (±) of power or current at the reference point, as a share of it; null if not
    /// published.</summary>
    public Ratio? Tolerance { get; init; }

    /// <summary>What it is used for, such as <c>headlamp</c> or <c>indicator</c>.</summary>
    public required string Use { get; init; }

    /// <summary>Its cap, such as <c>BA15s</c>; empty where unknown.</summary>
    public required string Cap { get; init; }

    /// <summary>The word by which an LED replacement is chosen, such as <c>signal</c>.</summary>
    public required string SocketClass { get; init; }

    /// <summary>Source of the row.</summary>
    public required string Source { get; init; }
}
