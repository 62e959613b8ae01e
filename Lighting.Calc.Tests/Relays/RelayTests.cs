using Lighting.Calc.Tests.Fuses;
using Lighting.Calc.Tests.Lists;
using UnitsNet;

namespace Lighting.Calc.Tests.Relays;

/// <summary>Relays in lists and solved with the network.</summary>
public sealed class RelayTests
{
    private const string Runs =
        "run,from,to,wire,length\n"
        + "feed,battery +,switch in,1 mm2,0\n"
        + "coil wire,switch out,horn relay 86,1 mm2,0\n"
        + "supply,battery +,horn relay 30,1 mm2,1\n"
        + "horn wire,horn relay 87,horn feed,1 mm2,1\n"
        + "coil earth,horn relay 85,battery -,1 mm2,0\n";

    private const string Lamps = "circuit,lamp,type,volts,amps,feed,return\nhorn,horn,fixed,12,4,horn feed,battery -\n";
    private const string Switches = "switch,from,to,closed in\nbutton,switch in,switch out,pressed\n";

    [Fact]
    public void A_row_with_a_name_alone_is_a_relay_of_typical_figures_joined_at_its_DIN_72552_terminals()
    {
        Relay relay = Assert.Single(Read("relay\nhorn relay\n").Relays);
        Assert.Equal(("horn relay 86", "horn relay 85"), (relay.CoilFrom, relay.CoilTo));
        RelayContact contact = Assert.Single(relay.Contacts);
        Assert.Equal(("horn relay 30", "horn relay 87", false), (contact.From, contact.To, contact.IsBreak));
        Assert.Equal(100, relay.CoilResistance.Ohms);
        Assert.Equal((7.2, 1.2), (relay.PullInVoltage.Volts, relay.DropOutVoltage.Volts));
        Assert.Equal(relay, Relay.Typical("horn relay", ElectricPotential.FromVolts(12)));
        // On 6 V half the voltages and a quarter of the ohms, so that its watts are the same.
        var six = Relay.Typical("r", ElectricPotential.FromVolts(6));
        Assert.Equal((25, 3.6), (six.CoilResistance.Ohms, six.PullInVoltage.Volts));
    }

    [Fact]
    public void Lists_with_relays_read_back_the_same_as_CSV_and_as_JSON()
    {
        Bike bike = Read(
            "relay,coil from,coil to,coil resistance,coil watts,pull in,drop out,from,to,contact,"
                + "contact resistance,notes\n"
                + "horn relay,,,,1.8 W,7,1.5,,,,0.02,old one\n"
                + "horn relay,,,,,,,horn relay 30,spare,break,0.03,second contact\n"
        );
        Relay relay = Assert.Single(bike.Relays);
        Assert.Equal(80, relay.CoilResistance.Ohms, 1e-9);
        Assert.Equal([(false, 0.02), (true, 0.03)], relay.Contacts.Select(c => (c.IsBreak, c.Resistance.Ohms)));
        var lists = new BikeLists { Bike = bike };
        Assert.Equal(
            bike,
            BikeLists
                .Read(
                    BikeListsWriter.Write(lists).Aggregate(ListSource.Empty, (source, l) => source.With(l.Key, l.Value))
                )
                .Value.Bike
        );
        Assert.Equal(bike, BikeLists.Read(ListSource.FromJson(BikeListsWriter.WriteJson(lists))).Value.Bike);
        Assert.Empty(bike.Validate());
    }

    [Theory]
    [InlineData("relay,coil resistance,coil watts\nr,90,2 W\n", "is given beside the coil's resistance")]
    [InlineData("relay,pull in,drop out\nr,5,6\n", "is above the voltage from which the relay pulls in")]
    [InlineData("relay,contact\nr,maybe\n", "is not a kind of contact")]
    [InlineData("relay\nhorn\n", "is the name of a lamp already")]
    [InlineData("relay\nbutton\n", "is the name of a switch already")]
    [InlineData("relay,coil from,coil to\nr,a,a\n", "is the point it comes from as well")]
    [InlineData("relay,pull in\nr,7\nr,8\n", "is of the coil, which is on")]
    [InlineData("relay\nr\nr\n", "has this contact on")]
    [InlineData("relay,coil resistance\nr,0\n", "coil resistance")]
    public void A_wrong_row_is_one_clear_error(string relays, string problem) =>
        Assert.Contains(problem, Assert.Single(ListSamples.Faults(Source(relays))), StringComparison.Ordinal);

