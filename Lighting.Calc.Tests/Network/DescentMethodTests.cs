// Single steps of the guarded descent against the same step worked out by hand from the formulas of the laws.
using static Lighting.Calc.Tests.Network.Equations;

namespace Lighting.Calc.Tests.Network;

public sealed class DescentMethodTests
{
    private const double K = 0.55;

    [Theory]
    [InlineData(12, 12)]
    [InlineData(0, 1e-3)]
    public void Start_is_the_circuit_with_next_to_no_load(double emf, double taken)
    {
        // Plus is held at the source's volts, 0.5 ohm to the node, three loads from there to minus.
        NodalSystem circuit = new TestNetwork(
            3,
            1,
            0,
            emf,
            0,
            [new(1, 2, 0.5)],
            [new(2, 0, Load.Filament(12, 2)), new(2, 0, Load.Led(24, 6)), new(2, 0, Load.Resistor(8))]
        ).Equations();
        DescentMethod.StartUnloaded(circuit);
        double[] amperes = emf == 0
            ? [FilamentLaw.At(taken, 12, 2).CurrentAmperes, 24 * taken / 36, taken / 8]
            : [2, 2, 1.5];
        // Places go by law: filament, resistor, driver.
        double[] siemens =
        [
            1e-4 * amperes[0] / taken + 1e-9,
            1e-4 * amperes[2] / taken + 1e-9,
            1e-4 * amperes[1] / taken + 1e-9,
        ];
        for (int j = 0; j < 3; j++)
            Assert.Equal(1, circuit.Loads.Siemens[j] / siemens[j], 1e-12);
        Assert.Equal(emf / (1 + 0.5 * siemens.Sum()), Volts(circuit, 2), 1e-12);
    }

    /// <summary>The law of a filament is concave: its tangent would lead past the point, its chord does not.</summary>
    [Fact]
    public void First_step_goes_by_the_chord_to_zero_and_the_second_by_that_over_the_span_of_the_first()
    {
        const double r1 = 1,
            r2 = 5,
            n1 = 3,
            n2 = 0.5;
        NodalSystem circuit = new TestNetwork(
            4,
            1,
            0,
            12,
            0,
            [new(1, 2, r1), new(1, 3, r2)],
            [new(2, 0, Load.Filament(12, n1)), new(3, 0, Load.Filament(12, n2))]
        ).Equations();
        Put(circuit, (2, 11.9), (3, 11.5));
        double span = 1,
            reach = 1;
        Assert.True(DescentMethod.Step(circuit, leaps: false, ref span, ref reach));
        double v1 = Next(11.9, r1, n1, 1),
            v2 = Next(11.5, r2, n2, 1);
        Assert.Equal(v1, Volts(circuit, 2), 1e-12);
        Assert.Equal(v2, Volts(circuit, 3), 1e-12);
        double widest = Math.Max(Math.Abs(v1 - 11.9) / 11.9, Math.Abs(v2 - 11.5) / 11.5);
        Assert.InRange(widest, 0.05, 0.95);
        Assert.Equal(widest, span, 1e-12);

        Assert.True(DescentMethod.Step(circuit, leaps: false, ref span, ref reach));
        Assert.Equal(Next(v1, r1, n1, widest), Volts(circuit, 2), 1e-12);
        Assert.Equal(Next(v2, r2, n2, widest), Volts(circuit, 3), 1e-12);

        static double Next(double volts, double ohms, double nominal, double span)
        {
            double width = span * volts;
            double chord = (Filament(volts, nominal) - Filament(volts - width, nominal)) / width;
            double residual = Filament(volts, nominal) + (volts - 12) / ohms;
            return volts - residual / (1 / ohms + chord);
        }
    }

    [Fact]
    public void Hardly_any_span_leaves_the_tangent()
    {
        NodalSystem circuit = BehindAnOhm(Load.Filament(12, 3)).Equations();
        Put(circuit, (1, 10));
        double span = 1e-6,
            reach = 1;
        Assert.True(DescentMethod.Step(circuit, leaps: false, ref span, ref reach));
        double amperes = Filament(10, 3);
        Assert.Equal(10 - (amperes - 2) / (1 + K * amperes / 10), Volts(circuit, 1), 1e-12);
    }

