using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Every test that a person may be asked for, on one bike.</summary>
internal static class TestCatalog
{
    /// <summary>Index of a look at every lamp.</summary>
    public const int EveryLamp = -1;

    /// <summary>The tests: all instruments in the settings that cover everything, those behind a fuse switch by switch,
    /// and the lamps by themselves.</summary>
    public static ImmutableArray<TestPlace> Of(FaultModel model)
    {
        FaultCircuit circuit = model.Circuit;
        var tests = ImmutableArray.CreateBuilder<TestPlace>();
        foreach (Setting setting in model.Cover)
        {
            for (int p = 0; p < circuit.Points.Length; p++)
            {
                if (Name.Equal(circuit.Points[p], Bike.BatteryMinus))
                    continue;
                tests.Add(new TestPlace(setting, Instrument.Meter, p));
                tests.Add(new TestPlace(setting, Instrument.TestLamp, p));
            }

            for (int f = 0; f < circuit.Fuses.Length; f++)
                tests.Add(new TestPlace(setting, Instrument.Ammeter, f));
            for (int l = 0; l < circuit.Lamps.Length; l++)
                if (model.GivesLight(l))
                    tests.Add(new TestPlace(setting, Instrument.Visual, l));
            tests.Add(new TestPlace(setting, Instrument.Visual, EveryLamp));
        }

        // The current that drains the battery, in its lead and in each fuse's place.
        if (circuit.Supply.Coil is null)
            for (int f = circuit.Fuses.Length; f >= 0; f--)
                tests.Add(new TestPlace(model.AllOff, Instrument.Ammeter, f));
        AddDrops(model, tests);
        for (int f = 0; f < circuit.Fuses.Length; f++)
            foreach (Setting setting in BehindFuse(model, f))
            {
                tests.Add(new TestPlace(setting, Instrument.TestLamp, circuit.Points.Length + f));
                tests.Add(new TestPlace(setting, Instrument.Ohmmeter, FarEnd(circuit, f), circuit.FrameNode));
            }

        for (int i = 0; i < model.Parts.Length; i++)
        {
            MeasuredPart part = model.Parts[i];
            if (Moved(model, part) is { } watched)
                tests.Add(new TestPlace(watched, Instrument.Wiggle, i));
            if (part.Holder >= 0)
                continue;
            if (circuit.Fuses.Contains(part.Conductor))
                tests.Add(new TestPlace(model.AllOff, Instrument.Ohmmeter, i, Unplugged: i));
            if (part.Contact < 0 && model.IsKnownToOhmmeter(part))
                foreach (Setting setting in part.Lamp >= 0 ? TowardsBattery(model, part.Lamp) : [model.AllOff])
                    tests.Add(new TestPlace(setting, Instrument.Ohmmeter, i));
            if (part.From != part.To && Carrying(model, part) is { } carrying)
                tests.Add(new TestPlace(carrying, Instrument.Meter, part.From, part.To));
        }

        AddUnplugged(model, tests);
        AddLamps(model, tests);
        if (circuit.HasCharging)
            AddCharging(model, tests);
        Condition within = circuit.Options.Within;
        return [.. tests.Where(t => t.IsOnBench || within.Holds(t.Setting)).Select(t => Possible(t, model)).Distinct()];
    }

    // The voltage dropped from the battery's other terminal to each point: on the live side, or on the earth side of a
    // positive earth. It does not depend on the battery's own voltage.
    private static void AddDrops(FaultModel model, ImmutableArray<TestPlace>.Builder tests)
    {
        FaultCircuit circuit = model.Circuit;
        bool isLive = circuit.Bike.Earth == Earth.Negative;
        foreach (Setting setting in model.Cover)
        {
            Reached fed = circuit.Graph.From(HarnessGraph.Plus, circuit.Graph.Switches.ClosedIn(setting));
            for (int p = 0; p < circuit.Points.Length; p++)
                if (p != HarnessGraph.Plus && fed.Reaches(p) && circuit.Sides.IsLive(circuit.Points[p]) == isLive)
                    tests.Add(new TestPlace(setting, Instrument.Meter, HarnessGraph.Plus, p));
        }
    }

    // Where the engine cannot run, a live test has it off.
    private static TestPlace Possible(in TestPlace test, FaultModel model) =>
        test.IsLive && model.Circuit.Supply.Running is not null && test.EngineRpm is null && !model.MayRun(test.Setting)
            ? test with
            {
                EngineRpm = 0,
            }
            : test;

