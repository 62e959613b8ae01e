using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>A connection of high resistance, or open.</summary>
/// <remarks>
/// High resistance and open are severities of one fault, since the repair is the same. Before anything is read the
/// resistance is log-normal about 2 Ω with a standard deviation of one decade: common practice, no source.
/// </remarks>
internal abstract class ResistanceFault(
    FaultCircuit circuit,
    FaultKind kind,
    int part,
    double weight,
    ImmutableArray<FaultCase> cases
) : FaultFamily(circuit, kind, part, weight, cases)
{
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
    protected ResistanceFault(FaultCircuit circuit, FaultKind kind, int part, double poor, double open)
        : this(circuit, kind, part, poor + open, Severities(poor, open)) { }

    public override bool IsResistance => true;

    public override bool IsContinuous => true;

    /// <summary>Whether a part is the one with the connection, which may flicker when it is moved.</summary>
    public virtual bool IsOf(MeasuredPart part) => false;

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

    // Each severity represents the decades about it.
    private static ImmutableArray<FaultCase> Severities(double poor, double open)
    {
        double[] shares =
        [
            .. s_ohms.Select(
                (r, i) =>
                    Math.Exp(-Math.Pow(Math.Log10(r / 2), 2) / 2)
                    * Math.Log(s_ohms[Math.Min(i + 1, s_ohms.Length - 1)] / s_ohms[Math.Max(i - 1, 0)])
            ),
        ];
        double scale = poor / (poor + open) / shares.Sum();
        var cases = s_ohms.Select((r, i) => new FaultCase(r, shares[i] * scale));
        return open > 0 ? [.. cases, new FaultCase(double.PositiveInfinity, open / (poor + open))] : [.. cases];
    }
}
