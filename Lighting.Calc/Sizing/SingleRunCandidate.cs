using UnitsNet;

namespace Lighting.Calc;

/// <summary>One size tried for a single run.</summary>
internal sealed record SingleRunCandidate
{
    /// <summary>The size.</summary>
    public WireSize Wire { get; init; } = null!;

    /// <summary>Voltage lost, there and back unless one way, with everything else in the way.</summary>
    public ElectricPotential Drop { get; init; }

    /// <summary>The same as a share of the source voltage.</summary>
    public Ratio DropShare { get; init; }

    /// <summary>Its current rating.</summary>
    public CurrentRating Rating { get; init; } = null!;

    /// <summary>Whether it loses no more than allowed.</summary>
    public bool MeetsDrop { get; init; }

    /// <summary>Whether its rating is at least the current; null where no rating is published.</summary>
    public bool? MeetsAmpacity { get; init; }

    /// <summary>Whether its rating is at least the fuse's; null where no rating is published or there is no
    /// fuse.</summary>
    public bool? MeetsFuse { get; init; }

    /// <summary>Whether it is as thick as wanted for strength.</summary>
    public bool IsStrongEnough { get; init; }

    /// <summary>Whether it holds every limit.</summary>
    public bool Holds { get; init; }
}
