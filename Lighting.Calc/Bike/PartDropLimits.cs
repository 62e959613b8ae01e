using UnitsNet;

namespace Lighting.Calc;

/// <summary>Largest drops of sound connections, by the trade: <c>tables/constants.csv</c>, where each has its
/// source.</summary>
internal static class PartDropLimits
{
    /// <summary>One connection: 100 mV.</summary>
    public static readonly ElectricPotential Joint = Value("joint_drop_max");

    /// <summary>Closed switch contacts: 300 mV.</summary>
    public static readonly ElectricPotential Switch = Value("switch_drop_max");

    /// <summary>Lamp shell to battery: 200 mV.</summary>
    public static readonly ElectricPotential Earth = Value("ground_drop_max");

    private static ElectricPotential Value(string symbol) =>
        ElectricPotential.FromMillivolts(Constants.Of(symbol));
}
