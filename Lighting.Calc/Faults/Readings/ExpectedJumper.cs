using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>What a fused jumper should do on a bike in order.</summary>
internal sealed class ExpectedJumper
{
    internal ExpectedJumper(
        JumperUse use,
        string part,
        Setting setting,
        JumperLead lead,
        ElectricCurrent? largestFuse,
        ImmutableArray<string> lit,
        Ratio gain
    )
    {
        (Use, Part, Setting, Lead) = (use, part, setting, lead);
        (LargestFuse, Lit, Gain) = (largestFuse, lit, gain);
    }

    /// <summary>What it is for.</summary>
    public JumperUse Use { get; }

    /// <summary>The lamp, or the contact or wire that is bridged.</summary>
    public string Part { get; }

    /// <summary>The switches.</summary>
    public Setting Setting { get; }

    /// <summary>Where the two ends go.</summary>
    public JumperLead Lead { get; }

    /// <summary>Rating of the fuse before either end or, on the earth side, before the lamp, above which the jumper's
    /// own fuse may not be; null where there is none.</summary>
    public ElectricCurrent? LargestFuse { get; }

    /// <summary>The lamps that are lit with the jumper on.</summary>
    public ImmutableArray<string> Lit { get; }

    /// <summary>By how much the lamp watched gains light; zero where it is lit by the jumper alone.</summary>
    public Ratio Gain { get; }

    /// <summary>The lamp to watch.</summary>
    public string Lamp { get; internal init; } = "";
}

/// <summary>What a jumper is put on for.</summary>
internal enum JumperUse
{
    /// <summary>From the battery's live terminal to a lamp's feed: past everything before it.</summary>
    Feed,

    /// <summary>From a lamp's return to the earthed terminal: past its earth.</summary>
    Return,

    /// <summary>Across one contact, connector or earth.</summary>
    Across,
}
