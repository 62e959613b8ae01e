using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;

namespace Lighting.Calc;

/// <summary>Checks a bike built in code as the reader checks its lists: names, points, ranges, conditions.</summary>
/// <remarks>Each fault names the property of <see cref="Bike"/>, the part by its place and name, and the part's own
/// property.</remarks>
internal sealed class BikeValidation
{
    private static readonly char[] s_reserved = ['=', ';', '|'];

    private readonly Bike _bike;
    private readonly ImmutableArray<ListFault>.Builder _faults = ImmutableArray.CreateBuilder<ListFault>();
    private string _list = nameof(Bike);
    private string? _part;
    private int _row;

    private BikeValidation(Bike bike) => _bike = bike;

    /// <summary>Every fault; empty where there is none.</summary>
    public static ImmutableArray<ListFault> Of(Bike bike)
    {
        var validation = new BikeValidation(bike);
        validation.CheckParts();
        if (validation._faults.Count == 0)
            validation.CheckConditions();
        return validation._faults.ToImmutable();
    }

    /// <summary>Refuses a bike that has faults, but for those of its conditions, which a check reports as
    /// findings.</summary>
    /// <exception cref="ArgumentException">The bike has faults; the message has each on a line.</exception>
    public static void Require(Bike bike, [CallerArgumentExpression(nameof(bike))] string? parameter = null)
    {
        var validation = new BikeValidation(bike);
        validation.CheckParts();
        if (validation._faults is { Count: > 0 } faults)
            throw new ArgumentException(
                $"Bike must be valid. {string.Join('\n', faults.Select(f => f.Message))}",
                parameter
            );
    }

    private void CheckParts()
    {
        CheckItems();
        // Without its lists nothing more can be said of it.
        if (!HasLists())
            return;
        CheckLamps();
        CheckRuns();
        CheckContacts();
        CheckFuses();
        CheckGeneratorPoint();
        CheckCharging();
        CheckRide();
    }

    private void CheckItems()
    {
        Visible(nameof(Bike.Name), _bike.Name);
        Within(nameof(Bike.SystemVoltage), _bike.SystemVoltage.Volts, BikeRanges.SystemVolts);
        Within(nameof(Bike.BatteryVoltage), _bike.BatteryVoltage.Volts, BikeRanges.SourceVolts);
        Within(nameof(Bike.ChargingVoltage), _bike.ChargingVoltage.Volts, BikeRanges.SourceVolts);
        Within(nameof(Bike.BatteryCapacity), _bike.BatteryCapacity?.AmpereHours, BikeRanges.Capacity);
        Within(nameof(Bike.BatteryResistance), _bike.BatteryResistance.Ohms, BikeRanges.Ohms);
        Within(nameof(Bike.WireTemperature), _bike.WireTemperature.DegreesCelsius, BikeRanges.WireDegrees);
        Within(nameof(Bike.AmbientTemperature), _bike.AmbientTemperature?.DegreesCelsius, BikeRanges.AirDegrees);
        Within(nameof(Bike.AllowedDrop), _bike.StatedDrop?.Percent, BikeRanges.Drop);
        Within(nameof(Bike.ZenerVoltage), _bike.ZenerVoltage?.Volts, BikeRanges.SourceVolts);
        Within(nameof(Bike.GeneratorResistance), _bike.GeneratorResistance?.Ohms, BikeRanges.Ohms);
        Within(nameof(Bike.FlasherLoad), (double?)_bike.FlasherLoad?.Watts, BikeRanges.LampWatts);
        Known(nameof(Bike.Earth), _bike.Earth);
        Known(nameof(Bike.Lighting), _bike.Lighting);
        Known(nameof(Bike.Regulator), _bike.Regulator);
        Known(nameof(Bike.RegulatorPlace), _bike.RegulatorPlace);
        Known(nameof(Bike.Ignition), _bike.Ignition);
        Known(nameof(Bike.Flasher), _bike.Flasher);
        if (_bike.Cable is { } cable)
            Known(nameof(Bike.Cable), cable);
    }

