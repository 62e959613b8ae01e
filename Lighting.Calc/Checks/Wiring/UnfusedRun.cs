
namespace Lighting.Calc;

/// <summary>A run that the battery reaches without passing a fuse.</summary>
/// <param name="Run">The run.</param>
/// <param name="Setting">The first setting in which it is so.</param>
/// <param name="IsBatteryLead">Whether it only leads to fuses: the lead from the battery to the first fuse, which is common and is kept short.</param>
public sealed record UnfusedRun(Run Run, Setting Setting, bool IsBatteryLead);
