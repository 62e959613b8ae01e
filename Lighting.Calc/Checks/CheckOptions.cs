using UnitsNet;

namespace Lighting.Calc;

/// <summary>Options of a check.</summary>
public sealed record CheckOptions
{
    /// <summary>Only the settings in which this holds are looked at.</summary>
    public Condition When { get; init; } = Condition.Always;

    /// <summary>Whether the engine runs; running by default.</summary>
    public EngineState Engine { get; init; }

    /// <summary>Voltage of the source, zero or more: at the battery's terminals with the engine running, before its
    /// resistance with the engine off. Null takes, engine off, the battery voltage; engine running, for each setting
    /// what generator, regulator and battery hold at the speed of the charging list at which most is given, and
    /// without a list the charging voltage.</summary>
    public ElectricPotential? Supply { get; init; }

    /// <summary>How fuses are judged.</summary>
    public FuseOptions Fuses { get; init; } = new();

    /// <summary>How charging is judged.</summary>
    public ChargingOptions Charging { get; init; } = ChargingOptions.Default;

    /// <summary>Whether generator, regulator and battery find the voltage.</summary>
    internal bool IsFedByGenerator(Bike bike) =>
        Engine != EngineState.Off && Supply is null && bike.Lighting != LightingSupply.Direct;
}