    /// <remarks>The law of a ballasted LED is flat under its forward volts and then steep: there the chord falls short
    /// of the tangent.</remarks>
    [Fact]
    public void Tangent_is_kept_where_it_is_steeper_than_the_chord()
    {
        NodalSystem circuit = BehindAnOhm(Load.LedResistor(9, 2)).Equations();
        Put(circuit, (1, 11.5));
        Assert.True(Step(circuit, leaps: false));
        // 1.25 A in the LED, 0.5 A from the source: 0.75 A over 1 + 0.5 siemens.
        Assert.Equal(11, Volts(circuit, 1), 1e-5);
    }

    [Fact]
    public void Load_without_volts_has_no_part_in_the_span()
    {
        // A bridge in balance: the lamp across it gets nothing.
        NodalSystem circuit = new TestNetwork(
            4,
            1,
            0,
            12,
            0,
            [new(1, 2, 2), new(1, 3, 2)],
            [new(2, 0, Load.Filament(12, 1)), new(3, 0, Load.Filament(12, 1)), new(2, 3, Load.Filament(12, 1))]
        ).Equations();
        Put(circuit, (2, 11), (3, 11));
        double span = 1,
            reach = 1;
        Assert.True(DescentMethod.Step(circuit, leaps: false, ref span, ref reach));
        Assert.Equal((11 - Volts(circuit, 2)) / 11, span, 1e-12);
    }

    /// <remarks>Behind 1 ohm at 12 V a driver of more than 36 W cannot be held lit: its P/V² exceeds the 1 siemens of
    /// the wire at every volts where currents meet.</remarks>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Past_the_last_lit_point_steps_lengthen(bool throughTheGround)
    {
        NodalSystem circuit = Driver(40, 2, throughTheGround);
        PutDriver(circuit, throughTheGround, 5);
        double span = 1,
            reach = 1;
        // 8 A in the driver and 7 A from the source; 1 + 40/25 siemens; the step counts twice, then four times.
        Assert.True(DescentMethod.Step(circuit, leaps: false, ref span, ref reach));
        double first = 5 - 2 * (40.0 / 5 + 5 - 12) / (1 + 40.0 / 25);
        Assert.Equal(first, Across(circuit), 1e-12);
        Assert.Equal(2, reach);
        Assert.Equal((5 - first) / 5, span, 1e-12);
        Assert.True(DescentMethod.Step(circuit, leaps: false, ref span, ref reach));
        Assert.Equal(
            Math.Max(1.998, first - 4 * (40 / first + first - 12) / (1 + 40 / (first * first))),
            Across(circuit),
            1e-12
        );
        Assert.Equal(4, reach);
    }

    [Fact]
    public void Lengthened_steps_stop_where_the_first_driver_falls_and_end_with_the_next_plain_one()
    {
        NodalSystem circuit = Driver(60, 4.5);
        PutDriver(circuit, false, 5);
        double span = 1,
            reach = 8;
        Assert.True(DescentMethod.Step(circuit, leaps: false, ref span, ref reach));
        Assert.Equal(0.999 * 4.5, Across(circuit), 1e-12);
        Assert.True(DescentMethod.Step(circuit, leaps: false, ref span, ref reach));
        // Dark it is a resistor of 4.5²/60 ohm, whose straight line meets the source's in one step.
        double ohms = 4.5 * 4.5 / 60;
        Assert.Equal(12 * ohms / (1 + ohms), Across(circuit), 1e-12);
        Assert.Equal(1, reach);
        Assert.False(DescentMethod.Step(circuit, leaps: false, ref span, ref reach));
    }

    [Fact]
    public void Plain_step_stops_where_the_first_of_two_drivers_falls()
    {
        // Two branches that the held plus keeps apart; the second driver has farther to go to its minimum.
        NodalSystem circuit = new TestNetwork(
            4,
            1,
            0,
            3,
            0,
            [new(1, 2, 1), new(1, 3, 1)],
            [new(2, 0, Load.Led(5, 2)), new(3, 0, Load.Led(4, 1))]
        ).Equations();
        Put(circuit, (2, 2.5), (3, 2.5));
        double step1 = -(5 / 2.5 + 2.5 - 3) / (1 - 5 / 6.25),
            step2 = -(4 / 2.5 + 2.5 - 3) / (1 - 4 / 6.25);
        double fraction = (1.998 - 2.5) / step1;
        Assert.True(fraction < (0.999 - 2.5) / step2 && fraction < 1);
        Assert.True(Step(circuit, leaps: false));
        Assert.Equal(1.998, Volts(circuit, 2), 1e-12);
        Assert.Equal(2.5 + fraction * step2, Volts(circuit, 3), 1e-12);
    }

