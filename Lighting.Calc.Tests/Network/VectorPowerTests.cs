using System.Runtime.Intrinsics;

namespace Lighting.Calc.Tests.Network;

public class VectorPowerTests
{
    [Theory]
    [InlineData(0.55)]
    [InlineData(3.4)]
    [InlineData(-0.45)]
    public void It_agrees_with_the_scalar_power_to_a_few_last_bits(double exponent)
    {
        for (double x = 0.003; x < 40; x *= 1.0007)
        {
            Vector512<double> power = VectorPower.Of(Vector512.Create(x), exponent);
            double expected = Math.Pow(x, exponent);
            for (int lane = 0; lane < Vector512<double>.Count; lane++)
                Assert.Equal(1, power[lane] / expected, 4e-15);
        }
    }

    [Fact]
    public void One_is_kept_and_lanes_do_not_mix()
    {
        Vector512<double> power = VectorPower.Of(Vector512.Create(1.0, 2, 4, 8, 16, 0.5, 0.25, 1), 0.5);
        Assert.Equal(1, power[0]);
        Assert.Equal(Math.Sqrt(2), power[1], 1e-15);
        Assert.Equal(2, power[2], 1e-15);
        Assert.Equal(0.5, power[6], 1e-15);
        Assert.Equal(1, power[7]);
    }
}
