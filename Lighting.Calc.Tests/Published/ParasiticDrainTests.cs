using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>How long a drain takes to empty a battery.</summary>
public class ParasiticDrainTests
{
    /// <summary>Service manual of an all-terrain vehicle, page 162, 20 Ah battery: days to 50 % and
    /// to 0 % of charge at 7, 10, 15, 20 and 30 mA.</summary>
    [Theory]
    [InlineData(7, 60, 119)]
    [InlineData(10, 42, 83)]
    [InlineData(15, 28, 56)]
    [InlineData(20, 21, 42)]
    [InlineData(30, 14, 28)]
    [Against("drain on a battery", "service manual of an all-terrain vehicle, page 162", CheckKind.Model)]
    public void Days_until_half_and_until_empty(double milliamperes, double half, double empty)
    {
        var capacity = ElectricCharge.FromAmpereHours(20);
        var drain = ElectricCurrent.FromMilliamperes(milliamperes);
        Publication.Meets(half, ParasiticDrain.Time(capacity, drain, Ratio.FromPercent(50)).Days, 0.6);
        Publication.Meets(empty, ParasiticDrain.Time(capacity, drain, Ratio.FromPercent(100)).Days, 0.6);
    }
}
