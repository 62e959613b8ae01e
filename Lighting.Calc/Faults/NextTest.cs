using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>The test with the largest expected information gain for its cost.</summary>
public sealed class NextTest
{
    internal NextTest(
        FaultModel model,
        in TestPlace place,
        double gain,
        double cost,
        string instruction,
        ImmutableArray<TestOutcome> outcomes
    )
    {
        FaultCircuit circuit = model.Circuit;
        (Place, ExpectedInformationGain, Cost, Instruction, Outcomes) = (place, gain, cost, instruction, outcomes);
        EngineRpm =
            place.IsOnGenerator && place.Instrument == Instrument.Meter ? place.EngineRpm
            : circuit.HasCharging && place.IsLive ? circuit.SupplyAt(place.EngineRpm).Rpm
            : null;
        Point = model.NameOf(place);
        To =
            place.IsOnGenerator ? BenchPoints.NameOf(place.To)
            : place.To >= 0 ? circuit.Points[place.To]
            : null;
        Jumper = place.HasJumper
            ? new JumperLead(circuit.Points[place.JumperFrom], circuit.Points[place.JumperTo])
            : null;
        Unplugged = circuit.UnpluggedIn(place);
        TakesLampOut =
            place.Instrument == Instrument.GoodLamp
            || place.IsOnBench
            || place.Unplugged == TestPlace.EveryLampOut
            || place.Unplugged >= 0 && circuit.MeasuredParts[place.Unplugged].Lamp >= 0;
    }

    /// <summary>The switches.</summary>
    public Setting Setting => Place.Setting;

    /// <summary>The point probed, the fuse replaced, the lamp looked at, or the part measured with the
    /// ohmmeter.</summary>
    public string Point { get; }

    /// <summary>The second point of meter or ohmmeter; null for battery minus, or for a part.</summary>
    public string? To { get; }

    /// <summary>The fused jumper that is on meanwhile; null for none.</summary>
    public JumperLead? Jumper { get; }

    /// <summary>The run whose connector is pulled apart, or the lamp or fuse taken out, meanwhile; <see
    /// cref="Reading.EveryLamp"/> for all lamps, null for none.</summary>
    public string? Unplugged { get; }

    /// <summary>Whether a lamp is taken out, which may be hot.</summary>
    internal bool TakesLampOut { get; }

    /// <summary>The instrument.</summary>
    public Instrument Instrument => Place.Instrument;

    /// <summary>Expected information about which fault it is, in bits.</summary>
    public double ExpectedInformationGain { get; }

    /// <summary>Its cost against one probing with the meter.</summary>
    public double Cost { get; }

    /// <summary>The test in words.</summary>
    public string Instruction { get; }

    /// <summary>The possible outcomes, likeliest first.</summary>
    public ImmutableArray<TestOutcome> Outcomes { get; }

    /// <summary>Whether every lamp is looked at in one round of the bike; <see cref="Point"/> is then
    /// <see cref="Reading.EveryLamp"/>, and each lamp a row of the readings.</summary>
    public bool IsEveryLamp => Place.IsEveryLamp;

    /// <summary>The row of <c>readings.csv</c> that the test fills in, without its result.</summary>
    public Reading Row =>
        new()
        {
            When =
                Place.IsOnBench ? Condition.Always
                : EngineRpm is { } rpm ? EngineTerm.With(Setting, rpm)
                : Setting.AsCondition(),
            Point = Point,
            To = To,
            Jumper = Jumper,
            Unplugged = Unplugged,
            Instrument = Instrument,
        };

    /// <summary>Engine speed, zero with the engine off; null where all readings are taken alike.</summary>
    private double? EngineRpm { get; }

    internal TestPlace Place { get; }
}
