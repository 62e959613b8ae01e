using UnitsNet;

namespace Lighting.Calc;

/// <summary>One wire to cut: its label, length and ends.</summary>
public sealed record CutWire
{
    internal CutWire(
        int number,
        string label,
        Run run,
        CableKind? cable,
        Length cutLength,
        WireEnd fromEnd,
        WireEnd toEnd
    ) =>
        (Number, Label, Run, Cable, CutLength, FromEnd, ToEnd) = (number, label, run, cable, cutLength, fromEnd, toEnd);

    /// <summary>Its number, from 1, in the order of the list.</summary>
    public int Number { get; }

    /// <summary>Its label, unique on the bike: the initials of its name, with a number where several have the
    /// same.</summary>
    public string Label { get; }

    /// <summary>The run.</summary>
    public Run Run { get; }

    /// <summary>The kind of cable, its own or the bike's; null where neither is stated.</summary>
    public CableKind? Cable { get; }

    /// <summary>Length to cut: the run's with slack, rounded up to whole centimetres.</summary>
    public Length CutLength { get; }

    /// <summary>Terminal where it starts.</summary>
    public WireEnd FromEnd { get; }

    /// <summary>Terminal where it ends.</summary>
    public WireEnd ToEnd { get; }
}
