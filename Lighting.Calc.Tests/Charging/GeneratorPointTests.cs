using Lighting.Calc.Tests.FaultFinding;
using UnitsNet;
using static Lighting.Calc.Tests.Charging.ValleyPost;

namespace Lighting.Calc.Tests.Charging;

/// <summary>A generator that joins the harness apart from the battery, as behind an ammeter.</summary>
public class GeneratorPointTests
{
    private const string Lamps =
        "circuit,lamp,type,volts,watts,feed,return\nhead,headlamp,resistor,12,72,ammeter,frame\n";

    private const string Runs =
        "run,from,to,wire,length,joints,joint resistance\nlead,fuse out,ammeter,2.5 mm2,0,1,40 mohm\n"
        + "earth,frame,battery -,2.5 mm2,0,0,\n";

    private const string Fuses = "fuse,from,to,rating,resistance\nmain,battery +,fuse out,15 A,10 mohm\n";

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    // 72 W at 12 V are 2 Ω. The battery, 12.6 V and 0.1 Ω, gives its share through the fuse and the lead, 0.05 Ω:
    // V/2 = 3 + (12.6 − V)/0.15.
    [Fact]
    public void The_battery_gives_its_share_through_the_leads_to_the_joint()
    {
        OperatingPoint point = RunningEngine.Of(Bike("3000,3\n")).At(Rpm(3000), Setting.Empty)!;
        double volts = (3 + 12.6 / 0.15) / (0.5 + 1 / 0.15),
            battery = (12.6 - volts) / 0.15;
        BusState bus = point.Bus!;
        Assert.Equal(volts, point.SupplyVoltage.Volts, 1e-9);
        Assert.Equal(volts, bus.Voltage.Volts, 1e-9);
        Assert.Equal(-battery, bus.BatteryCurrent.Amperes, 1e-8);
        Assert.Equal(12.6 - 0.1 * battery, bus.BatteryVoltage.Volts, 1e-9);
        Assert.Equal(0.1 * battery, bus.BatteryDrop.Volts, 1e-9);
        Assert.Equal(volts / 2, point.TotalCurrent.Amperes, 1e-9);
        Assert.Equal(battery, point.Fuses[0].Current.Amperes, 1e-8);
        Assert.Equal(volts, point.Lamps[0].Voltage.Volts, 1e-9);
        Assert.Equal(0, point.Lamps[0].Drop!.Value.DecimalFractions, 1e-12);
    }

    // 20 A cover the lamp's 6.8 A at 13.6 V; the full battery of 10 Ah takes 0.5 A at 13.6 V, a little less behind the
    // lead: I = 0.5·(V − 12.6)/1 with V = 13.6 − 0.05·I.
    [Fact]
    public void The_regulator_holds_its_voltage_at_the_joint()
    {
        BusState bus = RunningEngine.Of(Bike("3000,20\n")).At(Rpm(3000), Setting.Empty)!.Bus!;
        double into = 0.5 / (1 + 0.5 * 0.05);
        Assert.Equal(13.6, bus.Voltage.Volts, 1e-12);
        Assert.Equal(into, bus.BatteryCurrent.Amperes, 1e-9);
        Assert.Equal(13.6 - 0.05 * into, bus.BatteryVoltage.Volts, 1e-9);
        Assert.Equal(6.8 + into, bus.GeneratorCurrent.Amperes, 1e-9);
    }

    // The full battery of 10 Ah takes 0.5 A at 13.6 V; the lead's 0.05 Ω lifts the joint above that.
    [Fact]
    public void A_series_regulator_at_the_battery_holds_its_voltage_there()
    {
        Bike bike = Bike("3000,20\n") with
        {
            Regulator = RegulatorKind.Series,
            RegulatorPlace = RegulatorPlace.Battery,
        };
        BusState bus = RunningEngine.Of(bike).At(Rpm(3000), Setting.Empty)!.Bus!;
        Assert.Equal(13.6, bus.BatteryVoltage.Volts, 1e-9);
        Assert.Equal(0.5, bus.BatteryCurrent.Amperes, 1e-9);
        Assert.Equal(13.6 + 0.05 * 0.5, bus.Voltage.Volts, 1e-9);
        Assert.Equal((13.6 + 0.05 * 0.5) / 2 + 0.5, bus.GeneratorCurrent.Amperes, 1e-9);
        Assert.Equal(0, bus.RegulatorCurrent.Amperes);
        Assert.Equal(20, bus.AvailableCurrent.Amperes, 1e-12);
    }

