using Lighting.Calc.Tests.Swaps;
using UnitsNet;

namespace Lighting.Calc.Tests.Published;

/// <summary>Load resistors and flash rates against printed figures.</summary>
public class SwapLoadResistorTests
{
    // Closed form R = V²/(Plamp − Pled): 13.5²/(21 − 4) = 10.72 Ω, 17.0 W. Tolerance: the last printed digit.
    [Fact]
    [Against("load resistor", "Joule's law worked out", CheckKind.Arithmetic)]
    public void Joules_law_4_W_in_place_of_21_W_at_13_5_V()
    {
        LoadResistor resistor = Between(13.5, 21, 4);
        Publication.Meets(10.72, resistor.Resistance.Ohms, 0.005);
        Publication.Meets(17.0, (double)resistor.Heat.Watts, 0.05);
    }

    // Fitting instructions 10036243 of motorcycle indicators, page 46: on 12 V 7.5 Ω stands for 19.2 W, 8.2 Ω for 17.6
    // W, 10 Ω for 14.4 W. Tolerance: the last printed digit.
    [Theory]
    [InlineData(19.2, 7.5)]
    [InlineData(17.6, 8.2)]
    [InlineData(14.4, 10)]
    [Against("load resistor", "fitting instructions 10036243 of motorcycle indicators, page 46", CheckKind.Model)]
    public void Fitting_instructions_10036243_page_46_ohms_for_the_missing_watts(double watts, double ohms) =>
        Publication.Meets(ohms, Between(12, watts, 0).Resistance.Ohms, 0.05);

    // Fitting instructions 10030302 of motorcycle indicators, page 21: 21 W before, 1.7 W after, difference 19.3 W; the
    // square of 12 V over it, 7.46 Ω worked out.
    [Fact]
    [Against("load resistor", "fitting instructions 10030302 of motorcycle indicators, page 21", CheckKind.Arithmetic)]
    public void Fitting_instructions_10030302_page_21_difference_of_19_3_W()
    {
        LoadResistor resistor = Between(12, 21, 1.7);
        Publication.Meets(19.3, (double)resistor.Heat.Watts, 0.05);
        Publication.Meets(7.46, resistor.Resistance.Ohms, 0.005);
    }

    // NHTSA interpretation 01931ztv on SAE J945: 60 to 120 flashes a minute for normally open (variable-load) flashers,
    // 90 to 120 for normally closed (fixed-load) ones; Swiss ordinance 741.41,
    // article 79: 90 ± 30 a minute. The finding about a starved flasher names this window.
    [Fact]
    public void NHTSA_01931ztv_and_Swiss_741_41_article_79_flash_rate_window()
    {
        Bike bike = SwapBikes.LampsOnly(
            "circuit,lamp,code,lit when\nindicators,left,P21W,turn=left\n",
            "flasher,thermal\n"
        );
        string message = Assert
            .Single(SwapBikes.Compare(bike, SwapBikes.Replace(("left", SwapBikes.Led(2)))).About("flasher"))
            .Message;
        Assert.Contains(
            "60 to 120 flashes a minute are required, 90 to 120 of a flasher for a fixed load",
            message,
            StringComparison.Ordinal
        );
    }

    // "Connecting LED turn signals on your motorcycle": two stock lamps of 21 W replaced by two LEDs of 1.5 W
    // leave the flasher 3 W instead of 42 W, which does not work.
    [Fact]
    [Against(
        "flasher load",
        "\"Connecting LED turn signals on your motorcycle\", dealer's advice",
        CheckKind.Arithmetic
    )]
    public void Dealers_advice_two_LED_turn_signals_of_1_5_W_leave_3_W_of_42_W()
    {
        Bike bike = SwapBikes.LampsOnly(
            "circuit,lamp,code,quantity,lit when\nindicators,left,P21W,2,turn=left\n",
            "flasher,thermal\n"
        );
        FlasherChange flasher = Assert.Single(
            SwapBikes.Compare(bike, SwapBikes.Replace(("left", SwapBikes.Led(1.5)))).Flashers
        );
        Publication.Meets(42, (double)flasher.NominalBefore.Watts, 0.5);
        Publication.Meets(3, (double)flasher.NominalAfter.Watts, 0.5);
        Assert.True(flasher.Share.DecimalFractions < 0.7);
    }

    private static LoadResistor Between(double volts, double lamp, double led) =>
        LoadResistor.Between(ElectricPotential.FromVolts(volts), Power.FromWatts(lamp), Power.FromWatts(led));
}
