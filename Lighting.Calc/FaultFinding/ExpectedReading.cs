using Lighting.Calc.Harness;
using UnitsNet;

namespace Lighting.Calc.FaultFinding;

/// <summary>What a point reads on a bike in order.</summary>
/// <param name="Point">The point.</param>
/// <param name="Voltage">Volts of the meter, black lead on battery minus.</param>
/// <param name="Lowest">Below this it is worth asking why: two standard deviations of instrument and harness.</param>
/// <param name="Highest">Above this it is worth asking why.</param>
/// <param name="TestLamp">How a test lamp looks there, clip on battery minus.</param>
/// <param name="FromFrame">Volts of the meter with the black lead on the frame, as many hold it: below zero on the live side of a positive-earth bike.</param>
public sealed record ExpectedReading(string Point, ElectricPotential Voltage, ElectricPotential Lowest, ElectricPotential Highest, Brightness TestLamp, ElectricPotential FromFrame);
