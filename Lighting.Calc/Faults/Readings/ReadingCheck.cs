using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Finds the place of every reading on the bike and collects all errors in readings.</summary>
internal sealed class ReadingCheck(FaultModel model)
{
    private readonly ImmutableArray<Finding>.Builder _findings = ImmutableArray.CreateBuilder<Finding>();
    private readonly HashSet<TestPlace> _skipped = [];
    private readonly ReadingScale _scale = new(model.Circuit);

    public ImmutableArray<Finding> Findings => _findings.ToImmutable();

    /// <summary>The usable readings in a fixed order, so that the order of input does not matter.</summary>
    public List<(Reading Reading, TestPlace Place, double Value, int Times)> Take(IEnumerable<Reading> readings)
    {
        var placed = new List<(Reading Reading, TestPlace Place, double Value)>();
        foreach (Reading reading in readings.SelectMany(EachLamp))
            if (reading.IsSkipped && Place(reading) is { } skipped)
                _skipped.Add(skipped);
            else if (
                !reading.IsSkipped
                && IsTaken(reading)
                && Place(reading) is { } place
                && Value(reading, place) is { } value
            )
                placed.Add((reading, place, value));
        return
        [
            .. placed
                .GroupBy(r => r.Place)
                .Select(AsOne)
                .OfType<(Reading, TestPlace, double, int)>()
                .OrderBy(r => r.Item2.Setting.ToString(), StringComparer.Ordinal)
                .ThenBy(r => r.Item2.EngineRpm ?? -1)
                .ThenBy(r => r.Item2.Instrument)
                .ThenBy(r => r.Item2.Index)
                .ThenBy(r => (r.Item2.To, r.Item2.JumperFrom, r.Item2.JumperTo, r.Item2.Unplugged)),
        ];
    }

    // A round in which every lamp looks as it should is a look at each.
    private IEnumerable<Reading> EachLamp(Reading reading) =>
        reading is { Instrument: Instrument.Visual, Seen: Brightness.Normal, IsSkipped: false, Unplugged: null }
        && Name.Equal(reading.Point, Reading.EveryLamp)
            ? RoundOfLamps.AsItShould(model, reading)
            : [reading];

    /// <summary>The tests that were passed over, or whose readings contradict each other.</summary>
    public IReadOnlyCollection<TestPlace> Skipped => _skipped;

    private static bool IsTaken(Reading reading) =>
        reading.IsOpen
        || reading.Voltage is not null
        || reading.Current is not null
        || reading.Resistance is not null
        || reading.Seen is not null;

    private TestPlace? Place(Reading reading)
    {
        Bike bike = model.Circuit.Bike;
        ImmutableArray<SwitchDefinition> switches = SettingEnumeration.SwitchesOf(bike);
        ConditionTerm? engine = EngineTerm.Find(reading.When, switches.Select(s => s.Name));
        if (!Engine(reading, engine, out double? rpm))
            return null;
        foreach (ConditionTerm term in reading.When.Terms.Where(t => !ReferenceEquals(t, engine)))
        {
            SwitchDefinition? definition = switches.FirstOrDefault(s => Name.Equal(s.Name, term.Switch));
            if (definition is null)
                return Unknown(
                    reading,
                    $"the bike has no switch '{term.Switch}'",
                    term.Switch,
                    switches.Select(s => s.Name)
                );
            if (!definition.Positions.Contains(term.Positions[0], Name.Comparer))
                return Unknown(
                    reading,
                    $"the switch '{term.Switch}' has no position '{term.Positions[0]}'",
                    term.Positions[0],
                    definition.Positions
                );
            if (term.Positions.Length > 1)
                return Unknown(
                    reading,
                    $"'{term}' names several positions; a reading is taken in one position",
                    "",
                    []
                );
        }

        Setting setting = SettingEnumeration.Held(bike, reading.When);
        if (
            reading.Instrument is Instrument.Meter or Instrument.Ohmmeter
            && BenchPoints.LeadOf(reading.Point) is > 0 and var lead
            && model.Circuit.NodeOf(reading.Point) < 0
        )
            return OnGenerator(reading, lead, rpm);
        int second = -1;
        if (reading.To is { } to)
        {
            if (reading.Instrument is not (Instrument.Meter or Instrument.Ohmmeter))
                return Unknown(reading, "only a meter or an ohmmeter has a second point", "", []);
            if ((second = model.Circuit.NodeOf(to)) < 0)
                return NoPoint(reading, to);
        }

        TestPlace? placed = Instrumented(reading, setting, second);
        if (placed is { IsLive: true } live)
            placed = live with { EngineRpm = rpm };
        if (
            placed is { } drain
            && model.Circuit.IsInBatteryLead(drain)
            && model.Circuit.SupplyAt(rpm).Speed is not null
        )
            return Unknown(reading, "a drain is read in the lead of the battery with the engine off", "", []);
        if (placed is not { } whole || Apart(reading, whole) is not { } place)
            return null;
        if (reading.Jumper is not { } jumper)
            return place;
        if (model.Circuit.NodeOf(jumper.From) is var from && from < 0)
            return NoPoint(reading, jumper.From);
        if (model.Circuit.NodeOf(jumper.To) is var end && end < 0)
            return NoPoint(reading, jumper.To);
        if (place.Instrument is Instrument.Ohmmeter or Instrument.Wiggle || place.IsOnBench)
            return Unknown(reading, "a jumper is on a live bike, with a meter, a test lamp or to look at", "", []);
        return place with { JumperFrom = from, JumperTo = end };
    }

