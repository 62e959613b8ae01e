namespace Lighting.Calc.Tests.Published;

/// <summary>Cold resistance of blade fuses against what others measured on fuses as sold.</summary>
public class FuseResistanceTests
{
    // "Kfz-Sicherungen", a workshop's measurements: lowest and highest of several makes, in milliohms. The typical
    // value of the library is held against the middle; 25 A fuses differ by 35 % among themselves.
    [Theory]
    [InlineData(5, 16, 20)]
    [InlineData(7.5, 11, 12)]
    [InlineData(10, 6.8, 7.3)]
    [InlineData(15, 4.5, 4.8)]
    [InlineData(20, 3.2, 3.4)]
    [InlineData(25, 2.5, 3.4)]
    [InlineData(30, 1.79, 1.85)]
    [InlineData(40, 1.35, 1.4)]
    [Against("fuse resistance", "\"Kfz-Sicherungen\", measured on fuses of several makes", CheckKind.Model)]
    public void Blade_fuses_as_measured(double amperes, double lowest, double highest) =>
        Publication.MeetsOrMisses((lowest + highest) / 2, Milliohms(amperes), (highest - lowest) / 2, 0.15);

    // "Voltage drop over fuses", workshop notes: 1 mV over a blade fuse of 10 A is 130 mA.
    [Fact]
    [Against("fuse resistance", "\"Voltage drop over fuses\", workshop notes, 1 mV over 10 A", CheckKind.Model)]
    public void Current_of_one_millivolt_over_a_fuse_of_10_amperes() =>
        Publication.Meets(130, 1000 / Milliohms(10), 0.5);

    private static double Milliohms(double amperes) =>
        FuseTable.Of(FuseStyle.Blade).Single(f => f.Rating.Amperes == amperes).ColdResistance!.Value.Milliohms;
}
