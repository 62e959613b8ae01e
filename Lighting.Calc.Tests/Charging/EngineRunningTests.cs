using UnitsNet;

namespace Lighting.Calc.Tests.Charging;

/// <summary>With battery ignition no surplus is found in a setting in which the engine stands, and the list states what
/// keeps it out.</summary>
public class EngineRunningTests
{
    private const string Lamps = "circuit,lamp,type,volts,watts,lit when\nhead,head,filament,12,24,lights=on\n";
    private const string Charging = "rpm,current\n1000,2 A\n4000,6 A\n";

    [Theory]
    [InlineData("", "ignition,coil,fixed,12,24,ignition=on\n", "ignition=on")]
    [InlineData("ignition,battery\n", "ignition,coil,fixed,12,24,ignition=on\n", "ignition=on")]
    [InlineData("ignition,magneto\n", "ignition,coil,fixed,12,24,ignition=on\n", "everything off")]
    [InlineData("", "", "everything off")]
    [InlineData("ignition,battery\n", "panel,warning,filament,12,2,ignition=on\n", "ignition=on")]
    public void The_surplus_is_that_of_a_setting_in_which_the_engine_runs(string items, string lamps, string setting) =>
        Assert.Equal(
            setting,
            ChargingSystem.Of(Read(items, lamps)).Report(Condition.Always).Excess!.Setting.ToString()
        );

    [Theory]
    [InlineData("", RegulatorKind.NotStated, null, FindingKind.SurplusOutput)]
    [InlineData("regulator,none\n", RegulatorKind.None, null, FindingKind.Overcharge)]
    [InlineData("regulator,series\n", RegulatorKind.Series, null, null)]
    [InlineData("regulator,shunt\n", RegulatorKind.Shunt, null, null)]
    [InlineData("regulator,zener 14 V\n", RegulatorKind.Shunt, 14.0, null)]
    public void A_regulator_that_the_list_states_is_not_asked_for(
        string items,
        RegulatorKind kind,
        double? zener,
        FindingKind? finding
    )
    {
        Bike bike = Read(items, "");
        Assert.Equal((kind, zener), (bike.Regulator, bike.ZenerVoltage?.Volts));
        BikeReport report = BikeCheck.Evaluate(bike, cancellationToken: TestContext.Current.CancellationToken);
        FindingKind[] found =
        [
            .. report
                .Charging!.Findings.Select(f => f.Kind)
                .Where(k => k is FindingKind.SurplusOutput or FindingKind.Overcharge),
        ];
        Assert.Equal(finding is { } one ? [one] : [], found);
        // What is written reads back the same.
        BikeLists written = BikeLists
            .Read(
                BikeListsWriter
                    .Write(new BikeLists { Bike = bike })
                    .Aggregate(ListSource.Empty, (source, list) => source.With(list.Key, list.Value))
            )
            .Value;
        Assert.Equal(
            (bike.Regulator, bike.ZenerVoltage?.Volts, bike.Ignition),
            (written.Bike.Regulator, written.Bike.ZenerVoltage?.Volts, written.Bike.Ignition)
        );
    }

    // 6 A of surplus at the 14 V that the diode holds.
    [Fact]
    public void A_Zener_diode_dissipates_at_its_own_voltage()
    {
        ChargingSystem system = ChargingSystem.Of(Read("regulator,zener 14 V\n", ""));
        Assert.Equal(
            84,
            (double)
                system
                    .BalanceIn(SettingEnumeration.Of(system.Bike, Condition.Always)[0])
                    .At(RotationalSpeed.FromRevolutionsPerMinute(4000))
                    .ShuntHeat!.Value.Watts,
            1e-9
        );
    }

    [Theory]
    [InlineData("regulator,zener 14 bananas\n")]
    [InlineData("regulator,zehner\n")]
    [InlineData("ignition,spark\n")]
    public void Words_the_list_does_not_know_are_faults(string items) => Assert.Single(Lists(items, "").Faults);

    private static Bike Read(string items, string lamps) => Lists(items, lamps).Value.Bike;

    private static ListResult<BikeLists> Lists(string items, string lamps) =>
        BikeLists.Read(
            ListSource
                .Empty.With("bike.csv", "item,value\n" + items)
                .With("lamps.csv", Lamps + lamps)
                .With("charging.csv", Charging)
        );
}
