// The laws as the solver evaluates them, in bulk, against the laws themselves; slopes and co-content against currents.

namespace Lighting.Calc.Tests.Network;

public sealed class LoadLawTests
{
    private static readonly Load[] s_loads =
    [
        Load.Filament(12, 2),
        Load.Filament(6, 0.5, 3),
        Load.Led(5, 6),
        Load.Led(20, 3, 2),
        Load.LedResistor(6, 15),
        Load.LedResistor(9, 100, 4),
        Load.Fixed(2),
        Load.Fixed(0.3, 2),
        Load.Resistor(6),
        Load.Resistor(100, 5),
    ];

    public static TheoryData<double> SomeVolts =>
        [-14, -6, -0.03, -1e-6, 0, 1e-6, 0.04, 0.3, 0.5, 0.7, 3, 5.99, 6, 6.01, 12, 15];

    [Theory]
    [MemberData(nameof(SomeVolts))]
    public void Loads_straight_on_the_source_follow_their_laws(double volts)
    {
        var n = new TestNetwork(
            2,
            1,
            0,
            volts,
            0,
            [],
            [.. s_loads.Select(l => new TestLoad(1, 0, l)), .. s_loads.Select(l => new TestLoad(1, 0, l.Reverse()))]
        );
        CircuitSolver solver = n.Solver();
        Assert.Equal(SolveStatus.Solved, solver.Solve());
        for (int i = 0; i < s_loads.Length; i++)
        {
            double expected = s_loads[i].At(volts).CurrentAmperes;
            Assert.Equal(expected, solver.LoadAmperes(i), 1e-14 + 1e-14 * Math.Abs(expected));
            double reversed = -s_loads[i].At(-volts).CurrentAmperes;
            Assert.Equal(reversed, solver.LoadAmperes(s_loads.Length + i), 1e-14 + 1e-14 * Math.Abs(reversed));
        }
    }

    [Fact]
    public void Slope_and_co_content_are_derivative_and_integral_of_the_current()
    {
        const double h = 1e-5;
        foreach (Load load in s_loads)
        {
            for (double v = -3.0123; v < 15; v += 0.0517)
            {
                LawPoint at = load.At(v);
                double slope = (load.At(v + h).CurrentAmperes - load.At(v - h).CurrentAmperes) / (2 * h);
                double current = (load.CoContentWatts(v + h) - load.CoContentWatts(v - h)) / (2 * h);
                Assert.Equal(slope, at.SlopeSiemens, 1e-5 + 1e-3 * Math.Abs(slope));
                Assert.Equal(current, at.CurrentAmperes, 1e-5);
            }
        }
    }
}