    // What the lamp leaves of 20 A flows through the lead's 0.05 Ω into battery and Zener: I = 20 − (Vz + 0.05·I)/2,
    // with Vz = 13.6 V + 0.3 Ω·(I − 0.5 A).
    [Fact]
    public void A_zener_at_the_battery_draws_its_current_through_the_fuse_to_it()
    {
        Bike bike = Bike("3000,20\n") with
        {
            Regulator = RegulatorKind.Shunt,
            ZenerVoltage = ElectricPotential.FromVolts(13.6),
            RegulatorResistance = ElectricResistance.FromOhms(0.3),
            RegulatorPlace = RegulatorPlace.Battery,
        };
        OperatingPoint point = RunningEngine.Of(bike).At(Rpm(3000), Setting.Empty)!;
        BusState bus = point.Bus!;
        double amperes = (20 - (13.6 - 0.3 * 0.5) / 2) / (1 + (0.3 + 0.05) / 2),
            zener = 13.6 + 0.3 * (amperes - 0.5);
        Assert.Equal(zener, bus.RegulatorVoltage.Volts, 1e-9);
        Assert.Equal(zener, bus.BatteryVoltage.Volts, 1e-9);
        Assert.Equal(zener + 0.05 * amperes, bus.Voltage.Volts, 1e-9);
        Assert.Equal(0.5, bus.BatteryCurrent.Amperes, 1e-9);
        Assert.Equal(amperes - 0.5, bus.RegulatorCurrent.Amperes, 1e-8);
        Assert.Equal((amperes - 0.5) * zener, (double)bus.RegulatorHeat.Watts, 1e-6);
        Assert.Equal(20, bus.GeneratorCurrent.Amperes, 1e-8);
        Assert.Equal(amperes, point.Fuses[0].Current.Amperes, 1e-8);
    }

    [Fact]
    public void The_place_of_the_regulator_is_written_and_read_again()
    {
        ListResult<BikeLists> lists = Lists("generator joins at,ammeter\nregulator joins at,battery\n", "3000,3\n");
        Assert.Empty(lists.Cautions.Where(c => c.Message.Contains("not used", StringComparison.Ordinal)));
        Assert.Equal(RegulatorPlace.Battery, lists.Value.Bike.RegulatorPlace);
        BikeLists written = BikeLists
            .Read(
                BikeListsWriter
                    .Write(lists.Value)
                    .Aggregate(ListSource.Empty, (source, list) => source.With(list.Key, list.Value))
            )
            .Value;
        Assert.Equal(lists.Value.Bike, written.Bike);
    }

    [Fact]
    public void The_place_of_the_regulator_is_not_used_where_the_generator_joins_at_the_battery() =>
        Assert.Contains(
            Lists("regulator joins at,battery\n", "3000,3\n").Cautions,
            c => c.Message.Contains("is not used", StringComparison.Ordinal)
        );

    // The battery neither charges nor discharges at 12.6 V, and the lead then drops nothing: the lamp takes 6.3 A.
    [Fact]
    public void The_speed_from_which_the_battery_no_longer_discharges_is_that_of_its_voltage_at_the_joint()
    {
        RunningEngine engine = RunningEngine.Of(Bike("1000,1\n9000,9\n"));
        double rpm = engine.ChargesFrom(Setting.Empty).Speed!.Value.RevolutionsPerMinute;
        Assert.Equal(6300 * (12.6 + 1.7) / (13.6 + 1.7), rpm, 1e-3);
        Assert.True(engine.At(Rpm(rpm - 5), Setting.Empty)!.Bus!.Discharges);
        Assert.False(engine.At(Rpm(rpm + 5), Setting.Empty)!.Bus!.Discharges);
    }

