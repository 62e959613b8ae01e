using Lighting.Calc.Benchmarks;
using Lighting.Calc.Tests.Cli;
using UnitsNet;

namespace Lighting.Calc.Tests.Verdicts;

/// <summary>What a catalogue says of a bike is what the bike's own check says, whatever bikes came before.</summary>
public class CatalogueCheckTests
{
    [Fact]
    public void Bikes_wired_alike_keep_their_own_values()
    {
        var catalogue = new CatalogueCheck();
        var generator = new BikeGenerator(seed: 11);
        for (int i = 1; i <= 12; i++)
            AssertSame(Read(generator, i), catalogue);
    }

    [Theory]
    [InlineData("valley-twin")]
    [InlineData("chapel-single")]
    [InlineData("fell-lightweight")]
    public void A_demo_bike_with_other_parts_is_checked_with_its_own(string name)
    {
        var catalogue = new CatalogueCheck();
        Bike bike = BikeLists.Read(CliProcess.Bike(name)).Value.Bike;
        AssertSame(bike, catalogue);
        AssertSame(
            bike with
            {
                BatteryResistance = ElectricResistance.FromMilliohms(35),
                WireTemperature = Temperature.FromDegreesCelsius(60),
            },
            catalogue
        );
        AssertSame(
            bike with
            {
                Lamps =
                [
                    .. bike.Lamps.Select(l =>
                        l with
                        {
                            Specification = LampSpecification.FromPower(
                                LampType.Led,
                                bike.SystemVoltage,
                                Power.FromWatts(7),
                                bike.SystemVoltage * 0.7
                            ),
                        }
                    ),
                ],
            },
            catalogue
        );
        AssertSame(
            bike with
            {
                Switches = [.. bike.Switches.Select(s => s with { Resistance = ElectricResistance.Zero })],
            },
            catalogue
        );
        AssertSame(
            bike with
            {
                Runs = [.. bike.Runs.Select(r => r with { Length = 2 * r.Length, Bundle = 3 })],
            },
            catalogue
        );
        AssertSame(
            bike with
            {
                AllowedDrop = Ratio.FromPercent(1),
                ChargingVoltage = bike.ChargingVoltage * 1.05,
            },
            catalogue
        );
    }

    public static TheoryData<string> Changes => [.. s_changes.Keys];

    [Theory]
    [MemberData(nameof(Changes))]
    public void A_bike_wired_otherwise_in_one_thing_is_not_taken_for_the_one_before(string change)
    {
        var catalogue = new CatalogueCheck();
        Bike bike = BikeLists.Read(CliProcess.Bike("valley-twin")).Value.Bike;
        AssertSame(bike, catalogue);
        Bike other = s_changes[change](bike);
        AssertSame(other, catalogue);
        AssertSame(bike, catalogue);
        Assert.NotEqual(
            Said(BikeCheck.Evaluate(bike, cancellationToken: TestContext.Current.CancellationToken)),
            Said(BikeCheck.Evaluate(other, cancellationToken: TestContext.Current.CancellationToken))
        );
    }

    [Fact]
    public void Other_settings_of_the_same_bike_are_looked_at_by_themselves()
    {
        var catalogue = new CatalogueCheck();
        Bike bike = BikeLists.Read(CliProcess.Bike("valley-twin")).Value.Bike;
        foreach (string when in new[] { "", "lights=main", "ignition=on; brake=on", "" })
            AssertSame(bike, catalogue, new CheckOptions { When = Condition.Parse(when) });
    }

    [Fact]
    public void More_wirings_than_it_keeps_are_checked_like_any()
    {
        var catalogue = new CatalogueCheck();
        Bike bike = BikeLists.Read(CliProcess.Bike("chapel-single")).Value.Bike;
        for (int i = 0; i < 70; i++)
            AssertSame(
                bike with
                {
                    Lamps = [bike.Lamps[0] with { Lamp = $"lamp {i % 36}" }, .. bike.Lamps.Skip(1)],
                },
                catalogue
            );
    }

    [Fact]
    public void A_bike_without_runs_is_lit_by_its_own_conditions()
    {
        var catalogue = new CatalogueCheck();
        foreach (string lit in new[] { "lights=on", "brake=on", "lights=on|park", "" })
            AssertSame(
                Bike.ForSystem(ElectricPotential.FromVolts(12)) with
                {
                    Lamps = [Lamp("tail lamp", "lights=on"), Lamp("other lamp", lit)],
                    Fuses = [new Fuse { Name = "main", Rating = ElectricCurrent.FromAmperes(10) }],
                },
                catalogue
            );

        static FittedLamp Lamp(string name, string when) =>
            new()
            {
                Circuit = "rear",
                Lamp = name,
                Specification = LampSpecification.FromPower(
                    LampType.Filament,
                    ElectricPotential.FromVolts(12),
                    Power.FromWatts(21)
                ),
                LitWhen = Condition.Parse(when),
            };
    }