    // Voltage across the battery with least and most load, engine off and at the speed of the charging test.
    private static void AddCharging(FaultModel model, ImmutableArray<TestPlace>.Builder tests)
    {
        FaultCircuit circuit = model.Circuit;
        Func<Setting, bool> mayRun = EngineRunning.Of(circuit.Bike);
        Setting[] settings =
        [
            .. model
                .Cover.Where(mayRun)
                .OrderBy(s => s.Positions.Count(p => !Name.Equal(p.Position, SwitchDefinition.Off))),
        ];
        double? off = circuit.Supply.Running is null ? null : 0,
            running = circuit.Supply.Running is null ? circuit.ChargingTestRpm : null;
        for (int lead = 1; lead <= BenchPoints.MostLeads; lead++)
        {
            int next = lead % BenchPoints.MostLeads + 1;
            if (circuit.Generator.HasVolts)
                tests.Add(
                    new TestPlace(
                        model.AllOff,
                        Instrument.Meter,
                        lead,
                        next,
                        EngineRpm: circuit.ChargingTestRpm,
                        IsOnGenerator: true
                    )
                );
            if (circuit.Generator.HasOhms)
                tests.Add(new TestPlace(model.AllOff, Instrument.Ohmmeter, lead, next, IsOnGenerator: true));
        }

        if (circuit.Generator.HasOhms)
            tests.Add(new TestPlace(model.AllOff, Instrument.Ohmmeter, 1, 0, IsOnGenerator: true));
        foreach (Setting setting in new[] { settings.FirstOrDefault(), settings.LastOrDefault() }.OfType<Setting>())
            foreach (double? engine in new[] { off, running })
                tests.Add(new TestPlace(setting, Instrument.Meter, HarnessGraph.Plus, EngineRpm: engine));
    }

    // Resistance to the frame behind each fuse, switch by switch, and of each section by itself, with the lamp out that
    // is most like a short while it is cold; and where wires meet, with one connector apart after the other.
    private static void AddUnplugged(FaultModel model, ImmutableArray<TestPlace>.Builder tests)
    {
        FaultCircuit circuit = model.Circuit;
        var places = new List<(Setting Setting, int Point)>();
        for (int f = 0; f < circuit.Fuses.Length; f++)
            places.AddRange(BehindFuse(model, f).Select(s => (s, FarEnd(circuit, f))));
        places.AddRange(circuit.Sides.Sections.Select(p => (model.AllOff, p)));
        foreach ((Setting setting, int point) in places.Distinct())
            if (BrightestJoined(circuit, setting, point) is { } lamp)
                Add(setting, point, lamp);
        // The whole live side at once, setting by setting.
        foreach (Setting setting in model.Cover.Prepend(model.AllOff).Distinct())
            Add(setting, circuit.Graph.Live, TestPlace.EveryLampOut);
        HarnessGraph graph = circuit.Graph;
        for (int p = 0; p < circuit.Points.Length; p++)
        {
            int[] runs =
            [
                .. Enumerable.Range(0, graph.Runs.Length).Where(r => graph.Runs[r].A == p || graph.Runs[r].B == p),
            ];
            if (runs.Length > 1 && circuit.Sides.IsLive(circuit.Points[p]))
                foreach (int run in runs)
                    Add(model.AllOff, p, graph.Lamps.Length + run);
        }

        void Add(Setting setting, int point, int part) =>
            tests.Add(new TestPlace(setting, Instrument.Ohmmeter, point, circuit.FrameNode, Unplugged: part));
    }

    private static int? BrightestJoined(FaultCircuit circuit, Setting setting, int point)
    {
        HarnessGraph graph = circuit.Graph;
        Reached joined = graph.From(point, graph.Switches.ClosedIn(setting));
        (int Lamp, double? Ohms)[] lamps =
        [
            .. circuit
                .Bike.Lamps.Select((l, i) => (i, ColdNetwork.ColdOhms(l.Specification, l.Quantity)))
                .Where(l => l.Item2 is not null && joined.Reaches(graph.Lamps[l.i].A)),
        ];
        return lamps.Length > 0 ? lamps.MinBy(l => l.Ohms).Lamp : null;
    }

    // The lamp on the bench or measured by itself, its holder, a good one in its socket, and jumpers past its feed,
    // past its return and across each contact before it.
    private static void AddLamps(FaultModel model, ImmutableArray<TestPlace>.Builder tests)
    {
        FaultCircuit circuit = model.Circuit;
        HarnessGraph graph = circuit.Graph;
        bool isBattery = circuit.Supply.Coil is null;
        var jumped = new HashSet<(int, int)>();
        for (int i = 0; i < model.Parts.Length; i++)
            if (model.Parts[i].Holder is >= 0 and var holder)
                tests.Add(
                    new TestPlace(model.AllOff, Instrument.Ohmmeter, i, Unplugged: circuit.Holders[holder].Lamps[0])
                );
        for (int l = 0; l < circuit.Lamps.Length; l++)
        {
            if (!model.GivesLight(l))
                continue;
            if (isBattery)
            {
                tests.Add(new TestPlace(model.AllOff, Instrument.Bench, l));
                if (circuit.Bike.Lamps[l].Specification.Type is LampType.Led or LampType.LedResistor)
                    tests.Add(new TestPlace(model.AllOff, Instrument.BenchReversed, l));
            }

            if (circuit.Bike.Lamps[l].Quantity == 1 && model.IsKnownToOhmmeter(model.Parts[l]))
                tests.Add(new TestPlace(model.AllOff, Instrument.Ohmmeter, l, Unplugged: l));
            if (model.Lighting(l) is not { } setting)
                continue;
            tests.Add(new TestPlace(setting, Instrument.GoodLamp, l));
            HarnessPart lamp = graph.Lamps[l];
            if (isBattery && lamp.A != graph.Live)
                tests.Add(new TestPlace(setting, Instrument.Visual, l, JumperFrom: graph.Live, JumperTo: lamp.A));
            if (lamp.B != graph.Earth)
                tests.Add(new TestPlace(setting, Instrument.Visual, l, JumperFrom: lamp.B, JumperTo: graph.Earth));
            ContactSet closed = graph.Switches.ClosedIn(setting);
            foreach (
                HarnessPart contact in graph
                    .From(graph.Live, closed)
                    .PathTo(lamp.A)
                    .Where(p => p.Kind == HarnessPartKind.Contact)
            )
                if (jumped.Add((contact.A, contact.B)))
                    tests.Add(new TestPlace(setting, Instrument.Visual, l, JumperFrom: contact.A, JumperTo: contact.B));
        }
    }

