using UnitsNet;

namespace Lighting.Calc;

/// <summary>One size tried for a single run.</summary>
/// <param name="Wire">The size.</param>
/// <param name="Drop">Voltage lost, there and back unless one way, with everything else in the way.</param>
/// <param name="DropShare">The same as a share of the source voltage.</param>
/// <param name="Rating">Its current rating.</param>
/// <param name="MeetsDrop">Whether it loses no more than allowed.</param>
/// <param name="MeetsAmpacity">Whether its rating is at least the current; null where no rating is published.</param>
/// <param name="MeetsFuse">Whether its rating is at least the fuse's; null where no rating is published or there is
/// no fuse.</param>
/// <param name="IsStrongEnough">Whether it is as thick as wanted for strength.</param>
/// <param name="Holds">Whether it holds every limit.</param>
internal sealed record SingleRunCandidate(
    WireSize Wire,
    ElectricPotential Drop,
    Ratio DropShare,
    CurrentRating Rating,
    bool MeetsDrop,
    bool? MeetsAmpacity,
    bool? MeetsFuse,
    bool IsStrongEnough,
    bool Holds
);
