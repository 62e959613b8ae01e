using UnitsNet;

namespace Lighting.Calc;

/// <summary>Largest voltage drop allowed for a lamp or other load, source to load and back.</summary>
/// <remarks>
/// The lamp's own limit where it has one, else that stated for the bike, else the published one of its kind of circuit
/// (tables/drop-limits.csv, whole circuit on 12 V; on other systems in proportion: common practice, no source).
/// </remarks>
/// <param name="Share">The limit as a share of the supply voltage.</param>
/// <param name="IsAdvice">Whether it is advice only, so that more is a caution and no fault: the published limit of a
/// horn, a coil or another load that gives no light.</param>
internal sealed record DropLimit(Ratio Share, bool IsAdvice)
{
    private static readonly Dictionary<string, double> s_volts = PublishedTable
        .Load("drop-limits")
        .Read()
        .Where(r => r.NumberOrNull("whole_circuit_v") is not null)
        .ToDictionary(r => r.Text("kind"), r => r.Number("whole_circuit_v"));

    /// <summary>Finds the limit of a lamp.</summary>
    public static DropLimit Of(Bike bike, FittedLamp lamp, ElectricPotential supply)
    {
        if ((lamp.AllowedDrop ?? bike.StatedDrop) is { } stated)
            return new DropLimit(stated, IsAdvice: false);
        bool givesLight = lamp.Specification.Type is not (LampType.Fixed or LampType.Resistor);
        string circuit =
            !givesLight ? "horn or relay"
            : LampUses.IsHeadlamp(lamp, bike.SystemVoltage) ? "headlamp"
            : (double)lamp.Specification.ReferencePower.Watts < 15 ? "lamp under 15 W"
            : "lamp over 15 W";
        return new DropLimit(
            Ratio.FromDecimalFractions(s_volts[circuit] * (bike.SystemVoltage.Volts / 12) / supply.Volts),
            IsAdvice: !givesLight
        );
    }

    /// <summary>Whether a drop is larger.</summary>
    public bool IsExceededBy(Ratio drop) => drop.Percent > Share.Percent + 1e-9;
}
