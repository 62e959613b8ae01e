using UnitsNet;

namespace Lighting.Calc;

/// <summary>What a check may be told besides the bike.</summary>
public sealed record CheckOptions
{
    /// <summary>Only the settings in which this holds are looked at.</summary>
    public Condition When { get; init; } = Condition.Always;

    /// <summary>Volts of the source before the battery's resistance, zero or more; null takes the bike's charging
    /// volts.</summary>
    public ElectricPotential? Supply { get; init; }

    /// <summary>How fuses are judged.</summary>
    public FuseOptions Fuses { get; init; } = new();

    /// <summary>How charging is judged.</summary>
    public ChargingOptions Charging { get; init; } = ChargingOptions.Default;
}