    [Fact]
    public void A_positive_earth_bike_is_the_same_with_its_terminals_exchanged()
    {
        Bike negative = Bike("3000,3\n");
        string Of(string point) =>
            point == Calc.Bike.BatteryPlus ? Calc.Bike.BatteryMinus
            : point == Calc.Bike.BatteryMinus ? Calc.Bike.BatteryPlus
            : point;
        Bike positive = negative with
        {
            Earth = Earth.Positive,
            Runs = [.. negative.Runs.Select(r => r with { From = Of(r.From), To = Of(r.To) })],
            Fuses = [.. negative.Fuses.Select(f => f with { From = Of(f.From!), To = Of(f.To!) })],
        };
        OperatingPoint one = RunningEngine.Of(negative).At(Rpm(3000), Setting.Empty)!,
            other = RunningEngine.Of(positive).At(Rpm(3000), Setting.Empty)!;
        Assert.Equal(one.Bus!.Voltage.Volts, other.Bus!.Voltage.Volts, 1e-9);
        Assert.Equal(one.Bus.BatteryVoltage.Volts, other.Bus.BatteryVoltage.Volts, 1e-9);
        Assert.Equal(one.Bus.BatteryCurrent.Amperes, other.Bus.BatteryCurrent.Amperes, 1e-8);
        Assert.Equal(one.Lamps[0].Voltage.Volts, other.Lamps[0].Voltage.Volts, 1e-9);
        Assert.Equal(one.TotalCurrent.Amperes, other.TotalCurrent.Amperes, 1e-9);
        // Voltages count from battery minus: the frame is at battery plus, the joint below it by the bus's voltage.
        Assert.Equal(other.Bus.BatteryVoltage.Volts, VoltsAt(other, Calc.Bike.BatteryPlus), 1e-9);
        Assert.Equal(0, VoltsAt(other, Calc.Bike.BatteryMinus), 1e-12);
        Assert.Equal(other.Bus.BatteryVoltage.Volts - other.Bus.Voltage.Volts, VoltsAt(other, "ammeter"), 1e-9);

        static double VoltsAt(OperatingPoint point, string name) =>
            point.Points.First(p => p.Point == name).Voltage.Volts;
    }

    [Fact]
    public void The_breakdown_of_drop_starts_where_the_generator_joins()
    {
        Bike twin = Twin();
        foreach (Setting setting in SettingEnumeration.Of(twin, Condition.Parse("ignition=on; lights=main")))
            foreach (double rpm in new[] { 1000.0, 6000 })
            {
                OperatingPoint point = RunningEngine.Of(twin).At(Rpm(rpm), setting)!;
                for (int lamp = 0; lamp < twin.Lamps.Length; lamp++)
                {
                    if (VoltageDropAnalysis.Breakdown(twin, point, lamp) is not { } breakdown)
                        continue;
                    Assert.DoesNotContain(breakdown.Entries, e => e.Part is "main feed" or "main" or "battery lead");
                    Assert.Equal(
                        point.Bus!.Voltage.Volts - breakdown.Lamp.Voltage.Volts,
                        breakdown.Entries.Sum(e => e.Voltage.Volts),
                        1e-6
                    );
                    Assert.Equal(
                        1 - breakdown.Lamp.Voltage / point.Bus.Voltage,
                        breakdown.Lamp.Drop!.Value.DecimalFractions,
                        1e-12
                    );
                }
            }
    }

    // A repaired part is solved with generator and battery where they are.
    [Fact]
    public void A_repair_gains_what_a_bike_without_that_resistance_has()
    {
        Bike twin = Twin();
        BikeReport report = BikeCheck.Evaluate(twin, cancellationToken: Cancellation);
        VoltageDropBreakdown worst = report.WorstDrops.First(d => d.Lamp.Lamp.Lamp == "headlamp low");
        RepairBenefit gain = VoltageDropAnalysis.LargestDrops(report.Network, worst)[0];
        Assert.True(gain.Voltage.Volts > 0);
        Assert.Equal(
            gain.Voltage.Volts,
            VoltageDropAnalysis.LargestDrops(new HarnessNetwork(twin), worst)[0].Voltage.Volts,
            1e-12
        );
    }

    // With the engine running next to nothing flows through the fuse between battery and joint; the battery alone
    // feeds all through it.
    [Fact]
    public void A_fuse_between_battery_and_joint_is_judged_with_the_engine_off_too()
    {
        Bike bike = Bike("3000,20\n");
        BikeReport report = BikeCheck.Evaluate(bike, cancellationToken: Cancellation);
        Assert.All(report.Settings, p => Assert.True(p.Fuses[0].Current.Amperes < 1));
        BikeReport off = BikeCheck.Evaluate(bike, new CheckOptions { Engine = EngineState.Off }, Cancellation);
        Assert.Equal(12.6 / 2.15, report.Fuses[0].Steady.ContinuousCurrent.Amperes, 1e-6);
        Assert.Equal(
            off.Fuses[0].Steady.ContinuousCurrent.Amperes,
            report.Fuses[0].Steady.ContinuousCurrent.Amperes,
            1e-9
        );
    }

