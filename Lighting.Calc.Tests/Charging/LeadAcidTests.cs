using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;

namespace Lighting.Calc.Tests.Charging;

public class LeadAcidTests
{
    private static readonly ElectricPotential s_twelve = ElectricPotential.FromVolts(12);

    [Theory]
    [InlineData(11.88)]
    [InlineData(12.66)]
    public void Volts_outside_the_table_have_no_state_of_charge(double volts) =>
        Assert.Null(LeadAcid.StateOfCharge(ElectricPotential.FromVolts(volts), s_twelve));

    [Theory]
    [InlineData(-0.01)]
    [InlineData(1.01)]
    public void A_state_of_charge_outside_0_to_1_is_refused(double share) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            LeadAcid.OpenCircuitVoltage(Ratio.FromDecimalFractions(share), s_twelve)
        );

    [Property]
    public Property Volts_and_state_of_charge_lead_back_to_each_other_on_6_and_12_volts() =>
        Prop.ForAll(
            Gen.Choose(0, 1000).Select(v => v / 1000.0).ToArbitrary(),
            Gen.Elements(6.0, 12.0).ToArbitrary(),
            (share, system) =>
            {
                var nominal = ElectricPotential.FromVolts(system);
                Ratio? back = LeadAcid.StateOfCharge(
                    LeadAcid.OpenCircuitVoltage(Ratio.FromDecimalFractions(share), nominal),
                    nominal
                );
                return back is { } b && Math.Abs(b.DecimalFractions - share) < 1e-9;
            }
        );

    [Fact]
    public void Peukerts_law_gives_the_rated_time_at_the_rated_current_whatever_the_exponent()
    {
        foreach (double exponent in new[] { 1, 1.1, 1.3 })
            Assert.Equal(
                20,
                PeukertLaw
                    .DischargeTime(
                        ElectricCharge.FromAmpereHours(60),
                        Duration.FromHours(20),
                        exponent,
                        ElectricCurrent.FromAmperes(3)
                    )
                    .Hours,
                1e-12
            );
    }

    [Fact]
    public void Peukerts_law_refuses_what_it_cannot_count()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Time(0, 20, 1.2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Time(10, 0, 1.2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Time(10, 20, 0.9, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Time(10, 20, 1.2, 0));

        static Duration Time(double ampereHours, double hours, double exponent, double amperes) =>
            PeukertLaw.DischargeTime(
                ElectricCharge.FromAmpereHours(ampereHours),
                Duration.FromHours(hours),
                exponent,
                ElectricCurrent.FromAmperes(amperes)
            );
    }
}