    [Fact]
    public void Relays_need_runs() =>
        Assert.Contains(
            "needs runs.csv",
            Assert.Single(
                ListSamples.Faults(
                    ListSamples.Of(("lamps.csv", "lamp,circuit,volts,watts\nx,y,12,5\n"), ("relays.csv", "relay\nr\n"))
                )
            ),
            StringComparison.Ordinal
        );

    // 13.5 V: the horn's 4 A over 2 m of 1 mm² (19.5 mΩ/m at 20 °C) and 10 mΩ of contact; the coil of 100 Ω takes
    // 0.135 A.
    [Fact]
    public void The_contact_follows_its_coil_and_no_switch_of_a_setting_is_added()
    {
        Bike bike = Read("relay\nhorn relay\n") with { WireTemperature = Temperature.FromDegreesCelsius(20) };
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        solver.SetBatteryResistance(ElectricResistance.Zero);
        Setting[] settings = [.. SettingEnumeration.Of(bike, Condition.Always)];
        Assert.Equal(["everything off", "button=pressed"], settings.Select(s => s.ToString()));
        OperatingPoint off = solver.Solve(settings[0]),
            on = solver.Solve(settings[1]);
        Assert.Equal(0, off.Lamps[0].Current.Amperes);
        Assert.Equal(0, off.TotalCurrent.Amperes);
        double ohms = 2 * bike.Runs[2].WireResistance(bike.WireTemperature).Ohms + 0.010;
        Assert.Equal(13.5 - 4 * ohms, on.Lamps[0].Voltage.Volts, 1e-9);
        Assert.Equal(0.135, on.Lamps[1].Current.Amperes, 1e-12);
        Assert.Equal(4.135, on.TotalCurrent.Amperes, 1e-9);
        Assert.Equal(4, on.Contacts.Single(c => c.Contact.IsRelay).Current.Amperes, 1e-9);
    }

    [Fact]
    public void A_break_contact_is_closed_at_rest_and_open_while_the_coil_is_fed()
    {
        Bike bike = Read("relay,to,contact\nhorn relay,horn relay 87,break\n");
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        Setting[] settings = [.. SettingEnumeration.Of(bike, Condition.Always)];
        Assert.Equal([4, 0], settings.Select(s => Math.Round(solver.Solve(s).Lamps[0].Current.Amperes, 9)));
    }

    // 60 Ω before the 100 Ω coil leave it 13.5 · 100/160 = 8.44 V; 100 Ω leave 6.75 V, below 7.2 V.
    [Theory]
    [InlineData(60, 8.4375, true)]
    [InlineData(99.99, 6.7503, false)]
    public void A_coil_pulls_in_where_its_voltage_reaches_what_it_needs(double ohms, double volts, bool pullsIn)
    {
        Bike bike = Read("relay\nhorn relay\n");
        bike = bike with
        {
            Switches = [bike.Switches[0] with { Resistance = ElectricResistance.FromOhms(ohms) }, bike.Switches[1]],
        };
        BikeReport report = BikeCheck.Evaluate(bike, cancellationToken: TestContext.Current.CancellationToken);
        OperatingPoint on = report.Settings[1];
        Assert.Equal(volts, on.Lamps[1].Voltage.Volts, 1e-3);
        Assert.Equal(pullsIn ? 4 : 0, on.Lamps[0].Current.Amperes, 1e-9);
        Finding[] weak = [.. report.Findings.Where(f => f.Kind == FindingKind.RelayDoesNotPullIn)];
        Assert.Equal(pullsIn ? 0 : 1, weak.Length);
        if (!pullsIn)
            Assert.Equal(
                ("horn relay", volts, Severity.Fault),
                (weak[0].Subject, Math.Round(((ElectricPotential)weak[0].Value!).Volts, 4), weak[0].Severity)
            );
    }

    [Fact]
    public void A_relay_whose_break_contact_feeds_its_coil_chatters()
    {
        Bike bike = Read(
            "relay,coil from,from,to,contact\nhorn relay,buzz,switch out,buzz,break\n",
            Runs.Replace(
                "coil wire,switch out,horn relay 86",
                "stub,horn relay 30,horn relay 87",
                StringComparison.Ordinal
            )
        );
        Finding chatters = Assert.Single(
            BikeCheck.Evaluate(bike, cancellationToken: TestContext.Current.CancellationToken).Findings,
            f => f.Kind == FindingKind.RelayChatters
        );
        Assert.Equal("button=pressed", chatters.Setting!.ToString());
        Assert.Contains("its own contact opens its coil", chatters.Message, StringComparison.Ordinal);
    }

