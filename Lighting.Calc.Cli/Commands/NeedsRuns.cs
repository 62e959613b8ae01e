using Lighting.Calc.Harness;

namespace Lighting.Calc.Cli.Commands;

/// <summary>Refuses a bike whose harness is not listed, for the commands that probe it.</summary>
internal static class NeedsRuns
{
    public static void Check(Bike bike)
    {
        if (!bike.HasNetwork)
            throw new InputException("the bike lists no runs; add runs.csv: without wires there is nothing to probe.");
        if (bike.Lighting == LightingSupply.Direct)
            throw new InputException("the lamps are fed by a lighting coil: readings on alternating current are not modelled.");
    }
}
