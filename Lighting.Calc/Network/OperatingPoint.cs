using System.Collections.Immutable;
using Lighting.Calc.Harness;
using UnitsNet;

namespace Lighting.Calc.Network;

/// <summary>The solved harness in one setting: volts at every point, current in every part.</summary>
public sealed record OperatingPoint
{
    /// <summary>The setting.</summary>
    public required Setting Setting { get; init; }

    /// <summary>Volts of the source before the battery's resistance.</summary>
    public required ElectricPotential SupplyVoltage { get; init; }

    /// <summary>Current the source gives.</summary>
    public required ElectricCurrent TotalCurrent { get; init; }

    /// <summary>Volts lost in the battery's own resistance.</summary>
    public required ElectricPotential BatteryDrop { get; init; }

    /// <summary>The points, in the order of the lists.</summary>
    public required ImmutableArray<PointState> Points { get; init; }

    /// <summary>The lamps, in the order of the list.</summary>
    public required ImmutableArray<LampState> Lamps { get; init; }

    /// <summary>The runs, in the order of the list.</summary>
    public required ImmutableArray<RunState> Runs { get; init; }

    /// <summary>The switch contacts, in the order of the list.</summary>
    public required ImmutableArray<ContactState> Contacts { get; init; }

    /// <summary>The fuses, in the order of the list.</summary>
    public required ImmutableArray<FuseState> Fuses { get; init; }
}