    private bool HasLists()
    {
        (string Name, bool IsDefault)[] lists =
        [
            (nameof(Bike.Lamps), _bike.Lamps.IsDefault || _bike.Lamps.Contains(null!)),
            (nameof(Bike.Runs), _bike.Runs.IsDefault || _bike.Runs.Contains(null!)),
            (nameof(Bike.Switches), _bike.Switches.IsDefault || _bike.Switches.Contains(null!)),
            (nameof(Bike.Fuses), _bike.Fuses.IsDefault || _bike.Fuses.Contains(null!)),
            (nameof(Bike.Charging), _bike.Charging.IsDefault || _bike.Charging.Contains(null!)),
            (nameof(Bike.Ride), _bike.Ride.IsDefault || _bike.Ride.Contains(null!)),
        ];
        foreach ((string name, bool isDefault) in lists)
            if (isDefault)
                Fault(
                    name,
                    null,
                    "is not initialised, or holds a null",
                    "expected an array of parts; an empty one is []"
                );
        return !Array.Exists(lists, l => l.IsDefault);
    }

    private void CheckLamps()
    {
        var names = new Dictionary<string, int>(Name.Comparer);
        foreach ((int index, FittedLamp lamp) in _bike.Lamps.Index())
        {
            At(nameof(Bike.Lamps), index, lamp.Lamp);
            Named(nameof(FittedLamp.Circuit), lamp.Circuit);
            Unique(nameof(FittedLamp.Lamp), lamp.Lamp, names, index);
            if (lamp.Specification is not { } specification)
            {
                Fault(nameof(FittedLamp.Specification), null, "is null", null);
            }
            else
            {
                Within(
                    nameof(LampSpecification.ReferenceVoltage),
                    specification.ReferenceVoltage.Volts,
                    BikeRanges.LampVolts
                );
                // A list gives the current or the power.
                if (!BikeRanges.LampWatts.Holds((double)specification.ReferencePower.Watts))
                    Within(
                        nameof(LampSpecification.ReferenceCurrent),
                        specification.ReferenceCurrent.Amperes,
                        BikeRanges.LampAmps
                    );
            }

            Within(nameof(FittedLamp.Quantity), lamp.Quantity, BikeRanges.Quantity);
            Within(nameof(FittedLamp.Duty), lamp.Duty.DecimalFractions, BikeRanges.Share);
            Within(nameof(FittedLamp.AllowedDrop), lamp.AllowedDrop?.Percent, BikeRanges.Drop);
            if (lamp.LitWhen is null)
                Fault(
                    nameof(FittedLamp.LitWhen),
                    null,
                    "is null",
                    "Condition.Always is the condition that always holds"
                );
            if (lamp.Coil is { } coil)
                CheckCoil(lamp, coil);
            if (_bike.HasNetwork)
                Points(
                    nameof(FittedLamp.Feed),
                    lamp.Feed,
                    nameof(FittedLamp.Return),
                    lamp.Return,
                    "a bike with runs needs the points of every lamp"
                );
        }
    }

    private void CheckCoil(FittedLamp lamp, RelayCoil coil)
    {
        Within(nameof(RelayCoil.Resistance), coil.Resistance.Ohms, BikeRanges.CoilOhms);
        Within(nameof(RelayCoil.PullInVoltage), coil.PullInVoltage.Volts, BikeRanges.LampVolts);
        Within(nameof(RelayCoil.DropOutVoltage), coil.DropOutVoltage.Volts, BikeRanges.LampVolts);
        if (coil.DropOutVoltage > coil.PullInVoltage)
            Fault(nameof(RelayCoil.DropOutVoltage), null, "is above the voltage from which the relay pulls in", null);
        if (!_bike.Switches.Any(c => c.IsRelay && Name.Equal(c.Switch, lamp.Lamp)))
            Fault(
                nameof(FittedLamp.Coil),
                lamp.Lamp,
                "is the coil of a relay without a contact",
                "Bike.WithRelay fits both"
            );
        if (!_bike.HasNetwork)
            Fault(nameof(FittedLamp.Coil), lamp.Lamp, "is a relay of a bike without runs", null);
    }

