using UnitsNet;

namespace Lighting.Calc;

/// <summary>One size tried for a single run.</summary>
public sealed record SingleRunCandidate
{
    /// <summary>The size.</summary>
    public required WireSize Wire { get; init; }

    /// <summary>Voltage lost, there and back unless one way, with everything else in the way.</summary>
    public required ElectricPotential Drop { get; init; }

    /// <summary>The same as a share of the source voltage.</summary>
    public required Ratio DropShare { get; init; }

    /// <summary>Its current rating.</summary>
    public required CurrentRating Rating { get; init; }

    /// <summary>Whether it loses no more than allowed.</summary>
    public required bool MeetsDrop { get; init; }

    /// <summary>Whether its rating is at least the current; null where no rating is published.</summary>
    public required bool? MeetsAmpacity { get; init; }

    /// <summary>Whether its rating is at least the fuse's; null where no rating is published or there is no
    /// fuse.</summary>
    public required bool? MeetsFuse { get; init; }

    /// <summary>Whether it is as thick as wanted for strength.</summary>
    public required bool IsStrongEnough { get; init; }

    /// <summary>Whether it holds every limit.</summary>
    public required bool Holds { get; init; }
}