    [Fact]
    public void With_the_engine_off_the_joint_is_a_point_like_others()
    {
        Bike twin = Twin();
        var off = new CheckOptions { Engine = EngineState.Off };
        BikeSolution named = BikeSolution.Solve(twin, off, Cancellation),
            plain = BikeSolution.Solve(twin with { GeneratorPoint = null }, off, Cancellation);
        Assert.Equal(
            plain.Points.SelectMany(p => p.Lamps.Select(l => l.Voltage)),
            named.Points.SelectMany(p => p.Lamps.Select(l => l.Voltage))
        );
    }

    [Theory]
    [InlineData(1000)]
    [InlineData(3000)]
    [InlineData(6000)]
    public void The_sheet_of_readings_reads_what_the_running_engine_holds(double rpm)
    {
        foreach (Bike bike in new[] { Twin(), DemoBikes.Load("chapel-single") with { GeneratorPoint = "live line" } })
        {
            RotationalSpeed speed = Rpm(Math.Min(rpm, bike.Charging.Max(c => c.Speed.RevolutionsPerMinute)));
            if (speed.RevolutionsPerMinute < bike.Charging.Min(c => c.Speed.RevolutionsPerMinute))
                continue;
            ExpectedReadings sheet = ExpectedReadings.Calculate(
                bike,
                new FaultFindingOptions { Engine = EngineState.Running, EngineSpeed = speed },
                Cancellation
            );
            var engine = RunningEngine.Of(bike);
            foreach (ExpectedSetting setting in sheet.Settings)
            {
                OperatingPoint point = engine.At(speed, setting.Setting)!;
                foreach (ExpectedReading reading in setting.Points.Where(p => Math.Abs(p.Voltage.Volts) > 0.5))
                    Assert.Equal(
                        point.Points.First(p => p.Point == reading.Point).Voltage.Volts,
                        reading.Voltage.Volts,
                        0.02
                    );
            }
        }
    }

    [Theory]
    [InlineData("valley-twin", "ignition in")]
    [InlineData("chapel-single", "live line")]
    public void The_sheet_with_the_engine_off_is_that_of_the_bike_without_the_point(string name, string point)
    {
        Bike plain = DemoBikes.Load(name);
        var options = new FaultFindingOptions { ConsidersCharging = true };
        ExpectedReadings expected = ExpectedReadings.Calculate(plain, options, Cancellation),
            sheet = ExpectedReadings.Calculate(plain with { GeneratorPoint = point }, options, Cancellation);
        Assert.Equal(expected.Settings.Select(s => s.Setting), sheet.Settings.Select(s => s.Setting));
        Assert.All(expected.Settings.Zip(sheet.Settings), s =>
            Assert.All(s.First.Points.Zip(s.Second.Points), p =>
                Assert.Equal(p.First.Voltage.Volts, p.Second.Voltage.Volts, 1e-5)
            )
        );
    }

    // Readings with the engine off and running in one finder.
    [Fact]
    public void Faults_are_found_from_readings_with_the_engine_off_and_running()
    {
        var finder = new FaultFinder(Twin(), new FaultFindingOptions { ConsidersCharging = true }, Cancellation);
        Diagnosis found = finder.Diagnose(
            [
                ReadingOf.Meter("engine=off; ignition=on", Calc.Bike.BatteryPlus, 12.65),
                ReadingOf.Meter("engine=3000; ignition=on; lights=main", Calc.Bike.BatteryPlus, 12.45),
            ],
            Cancellation
        );
        Assert.Contains(
            found.Ranked[0].Alternatives.SelectMany(a => a.Faults),
            f => f.Kind is FaultKind.ChargingLeadFault or FaultKind.NoGeneratorOutput
        );
    }

    // The choice of wires is made as if the battery fed all; what it says of drop is what a check says.
    [Fact]
    public void Wires_as_fitted_and_as_sized_drop_what_a_check_finds()
    {
        Bike twin = Twin();
        WireSizingResult sizing = HarnessSizing.Size(new HarnessNetwork(twin), cancellationToken: Cancellation);
        AssertDrops(sizing.Lamps.Select(l => (l.Lamp.Lamp, l.DropFitted)), twin);
        AssertDrops(sizing.Lamps.Select(l => (l.Lamp.Lamp, l.DropChosen)), sizing.Sized!);

        static void AssertDrops(IEnumerable<(string Lamp, Ratio? Drop)> drops, Bike bike)
        {
            BikeReport report = BikeCheck.Evaluate(bike, cancellationToken: Cancellation);
            Assert.All(drops, d =>
                Assert.Equal(
                    report.WorstDrops.First(w => w.Lamp.Lamp.Lamp == d.Lamp).Lamp.Drop!.Value.Percent,
                    d.Drop!.Value.Percent,
                    1e-6
                )
            );
        }
    }

