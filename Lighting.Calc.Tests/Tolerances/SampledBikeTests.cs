using Lighting.Calc.Tests.Charging;
using Lighting.Calc.Tests.Network;
using UnitsNet;

namespace Lighting.Calc.Tests.Tolerances;

/// <summary>A sample's answer is what the whole check says of the bike that the sample is.</summary>
public class SampledBikeTests
{
    private const int Samples = 12;

    public static TheoryData<string> Bikes => ["valley-twin", "chapel-single", "sidecar", "sidecar, positive earth", "no runs", "LED twin", "standing"];

    [Theory]
    [MemberData(nameof(Bikes))]
    public void A_sample_equals_the_check_of_the_bike_that_its_values_make(string name) => Compare(Named(name), new ToleranceOptions { Samples = 100, Seed = 3 });

    [Fact]
    public void Also_with_the_engine_off_where_the_balance_stays_at_the_charging_volts()
    {
        Bike bike = Named("valley-twin");
        Compare(bike, new ToleranceOptions { Samples = 100, Seed = 4, Supply = bike.BatteryVoltage });
    }

    [Fact]
    public void Also_at_measured_volts_and_in_some_settings_only() =>
        Compare(Named("valley-twin"), new ToleranceOptions { Samples = 100, Seed = 5, Supply = ElectricPotential.FromVolts(13.1), When = Condition.Parse("lights=main; dip=high") });

    private static Bike Named(string name)
    {
        Bike twin = ToleranceBikes.Demo("valley-twin");
        return name switch
        {
            "sidecar" => Benches.Sidecar(),
            "sidecar, positive earth" => Benches.Sidecar(Earth.Positive),
            "no runs" => ToleranceBikes.Resistors(2, 3),
            "LED twin" => twin with { Lamps = [.. twin.Lamps.Select(l => l.Lamp == "headlamp low" ? l with { Specification = Benches.Led(13.5, 20, 8) } : l)] },
            "standing" => twin.Riding((4000, 20, "ignition=on; lights=main; dip=low"), (0, 30, "ignition=on; lights=park"), (0, 10, "")),
            _ => ToleranceBikes.Demo(name),
        };
    }

    private static void Compare(Bike bike, ToleranceOptions options)
    {
        SampleRun run = ToleranceBikes.Prepared(bike, options, out SamplingPlan plan);
        var places = new QuantityPlaces(plan);
        var sampler = new Sampler(plan, new double[bike.Fuses.Length]);
        var quantities = new double[places.Quantities];
        var verdicts = new bool[places.Verdicts];
        var values = new double[plan.Uncertain.Parts.Length];
        for (int sample = 0; sample < Samples; sample++)
        {
            run.Draw(sample, values);
            // The check takes a standing bike's volts from its state of charge alone; the battery's spread on top of them is left out here.
            if (plan.Uncertain.Kind != SupplyKind.Battery)
                values[plan.Uncertain.Parts.IndexOf(plan.Uncertain.Parts.Single(p => p.Kind == PartKind.BatteryVolts))] = 1;
            sampler.Answer(values, quantities, verdicts);
            Bike drawn = SampledBike.Of(plan.Uncertain, values);
            BikeReport report = BikeCheck.Evaluate(drawn, new CheckOptions { When = options.When, Supply = ElectricPotential.FromVolts(plan.Uncertain.SupplyVolts(values)) }, TestContext.Current.CancellationToken);
            for (int i = 0; i < plan.Lamps.Length; i++)
            {
                int lamp = plan.Lamps[i];
                OperatingPoint worst = IntendedOnStates.Of(drawn, report.Settings, lamp).MinBy(p => p.Lamps[lamp].Voltage.Volts)!;
                Near(worst.Lamps[lamp].Voltage.Volts, quantities[places.LampVolts(i)]);
                Near(worst.Lamps[lamp].RelativeLight?.DecimalFractions ?? 0, quantities[places.LampLight(i)]);
                Assert.Equal(worst.Lamps[lamp].Drop!.Value.Percent <= bike.AllowedDrop.Percent, verdicts[places.DropHolds(i)]);
            }

            for (int f = 0; f < bike.Fuses.Length; f++)
                Near(report.Fuses[f].Steady.WorstCurrent.Amperes, quantities[places.FuseAmperes(f)]);
            Assert.Equal(report.Charging?.Worst?.BreakEven.Speed is not null, plan.HasBreakEven);
            if (plan.HasBreakEven)
                Assert.Equal(report.Charging!.Worst!.BreakEven.Speed!.Value.RevolutionsPerMinute, quantities[places.BreakEvenRpm], 1e-5);
            if (plan.HasRide)
                Assert.Equal(report.Charging!.Ride!.NetCharge!.Value.AmpereHours, quantities[places.RideAmpereHours], 1e-8);
        }
    }

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, 1e-8 * Math.Max(1, Math.Abs(expected)));
}
