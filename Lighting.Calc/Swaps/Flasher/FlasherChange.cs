using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The load of the flasher in one setting, before and after.</summary>
/// <remarks>
/// Nominal watts are those on the cap where the lamp table has them, else those of the reference point. A thermal
/// flasher is worked by its current, which heats its strip by the square: so <see cref="HeatShare"/>.
/// </remarks>
internal sealed class FlasherChange
{
    /// <summary>The setting.</summary>
    public Setting Setting { get; init; } = null!;

    /// <summary>The loads of the flashing circuits that are lit in it.</summary>
    public ImmutableArray<string> Lamps { get; init; }

    /// <summary>Their nominal watts before.</summary>
    public Power NominalBefore { get; init; }

    /// <summary>Their nominal watts after.</summary>
    public Power NominalAfter { get; init; }

    /// <summary>The nominal load the flasher is made for: as listed, else <see cref="NominalBefore"/>.</summary>
    public Power FlasherLoad { get; init; }

    /// <summary>Their current before.</summary>
    public ElectricCurrent CurrentBefore { get; init; }

    /// <summary>Their current after.</summary>
    public ElectricCurrent CurrentAfter { get; init; }

    /// <summary><see cref="NominalAfter"/> as a share of <see cref="FlasherLoad"/>.</summary>
    public Ratio Share => Ratio.FromDecimalFractions((double)NominalAfter.Watts / (double)FlasherLoad.Watts);

    /// <summary>Heat in a thermal flasher's strip against before: the square of the currents' ratio.</summary>
    public Ratio HeatShare => Ratio.FromDecimalFractions(Math.Pow(CurrentAfter.Amperes / CurrentBefore.Amperes, 2));
}
