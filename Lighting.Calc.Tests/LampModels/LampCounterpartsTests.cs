using UnitsNet;

namespace Lighting.Calc.Tests.LampModels;

/// <summary>The lamp of another system voltage for the same socket.</summary>
public class LampCounterpartsTests
{
    [Theory]
    [InlineData("R5W", 6, 12, "R5W")]
    [InlineData("HS1 low", 6, 12, "HS1 low")]
    [InlineData("6V18/6W stop", 6, 12, "12V21/6W stop")]
    [InlineData("6V18/6W tail", 6, 12, "12V21/6W tail")]
    [InlineData("12V21/6W tail", 12, 6, "6V21/6W tail")]
    [InlineData("6V18W", 6, 12, "12V18W")]
    [InlineData("6V3W-SV8.5", 6, 12, "12V3W-SV8.5")]
    [InlineData("1154 major", 6, 12, "P21/5W major")]
    [InlineData("H4 low", 12, 6, null)]
    [InlineData("6V30/24W low", 6, 12, null)]
    [InlineData("LED signal", 12, 6, "LED signal 6V")]
    [InlineData("LED stop-tail minor", 12, 6, "LED stop-tail 6V minor")]
    public void A_lamp_becomes_the_one_of_its_cap_use_and_watts(string code, double from, double to, string? other)
    {
        ElectricPotential before = ElectricPotential.FromVolts(from),
            after = ElectricPotential.FromVolts(to);
        LampSpecification lamp =
            LampTable.TryFind(code, before, out PublishedLamp? listed) ? listed.Specification
            : LedClassTable.TryFind(code, out LampSpecification? led) ? led
            : throw new ArgumentException(code);
        LampSpecification? found = LampCounterparts.Of(lamp, before, after);
        Assert.Equal(other, found?.Code);
    }

    [Fact]
    public void Both_filaments_become_those_of_one_lamp_and_none_has_much_other_watts()
    {
        foreach (PublishedLamp lamp in LampTable.All)
        {
            ElectricPotential to = ElectricPotential.FromVolts(lamp.SystemVoltage.Volts == 6 ? 12 : 6);
            if (LampCounterparts.Of(lamp.Specification, lamp.SystemVoltage, to) is not { } found)
                continue;
            LampTable.TryFind(found.Code!, to, out PublishedLamp? other);
            Assert.Equal(to, other!.SystemVoltage);
            Assert.Equal(lamp.Cap, other.Cap);
            double ratio = Watts(lamp) / Watts(other);
            Assert.InRange(ratio, 1 / 1.26, 1.26);
            foreach (PublishedLamp second in LampTable.All.Where(l => IsSameLamp(l, lamp)))
                Assert.Equal(
                    BaseOf(found.Code!, other.Filament),
                    LampCounterparts.Of(second.Specification, second.SystemVoltage, to)!.Code!.Split(' ')[0]
                );
        }

        static double Watts(PublishedLamp lamp) =>
            (double)(lamp.RatedPower ?? lamp.Specification.ReferencePower).Watts;

        static bool IsSameLamp(PublishedLamp one, PublishedLamp other) =>
            one.SystemVoltage.Volts == other.SystemVoltage.Volts
            && one.Filament.Length > 0
            && BaseOf(one.Code, one.Filament) == BaseOf(other.Code, other.Filament);

        static string BaseOf(string code, string filament) =>
            filament.Length == 0 ? code : code[..^(filament.Length + 1)];
    }

    [Fact]
    public void A_lamp_without_a_code_has_none() =>
        Assert.Null(
            LampCounterparts.Of(
                LampSpecification.FromPower(
                    LampType.Filament,
                    ElectricPotential.FromVolts(6),
                    Power.FromWatts(21)
                ),
                ElectricPotential.FromVolts(6),
                ElectricPotential.FromVolts(12)
            )
        );
}