    private void CheckRuns()
    {
        var names = new Dictionary<string, int>(Name.Comparer);
        foreach ((int index, Run run) in _bike.Runs.Index())
        {
            At(nameof(Bike.Runs), index, run.Name);
            Unique(nameof(Run.Name), run.Name, names, index);
            Points(nameof(Run.From), run.From, nameof(Run.To), run.To, null);
            if (run.Wire is null)
                Fault(nameof(Run.Wire), null, "is null", null);
            Within(nameof(Run.Length), run.Length.Meters, BikeRanges.Metres);
            Within(nameof(Run.Joints), run.Joints, BikeRanges.Joints);
            Within(nameof(Run.JointResistance), run.JointResistance.Ohms, BikeRanges.Ohms);
            Within(nameof(Run.Bundle), run.Bundle, BikeRanges.Bundle);
            Within(nameof(Run.BundleLoading), run.BundleLoading?.Percent, BikeRanges.BundleLoading);
            if (run.Cable is { } cable)
                Known(nameof(Run.Cable), cable);
        }
    }

    private void CheckContacts()
    {
        var names = new Dictionary<string, int>(Name.Comparer);
        foreach ((int index, SwitchContact contact) in _bike.Switches.Index())
        {
            At(nameof(Bike.Switches), index, contact.Switch);
            if (Named(nameof(SwitchContact.Switch), contact.Switch) && contact.Switch.IndexOfAny(s_reserved) >= 0)
                Fault(
                    nameof(SwitchContact.Switch),
                    contact.Switch,
                    "holds one of '=', ';' and '|', which conditions use",
                    null
                );
            Points(nameof(SwitchContact.From), contact.From, nameof(SwitchContact.To), contact.To, null);
            if (contact.IsRelay && !_bike.Lamps.Any(l => l.Coil is not null && Name.Equal(l.Lamp, contact.Switch)))
                Fault(
                    nameof(SwitchContact.Switch),
                    contact.Switch,
                    "is a relay without a coil among the lamps",
                    "Bike.WithRelay fits both"
                );
            if (!names.TryAdd(contact.Name, index))
                Fault(
                    nameof(SwitchContact.Name),
                    contact.Name,
                    $"is the contact {names[contact.Name] + 1} already",
                    "join its positions in one contact"
                );
            Within(nameof(SwitchContact.Resistance), contact.Resistance.Ohms, BikeRanges.Ohms);
            if (contact.ClosedIn.IsDefaultOrEmpty)
                Fault(nameof(SwitchContact.ClosedIn), null, "holds no position", null);
            else if (
                contact.ClosedIn.FirstOrDefault(p => string.IsNullOrWhiteSpace(p) || p.IndexOfAny(s_reserved) >= 0, "x")
                is not "x"
                    and var wrong
            )
                Fault(
                    nameof(SwitchContact.ClosedIn),
                    wrong,
                    "is not a position",
                    "expected a word without '=', ';' and '|'"
                );
            else if (contact.ClosedIn.Distinct(Name.Comparer).Count() < contact.ClosedIn.Length)
                Fault(
                    nameof(SwitchContact.ClosedIn),
                    string.Join('|', contact.ClosedIn),
                    "names a position twice",
                    null
                );
            else if (!contact.HasOff && contact.ClosedIn.Contains(SwitchDefinition.Off, Name.Comparer))
                Fault(
                    nameof(SwitchContact.HasOff),
                    null,
                    $"contradicts {nameof(SwitchContact.ClosedIn)}, which names '{SwitchDefinition.Off}'",
                    null
                );
        }
    }

    private void CheckFuses()
    {
        var names = new Dictionary<string, int>(Name.Comparer);
        foreach ((int index, Fuse fuse) in _bike.Fuses.Index())
        {
            At(nameof(Bike.Fuses), index, fuse.Name);
            Unique(nameof(Fuse.Name), fuse.Name, names, index);
            if (_bike.HasNetwork)
                Points(
                    nameof(Fuse.From),
                    fuse.From,
                    nameof(Fuse.To),
                    fuse.To,
                    "a bike with runs needs the points of every fuse"
                );
            else if (index > 0)
                Fault(
                    nameof(Fuse.Name),
                    fuse.Name,
                    "is a second fuse",
                    "a bike with several fuses needs runs to show what each fuse feeds"
                );
            Within(nameof(Fuse.Rating), fuse.Rating.Amperes, BikeRanges.FuseAmps);
            Within(nameof(Fuse.Resistance), fuse.Resistance?.Ohms, BikeRanges.Ohms);
            Known(nameof(Fuse.Style), fuse.Style);
            if (fuse is { IsMarkedWithBlowingCurrent: true, Style: not FuseStyle.Glass })
                Fault(
                    nameof(Fuse.IsMarkedWithBlowingCurrent),
                    "true",
                    "is for a glass fuse alone",
                    "blade fuses are marked with their continuous rating"
                );
        }
    }

