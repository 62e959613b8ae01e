using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The test with the largest expected information gain for its cost.</summary>
public sealed class NextTest
{
    internal NextTest(
        FaultTest test,
        double gain,
        double cost,
        string instruction,
        ImmutableArray<TestOutcome> outcomes
    ) => (Test, ExpectedInformationGain, Cost, Instruction, Outcomes) = (test, gain, cost, instruction, outcomes);

    /// <summary>The switches.</summary>
    public Setting Setting => Test.Setting;

    /// <summary>The point probed, the fuse replaced, the lamp looked at, or the part measured with the
    /// ohmmeter.</summary>
    public string Point => Test.Point;

    /// <summary>The instrument.</summary>
    public Instrument Instrument => Test.Instrument;

    /// <summary>Expected information about which fault it is, in bits.</summary>
    public double ExpectedInformationGain { get; }

    /// <summary>Its cost against one probing with the meter.</summary>
    public double Cost { get; }

    /// <summary>The test in words.</summary>
    public string Instruction { get; }

    /// <summary>The possible outcomes, likeliest first.</summary>
    public ImmutableArray<TestOutcome> Outcomes { get; }

    internal FaultTest Test { get; }
}
