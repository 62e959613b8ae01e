using Lighting.Calc.Harness;

namespace Lighting.Calc.Network;

/// <summary>The settings in which a lamp's volts count: where it is fed and meant to be lit.</summary>
/// <remarks>A lamp in series with another, as with one indicator lamp for both sides, is fed a little where it should be dark; that is no drop.</remarks>
internal static class MeantLit
{
    public static IEnumerable<OperatingPoint> Of(Bike bike, IReadOnlyList<OperatingPoint> settings, int lamp)
    {
        OperatingPoint[] fed = [.. settings.Where(s => s.Lamps[lamp].Drop is not null)];
        Condition litWhen = bike.Lamps[lamp].LitWhen;
        OperatingPoint[] meant = litWhen.Terms.IsEmpty ? fed : [.. fed.Where(s => litWhen.Holds(s.Setting))];
        return meant.Length > 0 ? meant : fed;
    }
}
