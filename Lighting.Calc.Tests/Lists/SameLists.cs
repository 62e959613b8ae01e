namespace Lighting.Calc.Tests.Lists;

/// <summary>Compares two bikes' lists record by record (a record's arrays compare by reference, so they are compared
/// here).</summary>
internal static class SameLists
{
    public static void Assert(BikeLists expected, BikeLists actual)
    {
        Bike left = expected.Bike,
            right = actual.Bike;
        Xunit.Assert.Equal(left.Lamps, right.Lamps);
        Xunit.Assert.Equal(left.Runs, right.Runs);
        Xunit.Assert.Equal(
            left.Switches.Select(s => s with { ClosedIn = [] }),
            right.Switches.Select(s => s with { ClosedIn = [] })
        );
        Xunit.Assert.Equal(
            left.Switches.Select(s => s.ClosedIn.ToArray()),
            right.Switches.Select(s => s.ClosedIn.ToArray())
        );
        Xunit.Assert.Equal(left.Fuses, right.Fuses);
        Xunit.Assert.Equal(left.Charging, right.Charging);
        Xunit.Assert.Equal(left.Ride, right.Ride);
        Xunit.Assert.Equal(expected.Swaps, actual.Swaps);
        Xunit.Assert.Equal(expected.Readings, actual.Readings);
        Xunit.Assert.Equal(expected.Prices, actual.Prices);
        Xunit.Assert.Equal(Bare(left), Bare(right));
        Xunit.Assert.Equal(expected.ItemNotes, actual.ItemNotes);
    }

    private static Bike Bare(Bike bike) =>
        bike with
        {
            Lamps = [],
            Runs = [],
            Switches = [],
            Fuses = [],
            Charging = [],
            Ride = [],
        };
}