    // The same place with what is unplugged.
    private TestPlace? Apart(Reading reading, in TestPlace place)
    {
        // A holder is measured with its lamp out.
        if (
            place is { Instrument: Instrument.Ohmmeter, To: < 0, IsOnGenerator: false }
            && model.Parts[place.Index].Holder is >= 0 and var holder
        )
            return place with { Unplugged = model.Circuit.Holders[holder].Lamps[0] };
        if (reading.Unplugged is not { } name)
            return place;
        if (place.IsOnBench || place.IsEveryLamp || place.Instrument == Instrument.Wiggle)
            return Unknown(reading, "what is unplugged goes with one reading on the harness", "", []);
        if (Name.Equal(name, Reading.EveryLamp))
            return place with { Unplugged = TestPlace.EveryLampOut };
        // Contacts and holders are the last of the parts.
        string[] names = [.. model.Parts.TakeWhile(p => p.Contact < 0 && p.Holder < 0).Select(p => p.Name)];
        int unplugged = Array.FindIndex(names, n => Name.Equal(n, name));
        if (unplugged < 0)
            return Unknown(reading, $"the bike has no run, lamp or fuse '{name}'", name, names);
        bool isItself =
            place.Index == unplugged
            && (
                place.Instrument is Instrument.Visual or Instrument.GoodLamp
                || place.Instrument == Instrument.Ohmmeter && place.To < 0 && IsRun(unplugged)
            );
        return isItself
            ? Unknown(reading, $"'{name}' is itself unplugged", "", [])
            : place with
            {
                Unplugged = unplugged,
            };
    }

    private bool IsRun(int part) => model.Circuit.Runs.Contains(model.Parts[part].Conductor);

    // A reading of the unplugged generator: the switches do not matter.
    private TestPlace? OnGenerator(Reading reading, int lead, double? rpm)
    {
        FaultCircuit circuit = model.Circuit;
        bool isMeter = reading.Instrument == Instrument.Meter;
        int other = reading.To is { } to && BenchPoints.IsGenerator(to) ? BenchPoints.LeadOf(to) : -1;
        string expected = isMeter
            ? $"the voltage of a generator is read from one of its leads to another, '{BenchPoints.NameOf(1)}' to "
                + $"'{BenchPoints.NameOf(2)}'"
            : "the resistance of a generator is read from one of its leads to another, or to the frame";
        double? at = rpm ?? circuit.Supply.Running?.Rpm;
        string? wrong =
            !circuit.HasCharging
                ? "the faults of the charging system are not looked for: the bike has no charging list, or the "
                    + "readings are taken with the engine off"
            : other < 0 || other == lead || isMeter && other == 0 ? expected
            : isMeter && !circuit.Generator.HasVolts ? "the charging list states no 'open voltage'"
            : reading.Unplugged is not null ? "what is unplugged goes with a reading on the harness"
            : !isMeter && other > 0 && !circuit.Generator.HasOhms ? "bike.csv states no 'generator resistance'"
            : isMeter && at is not > 0 ? "state the speed of the engine, such as 'engine=3000'"
            : null;
        return wrong is not null
            ? Unknown(reading, wrong, "", [])
            : new TestPlace(
                model.AllOff,
                reading.Instrument,
                lead,
                other,
                EngineRpm: isMeter ? at : null,
                IsOnGenerator: true
            );
    }

