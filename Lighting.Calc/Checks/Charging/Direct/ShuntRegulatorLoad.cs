using UnitsNet;

namespace Lighting.Calc;

/// <summary>What a regulator across the coil has to take to hold the volts.</summary>
/// <param name="Limit">Volts (rms) it holds.</param>
/// <param name="Current">Current it has to take; zero where the volts stay below the limit by themselves.</param>
/// <param name="Power">Heat if it holds the volts by dissipation; one that shorts the coil for part of each wave makes far less.</param>
public sealed record ShuntRegulatorLoad(ElectricPotential Limit, ElectricCurrent Current, Power Power);
