// The search for drivers that may drop out: its bound by hand, and small circuits for each of its two searches.
using static Lighting.Calc.Tests.Network.Equations;

namespace Lighting.Calc.Tests.Network;

public sealed class DropOutSearchTests
{
    /// <remarks>
    /// Behind 1 ohm at 12 V a driver of 3 V minimum draws P/3 at most: under 27 W it keeps 12 − P/3 &gt; 3 V whatever
    /// happens. From 27 W on it can stay dark, as a resistor of 9/P ohm. Past 36 W it is dark from the first.
    /// </remarks>
    [Theory]
    [InlineData(26.9, false, true)]
    [InlineData(27.1, true, false)]
    [InlineData(35, true, false)]
    [InlineData(36.5, false, false)]
    public void One_driver_may_drop_out_where_its_dark_point_can_be_held(
        double watts,
        bool mayDropOut,
        bool boundSuffices
    )
    {
        NodalSystem circuit = Solved(BehindAnOhm(Load.Led(watts, 3)));
        UndervoltageDropout search = Searched(circuit, out int solutions);
        Assert.Equal(mayDropOut, search.MayDropOut(0));
        if (watts > 36)
            Assert.Equal(0, solutions);
        else if (boundSuffices)
            Assert.Equal(2, solutions);
        else
            Assert.True(solutions > 2);
    }

    /// <remarks>What the filament draws at 12 V counts, 2^0.55 of its amperes at 6 V: 12 − 5 − 1.464·I must be over 4
    /// V.</remarks>
    [Theory]
    [InlineData(2.0, true)]
    [InlineData(2.1, false)]
    public void Bound_takes_a_filament_at_the_volts_of_the_source(double amperes, bool suffices)
    {
        Assert.Equal(suffices, 12 - 5 - Math.Pow(2, 0.55) * amperes > 4);
        NodalSystem circuit = Solved(BehindAnOhm(Load.Led(20, 4), Load.Filament(6, amperes)));
        Searched(circuit, out int solutions);
        Assert.Equal(suffices, solutions == 2);
    }

    /// <remarks>Branches that the held plus keeps apart, each close under its own bound of 27 W; what is dark anyway is
    /// not asked for.</remarks>
    [Fact]
    public void Bound_is_taken_for_each_lit_driver_by_itself()
    {
        NodalSystem circuit = Solved(
            new TestNetwork(
                5,
                1,
                0,
                12,
                0,
                [new(1, 2, 1), new(1, 3, 1), new(4, 0, 1)],
                [new(2, 0, Load.Led(60, 3)), new(3, 0, Load.Led(26.5, 3)), new(1, 4, Load.Led(26.8, 3))]
            )
        );
        UndervoltageDropout search = Searched(circuit, out int solutions);
        Assert.Equal(3, solutions);
        for (int i = 0; i < 3; i++)
            Assert.False(search.MayDropOut(i));
    }

    /// <summary>Of two drivers on one earth wire, against all points that the circuit can hold.</summary>
    /// <remarks>
    /// Each has a feed from the plus, and a wire joins the two feeds.
    /// In the first three a driver stays dark only while the other is lit; in the next three only while both are dark;
    /// in the last two the first of them can fall, and neither. Taken from 60,000 circuits of rounded numbers.
    /// </remarks>
    [Theory]
    [InlineData(0.5, 0.2, 0.2, 1.3, 39, 29, 4, 3)]
    [InlineData(0.2, 1, 0.6, 1, 9, 20, 2, 3)]
    [InlineData(0.7, 0.6, 0.9, 0.7, 5, 19, 3, 4)]
    [InlineData(0.8, 0.5, 0.1, 1e6, 21, 35, 3, 3)]
    [InlineData(0.7, 0.8, 0.4, 1e6, 13, 12, 2, 2)]
    [InlineData(0.4, 0.4, 0.2, 1e6, 20, 25, 2, 2)]
    [InlineData(0.5, 0.5, 0.5, 1e6, 20, 15, 3, 3)]
    [InlineData(0.1, 0.1, 0.1, 1e6, 20, 15, 3, 3)]
    public void Drivers_that_are_dark_at_another_holdable_point_are_told(
        double feed1,
        double feed2,
        double ground,
        double between,
        double watts1,
        double watts2,
        double minimum1,
        double minimum2
    )
    {
        var network = new TestNetwork(
            5,
            1,
            0,
            12,
            0.1,
            [new(1, 2, feed1), new(1, 3, feed2), new(4, 0, ground), new(2, 3, between)],
            [new(2, 4, Load.Led(watts1, minimum1)), new(3, 4, Load.Led(watts2, minimum2))]
        );
        NodalSystem circuit = Solved(network);
        Assert.True(circuit.Loads.IsLit(0) && circuit.Loads.IsLit(1));
        UndervoltageDropout search = Searched(circuit, out _);
        List<StableOperatingPoint> points = new StableOperatingPoints(network, 1).Find();
        Assert.Contains(points, p => p.Lit == 3);
        for (int i = 0; i < 2; i++)
            Assert.Equal(points.Exists(p => (p.Lit >> i & 1) == 0), search.MayDropOut(i));
    }

