using UnitsNet;

namespace Lighting.Calc.Cli.Commands;

/// <summary>One run described by options: no list is read.</summary>
/// <param name="Current">Its current.</param>
/// <param name="Length">Its length one way.</param>
/// <param name="WireLength">All the wire the current flows through.</param>
/// <param name="Supply">Voltage of the supply.</param>
/// <param name="Temperature">Temperature of the conductor.</param>
internal sealed record SingleRun(
    ElectricCurrent Current,
    Length Length,
    Length WireLength,
    ElectricPotential Supply,
    Temperature Temperature
);
