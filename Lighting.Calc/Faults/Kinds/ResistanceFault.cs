using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A connection of high resistance, or open.</summary>
/// <remarks>
/// High resistance and open are severities of one fault, since the repair is the same. Before anything is read the
/// resistance is log-normal about 2 Ω with a standard deviation of one decade; what drops less than 3 % of the voltage,
/// a tenth of a lamp's light, is seldom noticed and therefore less likely: common practice, no source.
/// </remarks>
internal abstract class ResistanceFault(
    FaultCircuit circuit,
    FaultKind kind,
    int part,
    double weight,
    ImmutableArray<FaultCase> cases
) : FaultFamily(circuit, kind, part, weight, cases)
{
    private const double NoticedShare = 0.03;

    private static readonly double[] s_ohms =
    [
        .. Enumerable.Range(0, 5).Select(k => Math.Pow(10, -1.25 + 0.25 * k)),
        .. Enumerable.Range(0, 9).Select(k => Math.Pow(10, 0.125 * k)),
        18,
        32,
        56,
        100,
        300,
        1000,
        10_000,
    ];

    /// <param name="circuit">The bike's circuit.</param>
    /// <param name="kind">The fault.</param>
    /// <param name="part">Index of the part.</param>
    /// <param name="poor">Prior weight of a high resistance.</param>
    /// <param name="open">Prior weight of an open connection.</param>
    /// <param name="amperes">Largest current of the part on a healthy bike.</param>
    protected ResistanceFault(FaultCircuit circuit, FaultKind kind, int part, double poor, double open, double amperes)
        : this(circuit, kind, part, poor + open, Severities(poor, open, Noticed(circuit, amperes))) { }

    public override bool IsContinuous => true;

    protected virtual string Open => "open";

    public override FaultCase Graver(FaultCase severity, double decades) =>
        severity with
        {
            Ohms = severity.Ohms * Math.Pow(10, decades),
        };

    public override Fault At(FaultCase severity, FittedResistance? fitted) =>
        new(this) { IsOpen = fitted is null, Resistance = fitted };

    public override string Title(Fault fault) => $"{Subject}: high resistance or open";

    protected override string State(Fault fault) => fault.Resistance is { } fitted ? FaultWords.Fitted(fitted) : Open;

    // Resistances that are noticed in a part: where none of the settings gives it a current, all are alike.
    private static double Noticed(FaultCircuit circuit, double amperes) =>
        amperes > 1e-3 ? NoticedShare * circuit.Supply.FullVolts / amperes : 0;

    // Each severity represents the decades about it.
    private static ImmutableArray<FaultCase> Severities(double poor, double open, double noticed)
    {
        double[] shares =
        [
            .. s_ohms.Select(
                (r, i) =>
                    1
                    / (1 + Math.Pow(noticed / r, 2))
                    * Math.Exp(-Math.Pow(Math.Log10(r / 2), 2) / 2)
                    * Math.Log(s_ohms[Math.Min(i + 1, s_ohms.Length - 1)] / s_ohms[Math.Max(i - 1, 0)])
            ),
        ];
        double scale = poor / (poor + open) / shares.Sum();
        var cases = s_ohms.Select((r, i) => new FaultCase(r, shares[i] * scale));
        return open > 0 ? [.. cases, new FaultCase(double.PositiveInfinity, open / (poor + open))] : [.. cases];
    }
}
