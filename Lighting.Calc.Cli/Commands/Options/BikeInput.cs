using UnitsNet;

namespace Lighting.Calc.Cli.Commands;

/// <summary>What a command works on: the lists as the options leave them, the settings to look at, whether the engine
/// runs, and the voltage of the source where one is given.</summary>
internal sealed record BikeInput(BikeLists Lists, Condition When, EngineState Engine, ElectricPotential? Supply)
{
    public Bike Bike => Lists.Bike;

    /// <summary>What a check is told of it.</summary>
    public CheckOptions Check =>
        new()
        {
            When = When,
            Engine = Engine,
            Supply = Supply,
        };
}
