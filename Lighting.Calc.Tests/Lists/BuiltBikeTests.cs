using System.Reflection;
using UnitsNet;

namespace Lighting.Calc.Tests.Lists;

/// <summary>Bikes built in code: their faults, changes by name, and equality.</summary>
public class BuiltBikeTests
{
    private static readonly BikeLists s_lists = BikeLists.Read(ListSamples.Whole).Value;
    private static readonly Bike s_bike = s_lists.Bike;

    [Fact]
    public void A_bike_that_was_read_has_no_faults() => Assert.Empty(s_bike.Validate());

    [Fact]
    public void Every_fault_names_part_and_property_and_all_come_at_once()
    {
        Bike wrong = s_bike with
        {
            WireTemperature = Temperature.FromDegreesCelsius(300),
            Lamps =
            [
                s_bike.Lamps[0] with
                {
                    Duty = Ratio.FromPercent(150),
                    Quantity = 0,
                },
                s_bike.Lamps[1] with
                {
                    Lamp = "DIP",
                    Feed = null,
                    Return = "battery+",
                },
                .. s_bike.Lamps[2..],
            ],
            Runs = [s_bike.Runs[0] with { Length = Length.FromMeters(-1), To = "battery +" }, .. s_bike.Runs[1..]],
            Fuses = [s_bike.Fuses[0] with { Rating = ElectricCurrent.Zero, Style = (FuseStyle)9 }],
            Ride = [s_bike.Ride[0] with { Duration = Duration.Zero }],
        };
        string[] faults = [.. wrong.Validate().Select(f => f.Message)];
        Assert.Equal(
            [
                "Bike: 'WireTemperature': '300 °C' is out of range; expected -60 °C to 250 °C",
                "Bike.Lamps row 1 'dip': 'Quantity': '0' is out of range; expected 1 to 1000",
                "Bike.Lamps row 1 'dip': 'Duty': '1.5' is out of range; expected 0 to 1",
                "Bike.Lamps row 2 'DIP': 'Lamp': 'DIP' is the name of row 1 already; give each its own name",
                "Bike.Lamps row 2 'DIP': 'Feed': is blank; a bike with runs needs the points of every lamp",
                "Bike.Lamps row 2 'DIP': 'Return': 'battery+' is not how a battery terminal is written; expected "
                    + "'battery +' or 'battery -'; did you mean 'battery +'?",
                "Bike.Runs row 1 'supply': 'To': 'battery +' is From as well; expected two different points",
                "Bike.Runs row 1 'supply': 'Length': '-1 m' is out of range; expected 0 or 0.001 m to 100 m",
                "Bike.Fuses row 1 'main': 'Rating': '0 A' is out of range; expected 0.01 A to 500 A",
                "Bike.Fuses row 1 'main': 'Style': '9' is not a FuseStyle; expected Blade, Glass, Mini, Maxi",
                "Bike.Ride row 1 'to the sorting office': 'Duration': '0 min' is out of range; expected "
                    + "0.01 min to 10000 min",
            ],
            faults
        );
        ArgumentException refused = Assert.Throws<ArgumentException>(() =>
            BikeCheck.Evaluate(wrong, cancellationToken: TestContext.Current.CancellationToken)
        );
        Assert.All(faults, f => Assert.Contains(f, refused.Message, StringComparison.Ordinal));
    }

    public static TheoryData<string, Func<Bike, Bike>> Wrong =>
        new()
        {
            { "'Lamps': is not initialised, or holds a null", b => b with { Lamps = default } },
            { "'Wire': is null", b => b with { Runs = [b.Runs[0] with { Wire = null! }] } },
            {
                "contradicts ClosedIn, which names 'off'",
                b =>
                    b with
                    {
                        Switches =
                        [
                            .. b.Switches,
                            b.Switches[2] with
                            {
                                Switch = "kill",
                                ClosedIn = ["off"],
                                HasOff = false,
                            },
                        ],
                    }
            },
            {
                "names a position twice",
                b =>
                    b with
                    {
                        Switches = [b.Switches[0], b.Switches[1], b.Switches[2] with { ClosedIn = ["on", "ON"] }],
                    }
            },
            { "is given in row 1 already", b => b with { Charging = [b.Charging[0], b.Charging[0]] } },
            {
                "is for a glass fuse alone",
                b => b with { Fuses = [b.Fuses[0] with { Style = FuseStyle.Blade, IsMarkedWithBlowingCurrent = true }] }
            },
            {
                "holds a character that cannot be seen",
                b => b with { Lamps = [b.Lamps[0] with { Lamp = "dip\u202E" }, .. b.Lamps[1..]] }
            },
            { "is a second fuse", b => b with { Runs = [], Fuses = [b.Fuses[0], b.Fuses[0] with { Name = "other" }] } },
        };

