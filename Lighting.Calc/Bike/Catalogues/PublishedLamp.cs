using UnitsNet;

namespace Lighting.Calc;

/// <summary>One row of the published lamp table: one filament of a lamp category or trade number.</summary>
public sealed record PublishedLamp
{
    internal PublishedLamp() { }

    /// <summary>The code lists use, filament included: <c>P21W</c>, <c>P21/5W stop</c>, <c>1157 major</c>.</summary>
    public string Code { get; internal init; } = null!;

    /// <summary>Which filament of a lamp that has two, such as <c>major</c>; empty for a lamp of one.</summary>
    public string Filament { get; internal init; } = null!;

    /// <summary>Nominal system voltage, 6 V or 12 V. The same code may exist for both.</summary>
    public ElectricPotential SystemVoltage { get; internal init; }

    /// <summary>Electrical and light data.</summary>
    public LampSpecification Specification { get; internal init; } = null!;

    /// <summary>Rated power, as marked on the cap; null for a trade number rated by current.</summary>
    public Power? RatedPower { get; internal init; }

    /// <summary>Maximum power at the reference voltage; null if not published.</summary>
    public Power? MaximumPower { get; internal init; }

    /// <summary>Tolerance (±) of power or current at the reference point, as a share of it; null if not
    /// published.</summary>
    public Ratio? Tolerance { get; internal init; }

    /// <summary>What it is used for, such as <c>headlamp</c> or <c>indicator</c>.</summary>
    public string Use { get; internal init; } = null!;

    /// <summary>Its cap, such as <c>BA15s</c>; empty where unknown.</summary>
    public string Cap { get; internal init; } = null!;

    /// <summary>The word by which an LED replacement is chosen, such as <c>signal</c>.</summary>
    public string SocketClass { get; internal init; } = null!;

    /// <summary>Source of the row.</summary>
    public string Source { get; internal init; } = null!;
}