    // The engine speed a reading states; null for that of the circuit's supply.
    private bool Engine(Reading reading, ConditionTerm? term, out double? rpm)
    {
        rpm = null;
        if (term is null)
            return true;
        FaultCircuit circuit = model.Circuit;
        string? wrong = null;
        if (EngineTerm.Of(term) is not { } stated)
            wrong = $"'{term}' is not a state of the engine: expected {EngineTerm.Expected}";
        else if (circuit.Supply.Coil is not null)
            wrong = "a lighting coil is tested at one engine speed for all readings";
        else if (stated.Rpm == 0)
            rpm = circuit.Supply.Running is null && circuit.Options.Supply is null ? null : 0;
        else if (!circuit.HasCharging)
            wrong =
                circuit.Bike.Charging.IsEmpty
                    ? "the bike has no charging list, so that its supply with the engine running is unknown"
                    : "the readings are taken with the engine off";
        else
            wrong = AtSpeed(stated.Rpm, out rpm);
        return wrong is null || Unknown(reading, wrong, "", []) is not null;

        string? AtSpeed(double? speed, out double? at)
        {
            at = null;
            try
            {
                double known = circuit.SupplyAt(speed ?? circuit.ChargingTestRpm).Rpm;
                at = known == circuit.Supply.Rpm ? null : known;
                return null;
            }
            catch (ArgumentException outside)
            {
                return outside.Message;
            }
        }
    }

    private TestPlace? Instrumented(Reading reading, Setting setting, int second)
    {
        Bike bike = model.Circuit.Bike;
        switch (reading.Instrument)
        {
            case Instrument.TestLamp
                when model.Circuit.NodeOf(reading.Point) < 0 && Index(bike.Fuses.Select(f => f.Name)) is { } replaced:
                return new TestPlace(setting, Instrument.TestLamp, model.Circuit.Points.Length + replaced);
            case Instrument.Meter or Instrument.TestLamp:
                int node = model.Circuit.NodeOf(reading.Point);
                return node < 0
                    ? NoPoint(reading, reading.Point)
                    // Battery minus is where the black lead is without a second point.
                    : new TestPlace(
                        setting,
                        reading.Instrument,
                        node,
                        second == model.Circuit.NodeOf(Bike.BatteryMinus) ? -1 : second
                    );
            case Instrument.Ammeter when Name.Equal(reading.Point, BenchPoints.BatteryLead):
                return new TestPlace(setting, Instrument.Ammeter, model.Circuit.Fuses.Length);
            case Instrument.Ammeter:
                return Index(bike.Fuses.Select(f => f.Name)) is { } fuse
                    ? new TestPlace(setting, Instrument.Ammeter, fuse)
                    : Unknown(
                        reading,
                        $"the bike has no fuse '{reading.Point}' for an ammeter to replace",
                        reading.Point,
                        bike.Fuses.Select(f => f.Name)
                    );
            case Instrument.Ohmmeter when second >= 0:
                int first = model.Circuit.NodeOf(reading.Point);
                return first < 0
                    ? NoPoint(reading, reading.Point)
                    : new TestPlace(setting, Instrument.Ohmmeter, first, second);
            case Instrument.Ohmmeter or Instrument.Wiggle:
                return OfPart(reading, setting);
            case Instrument.Visual when Name.Equal(reading.Point, Reading.EveryLamp) && reading.IsSkipped:
                return new TestPlace(setting, Instrument.Visual, TestCatalog.EveryLamp);
            default:
                if (Index(bike.Lamps.Select(l => l.Lamp)) is not { } lamp)
                    return Unknown(
                        reading,
                        $"the bike has no lamp '{reading.Point}'",
                        reading.Point,
                        bike.Lamps.Select(l => l.Lamp)
                    );
                if (!model.GivesLight(lamp))
                    return Unknown(reading, $"'{reading.Point}' gives no light to look at", "", []);
                var place = new TestPlace(setting, reading.Instrument, lamp);
                return place.IsOnBench ? place with { Setting = model.AllOff } : place;
        }

        int? Index(IEnumerable<string> names)
        {
            int index = names.ToList().FindIndex(n => Name.Equal(n, reading.Point));
            return index >= 0 ? index : null;
        }
    }

