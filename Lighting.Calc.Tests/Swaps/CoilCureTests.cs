using UnitsNet;

namespace Lighting.Calc.Tests.Swaps;

/// <summary>LED drivers on a lighting coil without a battery: the volts run away, and what stops them is told and
/// does.</summary>
public class CoilCureTests
{
    private static readonly Bike s_bike = SwapBikes.Demo("fell-lightweight").Bike;
    private static readonly SwapReport s_all = SwapBikes.Compare(s_bike, Swap.ToLed(s_bike).Replacements);
    private static readonly SwapReport s_tail = SwapBikes.Compare(
        s_bike,
        SwapBikes.Replace(("tail lamp", SwapBikes.Class("LED signal 6V")))
    );

    [Fact]
    public void Without_a_cure_the_coil_gives_far_more_than_before()
    {
        double before = s_all.Before.DirectLighting!.Points[^1].TerminalVoltage.Volts;
        Assert.InRange(before, 6.5, 7.5);
        Assert.True(Volts(s_all.After.Bike).Max() > 4 * before);
    }

    // The list has 4.7 A at 6000 rpm into 6.75 V, at which the LEDs take 15 W, 3 W and 1 W: 2.8 A with the drops of the
    // wires.
    [Fact]
    public void The_regulator_takes_what_the_coil_gives_beyond_the_lamps()
    {
        double taken = 4.7 - (15 + 3 + 1) / 6.75;
        Assert.Equal(taken, (double)Remedy(s_all).Value!.Value, 0.1);
        Assert.Equal(taken * 6.75, Figure(s_all, 1), 1.0);
    }

    // The drivers drop out under 5 V and stand 8 V: every resistor leaves the one or the other.
    [Fact]
    public void Where_all_are_drivers_no_resistor_holds_the_volts_and_that_is_said()
    {
        Assert.Equal(FindingKind.CoilNeedsRegulator, Remedy(s_all).Kind);
        Assert.Contains("No resistor across it does the same", Remedy(s_all).Message, StringComparison.Ordinal);
        double largest = Figure(s_all, 2);
        for (double ohms = 1; ohms < 12; ohms += 0.1)
        {
            double volts = Volts(WithResistor(s_all.After.Bike, ohms)).Max();
            Assert.True(
                Math.Abs(ohms - largest) < 0.06 || (ohms < largest ? volts < 5 : volts > 8),
                $"{ohms} Ω: {volts} V"
            );
        }
    }

    // Fitted as told, at every speed: no more than before the swap.
    [Fact]
    public void Where_one_is_a_driver_the_resistor_holds_the_volts_that_it_is_said_to_hold()
    {
        double ohms = Figure(s_tail, 2),
            most = Figure(s_tail, 4);
        double[] volts = Volts(WithResistor(s_tail.After.Bike, ohms));
        Assert.Equal(most, volts.Max(), 0.05);
        Assert.True(
            volts.Max()
                <= Math.Max(6.75, s_tail.Before.DirectLighting!.Points.Max(p => p.TerminalVoltage.Volts)) + 1e-6,
            $"{volts.Max()} V"
        );
        Assert.Equal(volts[0], Figure(s_tail, 5), 0.05);
        Assert.Equal(volts.Max() * volts.Max() / ohms, Figure(s_tail, 3), 0.5);
        Assert.True(Figure(s_tail, 8) >= 2 * volts.Max() * volts.Max() / ohms);
    }

    [Fact]
    public void Where_the_volts_do_not_rise_no_cure_is_told() =>
        Assert.DoesNotContain(
            SwapBikes
                .Compare(
                    s_bike,
                    SwapBikes.Replace(("tail lamp", s_bike.Lamps.First(l => l.Lamp == "tail lamp").Specification))
                )
                .About("lighting coil"),
            IsRemedy
        );

    private static Finding Remedy(SwapReport report) => Assert.Single(report.About("lighting coil"), IsRemedy);

    private static bool IsRemedy(Finding finding) =>
        finding.Kind is FindingKind.CoilOvervoltageRemedy or FindingKind.CoilNeedsRegulator;

    private static double Figure(SwapReport report, int index) => (double)Remedy(report).Figures[index].Value;

    private static double[] Volts(Bike bike)
    {
        DirectLighting lighting = DirectLighting.Of(bike, DirectLighting.Of(s_bike, coilResistance: null).Source);
        return
        [
            .. s_all.After.DirectLighting!.Points.Select(p =>
                lighting.At(p.Speed, s_all.After.DirectLighting.Setting).TerminalVoltage.Volts
            ),
        ];
    }

    private static Bike WithResistor(Bike bike, double ohms) =>
        bike with
        {
            Lamps = bike.Lamps.Add(
                new FittedLamp
                {
                    Circuit = "coil",
                    Lamp = "resistor",
                    Specification = LampSpecification.FromCurrent(
                        LampType.Resistor,
                        ElectricPotential.FromVolts(6),
                        ElectricCurrent.FromAmperes(6 / ohms)
                    ),
                    Feed = Bike.BatteryPlus,
                    Return = Bike.BatteryMinus,
                }
            ),
        };
}
