using UnitsNet;

namespace Lighting.Calc;

/// <summary>Average current a bike's loads draw in a setting, at a supply voltage.</summary>
/// <param name="setting">The setting.</param>
/// <param name="supplyVoltage">The charging voltage, at the battery's terminals with the engine running, or an
/// open-circuit voltage of the battery, before its resistance with the engine off; zero or more.</param>
/// <returns>Current from the source, each load counted for the share of the time it is lit.</returns>
/// <exception cref="NetworkNotSolvedException">The setting has no operating point.</exception>
internal delegate ElectricCurrent AverageLoad(Setting setting, ElectricPotential supplyVoltage);
