using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <content>The same bike with other figures of a part, which is found by its name.</content>
public sealed partial record Bike
{
    /// <summary>The same bike with other figures of one lamp; what is null stays.</summary>
    /// <param name="lamp">Name of the lamp; case does not matter.</param>
    /// <param name="specification">What is fitted in its place.</param>
    /// <param name="quantity">Number of lamps in parallel, 1 or more.</param>
    /// <param name="duty">Duty cycle while switched on, 0 to 1.</param>
    /// <param name="litWhen">Condition in which it should be lit.</param>
    /// <exception cref="ArgumentException">No lamp has that name; the message suggests the nearest.</exception>
    public Bike WithLamp(
        string lamp,
        LampSpecification? specification = null,
        int? quantity = null,
        Ratio? duty = null,
        Condition? litWhen = null
    )
    {
        int place = PartNames.PlaceOf(lamp, Lamps, l => l.Lamp, "lamp", nameof(lamp));
        FittedLamp fitted = Lamps[place];
        return this with
        {
            Lamps = Lamps.SetItem(
                place,
                (duty is { } share ? fitted with { Duty = share } : fitted) with
                {
                    Specification = specification ?? fitted.Specification,
                    Quantity = quantity ?? fitted.Quantity,
                    LitWhen = litWhen ?? fitted.LitWhen,
                }
            ),
        };
    }

    /// <summary>The same bike with other figures of one run; what is null stays.</summary>
    /// <param name="run">Name of the run; case does not matter.</param>
    /// <param name="wire">The wire.</param>
    /// <param name="length">Length along this one wire, zero or more.</param>
    /// <param name="joints">Number of joints, zero or more.</param>
    /// <param name="jointResistance">Resistance of each joint, zero or more; it is then no longer the typical
    /// value.</param>
    /// <exception cref="ArgumentException">No run has that name; the message suggests the nearest.</exception>
    public Bike WithRun(
        string run,
        WireSize? wire = null,
        Length? length = null,
        int? joints = null,
        ElectricResistance? jointResistance = null
    )
    {
        int place = PartNames.PlaceOf(run, Runs, r => r.Name, "run", nameof(run));
        Run listed = Runs[place];
        return this with
        {
            Runs = Runs.SetItem(
                place,
                listed with
                {
                    Wire = wire ?? listed.Wire,
                    Length = length ?? listed.Length,
                    Joints = joints ?? listed.Joints,
                    JointResistance = jointResistance ?? listed.JointResistance,
                    AssumesJoints = listed.AssumesJoints && jointResistance is null,
                }
            ),
        };
    }

    /// <summary>The same bike with other figures of one fuse; what is null stays.</summary>
    /// <param name="fuse">Name of the fuse; case does not matter.</param>
    /// <param name="rating">Rated current, above zero.</param>
    /// <param name="style">Construction.</param>
    /// <param name="resistance">Cold resistance, zero or more.</param>
    /// <exception cref="ArgumentException">No fuse has that name; the message suggests the nearest.</exception>
    public Bike WithFuse(
        string fuse,
        ElectricCurrent? rating = null,
        FuseStyle? style = null,
        ElectricResistance? resistance = null
    )
    {
        int place = PartNames.PlaceOf(fuse, Fuses, f => f.Name, "fuse", nameof(fuse));
        Fuse listed = Fuses[place];
        return this with
        {
            Fuses = Fuses.SetItem(
                place,
                listed with
                {
                    Rating = rating ?? listed.Rating,
                    Style = style ?? listed.Style,
                    Resistance = resistance ?? listed.Resistance,
                }
            ),
        };
    }

    /// <summary>Every fault of a bike built in code: what a reader of its lists would refuse, all at once.</summary>
    /// <remarks>
    /// Doubled names, missing points, values out of the ranges of the list columns, shares over 100 %, conditions that
    /// name what the bike does not have. A calculation refuses a bike that has faults; those of conditions are findings
    /// of a check.
    /// </remarks>
    /// <returns>Each fault with the property of the bike (<see cref="ListFault.File"/>, such as <c>Bike.Lamps</c>), the
    /// part by its number and name, and the part's own property; empty where the bike can be calculated.</returns>
    public ImmutableArray<ListFault> Validate() => BikeValidation.Of(this);
}
