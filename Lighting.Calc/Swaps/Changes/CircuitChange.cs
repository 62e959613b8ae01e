using UnitsNet;

namespace Lighting.Calc;

/// <summary>The most that one circuit draws in any setting, before and after.</summary>
public sealed record CircuitChange
{
    internal CircuitChange(
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
}
