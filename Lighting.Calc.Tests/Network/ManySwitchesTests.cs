using Lighting.Calc.Tests.Lists;

namespace Lighting.Calc.Tests.Network;

/// <summary>More switches than any bike has.</summary>
public class ManySwitchesTests
{
    [Theory]
    [InlineData(17, 131_072, "131072 settings")]
    [InlineData(62, 1L << 62, "4611686018427387904 settings")]
    [InlineData(200, long.MaxValue, "more than 9e18 settings")]
    public void More_settings_than_can_be_looked_at_are_counted_and_refused(int switches, long settings, string words)
    {
        string lamps =
            "circuit,lamp,code,lit when\n"
            + string.Concat(Enumerable.Range(0, switches).Select(i => $"row,lamp {i},P21W,switch{i}=on\n"));
        Bike bike = ListSamples.LampsOnly(lamps);
        Assert.Equal(settings, SettingEnumeration.Count(bike, Condition.Always));
        Assert.Contains(
            words,
            Assert.Throws<ArgumentException>(() => SettingEnumeration.Of(bike, Condition.Always)).Message,
            StringComparison.Ordinal
        );
    }
}
