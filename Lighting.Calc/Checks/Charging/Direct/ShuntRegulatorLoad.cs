using UnitsNet;

namespace Lighting.Calc;

/// <summary>What a regulator across the coil has to take to hold the voltage.</summary>
internal sealed record ShuntRegulatorLoad
{
    internal ShuntRegulatorLoad(ElectricPotential limit, ElectricCurrent current, Power power) =>
        (Limit, Current, Power) = (limit, current, power);

    /// <summary>Voltage (rms) it holds.</summary>
    public ElectricPotential Limit { get; }

    /// <summary>Current it has to take; zero where the voltage stays below the limit by itself.</summary>
    public ElectricCurrent Current { get; }

    /// <summary>Heat if it holds the voltage by dissipation; one that shorts the coil for part of each wave makes far
    /// less.</summary>
    public Power Power { get; }
}
