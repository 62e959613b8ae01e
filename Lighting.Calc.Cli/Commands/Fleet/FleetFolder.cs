namespace Lighting.Calc.Cli.Commands;

/// <summary>A path that stands for one bike.</summary>
/// <param name="Path">The path.</param>
/// <param name="IsGiven">Whether it was given by itself, not found in a folder of bikes.</param>
internal readonly record struct FleetFolder(string Path, bool IsGiven);
