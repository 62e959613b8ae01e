using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Two faults at once, as far as readings were taken.</summary>
/// <param name="Members">The two, each with its severity.</param>
/// <param name="Nearest">For each the solved severity that lies nearest: an index of
/// <see cref="FaultModel.Members"/>.</param>
/// <param name="LogWeight">Logarithm of prior times likelihood.</param>
/// <param name="LogResembling">The same of something that is not listed but shows as these two do.</param>
/// <param name="Predicted">What each reading would be, in the order of the evidence.</param>
/// <param name="Spread">For each the resistances between which nine of ten lie, the other fault held; none for what is
/// no resistance.</param>
internal sealed record FaultPair(
    ImmutableArray<FaultMember> Members,
    ImmutableArray<int> Nearest,
    double LogWeight,
    double LogResembling,
    ImmutableArray<Prediction> Predicted,
    ImmutableArray<(double Low, double High)?> Spread
);
