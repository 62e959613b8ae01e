using UnitsNet;

namespace Lighting.Calc;

/// <summary>What the charging system gives at one engine speed.</summary>
public sealed record ChargingOutput
{
    internal ChargingOutput(OutputRange range, ElectricCurrent? current) => (Range, Current) = (range, current);

    /// <summary>Where the speed lies on the curve.</summary>
    internal OutputRange Range { get; }

    /// <summary>Amps at the charging voltage; null where the curve does not show (never an end value in its
    /// place).</summary>
    public ElectricCurrent? Current { get; }
}
