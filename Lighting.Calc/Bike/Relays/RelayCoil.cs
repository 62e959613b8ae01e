using UnitsNet;

namespace Lighting.Calc;

/// <summary>What a load needs to be the coil of a relay.</summary>
/// <param name="Resistance">Resistance of the coil, above zero.</param>
/// <param name="PullInVoltage">Voltage from which the relay pulls in.</param>
/// <param name="DropOutVoltage">Voltage below which it drops out again.</param>
internal sealed record RelayCoil(
    ElectricResistance Resistance,
    ElectricPotential PullInVoltage,
    ElectricPotential DropOutVoltage
);
