namespace Lighting.Calc;

/// <summary>Where most amps are over after the swap, and what was over there before.</summary>
/// <param name="Setting">The setting.</param>
/// <param name="Before">The balance there before.</param>
/// <param name="After">The balance there after; its net is known and above zero.</param>
internal sealed record ExcessCurrentChange(Setting Setting, BalancePoint Before, BalancePoint After);