    private void CheckCharging()
    {
        var seen = new Dictionary<(double Rpm, Condition When), int>();
        foreach ((int index, ChargingPoint point) in _bike.Charging.Index())
        {
            At(nameof(Bike.Charging), index, null);
            Within(nameof(ChargingPoint.Speed), point.Speed.RevolutionsPerMinute, BikeRanges.Rpm);
            Within(nameof(ChargingPoint.Current), point.Current.Amperes, BikeRanges.OutputAmps);
            Within(nameof(ChargingPoint.Voltage), point.Voltage?.Volts, BikeRanges.SourceVolts);
            Within(nameof(ChargingPoint.OpenVoltage), point.OpenVoltage?.Volts, BikeRanges.OpenVolts);
            if (point.When is null)
                Fault(
                    nameof(ChargingPoint.When),
                    null,
                    "is null",
                    "Condition.Always is the condition that always holds"
                );
            else if (!seen.TryAdd((point.Speed.RevolutionsPerMinute, point.When), index))
                Fault(
                    nameof(ChargingPoint.Speed),
                    Text(point.Speed.RevolutionsPerMinute),
                    $"is given in row {seen[(point.Speed.RevolutionsPerMinute, point.When)] + 1} already",
                    "keep one of the two"
                );
        }
    }

    private void CheckRide()
    {
        foreach ((int index, RideStretch stretch) in _bike.Ride.Index())
        {
            At(nameof(Bike.Ride), index, stretch.Stretch);
            Named(nameof(RideStretch.Stretch), stretch.Stretch);
            Within(nameof(RideStretch.Speed), stretch.Speed.RevolutionsPerMinute, BikeRanges.Rpm);
            Within(nameof(RideStretch.Duration), stretch.Duration.Minutes, BikeRanges.Minutes);
            if (stretch.When is null)
                Fault(nameof(RideStretch.When), null, "is null", "Condition.Always is the condition that always holds");
            else if (stretch.When.Terms.Any(t => t.Positions.Length > 1) || stretch.When.Parts.Any(p => p.Length > 1))
                Fault(
                    nameof(RideStretch.When),
                    stretch.When.ToString(),
                    "does not hold each switch in one position",
                    "expected one position of each switch, without 'or'"
                );
        }
    }

    // Conditions name switches and positions that the contacts have; without contacts those of lamps and charging say
    // what there is.
    private void CheckConditions()
    {
        var contacts = new Dictionary<string, HashSet<string>>(Name.Comparer);
        foreach (SwitchContact contact in _bike.Switches.Where(c => !c.IsRelay))
            Add(contact.Switch, contact.ClosedIn);
        foreach (SwitchContact contact in _bike.Switches.Where(c => !c.HasOff && !c.IsRelay))
            contacts[contact.Switch].Remove(SwitchDefinition.Off);
        bool hasContacts = contacts.Count > 0;
        foreach ((int index, FittedLamp lamp) in _bike.Lamps.Index())
        {
            At(nameof(Bike.Lamps), index, lamp.Lamp);
            Defining(nameof(FittedLamp.LitWhen), lamp.LitWhen);
        }

        foreach ((int index, ChargingPoint point) in _bike.Charging.Index())
        {
            At(nameof(Bike.Charging), index, null);
            Defining(nameof(ChargingPoint.When), point.When);
        }

        foreach ((int index, RideStretch stretch) in _bike.Ride.Index())
        {
            At(nameof(Bike.Ride), index, stretch.Stretch);
            Holding(nameof(RideStretch.When), stretch.When);
        }

        void Add(string name, ImmutableArray<string> positions)
        {
            if (!contacts.TryGetValue(name, out HashSet<string>? known))
                contacts.Add(name, known = new HashSet<string>(Name.Comparer) { SwitchDefinition.Off });
            known.UnionWith(positions);
        }

        void Defining(string property, Condition condition)
        {
            if (hasContacts)
            {
                Holding(property, condition);
                return;
            }

            foreach (ConditionTerm term in condition.Terms)
                Add(term.Switch, term.Positions);
        }

        void Holding(string property, Condition condition)
        {
            foreach (ConditionTerm term in condition.Terms)
                if (!contacts.TryGetValue(term.Switch, out HashSet<string>? known))
                    Fault(
                        property,
                        term.Switch,
                        "is not a switch of the bike",
                        null,
                        SpellingSuggestions.Of(term.Switch, contacts.Keys)
                    );
                else
                    foreach (string position in term.Positions.Where(p => !known.Contains(p)))
                        Fault(
                            property,
                            position,
                            $"is not a position of the switch '{term.Switch}'",
                            $"its positions are {string.Join(", ", known)}",
                            SpellingSuggestions.Of(position, known)
                        );
        }
    }

