using System.Collections.Immutable;

namespace Lighting.Calc.FaultFinding;

/// <summary>Two faults at once, as far as readings were taken.</summary>
/// <param name="Members">The two, each with its severity.</param>
/// <param name="LogWeight">Logarithm of prior times likelihood.</param>
/// <param name="Predicted">What each reading would be.</param>
internal sealed record FaultPair(ImmutableArray<FaultMember> Members, double LogWeight, Dictionary<Evidence, Prediction> Predicted);
