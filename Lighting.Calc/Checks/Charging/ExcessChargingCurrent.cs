namespace Lighting.Calc;

/// <summary>The largest current over what the loads take, and where it goes once the battery is full.</summary>
/// <param name="Setting">The setting of the smallest demand for its output.</param>
/// <param name="Point">The balance at the speed of the largest surplus.</param>
internal sealed record ExcessChargingCurrent(Setting Setting, BalancePoint Point);