    [Fact]
    public void Leap_softens_no_more_than_it_must_and_stops_where_the_driver_falls()
    {
        NodalSystem circuit = Driver(40, 2);
        PutDriver(circuit, false, 5);
        double span = 1,
            reach = 1;
        // Slope -1.6 at 1 siemens: half of it left away is the first that will do, and leads 5 V down, past 1.998 V.
        Assert.True(DescentMethod.Step(circuit, leaps: true, ref span, ref reach));
        Assert.Equal(1.998, Across(circuit), 1e-12);
        Assert.Equal((5 - 1.998) / 5, span, 1e-12);
        Assert.Equal(1, reach);
    }

    [Fact]
    public void Close_past_the_edge_a_leap_goes_all_the_way_to_the_fall()
    {
        NodalSystem circuit = Driver(36.0036, 2);
        PutDriver(circuit, false, 6);
        Assert.True(Step(circuit, leaps: true));
        Assert.Equal(1.998, Across(circuit), 1e-9);
    }

    /// <remarks>Between the lit point and the point that cannot be held currents point up; a leap is to leave
    /// both.</remarks>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Leap_goes_down_though_the_currents_point_up(bool throughTheGround)
    {
        NodalSystem circuit = Driver(35.9, 2, throughTheGround);
        PutDriver(circuit, throughTheGround, 5.8);
        Assert.True(35.9 / 5.8 + 5.8 - 12 < 0 && 1 - 35.9 / (5.8 * 5.8) < 0);
        Assert.True(Step(circuit, leaps: true));
        Assert.Equal(1.998, Across(circuit), 1e-9);
    }

    /// <summary>The greatest step of a lit driver tells which way is down; what is dark does not count.</summary>
    [Theory]
    [InlineData(35.9, 5.8, true)]
    [InlineData(36.0036, 6, false)]
    public void Leap_is_turned_by_the_lit_driver_that_moves_most(double watts, double volts, bool pointsUp)
    {
        NodalSystem circuit = new TestNetwork(
            5,
            1,
            0,
            12,
            0,
            [new(1, 2, 1), new(1, 3, 1), new(1, 4, 1)],
            [new(2, 0, Load.Led(watts, 2)), new(3, 0, Load.Led(30, 2)), new(4, 0, Load.Led(600, 11))]
        ).Equations();
        // The second is a little above its lit point, the third dark and far under its volts.
        Put(circuit, (2, volts), (3, 6 + Math.Sqrt(6) + 0.001), (4, 0.5));
        Assert.Equal(pointsUp, watts / volts + volts - 12 < 0);
        Assert.True(Step(circuit, leaps: true));
        Assert.True(Volts(circuit, 2) < volts);
    }

    [Fact]
    public void Leap_is_halved_until_the_co_content_falls()
    {
        // The driver's leap is six steps long; the resistor beside it, one step from its volts, would be thrown past
        // them.
        const double watts = 36.0036;
        NodalSystem circuit = new TestNetwork(
            4,
            1,
            0,
            12,
            0,
            [new(1, 2, 1), new(1, 3, 1)],
            [new(2, 0, Load.Led(watts, 2)), new(3, 0, Load.Resistor(1))]
        ).Equations();
        Put(circuit, (2, 6), (3, 7));
        double step = -(watts / 6 + 6 - 12) / (1 - 0.999 * watts / 36);
        double fraction = (1.998 - 6) / step;
        double start = CoContent(6, 7);
        int halvings = 0;
        while (!(CoContent(6 + fraction * step, 7 - fraction) < start))
        {
            fraction /= 2;
            halvings++;
        }

        Assert.True(halvings > 0 && fraction > 1, $"{halvings} halvings to {fraction}");
        Assert.True(Step(circuit, leaps: true));
        Assert.Equal(6 + fraction * step, Volts(circuit, 2), 1e-6);
        Assert.Equal(7 - fraction, Volts(circuit, 3), 1e-6);

        // Wires and resistor ½·g·V² each, the driver P·(½ + ln(V/Vmin)).
        static double CoContent(double driver, double resistor)
        {
            double lit = driver >= 2 ? watts * (0.5 + Math.Log(driver / 2)) : watts * driver * driver / 8;
            return ((12 - driver) * (12 - driver) + (12 - resistor) * (12 - resistor) + resistor * resistor) / 2 + lit;
        }
    }

