using Lighting.Calc.Tests.Network;
using UnitsNet;

namespace Lighting.Calc.Tests.Conductors;

/// <summary>Wires that warm with their current, and what that does to a harness.</summary>
public class ConductorHeatTests
{
    private static readonly WireSize s_oneSquare = Benches.Wire("1 mm2");

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.5, 10)]
    [InlineData(1, 40)]
    [InlineData(-1, 40)]
    [InlineData(3, 40)]
    public void A_wire_warms_with_the_square_of_its_load_up_to_the_limit_of_its_insulation(double load, double kelvins)
    {
        // 1 mm² is rated 19 A in free air, 70 °C in 30 °C air (DIN VDE 0298-4).
        Assert.Equal(kelvins, Rise(19 * load, ConductorHeatRule.Square), 1e-9);
    }

    [Fact]
    public void By_the_square_root_it_is_warmer_at_every_part_load()
    {
        Assert.Equal(20, Rise(19 / 4.0, ConductorHeatRule.SquareRoot), 1e-9);
        Assert.Equal(40, Rise(19, ConductorHeatRule.SquareRoot), 1e-9);
        Assert.All(
            Enumerable.Range(1, 18),
            a => Assert.True(Rise(a, ConductorHeatRule.SquareRoot) > Rise(a, ConductorHeatRule.Square))
        );
    }

    [Fact]
    public void In_a_bundle_the_same_current_warms_it_more() =>
        Assert.True(
            Rise(5, ConductorHeatRule.Square, bundle: 4) > Rise(5, ConductorHeatRule.Square)
        );

    [Fact]
    public void A_harness_whose_list_states_no_temperature_drops_more_than_one_at_20_degrees()
    {
        Bike cold = Benches.Sidecar() with { WireTemperature = Temperature.FromDegreesCelsius(20) };
        OperatingPoint warm = Solve(Benches.Sidecar()),
            held = Solve(cold);
        Assert.True(warm.TotalCurrent < held.TotalCurrent);
        for (int i = 0; i < cold.Runs.Length; i++)
        {
            // To the first order: as warm as the currents through cold wires make it.
            (double rated, double kelvins) = ConductorHeat.Limit(cold.Runs[i].Wire, cold.Runs[i].Bundle)!.Value;
            double rise =
                kelvins * ConductorHeat.Share(held.Runs[i].Current.Amperes, rated, ConductorHeatRule.Square);
            Assert.Equal(
                cold.Runs[i].WireResistance(Temperature.FromDegreesCelsius(20 + rise)).Ohms,
                warm.Runs[i].Resistance.Ohms - cold.Runs[i].TotalJointResistance.Ohms,
                1e-12
            );
        }
    }

    [Fact]
    public void No_wire_is_colder_than_the_air()
    {
        Bike bike = new() { WireTemperature = Temperature.FromDegreesCelsius(20) };
        Assert.Equal(20, bike.WireTemperature.DegreesCelsius);
        Assert.Equal(45, InAir(bike, 45));
        Assert.Equal(20, InAir(bike, -5));
        Assert.Equal(-5, InAir(new Bike(), -5));
    }

    [Fact]
    public void The_meter_reads_the_wires_as_warm_as_the_check_does()
    {
        Bike bike = Benches.Sidecar() with { BatteryResistance = ElectricResistance.Zero };
        foreach (
            ExpectedSetting setting in ExpectedReadings
                .Calculate(bike, cancellationToken: TestContext.Current.CancellationToken)
                .Settings
        )
        {
            HarnessSolver solver = new HarnessNetwork(bike).CreateSolver();
            solver.SetSupply(bike.BatteryVoltage);
            OperatingPoint point = solver.Solve(setting.Setting);
            Assert.All(
                setting.Points,
                p => Assert.Equal(point.Points.Single(q => q.Point == p.Point).Voltage.Volts, p.Voltage.Volts, 2e-4)
            );
        }
    }

    private static double InAir(Bike bike, double celsius) =>
        (
            bike with
            {
                AmbientTemperature = Temperature.FromDegreesCelsius(celsius),
            }
        ).WireTemperature.DegreesCelsius;

    private static OperatingPoint Solve(Bike bike) =>
        new HarnessNetwork(bike).CreateSolver().Solve(Benches.Set(bike, "lights=low"));

    private static double Rise(double amperes, ConductorHeatRule rule, int bundle = 1) =>
        ConductorHeat.Limit(s_oneSquare, bundle) is { } limit
            ? limit.Kelvins * ConductorHeat.Share(amperes, limit.Amperes, rule)
            : double.NaN;
}
