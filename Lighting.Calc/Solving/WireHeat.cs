using UnitsNet;

namespace Lighting.Calc;

/// <summary>How the resistance of each run's wire grows with its current (<see cref="ConductorHeat"/>); not at all
/// where the bike states the temperature of its wires.</summary>
internal sealed class WireHeat
{
    private static readonly WireHeat s_none = new([]);

    private readonly WireGrowth[] _growth;

    private WireHeat(WireGrowth[] growth) => _growth = growth;

    /// <summary>Whether any wire warms.</summary>
    public bool IsAny => _growth.Length > 0;

    /// <summary>Whether the wires of a bike warm.</summary>
    public static bool IsOf(Bike bike) => bike.StatedWireTemperature is null && bike.HasNetwork;

    /// <summary>The wires of a bike.</summary>
    public static WireHeat Of(Bike bike, ConductorHeatRule rule = ConductorHeatRule.Square)
    {
        if (!IsOf(bike))
            return s_none;
        var known = new Dictionary<(WireSize, int, Ratio?), WireGrowth>();
        return new WireHeat([.. bike.Runs.Select(Growth)]);

        WireGrowth Growth(Run run) =>
            known.TryGetValue((run.Wire, run.Bundle, run.BundleLoading), out WireGrowth found)
                ? found
                : known[(run.Wire, run.Bundle, run.BundleLoading)] = WireGrowth.Of(bike, run, run.Wire, rule);
    }

    /// <summary>The resistances of the wires with their currents.</summary>
    /// <param name="ohms">Resistances without current.</param>
    /// <param name="amperes">Current of each run.</param>
    public double[] Warmed(double[] ohms, Func<int, double> amperes)
    {
        var warm = new double[ohms.Length];
        for (int i = 0; i < warm.Length; i++)
            warm[i] = ohms[i] * _growth[i].At(amperes(i));
        return warm;
    }
}
