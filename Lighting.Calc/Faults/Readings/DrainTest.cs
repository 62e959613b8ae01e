using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The test for a drain on the battery: the current with everything off, and where to search.</summary>
internal sealed class DrainTest
{
    private DrainTest(FaultCircuit circuit, ElectricCurrent current)
    {
        Current = current;
        Fuses = [.. circuit.Bike.Fuses.Select(f => f.Name)];
        Runs =
        [
            .. circuit
                .Graph.Runs.Where(r =>
                    !circuit.Sides.IsEarth(r.Index)
                    && (circuit.Sides.IsAlwaysLive(r.A) || circuit.Sides.IsAlwaysLive(r.B))
                )
                .Select(r => r.Name),
        ];
    }

    /// <summary>Current that the lists give with everything off.</summary>
    public ElectricCurrent Current { get; }

    /// <summary>The fuses to take out one after the other.</summary>
    public ImmutableArray<string> Fuses { get; }

    /// <summary>The wires that are live with everything off, to unplug one after the other.</summary>
    public ImmutableArray<string> Runs { get; }

    /// <summary>Null on direct lighting and with the engine running.</summary>
    internal static DrainTest? Of(FaultModel model)
    {
        if (model.Circuit.Supply.Speed is not null || model.Circuit.Bike.Lighting == LightingSupply.Direct)
            return null;
        var solver = new FaultSolver(model.Circuit, model.Draws);
        solver.Set(model.AllOff, model.Members[0]);
        solver.Solve();
        // The leaks that keep cut-off points at zero are far below a microamp.
        return new DrainTest(
            model.Circuit,
            ElectricCurrent.FromAmperes(Math.Round(solver.Circuit.SourceAmperes, 6))
        );
    }
}
