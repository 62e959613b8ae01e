using UnitsNet;

namespace Lighting.Calc;

/// <summary>A lamp (or other load) as it is fitted to a bike: one row of <c>lamps.csv</c>.</summary>
public sealed record FittedLamp
{
    /// <summary>The circuit it belongs to, such as <c>headlamp</c>: loads are summed by circuit.</summary>
    public required string Circuit { get; init; }

    /// <summary>Name, unique on the bike.</summary>
    public required string Lamp { get; init; }

    /// <summary>Electrical and light data of one lamp.</summary>
    public required LampSpecification Specification { get; init; }

    /// <summary>Number of lamps in parallel on the same two points; 1 or more.</summary>
    public int Quantity { get; init; } = 1;

    /// <summary>Condition in which it should be lit; <see cref="Condition.Always"/> if none is stated. Without runs
    /// this determines which lamps are on; with runs the contacts do, and this is checked against them.</summary>
    public Condition LitWhen { get; init; } = Condition.Always;

    /// <summary>Share of the ride for which it is on while it is switched on, 0 to 1: used for the average load of
    /// charging and battery, not for fuses.</summary>
    /// <remarks>Where it is not stated a load that only a momentary switch turns on counts with 5 %, every other with
    /// all of the time.</remarks>
    public Ratio Duty
    {
        get => StatedDuty ?? Ratio.FromDecimalFractions(1);
        init => StatedDuty = value;
    }

    /// <summary>The duty as stated; null where it is not.</summary>
    internal Ratio? StatedDuty { get; private init; }

    /// <summary>Largest drop allowed for it, source to lamp and back, as a share of the supply voltage: above 0 to
    /// below 100 %; null where it has none of its own.</summary>
    public Ratio? AllowedDrop { get; init; }

    /// <summary>On a bike without runs: whether it is on only momentarily, as a horn or stop lamp is; null goes by the
    /// switches of <see cref="LitWhen"/> or, without them, by its name and circuit
    /// (<see cref="FuseOptions.MomentarySwitches"/>). With runs the switches decide.</summary>
    public bool? Momentary { get; init; }

    /// <summary>The point its feed is connected to; ignored, and may be null, when the bike has no runs.</summary>
    public string? Feed { get; init; }

    /// <summary>The point its return is connected to; ignored, and may be null, when the bike has no runs.</summary>
    public string? Return { get; init; }

    /// <summary>What it needs to be the coil of a relay whose contacts (<see cref="SwitchContact.IsRelay"/>) have its
    /// name; null for every other load.</summary>
    internal RelayCoil? Coil { get; init; }

    /// <summary>Remark of the list, which no calculation uses; null if there is none.</summary>
    public string? Notes { get; init; }
}
