namespace Lighting.Calc;

/// <summary>A fault of one severity, as it is put into the network.</summary>
/// <param name="Family">The fault.</param>
/// <param name="Case">The severity.</param>
internal readonly record struct FaultMember(FaultFamily Family, FaultCase Case);
