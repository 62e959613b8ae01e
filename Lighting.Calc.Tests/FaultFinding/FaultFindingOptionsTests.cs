using UnitsNet;

namespace Lighting.Calc.Tests.FaultFinding;

/// <summary>Instruments and tolerances that there are none of.</summary>
public class FaultFindingOptionsTests
{
    public static TheoryData<string, FaultFindingOptions> Wrong =>
        new()
        {
            {
                "MeterResistance",
                new() { MeterResistance = ElectricResistance.Zero }
            },
            {
                "MeterAccuracy",
                new() { MeterAccuracy = Ratio.FromPercent(-1) }
            },
            {
                "MeterFloor",
                new() { MeterFloor = ElectricPotential.Zero }
            },
            {
                "AmmeterFloor",
                new() { AmmeterFloor = ElectricCurrent.Zero }
            },
            {
                "AmmeterResistance",
                new() { AmmeterResistance = ElectricResistance.Zero }
            },
            {
                "OhmmeterLeads",
                new() { OhmmeterLeads = ElectricResistance.FromOhms(-0.1) }
            },
            {
                "BatteryTolerance",
                new() { BatteryTolerance = Ratio.FromPercent(-1) }
            },
            {
                "CoilTolerance",
                new() { CoilTolerance = Ratio.FromPercent(-1) }
            },
            {
                "SpeedTolerance",
                new() { SpeedTolerance = Ratio.FromPercent(-1) }
            },
            {
                "LampTolerance",
                new() { LampTolerance = Ratio.FromPercent(-1) }
            },
            {
                "ConnectionTolerance",
                new() { ConnectionTolerance = Ratio.FromPercent(-1) }
            },
            {
                "BlunderShare",
                new() { BlunderShare = Ratio.Zero }
            },
            {
                "BlunderShare",
                new() { BlunderShare = Ratio.FromPercent(100) }
            },
            {
                "Supply",
                new() { Supply = ElectricPotential.Zero }
            },
        };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void An_option_outside_its_range_is_refused_by_its_name(string name, FaultFindingOptions options)
    {
        CancellationToken cancellationToken = TestContext.Current.CancellationToken;
        Assert.Equal(
            name,
            Assert
                .Throws<ArgumentOutOfRangeException>(() =>
                    new FaultFinder(DemoBikes.Load("valley-twin"), options, cancellationToken)
                )
                .ParamName
        );
        Assert.Equal(
            name,
            Assert
                .Throws<ArgumentOutOfRangeException>(() =>
                    ExpectedReadings.Calculate(DemoBikes.Load("valley-twin"), options, cancellationToken)
                )
                .ParamName
        );
    }
}
