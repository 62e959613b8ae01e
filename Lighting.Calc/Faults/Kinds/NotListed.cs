namespace Lighting.Calc;

/// <summary>Something that the catalogue lacks: some readings are as on a healthy bike, or as a listed fault gives
/// them, others anything.</summary>
/// <remarks>
/// Who looks for a fault reads where it shows, and much that is not listed shows there as a listed fault does. So every
/// listed fault has its like, with <see cref="Resembling"/> of its prior, of which a share of the readings is as on a
/// healthy bike, or anything that the instrument can show. How large the share is nobody knows: one of
/// <see cref="Changed"/>, each as likely. A listed fault is sure only when readings that it alone makes abnormal, and
/// predicts closely, have come out so. All of it is common practice, no source.
/// </remarks>
internal sealed class NotListed(FaultCircuit circuit)
    : FaultFamily(
        circuit,
        FaultKind.NotListed,
        0,
        circuit.Options.Weight("not listed") * circuit.Bike.Runs.Length,
        OneSeverity
    )
{
    /// <summary>Prior of what resembles a listed fault, against that fault's.</summary>
    public const double Resembling = 0.2;

    /// <summary>The same of what resembles two faults of which one joins what the lists do not: a load that they lack
    /// is as good as a leak, a wire on the wrong terminal as one that is open and two that touch.</summary>
    public const double ResemblingJoined = 1;

    /// <summary>Share, of the readings that it changes, of those that are as on a healthy bike; the others are
    /// anything.</summary>
    public const double Healthy = 0.6;

    /// <summary>Number of the shares.</summary>
    public const int Shares = 3;

    /// <summary>Share of the readings that it changes.</summary>
    public static double Changed(int share) =>
        share switch
        {
            0 => 0.05,
            1 => 0.2,
            _ => 0.5,
        };

    public override bool IsBroad => true;

    public override double LeastNoticed => 1;

    public override string PartName => "";

    public override string Subject => "something that is not listed";

    public override void PutIn(FaultyHarness harness, FaultCase severity) { }

    public override string Sentence(Fault fault) => Title(fault);

    public override string Title(Fault fault) =>
        "a fault that is not listed: two or more at once, or wiring that differs from the lists";

    protected override string State(Fault fault) => "";
}