    // A holder is named by one of its lamps or more, in any order.
    private bool IsHolder(MeasuredPart part, string point) =>
        part.Holder >= 0
        && LampHolder.LampsOf(point) is { } lamps
        && lamps.All(l =>
            model.Circuit.Holders[part.Holder].Lamps.Any(h => Name.Equal(model.Circuit.Bike.Lamps[h].Lamp, l))
        );

    private TestPlace? NoPoint(Reading reading, string point) =>
        Unknown(reading, $"the bike has no point '{point}'", point, model.Circuit.Points);

    // The contacts of a switch share its name: meant is the one that is closed.
    private TestPlace? OfPart(Reading reading, Setting setting)
    {
        int[] named =
        [
            .. Enumerable
                .Range(0, model.Parts.Length)
                .Where(i => Name.Equal(model.Parts[i].Name, reading.Point) || IsHolder(model.Parts[i], reading.Point)),
        ];
        if (named.Length == 0)
            return Unknown(
                reading,
                $"the bike has no lamp, run, fuse, switch or holder '{reading.Point}'",
                reading.Point,
                model.Parts.Select(p => p.Name)
            );
        if (named.Length > 1 && named.All(i => model.Parts[i].Contact >= 0))
            named = [.. named.Where(i => model.Circuit.Graph.Switches.ClosedIn(setting).Has(model.Parts[i].Contact))];
        if (named.Length == 0 || model.Parts[named[0]].Contact >= 0 && named.Length > 1)
            return Unknown(
                reading,
                $"'{reading.Point}' has several contacts, of which the setting '{setting}' closes "
                    + $"{(named.Length == 0 ? "none" : "more than one")}; set it to a position that closes one",
                "",
                []
            );
        if (reading.Instrument == Instrument.Wiggle)
            return model.Parts[named[0]].Lamp < 0
                ? new TestPlace(setting, Instrument.Wiggle, named[0])
                : Unknown(reading, $"'{reading.Point}' is a lamp: move its holder, its wires or its switch", "", []);
        return model.IsKnownToOhmmeter(model.Parts[named[0]])
            ? new TestPlace(setting, Instrument.Ohmmeter, named[0])
            : Unknown(reading, $"the resistance of '{reading.Point}' is unknown from the lists", "", []);
    }

    private double? Value(Reading reading, in TestPlace place)
    {
        TestSupply supply = model.Circuit.SupplyAt(place.IsOnGenerator ? null : place.EngineRpm);
        switch (reading.Instrument)
        {
            case Instrument.Meter when place.IsOnGenerator && reading.Voltage is { } alternating:
                return Math.Abs(alternating.Volts);
            case Instrument.Meter when reading.Voltage is { } voltage:
                double highest =
                    supply.MostVolts
                    * (
                        1
                        + 3 * supply.Tolerance
                        + (supply.Coil is null ? 0 : 3 * model.Circuit.Options.SpeedTolerance.DecimalFractions)
                        + model.Circuit.Options.MeterAccuracy.DecimalFractions
                    );
                if (place.To >= 0)
                    return Math.Abs(voltage.Volts) > highest ? AboveSupply(reading, voltage, supply)
                        : supply.Coil is null ? voltage.Volts
                        : Math.Abs(voltage.Volts);
                if (voltage.Volts > highest)
                    return AboveSupply(reading, voltage, supply);
                if (voltage.Volts < -0.05 * supply.OpenVolts)
                    return Refused(
                        reading,
                        model.Circuit.Bike.Earth == Earth.Positive
                            ? FindingKind.ReadingFromPositiveFrame
                            : FindingKind.ReadingBelowZero
                    );
                return voltage.Volts;
            case Instrument.Ammeter when reading.Current is { } current:
                return Math.Min(ReadingScale.MostAmperes, Math.Abs(current.Amperes));
            case Instrument.Ohmmeter when reading.IsOpen:
                return OhmScale.Logarithm(double.PositiveInfinity, model.Circuit.Options);
            case Instrument.Ohmmeter when reading.Resistance is { } resistance:
                return resistance.Ohms >= 0
                    ? OhmScale.Logarithm(resistance.Ohms, model.Circuit.Options)
                    : Refused(reading, FindingKind.ResistanceBelowZero);
            case var look when look.IsLook() && reading.Seen is { } seen:
                return (int)seen;
            default:
                return Refused(reading, FindingKind.ReadingOfOtherInstrument);
        }
    }

