
namespace Lighting.Calc;

/// <summary>The charging balance of one setting before and after.</summary>
/// <param name="Setting">The setting.</param>
/// <param name="Before">The balance before.</param>
/// <param name="After">The balance after.</param>
public sealed record ChargingChange(Setting Setting, ChargingBalance Before, ChargingBalance After);
