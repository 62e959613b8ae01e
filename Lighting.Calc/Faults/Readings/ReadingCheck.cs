using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Finds the place of every reading on the bike and says what is wrong with readings, all at once.</summary>
internal sealed class ReadingCheck(FaultModel model)
{
    private readonly ImmutableArray<Finding>.Builder _findings = ImmutableArray.CreateBuilder<Finding>();
    private readonly ReadingScale _scale = new(model.Circuit);

    public ImmutableArray<Finding> Findings => _findings.ToImmutable();

    /// <summary>The readings that can be reckoned with, in an order of their own, so that the order they were taken in does not matter.</summary>
    public List<(Reading Reading, TestPlace Place, double Value)> Take(IEnumerable<Reading> readings)
    {
        var placed = new List<(Reading Reading, TestPlace Place, double Value)>();
        foreach (Reading reading in readings)
            if (IsTaken(reading) && Place(reading) is { } place && Value(reading, place) is { } value)
                placed.Add((reading, place, value));
        return [.. placed.GroupBy(r => r.Place).Select(AsOne).OfType<(Reading, TestPlace, double)>()
            .OrderBy(r => r.Item2.Setting.ToString(), StringComparer.Ordinal).ThenBy(r => r.Item2.Instrument).ThenBy(r => r.Item2.Index)];
    }

    private static bool IsTaken(Reading reading) =>
        reading.IsOpen || reading.Voltage is not null || reading.Current is not null || reading.Resistance is not null || reading.Seen is not null;

