namespace Lighting.Calc.Tests.Swaps;

public class AllLedTests
{
    [Fact]
    public void Every_lamp_of_the_demo_twin_has_its_class_and_the_ignition_is_no_lamp()
    {
        Bike bike = SwapBikes.Demo("valley-twin").Bike;
        AllLedProposal proposal = Swap.ToLed(bike);
        Assert.Empty(proposal.Unclassed);
        Assert.Equal(
            [
                "LED headlamp minor",
                "LED headlamp",
                "LED small bayonet",
                "LED small bayonet",
                "LED small bayonet",
                "LED stop-tail minor",
                "LED stop-tail",
                "LED signal",
                "LED signal",
            ],
            proposal.Replacements.Select(r => r.Replacement.Code!)
        );
    }

    [Fact]
    public void A_six_volt_bike_gets_six_volt_LEDs()
    {
        AllLedProposal proposal = Swap.ToLed(SwapBikes.Demo("chapel-single").Bike);
        Assert.Empty(proposal.Unclassed);
        Assert.All(proposal.Replacements, r => Assert.Contains("6V", r.Replacement.Code!, StringComparison.Ordinal));
    }

    [Fact]
    public void Lamps_without_a_class_are_listed_with_the_reason()
    {
        Bike bike = SwapBikes.LampsOnly(
            "circuit,lamp,code,type,volts,watts\na,unknown,,,12,10\nb,new,,led,13.5,3\nc,amber major,PY21/5W "
                + "major,,,\nd,horn,,resistor,12,30\ne,stop,P21W,,,\n"
        );
        AllLedProposal proposal = Swap.ToLed(bike);
        Assert.Equal(["stop"], proposal.Replacements.Select(r => r.Lamp));
        Assert.Equal(["unknown", "new", "amber major"], proposal.Unclassed.Select(u => u.Lamp.Lamp));
        Assert.Contains("no code", proposal.Unclassed[0].Reason, StringComparison.Ordinal);
        Assert.Contains("LED already", proposal.Unclassed[1].Reason, StringComparison.Ordinal);
        Assert.Contains("two filaments", proposal.Unclassed[2].Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_socket_class_without_an_LED_for_these_volts_is_named() =>
        Assert.Contains(
            "'sealed beam' on 6 V",
            Swap.ToLed(SwapBikes.LampsOnly("circuit,lamp,code\na,head,6006 high\n", "system voltage,6\n"))
                .Unclassed.Single()
                .Reason,
            StringComparison.Ordinal
        );

    [Fact]
    public void The_table_of_classes_is_read_as_it_stands()
    {
        foreach (TableRow row in PublishedTable.Load("led-classes").Read())
        {
            LedClass led = LedClassTable.All.Single(c => c.Code == row.Text("code"));
            Assert.Equal(row.Number("watts"), (double)led.Specification.ReferencePower.Watts, 1e-9);
            Assert.Equal(row.Number("maximum_v"), led.Specification.MaximumVoltage!.Value.Volts);
            Assert.Equal(row.Number("minimum_v"), led.Specification.MinimumVoltage!.Value.Volts);
            Assert.Equal(row.Text("two_function") == "yes", led.Minor is not null);
            if (led.Minor is { } minor)
                Assert.Equal(row.Number("minor_watts"), (double)minor.ReferencePower.Watts, 1e-9);
        }
    }

    [Fact]
    public void Every_socket_class_of_the_lamp_table_has_an_LED_on_12_volts() =>
        Assert.All(
            LampTable.All.Where(l => l.SystemVoltage.Volts == 12),
            l => Assert.NotNull(LedClassTable.ForSocket(l.SocketClass, l.SystemVoltage))
        );
}
