using System.Collections.Immutable;
using Lighting.Calc.Tests.Cli;
using UnitsNet;

namespace Lighting.Calc.Tests.Charging;

/// <summary>The tests of the unplugged generator, and what the averages count of momentary loads.</summary>
public class GeneratorTestSheetTests
{
    private const string Lamps =
        "circuit,lamp,type,volts,watts,lit when,duty\nhead,headlamp,resistor,12,60,lights=on,\n"
        + "rear,stop lamp,resistor,12,24,brake=on,\nhorn,horn,resistor,12,36,horn=on,0.5\n";

    [Fact]
    public void Open_voltage_and_resistance_are_read_written_and_on_the_sheet()
    {
        BikeLists lists = BikeLists
            .Read(
                ListSource
                    .Empty.With("lamps.csv", Lamps)
                    .With("bike.csv", "item,value\ngenerator resistance,0.3 ohm\n")
                    .With("charging.csv", "rpm,current,open voltage\n1000,2,20\n4000,12,80\n")
            )
            .Value;
        Assert.Equal(0.3, lists.Bike.GeneratorResistance!.Value.Ohms, 1e-12);
        IReadOnlyDictionary<string, string> written = BikeListsWriter.Write(lists);
        ListSource again = written.Aggregate(ListSource.Empty, (s, l) => s.With(l.Key, l.Value));
        Assert.Equal(lists.Bike, BikeLists.Read(again).Value.Bike);
        GeneratorTest test = EngineReport.Of(lists.Bike, Solved(lists.Bike)).Generator;
        Assert.Equal(0.3, test.Resistance!.Value.Ohms, 1e-12);
        Assert.Equal([20, 80], test.OpenVoltages.Select(v => v.Voltage.Volts));
        // The tolerance of a stator's output is 10 % (tables/tolerances.csv).
        Assert.Equal((72, 88), (test.OpenVoltages[1].Lowest.Volts, Math.Round(test.OpenVoltages[1].Highest.Volts, 9)));
    }

    private static ImmutableArray<OperatingPoint> Solved(Bike bike) =>
        BikeCheck.Evaluate(bike, cancellationToken: TestContext.Current.CancellationToken).Settings;

    [Fact]
    public void What_is_not_listed_is_not_made_up()
    {
        Bike bike = BikeLists
            .Read(ListSource.Empty.With("lamps.csv", Lamps).With("charging.csv", "rpm,current\n1000,2\n4000,12\n"))
            .Value.Bike;
        GeneratorTest test = EngineReport.Of(bike, Solved(bike)).Generator;
        Assert.Null(test.Resistance);
        Assert.Empty(test.OpenVoltages);
    }

    [Fact]
    public void A_momentary_load_without_a_duty_counts_5_percent_of_the_ride()
    {
        Bike bike = BikeLists
            .Read(ListSource.Empty.With("lamps.csv", Lamps).With("charging.csv", "rpm,current\n1000,2\n4000,12\n"))
            .Value.Bike with
        {
            ChargingVoltage = ElectricPotential.FromVolts(12),
        };
        var system = ChargingSystem.Of(bike);
        // 5 A of headlamp, 5 % of 2 A of stop lamp, half of 3 A of horn as listed.
        Assert.Equal(
            5 + 0.05 * 2 + 0.5 * 3,
            system.BalanceIn(bike.In("lights=on; brake=on; horn=on")).Load.Amperes,
            1e-9
        );
        ChargingReport report = system.Report(Condition.Always);
        Finding assumed = Assert.Single(report.Findings, f => f.Kind == FindingKind.DutyAssumed);
        Assert.Equal(["stop lamp"], assumed.Parts);
        Assert.DoesNotContain(
            ChargingSystem
                .Of(bike.WithLamp("stop lamp", duty: Ratio.FromPercent(10)))
                .Report(Condition.Always)
                .Findings,
            f => f.Kind == FindingKind.DutyAssumed
        );
    }

    [Fact]
    public void With_runs_a_lamp_is_momentary_that_only_a_momentary_switch_feeds()
    {
        Bike bike = BikeLists.Read(CliProcess.Bike("valley-twin")).Value.Bike;
        var graph = new HarnessGraph(bike);
        var momentary = new MomentaryLoads(bike, new FuseOptions()).OnlyMomentary(graph);
        Assert.Equal(
            ["stop lamp", "left indicators", "right indicators"],
            bike.Lamps.Where((_, i) => momentary[i]).Select(l => l.Lamp)
        );
    }

    [Theory]
    [InlineData("regulator,zener 14 V\n", true, "Zener diode")]
    [InlineData("regulator,shunt\n", true, "shunt regulator")]
    [InlineData("regulator,zener 14 V\nregulator rating,200 W\n", false, "")]
    [InlineData("regulator,series\n", false, "")]
    public void Much_heat_in_a_regulator_without_a_rating_is_a_caution(string items, bool isCaution, string name)
    {
        Bike bike = BikeLists
            .Read(
                ListSource
                    .Empty.With("lamps.csv", Lamps)
                    .With("bike.csv", "item,value\n" + items)
                    .With("charging.csv", "rpm,current\n1000,2\n4000,12\n")
            )
            .Value.Bike;
        Finding[] found =
        [
            .. ChargingSystem
                .Of(bike)
                .Report(Condition.Always)
                .Findings.Where(f => f.Kind == FindingKind.RegulatorHeatUnrated),
        ];
        Assert.Equal(isCaution ? 1 : 0, found.Length);
        Assert.All(found, f => Assert.StartsWith($"The {name} takes 12 A", f.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void Loads_that_no_speed_covers_have_a_remedy()
    {
        Bike bike = BikeLists
            .Read(ListSource.Empty.With("lamps.csv", Lamps).With("charging.csv", "rpm,current\n1000,2\n4000,3\n"))
            .Value.Bike;
        Finding finding = Assert.Single(
            ChargingSystem.Of(bike).Report(Condition.Always).Findings,
            f => f.Kind == FindingKind.LoadsExceedOutput
        );
        Assert.Equal(3, ((ElectricCurrent)finding.Limit!).Amperes, 1e-9);
        Assert.Contains("3 A at most", finding.Message, StringComparison.Ordinal);
        Assert.Contains("fit a generator of more output", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_no_drain_is_refused()
    {
        var capacity = ElectricCharge.FromAmpereHours(20);
        var drain = ElectricCurrent.FromMilliamperes(20);
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            ParasiticDrain.Time(ElectricCharge.Zero, drain, Ratio.FromPercent(50))
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            ParasiticDrain.Time(capacity, ElectricCurrent.Zero, Ratio.FromPercent(50))
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => ParasiticDrain.Time(capacity, drain, Ratio.Zero));
    }
}