    [Fact]
    public async Task Threads_share_it()
    {
        var catalogue = new CatalogueCheck();
        var generator = new BikeGenerator(seed: 5);
        Bike[] bikes = [.. Enumerable.Range(1, 24).Select(i => Read(generator, i))];
        string[][] apart =
        [
            .. bikes.Select(b => Said(BikeCheck.Evaluate(b, cancellationToken: TestContext.Current.CancellationToken))),
        ];
        string[][] shared = await Task.WhenAll(
            bikes.Select(b =>
                Task.Run(() => Said(catalogue.Evaluate(b, cancellationToken: TestContext.Current.CancellationToken)))
            )
        );
        Assert.Equal(apart, shared);
    }

    private static readonly Dictionary<string, Func<Bike, Bike>> s_changes = new()
    {
        ["a run leads elsewhere"] = b =>
            b with
            {
                Runs = b.Runs.SetItem(b.Runs.Length - 1, b.Runs[^1] with { To = "loose end" }),
            },
        ["a run has another name"] = b => b with { Runs = [.. b.Runs.Select(r => r with { Name = $"new {r.Name}" })] },
        ["a contact closes in another position"] = b =>
            b with
            {
                Switches = b.Switches.SetItem(0, b.Switches[0] with { ClosedIn = ["other"] }),
            },
        ["a contact closes in one position more"] = b =>
            b with
            {
                Switches = b.Switches.SetItem(
                    0,
                    b.Switches[0] with
                    {
                        ClosedIn = [.. b.Switches[0].ClosedIn, "other"],
                    }
                ),
            },
        ["a contact leads elsewhere"] = b =>
            b with
            {
                Switches = b.Switches.SetItem(0, b.Switches[0] with { To = "loose end" }),
            },
        ["a switch has another name"] = b =>
            b with
            {
                Switches = b.Switches.SetItem(0, b.Switches[0] with { Switch = "other" }),
            },
        ["the fuse feeds another point"] = b =>
            b with
            {
                Fuses = b.Fuses.SetItem(0, b.Fuses[0] with { To = "loose end" }),
            },
        ["the fuse has another name"] = b => b with { Fuses = b.Fuses.SetItem(0, b.Fuses[0] with { Name = "other" }) },
        ["a lamp is connected to another point"] = b =>
            b with
            {
                Lamps = b.Lamps.SetItem(0, b.Lamps[0] with { Feed = b.Lamps[^1].Feed }),
            },
        ["a lamp returns to another point"] = b =>
            b with
            {
                Lamps = b.Lamps.SetItem(0, b.Lamps[0] with { Return = "loose end" }),
            },
        ["a lamp is meant to be lit otherwise"] = b =>
            b with
            {
                Lamps = b.Lamps.SetItem(0, b.Lamps[0] with { LitWhen = Condition.Parse("ignition=on") }),
            },
        ["a lamp has another name"] = b => b with { Lamps = b.Lamps.SetItem(0, b.Lamps[0] with { Lamp = "other" }) },
        ["there is one lamp less"] = b => b with { Lamps = b.Lamps.RemoveAt(b.Lamps.Length - 1) },
        ["two lamps change places"] = b => b with { Lamps = [b.Lamps[1], b.Lamps[0], .. b.Lamps.Skip(2)] },
        ["the earth is the other terminal"] = b =>
            b with
            {
                Earth = b.Earth == Earth.Negative ? Earth.Positive : Earth.Negative,
            },
        ["the lighting is direct"] = b => b with { Lighting = LightingSupply.Direct, Charging = [] },
    };

    private static Bike Read(BikeGenerator generator, int number) =>
        BikeLists
            .Read(
                generator.Lists(number).Aggregate(ListSource.Empty, (source, list) => source.With(list.Name, list.Text))
            )
            .Value.Bike;

    private static void AssertSame(Bike bike, CatalogueCheck catalogue, CheckOptions? options = null) =>
        Assert.Equal(
            Said(BikeCheck.Evaluate(bike, options, TestContext.Current.CancellationToken)),
            Said(catalogue.Evaluate(bike, options, TestContext.Current.CancellationToken))
        );

    // Everything that a report says, the currents to the last digit.
    private static string[] Said(BikeReport report) =>
        [
            .. report.Findings.Select(f => $"{f.Severity} {f.Subject}: {f.Message}"),
            .. report.Fuses.Select(f => f.Headline),
            .. report.Settings.Select(s => $"{s.Setting}: {s.TotalCurrent.Amperes:R} A"),
            .. report.Settings.SelectMany(s =>
                s.Lamps.Select(l => $"{l.Lamp.Lamp} {l.Voltage.Volts:R} V {l.MayDropOut}")
            ),
            .. report.Settings.SelectMany(s => s.Points.Select(p => $"{p.Point} {p.Voltage.Volts:R} V")),
            .. report.Settings.SelectMany(s =>
                s.Contacts.Select(c => $"{c.Contact.Name} {c.Closed} {c.Current.Amperes:R} A")
            ),
            .. report.WorstDrops.SelectMany(d =>
                d.Entries.Select(e => $"{d.Setting}: {d.Lamp.Lamp.Lamp} {e.Kind} {e.Part} {e.Voltage.Volts:R} V")
            ),
            .. report.Charging?.Balances.Select(b => $"{b.Setting} {b.Demand.Amperes:R} A") ?? [],
        ];
}
