using Lighting.Calc.Harness;
using UnitsNet;

namespace Lighting.Calc.FaultFinding;

/// <summary>How a lamp looks on a bike in order.</summary>
/// <param name="Lamp">The lamp.</param>
/// <param name="Seen">Good or dark.</param>
/// <param name="Voltage">Volts across it, positive when its feed is on the live side.</param>
public sealed record ExpectedLook(string Lamp, Brightness Seen, ElectricPotential Voltage);
