namespace Lighting.Calc;

/// <summary>One severity of a fault: what a particle of the posterior is solved with.</summary>
/// <param name="Ohms">The resistance the fault adds, infinite where open; zero for a fault that adds none.</param>
/// <param name="Share">Prior share of the family; the shares of a family sum to one.</param>
/// <param name="Factor">Share of the voltage left to a flat battery or low-output coil; number of dead lamps.</param>
/// <param name="Lamp">The lamp that is fitted in place of the right one.</param>
/// <param name="Lead">The lead of the generator whose phase is open; 0 for none.</param>
internal sealed record FaultCase(
    double Ohms,
    double Share,
    double Factor = 1,
    LampSpecification? Lamp = null,
    int Lead = 0
);