    private TestPlace? Place(Reading reading)
    {
        Bike bike = model.Circuit.Bike;
        foreach (ConditionTerm term in reading.When.Terms)
        {
            ImmutableArray<SwitchDefinition> switches = SettingEnumeration.SwitchesOf(bike);
            SwitchDefinition? definition = switches.FirstOrDefault(s => Name.Equal(s.Name, term.Switch));
            if (definition is null)
                return Unknown(reading, $"the bike has no switch '{term.Switch}'", term.Switch, switches.Select(s => s.Name));
            if (!definition.Positions.Contains(term.Positions[0], Name.Comparer))
                return Unknown(reading, $"the switch '{term.Switch}' has no position '{term.Positions[0]}'", term.Positions[0], definition.Positions);
            if (term.Positions.Length > 1)
                return Unknown(reading, $"'{term}' names several positions; a reading is taken in one", "", []);
        }

        Setting setting = SettingEnumeration.Held(bike, reading.When);
        switch (reading.Instrument)
        {
            case Instrument.Meter or Instrument.TestLamp:
                int node = model.Circuit.NodeOf(reading.Point);
                return node >= 0 ? new TestPlace(setting, reading.Instrument, node) : Unknown(reading, $"the bike has no point '{reading.Point}'", reading.Point, model.Circuit.Points);
            case Instrument.Ammeter:
                return Index(bike.Fuses.Select(f => f.Name)) is { } fuse ? new TestPlace(setting, Instrument.Ammeter, fuse) : Unknown(reading, $"the bike has no fuse '{reading.Point}', in whose place an ammeter goes", reading.Point, bike.Fuses.Select(f => f.Name));
            case Instrument.Visual:
                if (Index(bike.Lamps.Select(l => l.Lamp)) is not { } lamp)
                    return Unknown(reading, $"the bike has no lamp '{reading.Point}'", reading.Point, bike.Lamps.Select(l => l.Lamp));
                return model.GivesLight(lamp) ? new TestPlace(setting, Instrument.Visual, lamp) : Unknown(reading, $"'{reading.Point}' gives no light to look at", "", []);
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
        int[] named = [.. Enumerable.Range(0, model.Parts.Length).Where(i => Name.Equal(model.Parts[i].Name, reading.Point))];
        if (named.Length == 0)
            return Unknown(reading, $"the bike has no lamp, run, fuse or switch '{reading.Point}'", reading.Point, model.Parts.Select(p => p.Name));
        if (named.Length > 1 && named.All(i => model.Parts[i].Contact >= 0))
            named = [.. named.Where(i => model.Circuit.Bike.Switches[model.Parts[i].Contact].IsClosed(setting))];
        if (named.Length == 0 || model.Parts[named[0]].Contact >= 0 && named.Length > 1)
            return Unknown(reading, $"'{reading.Point}' has several contacts, of which the setting '{setting}' closes {(named.Length == 0 ? "none" : "more than one")}; hold it where one is closed", "", []);
        return model.IsKnownToOhmmeter(model.Parts[named[0]]) ? new TestPlace(setting, Instrument.Ohmmeter, named[0]) : Unknown(reading, $"what an ohmmeter shows on '{reading.Point}' is not known from the lists", "", []);
    }

    private double? Value(Reading reading, in TestPlace place)
    {
        TestSupply supply = model.Circuit.Supply;
        switch (reading.Instrument)
        {
            case Instrument.Meter when reading.Voltage is { } voltage:
                double highest = supply.OpenVolts * (1 + 3 * supply.Tolerance + (supply.Coil is null ? 0 : 3 * model.Circuit.Options.SpeedTolerance.DecimalFractions) + model.Circuit.Options.MeterAccuracy.DecimalFractions);
                if (voltage.Volts > highest)
                    return Refused(reading, supply.Coil is null && model.Circuit.Options.Supply is not null
                        ? $"is above the {FaultWords.Volts(supply.OpenVolts)} at which the battery is held: is the wrong range on the meter?"
                        : supply.Coil is null
                        ? $"is above the battery's {FaultWords.Volts(supply.OpenVolts)}: is the engine running, or the wrong range on the meter? Readings are taken with the engine off"
                        : $"is above the {FaultWords.Volts(supply.OpenVolts)} that the coil gives without load: does the engine turn faster than {FaultWords.Rpm(supply.Rpm)}, or is the wrong range on the meter?");
                if (voltage.Volts < -0.05 * supply.OpenVolts)
                    return Refused(reading, $"is below zero: the black lead goes on {Bike.BatteryMinus}{(model.Circuit.Bike.Earth == Earth.Positive ? ", not on the frame, which is the positive side here" : "; are the leads exchanged?")}");
                return voltage.Volts;
            case Instrument.Ammeter when reading.Current is { } current:
                return Math.Min(ReadingScale.MostAmperes, Math.Abs(current.Amperes));
            case Instrument.Ohmmeter when reading.IsOpen:
                return OhmScale.Logarithm(double.PositiveInfinity, model.Circuit.Options);
            case Instrument.Ohmmeter when reading.Resistance is { } resistance:
                return resistance.Ohms >= 0 ? OhmScale.Logarithm(resistance.Ohms, model.Circuit.Options) : Refused(reading, "is below zero ohms");
            case Instrument.TestLamp or Instrument.Visual when reading.Seen is { } seen:
                return (int)seen;
            default:
                return Refused(reading, $"is not what the {FaultWords.InstrumentWord(reading.Instrument)} shows");
        }
    }

    private (Reading, TestPlace, double)? AsOne(IGrouping<TestPlace, (Reading Reading, TestPlace Place, double Value)> same)
    {
        (Reading Reading, TestPlace Place, double Value)[] all = [.. same];
        if (all.Length == 1)
            return all[0];
        bool look = same.Key.Instrument.IsLook();
        double spread = all.Max(r => r.Value) - all.Min(r => r.Value), mean = all.Average(r => r.Value);
        double bearable = look ? 0 : 6 * _scale.Sigma(same.Key.Instrument, mean) + (same.Key.Instrument == Instrument.Ohmmeter ? 3 * OhmScale.Sigma(mean, isLamp: false) : 0);
        if (spread <= bearable)
            return (all[0].Reading with { Voltage = same.Key.Instrument == Instrument.Meter ? UnitsNet.ElectricPotential.FromVolts(mean) : all[0].Reading.Voltage }, same.Key, mean);
        _findings.Add(new Finding(Severity.Caution, all[0].Reading.Point, $"contradictory readings: {string.Join(" and ", all.Select(r => FaultWords.Of(r.Reading)).Distinct().Order(StringComparer.Ordinal))}, both with {same.Key.Setting}; they are left out until one is repeated alone."));
        return null;
    }

    private double? Refused(Reading reading, string why)
    {
        _findings.Add(new Finding(Severity.Fault, reading.Point, $"{FaultWords.Of(reading)} {why}; the reading is left out."));
        return null;
    }

    private TestPlace? Unknown(Reading reading, string why, string misspelt, IEnumerable<string> known)
    {
        ImmutableArray<string> near = misspelt.Length > 0 ? SpellingSuggestions.Of(misspelt, known) : [];
        string offer = near.IsEmpty ? "" : $"; {SpellingSuggestions.Question(near.Select(n => $"'{n}'"))}";
        _findings.Add(new Finding(Severity.Fault, reading.Point, $"{FaultWords.Of(reading)}: {why}{offer}{(offer.EndsWith('?') ? " The" : "; the")} reading is left out."));
        return null;
    }
}
