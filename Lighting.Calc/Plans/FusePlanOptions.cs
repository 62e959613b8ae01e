using UnitsNet;

namespace Lighting.Calc;

/// <summary>By what a fuse box is planned.</summary>
public sealed record FusePlanOptions
{
    /// <summary>The most ways the box has, 1 or more; null takes as many as are needed for no fuse to be larger than
    /// the wires as fitted allow.</summary>
    public int? Ways { get; init; }

    /// <summary>Whether dipped and main beam get ways of their own.</summary>
    public bool ApartDipAndMain { get; init; }

    /// <summary>Length of each new wire to the box, above zero. Default 0.3 m.</summary>
    public Length BoxLead { get; init; } = Length.FromMeters(0.3);

    /// <summary>How the bike is checked: the settings that are looked at, engine, supply and fuses.</summary>
    public CheckOptions Check { get; init; } = new();
}
