using UnitsNet;

namespace Lighting.Calc.Tests.WireSizing;

public sealed class SizingLawTests
{
    [Fact]
    public void A_looser_allowed_drop_needs_no_more_copper_than_the_choice_may_be_over_the_best()
    {
        var random = new Random(11);
        int less = 0;
        for (int n = 0; n < 60; n++)
        {
            Bike bike = RandomHarness.Make(random, 2 + random.Next(5));
            WireSizingResult tight = DemoBikeTests.Size(bike, s_gauges),
                loose = DemoBikeTests.Size(bike with { AllowedDrop = bike.AllowedDrop * 1.3 }, s_gauges);
            if (!tight.IsFeasible || !tight.Unmet.IsEmpty)
                continue;
            Assert.True(loose.IsFeasible, loose.Explanation);
            Assert.True(
                loose.CopperChosen!.Value.CubicCentimeters
                    <= tight.CopperChosen!.Value.CubicCentimeters * (1 + OptimalityTests.MostOver),
                $"harness {n}"
            );
            less +=
                loose.CopperChosen.Value.CubicCentimeters < tight.CopperChosen.Value.CubicCentimeters * (1 - 1e-6)
                    ? 1
                    : 0;
        }

        Assert.True(less >= 10, $"Only {less} harnesses needed less.");
    }

    [Fact]
    public void All_volts_and_lengths_and_resistances_times_a_factor_give_the_same_sizes()
    {
        // The same currents then flow, and every drop is the same share of the source.
        var random = new Random(12);
        for (int n = 0; n < 40; n++)
        {
            Bike bike = RandomHarness.Make(random, 2 + random.Next(4));
            bike = bike with
            {
                Lamps =
                [
                    .. bike.Lamps.Select(l =>
                        l with
                        {
                            Specification = LampSpecification.FromPower(
                                LampType.Halogen,
                                l.Specification.ReferenceVoltage,
                                l.Specification.ReferencePower
                            ),
                        }
                    ),
                ],
            };
            WireSizingResult one = DemoBikeTests.Size(bike, s_gauges),
                two = DemoBikeTests.Size(Scaled(bike, 2), s_gauges);
            Assert.Equal(one.Runs.Select(r => r.Chosen.Name), two.Runs.Select(r => r.Chosen.Name));
            if (one.IsFeasible)
                Assert.Equal(2 * one.CopperChosen!.Value.CubicCentimeters, two.CopperChosen!.Value.CubicCentimeters, 9);
        }
    }

    [Fact]
    public void The_order_of_the_runs_never_changes_the_copper()
    {
        var random = new Random(13);
        for (int n = 0; n < 40; n++)
        {
            Bike bike = RandomHarness.Make(random, 3 + random.Next(4));
            WireSizingResult forward = DemoBikeTests.Size(bike, s_gauges),
                backward = DemoBikeTests.Size(bike with { Runs = [.. bike.Runs.Reverse()] }, s_gauges);
            Assert.Equal(forward.IsFeasible, backward.IsFeasible);
            Assert.Equal(forward.CopperChosen?.CubicCentimeters ?? 0, backward.CopperChosen?.CubicCentimeters ?? 0, 9);
        }
    }

    [Fact]
    public void Thicker_feed_wire_never_lowers_a_filament_lamp_fed_through_it_and_returned_by_the_frame()
    {
        var random = new Random(14);
        for (int n = 0; n < 100; n++)
        {
            Bike bike = FilamentTree(random, out int[] upstream);
            double[] before = Volts(bike);
            int run = random.Next(bike.Runs.Length);
            double[] after = Volts(
                bike with
                {
                    Runs = bike.Runs.SetItem(
                        run,
                        bike.Runs[run] with
                        {
                            Wire = AmericanWireGauge.Solid(6),
                            Length = bike.Runs[run].Length * 0.9,
                        }
                    ),
                }
            );
            for (int lamp = 0; lamp < before.Length; lamp++)
                if (Beyond(upstream, lamp, run))
                    Assert.True(after[lamp] >= before[lamp] - 1e-9, $"tree {n}, lamp {lamp}, run {run}");
        }
    }