    [Theory]
    [MemberData(nameof(Wrong), DisableDiscoveryEnumeration = true)]
    public void No_calculation_takes_a_bike_with_faults(string problem, Func<Bike, Bike> spoil)
    {
        Bike wrong = spoil(s_bike);
        Assert.Contains(wrong.Validate(), f => f.Message.Contains(problem, StringComparison.Ordinal));
        Assert.Contains(
            problem,
            Assert.Throws<ArgumentException>(() => new HarnessNetwork(wrong)).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentException>(() =>
            new CatalogueCheck().Evaluate(wrong, cancellationToken: TestContext.Current.CancellationToken)
        );
        Assert.Throws<ArgumentException>(() =>
            new FaultFinder(wrong, cancellationToken: TestContext.Current.CancellationToken)
        );
        Assert.Throws<ArgumentException>(() =>
            ExpectedReadings.Calculate(wrong, cancellationToken: TestContext.Current.CancellationToken)
        );
    }

    [Fact]
    public void A_condition_that_names_what_the_bike_does_not_have_is_a_fault_and_a_finding()
    {
        Bike wrong = s_bike
            .WithLamp("dip", litWhen: Condition.Parse("light=low"))
            .WithLamp("stop", litWhen: Condition.Parse("lights=dim"));
        Assert.Equal(
            [
                "Bike.Lamps row 1 'dip': 'LitWhen': 'light' is not a switch of the bike; did you mean 'lights'?",
                "Bike.Lamps row 2 'stop': 'LitWhen': 'dim' is not a position of the switch 'lights'; its "
                    + "positions are off, low, high",
            ],
            wrong.Validate().Select(f => f.Message)
        );
        BikeReport report = BikeCheck.Evaluate(wrong, cancellationToken: TestContext.Current.CancellationToken);
        Assert.Contains(report.Findings, f => f.Subject == "light");
    }

    [Fact]
    public void Parts_are_changed_by_their_names()
    {
        var lamp = LampSpecification.FromPower(LampType.Filament, ElectricPotential.FromVolts(12), Power.FromWatts(35));
        Bike changed = s_bike
            .WithLamp("DIP", lamp, duty: Ratio.FromPercent(50))
            .WithRun("supply", length: Length.FromMeters(2))
            .WithFuse("main", ElectricCurrent.FromAmperes(10));
        Assert.Equal(
            (lamp, Ratio.FromPercent(50), 1),
            (changed.Lamps[0].Specification, changed.Lamps[0].Duty, changed.Lamps[0].Quantity)
        );
        Assert.Equal((2, s_bike.Runs[0].Joints), (changed.Runs[0].Length.Meters, changed.Runs[0].Joints));
        Assert.Equal((10, FuseStyle.Glass), (changed.Fuses[0].Rating.Amperes, changed.Fuses[0].Style));
        Assert.StartsWith(
            "The bike has no run 'suply'. did you mean 'supply'?",
            Assert.Throws<ArgumentException>("run", () => s_bike.WithRun("suply")).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentException>("lamp", () => s_bike.WithLamp("horn"));
        Assert.Throws<ArgumentException>("fuse", () => s_bike.WithFuse("horn"));
    }

    [Fact]
    public void A_solver_is_set_by_names_as_by_numbers()
    {
        var network = new HarnessNetwork(s_bike);
        HarnessSolver byName = network.CreateSolver(),
            byNumber = network.CreateSolver();
        var ohm = ElectricResistance.FromMilliohms(50);
        var lamp = LampSpecification.FromPower(LampType.Filament, ElectricPotential.FromVolts(12), Power.FromWatts(35));
        byName.SetRun("Supply", ohm, ohm);
        byName.SetContact("lights (switch in to dip feed)", ohm);
        byName.SetFuse("main", ohm);
        byName.SetLamp("dip", lamp);
        byNumber.SetRun(0, ohm, ohm);
        byNumber.SetContact(0, ohm);
        byNumber.SetFuse(0, ohm);
        byNumber.SetLamp(0, lamp);
        Setting low = SettingEnumeration.Of(s_bike, Condition.Parse("lights=low"))[0];
        Assert.Equal(byNumber.Solve(low).Lamps[0].Voltage, byName.Solve(low).Lamps[0].Voltage);
        Assert.NotEqual(network.CreateSolver().Solve(low).Lamps[0].Voltage, byName.Solve(low).Lamps[0].Voltage);
        Assert.Throws<ArgumentException>("lamp", () => byName.SetLamp("dib", lamp));
    }

    [Fact]
    public void Bikes_with_the_same_values_are_equal_and_hash_alike()
    {
        BikeLists again = BikeLists.Read(ListSamples.Whole).Value;
        Assert.NotSame(s_lists, again);
        Assert.Equal(s_lists, again);
        Assert.Equal(s_lists.GetHashCode(), again.GetHashCode());
        Assert.Equal(s_bike.GetHashCode(), again.Bike.GetHashCode());
        Assert.NotEqual(s_lists, again with { Swaps = [] });
        Assert.NotEqual(s_bike, again.Bike.WithLamp("tail", duty: Ratio.FromPercent(99)));
        Assert.NotEqual(
            s_bike,
            again.Bike with
            {
                Switches = [.. again.Bike.Switches[..2], again.Bike.Switches[2] with { ClosedIn = ["x"] }],
            }
        );
    }

    // A property that equality forgets would be found here.
    [Fact]
    public void Every_property_of_a_bike_counts_in_its_equality()
    {
        Bike other = s_bike with { };
        Bike empty = Bike.ForSystem(ElectricPotential.FromVolts(6)) with
        {
            Name = "other",
            WireTemperature = Temperature.FromDegreesCelsius(33),
            BatteryResistance = ElectricResistance.FromMilliohms(9),
            AmbientTemperature = Temperature.FromDegreesCelsius(31),
            Cable = CableKind.ThinWall,
            AllowedDrop = Ratio.FromPercent(3),
            Lighting = LightingSupply.Direct,
            Regulator = RegulatorKind.Series,
            ZenerVoltage = ElectricPotential.FromVolts(14),
            RegulatorResistance = ElectricResistance.FromOhms(0.3),
            RegulatorRating = Power.FromWatts(50),
            RegulatorPlace = RegulatorPlace.Battery,
            Ignition = IgnitionKind.Magneto,
            Flasher = FlasherKind.Thermal,
            FlasherLoad = Power.FromWatts(42),
            GeneratorResistance = ElectricResistance.FromOhms(0.4),
            GeneratorPoint = "ammeter",
            Earth = Earth.Negative,
        };
        PropertyInfo[] settable = [.. typeof(Bike).GetProperties().Where(p => p.SetMethod is not null)];
        Assert.True(settable.Length > 20);
        foreach (PropertyInfo property in settable)
        {
            Bike changed = s_bike with { };
            property.SetValue(changed, property.GetValue(empty));
            Assert.True(changed != other, property.Name);
        }
    }

    [Fact]
    public void Options_that_differ_in_one_figure_are_not_equal() =>
        Assert.All(
            new WireSizingOptions[]
            {
                new() { Check = new CheckOptions { Engine = EngineState.Off } },
                new() { MostSizes = 2 },
                new() { LargestArea = Area.FromSquareMillimeters(4) },
                new() { IncludeOddGauges = true },
                new() { Stock = [AmericanWireGauge.Stranded(18)] },
            },
            options => Assert.NotEqual(new WireSizingOptions(), options)
        );

    // Arrays compare by reference: a record that has one and keeps the compiler's equality would not be equal to its
    // copy.
    [Fact]
    public void No_public_record_with_an_array_compares_it_by_reference()
    {
        string[] wrong =
        [
            .. typeof(Bike)
                .Assembly.GetExportedTypes()
                .Where(t => t.GetMethod("<Clone>$") is not null)
                .Where(t =>
                    t.GetProperties(BindingFlags.Public | BindingFlags.Instance)
                        .Any(p => p.PropertyType.Name.StartsWith("ImmutableArray", StringComparison.Ordinal))
                )
                .Where(t =>
                    t.GetMethod("Equals", [t])!
                        .GetCustomAttribute<System.Runtime.CompilerServices.CompilerGeneratedAttribute>()
                        is not null
                )
                .Select(t => t.Name),
        ];
        Assert.Equal("", string.Join(", ", wrong));
    }
}
