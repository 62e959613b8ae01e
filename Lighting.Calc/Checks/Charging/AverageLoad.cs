using UnitsNet;

namespace Lighting.Calc;

/// <summary>Average current a bike's loads draw in a setting, at a supply voltage.</summary>
/// <param name="setting">The setting.</param>
/// <param name="supplyVoltage">Volts of the source before the battery's resistance, zero or more.</param>
/// <returns>Current from the source, each load counted for the share of the time it is lit.</returns>
/// <exception cref="NetworkNotSolvedException">The setting has no operating point.</exception>
public delegate ElectricCurrent AverageLoad(Setting setting, ElectricPotential supplyVoltage);