    [Fact]
    public void Thicker_wire_to_one_lamp_dims_its_neighbour_on_the_same_feed_a_little()
    {
        // The thickened lamp draws more, and the shared feed loses more: the reason every choice is solved and not
        // inferred.
        Bike bike = new()
        {
            Runs =
            [
                Wire("feed", Bike.BatteryPlus, "split", 16),
                Wire("one", "split", "lamp one", 20),
                Wire("two", "split", "lamp two", 20),
            ],
            Lamps = [Lamp("one", "lamp one"), Lamp("two", "lamp two")],
        };
        double[] thin = Volts(bike),
            thick = Volts(bike with { Runs = bike.Runs.SetItem(1, Wire("one", "split", "lamp one", 10)) });
        Assert.True(thick[0] > thin[0] + 0.05, "the lamp itself gains");
        Assert.InRange(thin[1] - thick[1], 1e-4, 0.02);
    }

    [Fact]
    public void An_equalizing_wire_between_two_frames_brightens_one_lamp_and_dims_the_other()
    {
        Bike bike = new()
        {
            Runs =
            [
                Wire("near", "near frame", Bike.BatteryMinus, 14),
                Wire("far", "far frame", Bike.BatteryMinus, 22),
                Wire("between", "near frame", "far frame", 30),
            ],
            Lamps = [Lamp("near", Bike.BatteryPlus, "near frame"), Lamp("far", Bike.BatteryPlus, "far frame")],
        };
        double[] thin = Volts(bike),
            thick = Volts(bike with { Runs = bike.Runs.SetItem(2, Wire("between", "near frame", "far frame", 12)) });
        Assert.True(thick[0] < thin[0] && thick[1] > thin[1]);
    }

    private static readonly WireSizingOptions s_gauges = new() { Family = WireConstruction.SolidGauge };

    private static Bike Scaled(Bike bike, double factor) =>
        bike with
        {
            BatteryVoltage = bike.BatteryVoltage * factor,
            ChargingVoltage = bike.ChargingVoltage * factor,
            BatteryResistance = bike.BatteryResistance * factor,
            Runs =
            [
                .. bike.Runs.Select(r =>
                    r with
                    {
                        Length = r.Length * factor,
                        JointResistance = r.JointResistance * factor,
                    }
                ),
            ],
            Switches = [.. bike.Switches.Select(s => s with { Resistance = s.Resistance * factor })],
            Fuses = [.. bike.Fuses.Select(f => f with { Resistance = f.Resistance * factor })],
            Lamps =
            [
                .. bike.Lamps.Select(l =>
                    l with
                    {
                        Specification = LampSpecification.FromCurrent(
                            l.Specification.Type,
                            l.Specification.ReferenceVoltage * factor,
                            l.Specification.ReferenceCurrent
                        ),
                    }
                ),
            ],
        };

    private static Bike FilamentTree(Random random, out int[] upstream)
    {
        int runs = 3 + random.Next(6);
        int[] parents = [.. Enumerable.Range(0, runs).Select(i => i == 0 ? -1 : random.Next(-1, i))];
        upstream = parents;
        return new Bike
        {
            BatteryResistance = ElectricResistance.FromMilliohms(random.Next(30)),
            Runs =
            [
                .. parents.Select(
                    (p, i) =>
                        Wire($"run {i}", p < 0 ? Bike.BatteryPlus : $"point {p}", $"point {i}", 12 + 2 * random.Next(5))
                ),
            ],
            Lamps = [.. parents.Select((_, i) => Lamp($"lamp {i}", $"point {i}"))],
        };
    }

    private static bool Beyond(int[] upstream, int point, int run)
    {
        for (; point >= 0; point = upstream[point])
            if (point == run)
                return true;
        return false;
    }

    private static double[] Volts(Bike bike) =>
        [.. new HarnessNetwork(bike).CreateSolver().Solve(Setting.Empty).Lamps.Select(l => l.Voltage.Volts)];

    private static Run Wire(string name, string from, string to, int gauge) =>
        new()
        {
            Name = name,
            From = from,
            To = to,
            Wire = AmericanWireGauge.Solid(gauge),
            Length = Length.FromMeters(2),
        };

    private static FittedLamp Lamp(string name, string feed, string back = Bike.BatteryMinus) =>
        new()
        {
            Circuit = "test",
            Lamp = name,
            Specification = LampSpecification.FromPower(
                LampType.Filament,
                ElectricPotential.FromVolts(12),
                Power.FromWatts(35)
            ),
            Feed = feed,
            Return = back,
        };
}