    [Fact]
    public void Driver_that_is_dark_anyway_is_not_said_to_drop_out()
    {
        // On one earth wire a driver whose minimum is never reached, and one that could be dark as well.
        NodalSystem circuit = Solved(
            new TestNetwork(
                3,
                1,
                0,
                12,
                0.1,
                [new(2, 0, 0.9)],
                [new(1, 2, Load.Led(5, 11.5)), new(1, 2, Load.Led(30, 3))]
            )
        );
        Assert.False(circuit.Loads.IsLit(0));
        UndervoltageDropout search = Searched(circuit, out _);
        Assert.False(search.MayDropOut(0));
        Assert.True(search.MayDropOut(1));
    }

    [Fact]
    public void Answer_of_the_search_before_is_forgotten()
    {
        NodalSystem circuit = Solved(BehindAnOhm(Load.Led(35, 3)));
        var search = new UndervoltageDropout(circuit);
        search.Run();
        Assert.True(search.MayDropOut(0));
        circuit.TakeSource(15, 1);
        Assert.True(Lighting.Calc.StableOperatingPoint.Find(circuit, warmStart: false, out _));
        search.Run();
        Assert.False(search.MayDropOut(0));
    }

    /// <summary>Nothing of the search is left: volts to the last digit, currents, residual and locks are those of the
    /// point found.</summary>
    [Theory]
    [InlineData(20)]
    [InlineData(35)]
    public void Circuit_is_left_at_the_point_it_was_at(double watts)
    {
        NodalSystem circuit = Solved(
            new TestNetwork(
                3,
                1,
                0,
                12,
                0.4,
                [new(2, 0, 0.6)],
                [new(1, 2, Load.Led(watts, 3)), new(1, 2, Load.Filament(12, 0.01))]
            )
        );
        circuit.GatherLoadVolts();
        circuit.Loads.Evaluate();
        circuit.UpdateResidual();
        // A trace under the digits of the volts, as polishing leaves it.
        circuit.LowVolts[0] = 1e-17;
        double[] volts = [.. circuit.Volts],
            low = [.. circuit.LowVolts],
            amperes = [.. circuit.Loads.Amperes],
            residual = [.. circuit.Residual];
        double source = circuit.SourceAmperes;
        new UndervoltageDropout(circuit).Run();
        Assert.Equal(volts, circuit.Volts);
        Assert.Equal(low, circuit.LowVolts);
        Assert.Equal(amperes, circuit.Loads.Amperes);
        Assert.Equal(source, circuit.SourceAmperes);
        for (int i = 0; i < residual.Length; i++)
            Assert.Equal(residual[i], circuit.Residual[i], 1e-14);
        Assert.DoesNotContain(true, circuit.Loads.Locked);
    }

    private static NodalSystem Solved(TestNetwork network)
    {
        NodalSystem circuit = network.Equations();
        Assert.True(Lighting.Calc.StableOperatingPoint.Find(circuit, warmStart: false, out _));
        return circuit;
    }

    private static UndervoltageDropout Searched(NodalSystem circuit, out int solutions)
    {
        circuit.Solutions = 0;
        var search = new UndervoltageDropout(circuit);
        search.Run();
        solutions = circuit.Solutions;
        return search;
    }
}
