
namespace Lighting.Calc;

/// <summary>How long the battery carries one setting with the engine off, before and after, to one state of charge.</summary>
/// <param name="Setting">The setting.</param>
/// <param name="Before">The time before.</param>
/// <param name="After">The time after.</param>
public sealed record BatteryRunTimeChange(Setting Setting, BatteryRunTime Before, BatteryRunTime After);
