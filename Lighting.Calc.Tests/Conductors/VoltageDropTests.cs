using UnitsNet;

namespace Lighting.Calc.Tests.Conductors;

public class VoltageDropTests
{
    private static readonly Temperature s_cool = Temperature.FromDegreesCelsius(20);
    private static readonly WireSize s_wire = AmericanWireGauge.Solid(16);

    [Fact]
    public void No_current_loses_nothing_and_allows_the_thinnest_wire()
    {
        Assert.Equal(0, VoltageDrop.Calculate(ElectricCurrent.Zero, Length.FromMeters(10), s_wire, s_cool).Volts);
        Assert.Equal(
            "30 AWG",
            VoltageDrop
                .ThinnestWire(
                    ElectricCurrent.Zero,
                    Length.FromMeters(10),
                    ElectricPotential.Zero,
                    WireTable.Of(WireConstruction.SolidGauge),
                    s_cool
                )
                ?.Name
        );
    }

    [Fact]
    public void A_drop_that_just_meets_the_limit_is_allowed()
    {
        ElectricPotential drop = VoltageDrop.Calculate(
            ElectricCurrent.FromAmperes(5),
            Length.FromMeters(3),
            s_wire,
            s_cool
        );
        Assert.Equal(
            "16 AWG",
            VoltageDrop
                .ThinnestWire(
                    ElectricCurrent.FromAmperes(5),
                    Length.FromMeters(3),
                    drop,
                    WireTable.Of(WireConstruction.SolidGauge),
                    s_cool
                )
                ?.Name
        );
    }

    [Fact]
    public void Where_no_size_meets_the_limit_there_is_none() =>
        Assert.Null(
            VoltageDrop.ThinnestWire(
                ElectricCurrent.FromAmperes(100),
                Length.FromMeters(100),
                ElectricPotential.FromMillivolts(1),
                WireTable.All,
                s_cool
            )
        );

    [Fact]
    public void No_allowed_drop_allows_no_length() =>
        Assert.Equal(
            0,
            VoltageDrop.LongestWire(ElectricCurrent.FromAmperes(5), ElectricPotential.Zero, s_wire, s_cool).Meters
        );

    [Fact]
    public void Values_outside_their_range_are_refused()
    {
        Refused(
            "current",
            "Current must be zero or more.",
            () => VoltageDrop.Calculate(ElectricCurrent.FromAmperes(-1), Length.FromMeters(1), s_wire, s_cool)
        );
        Refused(
            "current",
            "Current must be greater than zero.",
            () => VoltageDrop.LongestWire(ElectricCurrent.Zero, ElectricPotential.FromVolts(1), s_wire, s_cool)
        );
        Refused(
            "limit",
            "Voltage-drop limit must be zero or more.",
            () =>
                VoltageDrop.LongestWire(ElectricCurrent.FromAmperes(1), ElectricPotential.FromVolts(-1), s_wire, s_cool)
        );
        Refused(
            "limit",
            "Voltage-drop limit must be zero or more.",
            () =>
                VoltageDrop.ThinnestWire(
                    ElectricCurrent.FromAmperes(1),
                    Length.FromMeters(1),
                    ElectricPotential.FromVolts(-1),
                    WireTable.All,
                    s_cool
                )
        );
    }

    private static void Refused(string parameter, string message, Func<object?> action) =>
        Assert.StartsWith(
            message,
            Assert.Throws<ArgumentOutOfRangeException>(parameter, action).Message,
            StringComparison.Ordinal
        );
}
