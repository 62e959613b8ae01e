using Lighting.Calc.Charging;
using Lighting.Calc.Harness;

namespace Lighting.Calc.Verdicts;

/// <summary>What the charging balance says against the bike.</summary>
internal static class ChargingFindings
{
    public static IEnumerable<Finding> Of(ChargingBalance? balance, RideBalance? ride)
    {
        if (balance?.BreakEven.Outcome == BreakEvenOutcome.Never)
            yield return new Finding(Severity.Fault, "charging", Said($"it never carries the {balance.Demand.Amperes:F1} A of the setting '{balance.Setting}': the battery goes flat at any engine speed."));
        if (ride?.NetCharge is { AmpereHours: < 0 } lost)
            yield return new Finding(Severity.Caution, "ride", Said($"it takes {-lost.AmpereHours:F2} Ah more out of the battery than it puts in."));
    }

    private static string Said(FormattableString text) => FormattableString.Invariant(text);
}
