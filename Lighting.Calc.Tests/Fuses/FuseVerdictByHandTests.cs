namespace Lighting.Calc.Tests.Fuses;

/// <summary>The round bike's fuse, reckoned by hand from the printed tables.</summary>
/// <remarks>
/// Steady: headlamp 5 A + tail 0.5 A = 5.5 A. Usable of 15 A at 25 °C: 15 × 0.75 = 11.25 A. Headroom 11.25 − 5.5 = 5.75
/// A. Smallest: 5.5/0.75 = 7.33, next blade 7.5 A (7.5 × 0.75 = 5.625 A).
/// Wires at 30 °C, alone: feed 1.5 mm² 24 A, headlamp feed 1 mm² 19 A, tail feed 0.75 mm² 15 A. The tail feed limits:
/// 15 A. Switching on: loads of constant current, no filament: the peak is 5.5 A.
/// Resistances, mΩ (20 °C): battery 20; battery lead 0.5 m × 7.60 = 3.8; fuse 4.80; feed 2 m × 12.7 = 25.4; contact 10;
/// headlamp feed 1 m × 18.5 + joint 2 = 20.5; headlamp earth 1.5 m × 18.5 = 27.75; tail feed 2 m × 24.7 = 49.4; tail
/// earth 2 m × 24.7 = 49.4. Dead short at 'tail +': 20 + 3.8 + 4.8 + 25.4 + 10 + 49.4 + 49.4 = 162.8; 12.65/0.1628 =
/// 77.703 A = 5.1802 ratings. Opening between the gates 350 % (0.04..0.5 s) and 600 % (0.02..0.1 s): share
/// ln(5.1802/3.5)/ln(6/3.5) = 0.39207/0.53900 = 0.72741; fastest 0.04 × 0.5^0.72741 = 0.02416 s, slowest 0.5 ×
/// 0.2^0.72741 = 0.15508 s. Both far under 5 s: it clears. Dead short at 'headlamp +': 20 + 3.8 + 4.8 + 25.4 + 10 +
/// 20.5 + 27.75 = 112.25; 12.65/0.11225 = 112.695 A = 7.513 ratings, above the last gate: slowest 0.1 × (6/7.513)² =
/// 0.06378 s, fastest not published. Dead short at 'switch in', the far end of the feed: with lights on the worst-off
/// lamp beyond is the tail, back 49.4: 20 + 3.8 + 4.8 + 25.4 + 49.4 = 103.4; 12.65/0.1034 = 122.340 A.
/// Largest: the wire's 15 A is a standard blade, and it clears. So 7.5 A to 15 A, and 15 A suits.
/// </remarks>
public class FuseVerdictByHandTests
{
    private readonly FuseSuitability _main = FuseBike.Check(FuseBike.Round()).Single();

    [Fact]
    public void The_steady_load_is_that_by_hand()
    {
        Assert.Equal(5.5, _main.Steady.WorstCurrent.Amperes, 1e-9);
        Assert.Equal("lights=on", _main.Steady.WorstSetting.ToString());
        Assert.Equal(11.25, _main.Steady.UsableCurrent.Amperes, 1e-9);
        Assert.Equal(5.75, _main.Steady.Headroom.Amperes, 1e-9);
    }

    [Fact]
    public void The_tail_feed_limits_the_fuse()
    {
        Assert.Equal("tail feed", _main.Protection.LimitingRun!.Run.Name);
        Assert.Equal(15, _main.Protection.WireCurrent!.Value.Amperes, 1e-9);
        Assert.Equal(["feed", "headlamp feed", "tail feed"], _main.Protection.DownstreamRuns.Select(r => r.Run.Name));
        Assert.Equal(["headlamp earth", "tail earth"], _main.Protection.ReturnRuns.Select(r => r.Run.Name));
        Assert.True(_main.Protection.Protects);
    }

    [Theory]
    [InlineData("tail feed", 162.8, 77.703, 0.02416, 0.15508)]
    [InlineData("headlamp feed", 112.25, 112.695, null, 0.06378)]
    [InlineData("feed", 103.4, 122.340, null, 0.05412)]
    public void Every_dead_short_is_that_by_hand(
        string run,
        double milliohms,
        double amperes,
        double? fastest,
        double slowest
    )
    {
        ShortCircuitCheck clearing = _main.Clearing.Single(c => c.Run.Name == run);
        Assert.Equal(milliohms, clearing.LoopResistance.Milliohms, 1e-6);
        Assert.Equal(amperes, clearing.ProspectiveCurrent!.Value.Amperes, 0.001);
        Assert.Equal(fastest, clearing.Opening!.Fastest?.Seconds is { } f ? Math.Round(f, 5) : null);
        Assert.Equal(slowest, clearing.Opening.Slowest!.Value.Seconds, 0.00002);
        Assert.True(clearing.Clears);
    }

    [Fact]
    public void The_way_to_the_short_names_every_part() =>
        Assert.Equal(
            ["battery lead", "main", "feed", "lights (switch in to switch out)", "tail feed"],
            _main.Clearing.Single(c => c.Run.Name == "tail feed").Path
        );

    [Fact]
    public void Loads_without_a_filament_have_no_surge() => Assert.Equal(5.5, _main.InrushCheck!.Peak.Amperes, 1e-9);

    [Fact]
    public void It_suits_and_so_do_7_5_to_15_amperes()
    {
        Assert.Equal(FuseVerdict.Suits, _main.Verdict);
        Assert.Empty(_main.Reasons);
        Assert.Equal(7.5, _main.Advice.Smallest!.Value.Amperes);
        Assert.Equal(15, _main.Advice.Largest!.Value.Amperes);
        Assert.StartsWith(
            "15 A main: suits — 5.5 A continuous (lights=on), limit 11.25 A; 5.5 A at the peak, limit 15 A",
            _main.Headline,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Only_the_battery_lead_is_without_a_fuse()
    {
        UnfusedRun lead = Assert.Single(
            FuseBike.Unfused(FuseBike.Round())
        );
        Assert.Equal("battery lead", lead.Run.Name);
        Assert.True(lead.IsBatteryLead);
    }
}
