using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc.Tests.Network;

public class WiringReviewTests
{
    [Theory]
    [InlineData(Earth.Negative)]
    [InlineData(Earth.Positive)]
    public void A_harness_that_agrees_with_its_lists_has_nothing_against_it(Earth earth) =>
        Assert.Empty(Review(Benches.Sidecar(earth)));

    [Fact]
    public void A_lamp_that_the_contacts_leave_dark_is_shown_with_the_open_contact()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Lamps = bike.Lamps.SetItem(1, bike.Lamps[1] with { LitWhen = Condition.Parse("lights=low|high|pass") }),
        };
        Finding finding = Assert.Single(Review(bike));
        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.Equal("high beam", finding.Subject);
        Assert.Equal(
            "'lit when' says lit in the setting 'lights=low', but the wiring leaves it dark: open contact 'lights "
                + "(lights in to high line)' on the way "
                + "battery + > main > fused > feed > lights in > lights (lights in to high line) > high line > high "
                + "wire > high feed.",
            finding.Message
        );
    }

    [Fact]
    public void A_lamp_that_the_contacts_feed_against_its_condition_is_shown_with_the_way()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Lamps = bike.Lamps.SetItem(2, bike.Lamps[2] with { LitWhen = Condition.Parse("lights=low") }),
        };
        ImmutableArray<Finding> findings = Review(bike);
        Assert.Contains(
            findings,
            f =>
                f.Subject == "tail"
                && f.Message.StartsWith(
                    "'lit when' says dark in the setting 'lights=pass' and 1 more, but the wiring feeds it: battery + "
                        + "> main > fused > feed > lights in",
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public void A_missing_return_is_named()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with { Runs = bike.Runs.RemoveAt(4) };
        Assert.Contains(
            Review(bike),
            f =>
                f.Subject == "low beam"
                && f.Message.Contains("nothing connects 'head earth' to 'battery -'", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_load_without_a_fuse_and_a_fuse_that_feeds_nothing_are_reported()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with { Runs = bike.Runs.SetItem(0, bike.Runs[0] with { From = Bike.BatteryPlus }) };
        ImmutableArray<Finding> findings = Review(bike);
        Finding unfused = Assert.Single(findings, f => f.Kind == FindingKind.LampUnfused);
        Assert.Equal(Severity.Fault, unfused.Severity);
        Assert.Equal(["high beam", "low beam", "tail"], unfused.Parts.Append(unfused.Subject).Order());
        Assert.Contains(findings, f => f.Subject == "main" && f.Message == "The fuse feeds no lamp or other load.");
        Assert.Contains(
            findings,
            f => f.Subject == "fused" && f.Message.StartsWith("Only one part", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Two_fuses_side_by_side_both_feed()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Fuses = bike.Fuses.Add(bike.Fuses[0] with { Name = "second", Rating = ElectricCurrent.FromAmperes(10) }),
        };
        Assert.Empty(Review(bike));
    }

    [Fact]
    public void A_position_without_a_contact_and_a_switch_without_one_are_reported()
    {
        Bike bike = Benches.Sidecar();
        bike = bike with
        {
            Lamps = bike.Lamps.SetItem(
                0,
                bike.Lamps[0] with
                {
                    LitWhen = Condition.Parse("lights=low|pass|dip; brake=on"),
                }
            ),
        };
        ImmutableArray<Finding> findings = Review(bike);
        Assert.Contains(
            findings,
            f =>
                f.Subject == "lights"
                && f.Message.Contains("No contact is closed in the position 'dip'", StringComparison.Ordinal)
        );
        Assert.Contains(
            findings,
            f => f.Subject == "brake" && f.Message.Contains("it has no contact", StringComparison.Ordinal)
        );
    }

    private static ImmutableArray<Finding> Review(Bike bike) => Benches.Review(bike);
}