    // At rest the coil has 13.5 · 100/101 V behind the 1 Ω; pulled in, the 0.063 Ω load takes all but 0.8 V.
    [Fact]
    public void A_relay_whose_load_takes_the_voltage_off_its_coil_chatters()
    {
        Bike bike = Read("relay,coil from,from\nhorn relay,switch out,switch out\n");
        bike = bike with
        {
            Switches = [bike.Switches[0] with { Resistance = ElectricResistance.FromOhms(1) }, bike.Switches[1]],
            Lamps = [FuseBike.Load("horn", LampType.Resistor, 12, 190, "horn feed", Bike.BatteryMinus), bike.Lamps[1]],
            Runs = [.. bike.Runs.Select(r => r with { Length = Length.Zero })],
        };
        BikeReport report = BikeCheck.Evaluate(bike, cancellationToken: TestContext.Current.CancellationToken);
        Finding chatters = Assert.Single(report.Findings, f => f.Kind == FindingKind.RelayChatters);
        Assert.True(((ElectricPotential)chatters.Value!).Volts < 1.2);
        Assert.Contains("with its load on", chatters.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_relay_that_nothing_feeds_is_a_caution() =>
        Assert.Contains(
            BikeCheck
                .Evaluate(
                    Read("relay,coil from\nhorn relay,nowhere\n"),
                    cancellationToken: TestContext.Current.CancellationToken
                )
                .Findings,
            f => f is { Kind: FindingKind.RelayNeverIn, Severity: Severity.Caution }
        );

    [Fact]
    public void A_chain_of_relays_settles_and_a_relay_may_hold_itself_off_alone()
    {
        Bike bike = Read("relay\nhorn relay\n")
            .WithRelay(
                Relay.Typical("second", ElectricPotential.FromVolts(12)) with
                {
                    CoilFrom = "horn feed",
                    CoilTo = Bike.BatteryMinus,
                    Contacts = [new RelayContact { From = Bike.BatteryPlus, To = "lamp feed" }],
                }
            );
        bike = bike with
        {
            Lamps = [.. bike.Lamps, FuseBike.Load("lamp", LampType.Filament, 12, 1, "lamp feed", Bike.BatteryMinus)],
        };
        HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
        Setting[] settings = [.. SettingEnumeration.Of(bike, Condition.Always)];
        Assert.Equal([false, true], settings.Select(s => solver.Solve(s).Lamps[^1].Current.Amperes > 0.5));
    }

    [Fact]
    public void What_a_fuse_before_a_relay_contact_feeds_is_judged_with_it()
    {
        Bike bike = Read("relay\nhorn relay\n");
        bike = bike with
        {
            Fuses = [FuseBike.Fuse("horn fuse", 5, "fuse in", "horn relay 30")],
            Runs = [.. bike.Runs.Select(r => r.Name == "supply" ? r with { To = "fuse in" } : r)],
        };
        FuseSuitability fuse = Assert.Single(
            BikeCheck.Evaluate(bike, cancellationToken: TestContext.Current.CancellationToken).Fuses
        );
        Assert.Equal(4, fuse.Steady.WorstCurrent.Amperes, 1e-9);
        Assert.Contains(fuse.Protection.DownstreamRuns, r => r.Run.Name == "horn wire");
    }

    [Fact]
    public void A_bike_built_in_code_is_refused_with_half_a_relay()
    {
        Bike bike = Read("relay\nhorn relay\n");
        Assert.Contains(
            "without a contact",
            Assert.Single((bike with { Switches = [bike.Switches[0]] }).Validate()).Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "without a coil",
            Assert.Single((bike with { Lamps = [bike.Lamps[0]] }).Validate()).Message,
            StringComparison.Ordinal
        );
    }

    private static ListSource Source(string relays, string? runs = null) =>
        ListSamples.Of(
            ("lamps.csv", Lamps),
            ("runs.csv", runs ?? Runs),
            ("switches.csv", Switches),
            ("relays.csv", relays)
        );

    private static Bike Read(string relays, string? runs = null) => BikeLists.Read(Source(relays, runs)).Value.Bike;
}
