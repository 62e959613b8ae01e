using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Finds the place of every reading on the bike and collects all errors in readings.</summary>
internal sealed class ReadingCheck(FaultModel model)
{
    private readonly ImmutableArray<Finding>.Builder _findings = ImmutableArray.CreateBuilder<Finding>();
    private readonly ReadingScale _scale = new(model.Circuit);

    public ImmutableArray<Finding> Findings => _findings.ToImmutable();

    /// <summary>The usable readings in a fixed order, so that the order of input does not matter.</summary>
    public List<(Reading Reading, TestPlace Place, double Value)> Take(IEnumerable<Reading> readings)
    {
        var placed = new List<(Reading Reading, TestPlace Place, double Value)>();
        foreach (Reading reading in readings)
            if (IsTaken(reading) && Place(reading) is { } place && Value(reading, place) is { } value)
                placed.Add((reading, place, value));
        return
        [
            .. placed
                .GroupBy(r => r.Place)
                .Select(AsOne)
                .OfType<(Reading, TestPlace, double)>()
                .OrderBy(r => r.Item2.Setting.ToString(), StringComparer.Ordinal)
                .ThenBy(r => r.Item2.Instrument)
                .ThenBy(r => r.Item2.Index),
        ];
    }

    private static bool IsTaken(Reading reading) =>
        reading.IsOpen
        || reading.Voltage is not null
        || reading.Current is not null
        || reading.Resistance is not null
        || reading.Seen is not null;

    private TestPlace? Place(Reading reading)
    {
        Bike bike = model.Circuit.Bike;
        foreach (ConditionTerm term in reading.When.Terms)
        {
            ImmutableArray<SwitchDefinition> switches = SettingEnumeration.SwitchesOf(bike);
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
        switch (reading.Instrument)
        {
            case Instrument.Meter or Instrument.TestLamp:
                int node = model.Circuit.NodeOf(reading.Point);
                return node >= 0
                    ? new TestPlace(setting, reading.Instrument, node)
                    : Unknown(reading, $"the bike has no point '{reading.Point}'", reading.Point, model.Circuit.Points);
            case Instrument.Ammeter:
                return Index(bike.Fuses.Select(f => f.Name)) is { } fuse
                    ? new TestPlace(setting, Instrument.Ammeter, fuse)
                    : Unknown(
                        reading,
                        $"the bike has no fuse '{reading.Point}' for an ammeter to replace",
                        reading.Point,
                        bike.Fuses.Select(f => f.Name)
                    );
            case Instrument.Visual:
                if (Index(bike.Lamps.Select(l => l.Lamp)) is not { } lamp)
                    return Unknown(
                        reading,
                        $"the bike has no lamp '{reading.Point}'",
                        reading.Point,
                        bike.Lamps.Select(l => l.Lamp)
                    );
                return model.GivesLight(lamp)
                    ? new TestPlace(setting, Instrument.Visual, lamp)
                    : Unknown(reading, $"'{reading.Point}' gives no light to look at", "", []);
            default:
                return OhmPlace(reading, setting);
        }

        int? Index(IEnumerable<string> names)
        {
            int index = names.ToList().FindIndex(n => Name.Equal(n, reading.Point));
            return index >= 0 ? index : null;
        }
    }

    // The contacts of a switch share its name: meant is the one that is closed.
    private TestPlace? OhmPlace(Reading reading, Setting setting)
    {
        int[] named =
        [
            .. Enumerable.Range(0, model.Parts.Length).Where(i => Name.Equal(model.Parts[i].Name, reading.Point)),
        ];
        if (named.Length == 0)
            return Unknown(
                reading,
                $"the bike has no lamp, run, fuse or switch '{reading.Point}'",
                reading.Point,
                model.Parts.Select(p => p.Name)
            );
        if (named.Length > 1 && named.All(i => model.Parts[i].Contact >= 0))
            named = [.. named.Where(i => model.Circuit.Bike.Switches[model.Parts[i].Contact].IsClosed(setting))];
        if (named.Length == 0 || model.Parts[named[0]].Contact >= 0 && named.Length > 1)
            return Unknown(
                reading,
                $"'{reading.Point}' has several contacts, of which the setting '{setting}' closes "
                    + $"{(named.Length == 0 ? "none" : "more than one")}; set it to a position that closes one",
                "",
                []
            );
        return model.IsKnownToOhmmeter(model.Parts[named[0]])
            ? new TestPlace(setting, Instrument.Ohmmeter, named[0])
            : Unknown(reading, $"the resistance of '{reading.Point}' is unknown from the lists", "", []);
    }

    private double? Value(Reading reading, in TestPlace place)
    {
        TestSupply supply = model.Circuit.Supply;
        switch (reading.Instrument)
        {
            case Instrument.Meter when reading.Voltage is { } voltage:
                double highest =
                    supply.OpenVolts
                    * (
                        1
                        + 3 * supply.Tolerance
                        + (supply.Coil is null ? 0 : 3 * model.Circuit.Options.SpeedTolerance.DecimalFractions)
                        + model.Circuit.Options.MeterAccuracy.DecimalFractions
                    );
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
            case Instrument.TestLamp or Instrument.Visual when reading.Seen is { } seen:
                return (int)seen;
            default:
                return Refused(reading, FindingKind.ReadingOfOtherInstrument);
        }
    }

    private (Reading, TestPlace, double)? AsOne(
        IGrouping<TestPlace, (Reading Reading, TestPlace Place, double Value)> same
    )
    {
        (Reading Reading, TestPlace Place, double Value)[] all = [.. same];
        if (all.Length == 1)
            return all[0];
        bool look = same.Key.Instrument.IsLook();
        double spread = all.Max(r => r.Value) - all.Min(r => r.Value),
            mean = all.Average(r => r.Value);
        double bearable = look
            ? 0
            : 6 * _scale.Sigma(same.Key.Instrument, mean)
                + (same.Key.Instrument == Instrument.Ohmmeter ? 3 * OhmScale.Sigma(mean, isLamp: false) : 0);
        if (spread <= bearable)
            return (
                all[0].Reading with
                {
                    Voltage =
                        same.Key.Instrument == Instrument.Meter
                            ? ElectricPotential.FromVolts(mean)
                            : all[0].Reading.Voltage,
                },
                same.Key,
                mean
            );
        _findings.Add(
            new Finding(FindingKind.ContradictoryReadings, Severity.Caution, all[0].Reading.Point)
            {
                Setting = same.Key.Setting,
                Parts = [.. all.Select(r => FaultWords.Of(r.Reading)).Distinct().Order(StringComparer.Ordinal)],
            }
        );
        return null;
    }

    private double? AboveSupply(Reading reading, ElectricPotential voltage, TestSupply supply)
    {
        FindingKind kind =
            supply.Coil is not null ? FindingKind.ReadingAboveCoil
            : model.Circuit.Options.Supply is not null ? FindingKind.ReadingAboveSupply
            : FindingKind.ReadingAboveBattery;
        _findings.Add(
            new Finding(kind, Severity.Fault, reading.Point)
            {
                Value = voltage,
                Limit = ElectricPotential.FromVolts(supply.OpenVolts),
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
