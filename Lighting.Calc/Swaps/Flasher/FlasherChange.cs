using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The load of the flasher in one setting, before and after.</summary>
/// <remarks>
/// Nominal watts are those on the cap where the lamp table has them, else those of the reference point. A thermal
/// flasher is worked by its current, which heats its strip by the square: so <see cref="HeatShare"/>.
/// </remarks>
/// <param name="Setting">The setting.</param>
/// <param name="Lamps">The loads of the flashing circuits that are lit in it.</param>
/// <param name="NominalBefore">Their nominal watts before.</param>
/// <param name="NominalAfter">Their nominal watts after.</param>
/// <param name="FlasherLoad">The nominal load the flasher is made for: as listed, else <see
/// cref="NominalBefore"/>.</param>
/// <param name="CurrentBefore">Their current before.</param>
/// <param name="CurrentAfter">Their current after.</param>
internal sealed record FlasherChange(
    Setting Setting,
    ImmutableArray<string> Lamps,
    Power NominalBefore,
    Power NominalAfter,
    Power FlasherLoad,
    ElectricCurrent CurrentBefore,
    ElectricCurrent CurrentAfter
)
{
    /// <summary><see cref="NominalAfter"/> as a share of <see cref="FlasherLoad"/>.</summary>
    public Ratio Share => Ratio.FromDecimalFractions((double)NominalAfter.Watts / (double)FlasherLoad.Watts);

    /// <summary>Heat in a thermal flasher's strip against before: the square of the currents' ratio.</summary>
    public Ratio HeatShare => Ratio.FromDecimalFractions(Math.Pow(CurrentAfter.Amperes / CurrentBefore.Amperes, 2));
}
