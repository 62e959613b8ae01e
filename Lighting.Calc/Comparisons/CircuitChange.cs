using UnitsNet;

namespace Lighting.Calc;

/// <summary>The most that one circuit draws in any setting, before and after.</summary>
/// <param name="Circuit">The circuit.</param>
/// <param name="CurrentBefore">Most amps before.</param>
/// <param name="CurrentAfter">Most amps after.</param>
/// <param name="PowerBefore">Watts of its loads in the setting of <see cref="CurrentBefore"/>.</param>
/// <param name="PowerAfter">Watts of its loads in the setting of <see cref="CurrentAfter"/>.</param>
internal sealed record CircuitChange(
    string Circuit,
    ElectricCurrent CurrentBefore,
    ElectricCurrent CurrentAfter,
    Power PowerBefore,
    Power PowerAfter
)
{
    internal static CircuitChange Of(
        string circuit,
        IEnumerable<OperatingPoint> before,
        IEnumerable<OperatingPoint> after
    )
    {
        (double amperesBefore, double wattsBefore) = Most(circuit, before);
        (double amperesAfter, double wattsAfter) = Most(circuit, after);
        return new CircuitChange(
            circuit,
            ElectricCurrent.FromAmperes(amperesBefore),
            ElectricCurrent.FromAmperes(amperesAfter),
            Power.FromWatts(wattsBefore),
            Power.FromWatts(wattsAfter)
        );
    }

    private static (double Amperes, double Watts) Most(string circuit, IEnumerable<OperatingPoint> points) =>
        points
            .Select(p => p.Lamps.Where(l => Name.Equal(l.Lamp.Circuit, circuit)))
            .Select(l => (Amperes: l.Sum(s => Math.Abs(s.Current.Amperes)), Watts: l.Sum(s => (double)s.Power.Watts)))
            .DefaultIfEmpty()
            .MaxBy(s => s.Amperes);
}
