using UnitsNet;

namespace Lighting.Calc.Cli.Commands;

/// <summary>What a command works on: the lists as the options leave them, the settings to look at, the volts of the
/// supply.</summary>
internal sealed record BikeInput(BikeLists Lists, Condition When, ElectricPotential Supply)
{
    public Bike Bike => Lists.Bike;
}
