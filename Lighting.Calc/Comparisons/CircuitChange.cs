using UnitsNet;

namespace Lighting.Calc;

/// <summary>The most that one circuit draws in any setting, before and after.</summary>
public sealed record CircuitChange
{
    private CircuitChange(
        string circuit,
        ElectricCurrent currentBefore,
        ElectricCurrent currentAfter,
        Power powerBefore,
        Power powerAfter
    ) =>
        (Circuit, CurrentBefore, CurrentAfter, PowerBefore, PowerAfter) = (
            circuit,
            currentBefore,
            currentAfter,
            powerBefore,
            powerAfter
        );

    /// <summary>The circuit.</summary>
    public string Circuit { get; }

    /// <summary>Most amps before.</summary>
    public ElectricCurrent CurrentBefore { get; }

    /// <summary>Most amps after.</summary>
    public ElectricCurrent CurrentAfter { get; }

    /// <summary>Watts of its loads in the setting of <see cref="CurrentBefore"/>.</summary>
    public Power PowerBefore { get; }

    /// <summary>Watts of its loads in the setting of <see cref="CurrentAfter"/>.</summary>
    public Power PowerAfter { get; }

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
