namespace Lighting.Calc;

/// <summary>What is left to solve in one setting.</summary>
/// <param name="First">The healthy bike, on which the others draw; empty where it is solved.</param>
/// <param name="Members">The severities.</param>
/// <param name="Solve">Solves one of them.</param>
internal sealed record SettingWork(int[] First, int[] Members, Action<FaultSolver, int> Solve);
