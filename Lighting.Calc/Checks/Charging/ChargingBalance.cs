using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Amps in against amps out in one setting, engine running.</summary>
public sealed class ChargingBalance
{
    internal ChargingBalance(ChargingSystem system, Setting setting, ElectricCurrent load)
    {
        System = system;
        Setting = setting;
        Load = load;
    }

    private ChargingSystem System { get; }

    /// <summary>The setting.</summary>
    public Setting Setting { get; }

    /// <summary>Average current of the loads at the charging voltage, lamps by their duty; without the field
    /// current.</summary>
    public ElectricCurrent Load { get; }

    /// <summary>Average current that has to be covered: the loads and the alternator's field.</summary>
    public ElectricCurrent Demand => Load + System.Options.FieldCurrent;

    /// <summary>From which speed the output covers the demand.</summary>
    public BreakEven BreakEven => System.BreakEvenOf(this);

    /// <summary>The balance at one engine speed.</summary>
    /// <param name="speed">Engine speed, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The speed is below zero.</exception>
    public BalancePoint At(RotationalSpeed speed) => System.PointAt(this, speed);

    /// <summary>The balance over engine speeds.</summary>
    /// <param name="speeds">The speeds, zero or more.</param>
    /// <returns>One for each speed, in their order.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A speed is below zero.</exception>
    public ImmutableArray<BalancePoint> Over(IEnumerable<RotationalSpeed> speeds) => [.. speeds.Select(At)];
}
