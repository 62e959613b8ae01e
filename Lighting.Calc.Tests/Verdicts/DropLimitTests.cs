using UnitsNet;

namespace Lighting.Calc.Tests.Verdicts;

/// <summary>What a lamp may lose: its own limit, the bike's, or the published one of its kind; and the light that is
/// left.</summary>
public class DropLimitTests
{
    private const string Lamps =
        "circuit,lamp,type,volts,watts,feed,return,allowed "
        + "drop\nhead,head,filament,12,24,lit,frame,\nrear,tail,filament,12,5,lit,frame,\n"
        + "rear,stop,filament,12,21,lit,frame,\nhorn,horn,fixed,12,24,lit,frame,\n";

    // Whole circuit on 12 V: headlamp and lamps under 15 W 0.6 V, over 15 W 0.9 V, horn 1.0 V.
    [Theory]
    [InlineData("head", 0.6, false)]
    [InlineData("tail", 0.6, false)]
    [InlineData("stop", 0.9, false)]
    [InlineData("horn", 1.0, true)]
    public void Without_a_stated_limit_the_published_one_of_the_kind_of_circuit_decides(
        string lamp,
        double volts,
        bool isAdvice
    )
    {
        Bike bike = Read("", Lamps);
        var limit = DropLimit.Of(bike, bike.Lamps.Single(l => l.Lamp == lamp), ElectricPotential.FromVolts(13.5));
        Assert.Equal(volts / 13.5, limit.Share.DecimalFractions, 12);
        Assert.Equal(isAdvice, limit.IsAdvice);
    }

    [Theory]
    [InlineData("allowed drop,4 %\n", "", 4)]
    [InlineData("allowed drop,4 %\n", "2 %", 2)]
    [InlineData("", "2 %", 2)]
    public void The_lamps_own_limit_goes_before_the_bikes(string items, string own, double percent)
    {
        Bike bike = Read(
            items,
            Lamps
                .Replace("24,lit,frame,\nhorn", "24,lit,frame," + own + "\nhorn", StringComparison.Ordinal)
                .Replace("24,lit,frame,\nrear", $"24,lit,frame,{own}\nrear", StringComparison.Ordinal)
        );
        var limit = DropLimit.Of(bike, bike.Lamps[0], ElectricPotential.FromVolts(13.5));
        Assert.Equal(percent, limit.Share.Percent, 9);
        Assert.False(limit.IsAdvice);
    }

    // 0.5 Ω in the common feed: about 3 V of it gone, of every lamp alike.
    [Fact]
    public void All_lamps_over_one_limit_are_one_finding_worst_first()
    {
        BikeReport report = Check("allowed drop,5 %\n", "0.5 ohm");
        Finding finding = Assert.Single(report.Findings, f => f.Kind == FindingKind.VoltageDropTooLarge);
        Assert.Equal(4, finding.Parts.Length + 1);
        Assert.Equal(
            finding.Figures.OfType<Ratio>().OrderByDescending(r => r.Percent),
            finding.Figures.OfType<Ratio>()
        );
        Assert.True(((Ratio)finding.Value!).Percent >= ((Ratio)finding.Figures[0]).Percent);
        Assert.Contains("(limit 5 %). Also: ", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_horn_over_the_published_limit_is_a_caution_only() =>
        Assert.Equal(
            [("horn", Severity.Caution)],
            Check("", "0.5 ohm")
                .Findings.Where(f => f.Kind == FindingKind.VoltageDropTooLarge && f.Subject == "horn")
                .Select(f => (f.Subject, f.Severity))
        );

    [Fact]
    public void A_joint_beyond_the_trades_limit_is_the_first_place_to_clean()
    {
        VoltageDropBreakdown drop = Check("", "0.5 ohm").WorstDrops[0];
        VoltageDropItem first = drop.OverLimit[0];
        Assert.Equal((VoltageDropKind.FeedJoint, "feed"), (first.Kind, first.Part));
        Assert.Equal(0.1, first.Limit!.Value.Volts, 12);
        Assert.Empty(Check("", "1 mohm").WorstDrops[0].OverLimit);
    }

    [Fact]
    public void A_joint_without_a_resistance_has_the_typical_one_and_that_is_noted()
    {
        BikeReport report = Check("", "");
        Assert.Equal(2, report.Bike.Runs[0].TotalJointResistance.Milliohms, 9);
        Finding note = Assert.Single(report.Findings, f => f.Kind == FindingKind.JointsAssumed);
        Assert.Equal("Joints without a listed resistance: 1, taken as 2 mΩ each, a typical value.", note.Message);
        Assert.DoesNotContain(Check("", "0 ohm").Findings, f => f.Kind == FindingKind.JointsAssumed);
    }

    // H4 low prints its lumens at 13.2 V, P21W at 13.5 V: by (V/13.2)^3.4 and (V/13.5)^3.4 at 13 V.
    [Theory]
    [InlineData("P21W", 13.5)]
    [InlineData("R2 low", 13.2)]
    public void Light_counts_from_the_voltage_of_the_published_lumens(string code, double lumenVolts)
    {
        Assert.True(LampTable.TryFind(code, ElectricPotential.FromVolts(12), out PublishedLamp? lamp));
        Assert.Equal(lumenVolts, lamp.Specification.FluxVoltage!.Value.Volts);
        Assert.Equal(
            Math.Pow(13 / lumenVolts, 3.4),
            lamp.Specification.PublishedLightAt(ElectricPotential.FromVolts(13))!.Value.DecimalFractions,
            1e-9
        );
    }

    [Fact]
    public void The_light_of_an_LED_without_published_lumens_is_unknown()
    {
        var led = LampSpecification.FromPower(LampType.Led, ElectricPotential.FromVolts(12), Power.FromWatts(3));
        Assert.Null(led.PublishedLightAt(ElectricPotential.FromVolts(12)));
        Assert.Equal(
            1,
            (led with { ReferenceFlux = LuminousFlux.FromLumens(200) })
                .PublishedLightAt(ElectricPotential.FromVolts(12))!
                .Value.DecimalFractions,
            1e-9
        );
    }

    private static BikeReport Check(string items, string joint) =>
        BikeCheck.Evaluate(Read(items, Lamps, joint), cancellationToken: TestContext.Current.CancellationToken);

    private static Bike Read(string items, string lamps, string joint = "1 mohm") =>
        BikeLists
            .Read(
                ListSource
                    .Empty.With("bike.csv", "item,value\n" + items)
                    .With("lamps.csv", lamps)
                    .With(
                        "runs.csv",
                        $"run,from,to,wire,length,joints,joint resistance\nfeed,battery +,lit,2.5 mm2,0.1 "
                            + $"m,1,{joint}\nstrap,frame,battery -,2.5 mm2,0.1 m,0,\n"
                    )
            )
            .Value.Bike;
}
