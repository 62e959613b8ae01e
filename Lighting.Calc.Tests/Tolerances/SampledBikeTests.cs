using Lighting.Calc.Tests.Charging;
using Lighting.Calc.Tests.Network;
using UnitsNet;

namespace Lighting.Calc.Tests.Tolerances;

/// <summary>A sample's answer is what the whole check says of the bike that the sample is.</summary>
public class SampledBikeTests
{
    private const int Samples = 12;

    public static TheoryData<string> Bikes =>
        ["valley-twin", "chapel-single", "sidecar", "sidecar, positive earth", "no runs", "LED twin", "standing"];

    [Theory]
    [MemberData(nameof(Bikes))]
    public void A_sample_equals_the_check_of_the_bike_that_its_values_make(string name) =>
        Compare(Named(name), new ToleranceOptions { Samples = 100, Seed = 3 });

    [Fact]
    public void Also_with_the_engine_off_where_the_balance_stays_at_the_charging_volts()
    {
        Bike bike = Named("valley-twin");
        Compare(
            bike,
            new ToleranceOptions
            {
                Samples = 100,
                Seed = 4,
                Check = new CheckOptions { Engine = EngineState.Off },
            }
        );
    }

    [Fact]
    public void Also_at_measured_volts_and_in_some_settings_only() =>
        Compare(
            Named("valley-twin"),
            new ToleranceOptions
            {
                Samples = 100,
                Seed = 5,
                Check = new CheckOptions
                {
                    Supply = ElectricPotential.FromVolts(13.1),
                    When = Condition.Parse("lights=main; dip=high"),
                },
            }
        );

    private static Bike Named(string name)
    {
        Bike twin = ToleranceBikes.Demo("valley-twin");
        return name switch
        {
            "sidecar" => Benches.Sidecar(),
            "sidecar, positive earth" => Benches.Sidecar(Earth.Positive),
            "no runs" => ToleranceBikes.Resistors(2, 3),
            "LED twin" => twin with
            {
                Lamps =
                [
                    .. twin.Lamps.Select(l =>
                        l.Lamp == "headlamp low" ? l with { Specification = Benches.Led(13.5, 20, 8) } : l
                    ),
                ],
            },
            "standing" => twin.Riding(
                (4000, 20, "ignition=on; lights=main; dip=low"),
                (0, 30, "ignition=on; lights=park"),
                (0, 10, "")
            ),
            _ => ToleranceBikes.Demo(name),
        };
    }

    private static void Compare(Bike bike, ToleranceOptions options)
    {
        SamplingPlan plan = ToleranceBikes.EliminationPlan(bike, options);
        var sampler = new Sampler(plan);
        for (int sample = 0; sample < Samples; sample++)
        {
            double[] values = Sampler.Values(plan, sample);
            // The check takes the battery voltage with the engine off from the state of charge alone; the battery's
            // spread is left out here.
            if (options.Check.Engine == EngineState.Running)
                values[
                    plan.Uncertain.Parts.IndexOf(plan.Uncertain.Parts.Single(p => p.Kind == PartKind.BatteryVolts))
                ] = 1;
            SampledBike solved = sampler.Solve(values);
            Bike drawn = plan.Uncertain.With(values);
            BikeReport report = BikeCheck.Evaluate(
                drawn,
                plan.Uncertain.CheckOptions(options),
                TestContext.Current.CancellationToken
            );
            foreach (int lamp in plan.Lamps)
            {
                OperatingPoint worst = IntendedOnStates
                    .Of(drawn, report.Settings, lamp)
                    .MinBy(p => p.Lamps[lamp].Voltage.Volts)!;
                Near(worst.Lamps[lamp].Voltage.Volts, solved.LeastVolts[lamp]);
                Near(
                    report
                        .WorstDrops.Single(d => d.Lamp.Lamp.Lamp == drawn.Lamps[lamp].Lamp)
                        .Lamp.Drop!.Value.DecimalFractions,
                    solved.MostDrop[lamp]
                );
                Near(report.Settings.Max(p => p.Lamps[lamp].Voltage.Volts), solved.MostVolts[lamp]);
            }

            for (int f = 0; f < bike.Fuses.Length; f++)
            {
                Near(report.Fuses[f].Steady.WorstCurrent.Amperes, solved.FuseAmperes[f]);
                Near(report.Fuses[f].Steady.ContinuousCurrent.Amperes, solved.ContinuousAmperes[f]);
            }

            Assert.Equal(
                report.Charging?.Worst?.BreakEven.Speed?.RevolutionsPerMinute ?? double.NaN,
                solved.BreakEvenRpm,
                1e-5
            );
            Assert.Equal(report.Charging?.Ride?.NetCharge?.AmpereHours ?? double.NaN, solved.RideAmpereHours, 1e-8);
        }
    }

    private static void Near(double expected, double actual) =>
        Assert.Equal(expected, actual, 1e-8 * Math.Max(1, Math.Abs(expected)));
}
