using UnitsNet;

namespace Lighting.Calc;

/// <summary>What a regulator across the coil has to take to hold the voltage.</summary>
/// <param name="Limit">Voltage (rms) it holds.</param>
/// <param name="Current">Current it has to take; zero where the voltage stays below the limit by itself.</param>
/// <param name="Power">Heat if it holds the voltage by dissipation; one that shorts the coil for part of each wave
/// makes far less.</param>
internal sealed record ShuntRegulatorLoad(ElectricPotential Limit, ElectricCurrent Current, Power Power);
