using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What is read in one setting on a healthy bike.</summary>
public sealed class ExpectedSetting
{
    internal ExpectedSetting(
        Setting setting,
        ImmutableArray<ExpectedReading> points,
        ImmutableArray<ExpectedCurrent> fuses,
        ImmutableArray<ExpectedLook> lamps
    ) => (Setting, Points, Fuses, Lamps) = (setting, points, fuses, lamps);

    /// <summary>The setting.</summary>
    public Setting Setting { get; }

    /// <summary>Every point that a probe can reach.</summary>
    public ImmutableArray<ExpectedReading> Points { get; }

    /// <summary>The current in the place of each fuse.</summary>
    public ImmutableArray<ExpectedCurrent> Fuses { get; }

    /// <summary>How each lamp looks.</summary>
    public ImmutableArray<ExpectedLook> Lamps { get; }
}