    /// <remarks>At the very edge, 36 W at 6 V, the currents meet but the least change lets the driver fall.</remarks>
    [Fact]
    public void Point_that_cannot_be_held_ends_a_plain_descent_but_not_one_with_leaps()
    {
        NodalSystem circuit = Driver(36, 2);
        PutDriver(circuit, false, 6);
        double span = 1,
            reach = 1;
        Assert.False(DescentMethod.Step(circuit, leaps: false, ref span, ref reach));
        Assert.Equal(6, Across(circuit));
        Assert.True(DescentMethod.Step(circuit, leaps: true, ref span, ref reach));
    }

    /// <remarks>Nothing leads on from there: the iterations must run out.</remarks>
    [Fact]
    public void Descent_at_the_very_edge_comes_to_an_end()
    {
        NodalSystem circuit = Driver(36, 2);
        PutDriver(circuit, false, 6);
        circuit.Solutions = 0;
        DescentMethod.Descend(circuit, leaps: true);
        Assert.Equal(6, Across(circuit));
        Assert.InRange(circuit.Solutions, 1, 4 * SolverLimits.DescentIterations);
    }

    [Fact]
    public void Volts_that_are_no_number_lead_nowhere()
    {
        NodalSystem circuit = Driver(20, 2);
        PutDriver(circuit, false, double.NaN);
        double span = 1,
            reach = 1;
        Assert.False(DescentMethod.Step(circuit, leaps: false, ref span, ref reach));
        Assert.False(DescentMethod.Step(circuit, leaps: true, ref span, ref reach));
    }

    /// <summary>The lit point of one driver is ½·(E + √(E² − 4·P·R)); past the edge it is the resistor
    /// Vmin²/P.</summary>
    [Theory]
    [InlineData(20, false)]
    [InlineData(33, false)]
    [InlineData(35.99, false)]
    [InlineData(36.01, false)]
    [InlineData(36.01, true)]
    [InlineData(37, false)]
    [InlineData(37, true)]
    [InlineData(60, true)]
    public void Descent_from_no_load_ends_at_the_bright_point(double watts, bool leaps)
    {
        NodalSystem circuit = Driver(watts, 2, throughTheGround: true);
        DescentMethod.StartUnloaded(circuit);
        circuit.Solutions = 0;
        DescentMethod.Descend(circuit, leaps);
        double dark = 4 / watts;
        double expected = watts < 36 ? 6 + Math.Sqrt(36 - watts) : 12 * dark / (1 + dark);
        Assert.Equal(expected, Across(circuit), 1e-6);
        Assert.InRange(circuit.Solutions, 1, 100);
    }

    /// <summary>A first step, whose span and reach are not looked at.</summary>
    private static bool Step(NodalSystem circuit, bool leaps)
    {
        double span = 1,
            reach = 1;
        return DescentMethod.Step(circuit, leaps, ref span, ref reach);
    }

    private static double Filament(double volts, double nominalAmperes) =>
        volts < 8.4
            ? FilamentLaw.At(volts, 12, nominalAmperes).CurrentAmperes
            : nominalAmperes * Math.Pow(volts / 12, K);

    /// <summary>One driver at 12 V, 1 ohm in the source or in two wires of half an ohm at plus and minus.</summary>
    private static NodalSystem Driver(double watts, double minimumVolts, bool throughTheGround = false) =>
        (
            throughTheGround
                ? new TestNetwork(
                    4,
                    1,
                    0,
                    12,
                    0,
                    [new(1, 2, 0.5), new(3, 0, 0.5)],
                    [new(2, 3, Load.Led(watts, minimumVolts))]
                )
                : BehindAnOhm(Load.Led(watts, minimumVolts))
        ).Equations();

    private static void PutDriver(NodalSystem circuit, bool throughTheGround, double volts)
    {
        if (throughTheGround)
            Put(circuit, (2, 6 + volts / 2), (3, 6 - volts / 2));
        else
            Put(circuit, (1, volts));
    }

    private static double Across(NodalSystem circuit) => circuit.Across(circuit.Loads.Plus[0], circuit.Loads.Minus[0]);
}
