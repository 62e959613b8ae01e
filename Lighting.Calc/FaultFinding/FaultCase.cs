using Lighting.Calc.Lamps;

namespace Lighting.Calc.FaultFinding;

/// <summary>One severity of a fault: what a particle of the posterior is solved with.</summary>
/// <param name="Ohms">The resistance the fault adds (infinity: open), or that a short has; of a battery or coil, its added resistance.</param>
/// <param name="Share">Prior share of the family; the shares of a family sum to one.</param>
/// <param name="Factor">Share of the volts a flat battery or weak coil has; lamps that are dead of the quantity.</param>
/// <param name="Lamp">The lamp that is fitted in place of the right one.</param>
internal sealed record FaultCase(double Ohms, double Share, double Factor = 1, LampSpecification? Lamp = null);