    /// <summary>What the point at which a generator joins the harness must be.</summary>
    internal const string JointExpected = "expected a point that wires and fuses join to the battery's live terminal";

    /// <summary>Why a generator cannot join the harness at a point of it; null where it can.</summary>
    internal static string? JointProblem(Bike bike, string point)
    {
        var graph = new HarnessGraph(bike);
        return
            graph.NumberOf(point) is not (>= 0 and var joint) ? "is not a point of the bike"
            : new ConnectedNodes(graph).Are(joint, graph.Live) ? null
            : "is not joined to the battery by wires and fuses alone";
    }

    private void CheckGeneratorPoint()
    {
        (_list, _row, _part) = (nameof(Bike), 0, null);
        if (_bike.GeneratorPoint is not { } point || !Named(nameof(Bike.GeneratorPoint), point))
            return;
        if (_faults.Count == 0 && _bike.HasNetwork && JointProblem(_bike, point) is { } problem)
            Fault(nameof(Bike.GeneratorPoint), point, problem, JointExpected);
    }

    private void At(string list, int index, string? part) =>
        (_list, _row, _part) = ($"{nameof(Bike)}.{list}", index + 1, part);

    private void Points(string fromProperty, string? from, string toProperty, string? to, string? expected)
    {
        bool both = Point(fromProperty, from, expected) & Point(toProperty, to, expected);
        if (both && Name.Equal(from!, to!))
            Fault(toProperty, to, $"is {fromProperty} as well", "expected two different points");
    }

    private bool Point(string property, string? point, string? expected)
    {
        if (!Named(property, point, expected))
            return false;
        if (
            Name.Equal(point!, Bike.BatteryPlus)
            || Name.Equal(point!, Bike.BatteryMinus)
            || BatteryTerminal.Meant(point!) is not { } meant
        )
            return true;
        Fault(
            property,
            point,
            "is not how a battery terminal is written",
            $"expected '{Bike.BatteryPlus}' or '{Bike.BatteryMinus}'",
            [meant]
        );
        return false;
    }

    private void Unique(string property, string? name, Dictionary<string, int> names, int index)
    {
        if (Named(property, name) && !names.TryAdd(name!, index))
            Fault(property, name, $"is the name of row {names[name!] + 1} already", "give each its own name");
    }

    private bool Named(string property, string? name, string? expected = null)
    {
        if (string.IsNullOrWhiteSpace(name))
        {
            Fault(property, null, "is blank", expected);
            return false;
        }

        return Visible(property, name);
    }

    private bool Visible(string property, string? text)
    {
        if (text is not null && !VisibleText.HasHidden(text))
            return true;
        Fault(property, text, text is null ? "is null" : VisibleText.Problem, null);
        return false;
    }

    private void Within(string property, double? value, ValueRange range)
    {
        if (value is { } number && !range.Holds(number))
            Fault(property, $"{Text(number)} {range.Unit}".TrimEnd(), "is out of range", range.Expected);
    }

    private void Known<T>(string property, T value)
        where T : struct, Enum
    {
        if (!Enum.IsDefined(value))
            Fault(
                property,
                value.ToString(),
                $"is not a {typeof(T).Name}",
                $"expected {string.Join(", ", Enum.GetNames<T>())}"
            );
    }

    private static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private void Fault(
        string property,
        string? text,
        string problem,
        string? expected,
        ImmutableArray<string> nearest = default
    ) =>
        _faults.Add(
            new ListFault
            {
                File = _list,
                Row = _row,
                Part = string.IsNullOrWhiteSpace(_part) ? null : _part,
                ColumnName = property,
                Text = text,
                Problem = problem,
                Expected = expected,
                Nearest = nearest.IsDefault ? [] : nearest,
            }
        );
}