    // Readings of one place that agree are one, the surer for it; one that differs from two others or more is left out.
    private (Reading, TestPlace, double, int)? AsOne(
        IGrouping<TestPlace, (Reading Reading, TestPlace Place, double Value)> same
    )
    {
        (Reading Reading, TestPlace Place, double Value)[] all = [.. same.OrderBy(r => r.Value)];
        (Reading Reading, TestPlace Place, double Value)[][] alike =
        [
            .. Alike(all, same.Key).OrderByDescending(g => g.Length),
        ];
        (Reading Reading, TestPlace Place, double Value)[] most = alike[0];
        if (alike.Length > 1)
        {
            bool isOutvoted = most.Length > alike[1].Length;
            _findings.Add(
                new Finding(
                    isOutvoted ? FindingKind.ReadingOutvoted : FindingKind.ContradictoryReadings,
                    Severity.Caution,
                    all[0].Reading.Point
                )
                {
                    Setting = same.Key.Setting,
                    Parts =
                    [
                        .. (isOutvoted ? alike.Skip(1).SelectMany(g => g) : all)
                            .Select(r => FaultWords.Of(r.Reading))
                            .Distinct()
                            .Order(StringComparer.Ordinal),
                    ],
                }
            );
            if (!isOutvoted)
                return null;
        }

        double mean = most.Average(r => r.Value);
        return (
            most[0].Reading with
            {
                Voltage =
                    same.Key.Instrument == Instrument.Meter
                        ? ElectricPotential.FromVolts(mean)
                        : most[0].Reading.Voltage,
            },
            same.Key,
            mean,
            most.Length
        );
    }

    private IEnumerable<(Reading, TestPlace, double)[]> Alike(
        (Reading Reading, TestPlace Place, double Value)[] ascending,
        TestPlace place
    )
    {
        for (int first = 0, i = 1; i <= ascending.Length; i++)
        {
            double bearable = place.Instrument.IsLook()
                ? 0
                : 6 * _scale.Sigma(place, ascending[first].Value)
                    + (
                        place.Instrument == Instrument.Ohmmeter
                            ? 3 * OhmScale.Sigma(ascending[first].Value, isLamp: false)
                            : 0
                    );
            if (i < ascending.Length && ascending[i].Value - ascending[first].Value <= bearable)
                continue;
            yield return ascending[first..i];
            first = i;
        }
    }

    private double? AboveSupply(Reading reading, ElectricPotential voltage, TestSupply supply)
    {
        FindingKind kind =
            supply.Coil is not null ? FindingKind.ReadingAboveCoil
            : supply.Running is not null || model.Circuit.Options.Supply is not null ? FindingKind.ReadingAboveSupply
            : FindingKind.ReadingAboveBattery;
        _findings.Add(
            new Finding(kind, Severity.Fault, reading.Point)
            {
                Value = voltage,
                Limit = ElectricPotential.FromVolts(supply.MostVolts),
                Figures = supply.Coil is null ? [] : [RotationalSpeed.FromRevolutionsPerMinute(supply.Rpm)],
                Detail = FaultWords.Of(reading),
            }
        );
        return null;
    }

    private double? Refused(Reading reading, FindingKind kind)
    {
        _findings.Add(
            new Finding(kind, Severity.Fault, reading.Point)
            {
                Detail = FaultWords.Of(reading),
                Parts = [FaultWords.InstrumentWord(reading.Instrument)],
            }
        );
        return null;
    }

    private TestPlace? Unknown(Reading reading, string why, string misspelt, IEnumerable<string> known)
    {
        ImmutableArray<string> near = misspelt.Length > 0 ? SpellingSuggestions.Of(misspelt, known) : [];
        _findings.Add(
            new Finding(FindingKind.ReadingPlaceUnknown, Severity.Fault, reading.Point)
            {
                Detail = $"{FaultWords.Of(reading)}: {why}",
                Parts = near,
            }
        );
        return null;
    }
}