    /// <summary>The end of a fuse that is farther from the live terminal.</summary>
    public static int FarEnd(FaultCircuit circuit, int fuse)
    {
        HarnessGraph graph = circuit.Graph;
        return graph
            .From(graph.Live, p => p.Kind == HarnessPartKind.Lamp ? HarnessGraph.NoWay : 1)
            .FarEndOf(graph.Fuses[fuse]);
    }

    /// <summary>Of the settings that cover everything the one in which a part has most of the voltage to drop: where a
    /// lamp is lit behind it.</summary>
    public static Setting? Carrying(FaultModel model, MeasuredPart part)
    {
        HarnessGraph graph = model.Circuit.Graph;
        return model
            .Cover.Where(s => part.Contact < 0 || graph.Switches.ClosedIn(s).Has(part.Contact))
            .OrderByDescending(s => model.CarriedIn(s).Of(part).Count())
            .FirstOrDefault();
    }

    // Where lamps are lit behind a part that can be moved.
    private static Setting? Moved(FaultModel model, MeasuredPart part) =>
        part.Lamp >= 0 ? null
        : part.Holder >= 0 ? model.Lighting(model.Circuit.Holders[part.Holder].Lamps[0])
        : Carrying(model, part) is { } carrying
        && IsOneOfItsSwitch(model, part, carrying)
        && model.CarriedIn(carrying).Of(part).Any(model.GivesLight)
            ? carrying
        : null;

    // The contacts of a switch move together.
    private static bool IsOneOfItsSwitch(FaultModel model, MeasuredPart part, Setting setting) =>
        part.Contact < 0
        || model.Circuit.Graph.Switches.ClosedIn(setting) is var closed
            && model.Parts.Count(p => p.Contact >= 0 && Name.Equal(p.Name, part.Name) && closed.Has(p.Contact)) == 1;

    // Everything off, then one switch after the other on the way from the fuse to each lamp: where the resistance falls
    // to almost zero, the section just joined touches the frame.
    private static IEnumerable<Setting> BehindFuse(FaultModel model, int fuse)
    {
        FaultCircuit circuit = model.Circuit;
        HarnessGraph graph = circuit.Graph;
        var settings = new HashSet<Setting> { model.AllOff };
        Reached live = graph.From(graph.Live, p => p.Kind == HarnessPartKind.Lamp ? HarnessGraph.NoWay : 1);
        foreach (HarnessPart lamp in graph.Lamps)
        {
            ImmutableArray<HarnessPart> way = live.PathTo(lamp.A);
            if (way.Any(p => p.Kind == HarnessPartKind.Fuse && p.Index == fuse))
                settings.UnionWith(SwitchBySwitch(model, way));
        }

        return settings;
    }

    // The same from a lamp back towards the battery.
    private static IEnumerable<Setting> TowardsBattery(FaultModel model, int lamp)
    {
        HarnessGraph graph = model.Circuit.Graph;
        return SwitchBySwitch(
                model,
                graph
                    .From(graph.Lamps[lamp].A, p => p.Kind == HarnessPartKind.Lamp ? HarnessGraph.NoWay : 1)
                    .PathTo(graph.Live)
            )
            .Prepend(model.AllOff)
            .Distinct();
    }

    private static List<Setting> SwitchBySwitch(FaultModel model, ImmutableArray<HarnessPart> way)
    {
        var settings = new List<Setting>();
        var held = new Dictionary<string, string>(Name.Comparer);
        foreach (HarnessPart part in way.Where(p => p.Kind == HarnessPartKind.Contact))
        {
            SwitchContact contact = model.Circuit.Bike.Switches[part.Index];
            if (!contact.IsRelay && held.TryAdd(contact.Switch, contact.ClosedIn[0]))
                settings.Add(
                    new Setting(
                        model.AllOff.Positions.Select(p =>
                            held.TryGetValue(p.Switch, out string? position) ? p with { Position = position } : p
                        )
                    )
                );
        }

        return settings;
    }
}
