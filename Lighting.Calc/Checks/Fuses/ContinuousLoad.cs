using UnitsNet;

namespace Lighting.Calc;

/// <summary>The largest current a fuse carries in any setting, against what it may carry without end.</summary>
/// <remarks>Usable = rating × steady limit × temperature factor. Currents are those while lit: a duty never counts.</remarks>
public sealed record ContinuousLoad
{
    /// <summary>Largest current.</summary>
    public required ElectricCurrent WorstCurrent { get; init; }

    /// <summary>The setting it flows in.</summary>
    public required Setting WorstSetting { get; init; }

    /// <summary>What is left of it with the momentary switches of that setting off; null where that setting was not among those solved.</summary>
    public required ElectricCurrent? ExcludingMomentary { get; init; }

    /// <summary>Current the fuse may carry without end.</summary>
    public required ElectricCurrent UsableCurrent { get; init; }

    /// <summary>The temperature factor, one at 25 °C.</summary>
    public required Ratio TemperatureFactor { get; init; }

    /// <summary>Usable less worst current; negative when overloaded.</summary>
    public ElectricCurrent Headroom => UsableCurrent - WorstCurrent;

    /// <summary>Share of the worst current that flows for moments only; null where not known, zero without current.</summary>
    public Ratio? MomentaryShare => ExcludingMomentary is { } rest
        ? Ratio.FromDecimalFractions(WorstCurrent.Amperes > 0 ? Math.Max(0, 1 - rest.Amperes / WorstCurrent.Amperes) : 0)
        : null;

    /// <summary>Whether the fuse carries it.</summary>
    public bool Suits => Headroom.Amperes >= -1e-9;
}