    [Fact]
    public void The_point_is_written_and_read_again()
    {
        Bike bike = Bike("3000,3\n");
        Assert.Equal("ammeter", bike.GeneratorPoint);
        BikeLists written = BikeLists
            .Read(
                BikeListsWriter
                    .Write(new BikeLists { Bike = bike })
                    .Aggregate(ListSource.Empty, (source, list) => source.With(list.Key, list.Value))
            )
            .Value;
        Assert.Equal(bike, written.Bike);
        Assert.Null(Lists("generator joins at,battery +\n", "3000,3\n").Value.Bike.GeneratorPoint);
    }

    [Theory]
    [InlineData("ameter", "'ameter' is not a point of the bike; did you mean 'ammeter'?")]
    [InlineData("switched", "'switched' is not joined to the battery by wires and fuses alone")]
    [InlineData("frame", "'frame' is not joined to the battery by wires and fuses alone")]
    public void A_point_that_no_wire_joins_to_the_battery_is_a_fault(string point, string message)
    {
        ListResult<BikeLists> lists = Lists($"generator joins at,{point}\n", "3000,3\n", switched: true);
        Assert.Contains(message, Assert.Single(lists.Faults).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bike_built_in_code_is_refused_for_the_same()
    {
        Bike bike = Bike("3000,3\n");
        Assert.Empty(bike.Validate());
        Assert.Single((bike with { GeneratorPoint = "nowhere" }).Validate());
        Assert.Single((bike with { GeneratorPoint = "frame" }).Validate());
        Assert.Throws<ArgumentException>(() => new HarnessNetwork(bike with { GeneratorPoint = "frame" }));
    }

    [Fact]
    public void Without_runs_the_item_is_not_used()
    {
        ListResult<BikeLists> lists = BikeLists.Read(
            ListSource
                .Empty.With("bike.csv", "item,value\ngenerator joins at,ammeter\n")
                .With("lamps.csv", "circuit,lamp,watts\nhead,headlamp,60\n")
        );
        Assert.Contains(lists.Cautions, c => c.Message.Contains("is not used", StringComparison.Ordinal));
        Assert.Null(lists.Value.Bike.GeneratorPoint);
    }

    [Fact]
    public void The_listed_bike_of_the_tolerances_is_the_checked_one()
    {
        Bike twin = Twin();
        BikeReport report = BikeCheck.Evaluate(twin, cancellationToken: Cancellation);
        ToleranceReport tolerances = ToleranceCheck.Evaluate(
            twin,
            new ToleranceOptions { Samples = 200, Seed = 1 },
            cancellationToken: Cancellation
        );
        VoltageDropBreakdown worst = report.WorstDrops.First(d => d.Lamp.Lamp.Lamp == "headlamp low");
        LampTolerance lamp = tolerances.Lamps.First(l => l.Lamp.Lamp == "headlamp low");
        Assert.Equal(worst.Lamp.Drop!.Value.Percent, lamp.Drop.Listed!.Value.Percent, 1e-6);
        Assert.Equal(
            report.Fuses[0].Steady.WorstCurrent.Amperes,
            tolerances.Fuses[0].Current.Listed!.Value.Amperes,
            1e-6
        );
    }

    private static Bike Twin() => DemoBikes.Load("valley-twin") with { GeneratorPoint = "ignition in" };

    private static Bike Bike(string charging) => Lists("generator joins at,ammeter\n", charging).Value.Bike;

    private static ListResult<BikeLists> Lists(string items, string charging, bool switched = false) =>
        BikeLists.Read(
            ListSource
                .Empty.With(
                    "bike.csv",
                    "item,value\nbattery voltage,12.6\ncharging voltage,13.6\nbattery resistance,0.1 ohm\n"
                        + "battery capacity,10 Ah\nwire temperature,20\n"
                        + items
                )
                .With(
                    "lamps.csv",
                    Lamps + (switched ? "tail,tail lamp,resistor,12,6,switched,frame\n" : "")
                )
                .With("runs.csv", Runs)
                .With("fuses.csv", Fuses)
                .With("charging.csv", "rpm,current\n" + charging)
                .With(
                    "switches.csv",
                    switched ? "switch,from,to,closed in\nlights,ammeter,switched,on\n" : "switch,from,to,closed in\n"
                )
        );
}
