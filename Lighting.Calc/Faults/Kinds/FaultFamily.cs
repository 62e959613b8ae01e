using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>One fault of one part in all its severities: what it does to the harness, and its words.</summary>
/// <param name="circuit">The bike's circuit.</param>
/// <param name="kind">The fault.</param>
/// <param name="part">Index of the part in its list of the bike: run, contact, fuse, lamp or point.</param>
/// <param name="weight">Prior weight against the other families.</param>
/// <param name="cases">The severities, mildest first.</param>
internal abstract class FaultFamily(
    FaultCircuit circuit,
    FaultKind kind,
    int part,
    double weight,
    ImmutableArray<FaultCase> cases
)
{
    protected static readonly ImmutableArray<FaultCase> OneSeverity = [new FaultCase(0, 1)];

    public FaultKind Kind => kind;

    public int Part => part;

    public double Weight => weight;

    public ImmutableArray<FaultCase> Cases => cases;

    /// <summary>Whether severities between two neighbouring ones are possible as well.</summary>
    public virtual bool IsContinuous => false;

    /// <summary>Whether the severity is a share of the supply voltage, not a resistance.</summary>
    public virtual bool IsShare => false;

    /// <summary>Whether the severity is a resistance.</summary>
    public virtual bool IsResistance => false;

    /// <summary>Whether it stands for whatever the list lacks, which may change any reading.</summary>
    public virtual bool IsBroad => false;

    /// <summary>Whether it joins what the lists do not.</summary>
    public virtual bool Joins => false;

    /// <summary>How likely it is noticed though it changes no load.</summary>
    public virtual double LeastNoticed => 0.03;

    /// <summary>What it leads to that other faults lead to as well, in words, such as a blown fuse; null if
    /// nothing.</summary>
    public virtual string? Consequence => null;

    /// <summary>The repair in one line; null where there is none to name.</summary>
    public virtual string? Repair => null;

    /// <summary>Name of the part; empty for no fault.</summary>
    public abstract string PartName { get; }

    /// <summary>The part in words before a colon.</summary>
    public abstract string Subject { get; }

    protected FaultCircuit Circuit => circuit;

    protected Bike Bike => circuit.Bike;

    /// <summary>Whether it is the same fault of the same part, differing only in how it shows.</summary>
    public bool IsSameAs(FaultFamily other) => Kind == other.Kind && PartName == other.PartName;

    /// <summary>Whether a fault of a result is of this family.</summary>
    public bool Is(Fault fault) => Kind == fault.Kind && PartName == fault.Part;

    /// <summary>Puts a severity into a harness that is measured live or cold, or looked at.</summary>
    public abstract void PutIn(FaultyHarness harness, FaultCase severity);

    /// <summary>A severity so many decades graver; the same where nothing lies between severities.</summary>
    public virtual FaultCase Graver(FaultCase severity, double decades) => severity;

    /// <summary>The fault as results state it.</summary>
    /// <param name="severity">The severity that fits best.</param>
    /// <param name="fitted">The resistance fitted to the readings; null where the connection is open, or none is
    /// fitted.</param>
    public virtual Fault At(FaultCase severity, FittedResistance? fitted) => new(this);

    /// <summary>The fault with its severity.</summary>
    public virtual string Sentence(Fault fault) => $"{Subject}: {State(fault)}";

    /// <summary>The fault without its severity: before anything was read, or where a test decides it.</summary>
    public virtual string Title(Fault fault) => $"{Subject} {State(fault)}";

    /// <summary>The severity in words after a colon.</summary>
    protected abstract string State(Fault fault);
}
