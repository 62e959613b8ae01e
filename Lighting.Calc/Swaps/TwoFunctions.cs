namespace Lighting.Calc;

/// <summary>Finds lamps of two filaments of which a swap replaces one only.</summary>
internal static class TwoFunctions
{
    // The filament words of the lamp table: major and minor, high and low, stop and tail.
    public static bool IsMinor(PublishedLamp lamp) => lamp.Filament is "minor" or "tail" or "low";

    public static IEnumerable<Finding> Findings(Bike bike, IReadOnlyCollection<LampReplacement> replacements)
    {
        foreach (LampReplacement replacement in replacements)
        {
            FittedLamp lamp = bike.Lamps.First(l => Name.Equal(l.Lamp, replacement.Lamp));
            if (IsStopInTail(lamp, replacement.Replacement, bike))
                yield return new Finding(FindingKind.StopFunctionInTail, Severity.Caution, lamp.Lamp)
                {
                    Detail = replacement.Replacement.Code,
                };
            if (Other(bike, lamp) is not { } other)
                continue;
            if (!replacements.Any(r => Name.Equal(r.Lamp, other.Lamp)))
                yield return new Finding(FindingKind.OneFilamentOfTwo, Severity.Fault, lamp.Lamp)
                {
                    Parts = [other.Lamp],
                    Detail = Glass(lamp),
                };
        }
    }

    // The lesser filament replaced by the brighter function of an LED of two.
    private static bool IsStopInTail(FittedLamp lamp, LampSpecification replacement, Bike bike) =>
        lamp.Specification.Code is { } fitted
        && LampTable.TryFind(fitted, bike.SystemVoltage, out PublishedLamp? published)
        && IsMinor(published)
        && LedClassTable.All.Any(c => c.Minor is not null && Name.Equal(c.Code, replacement.Code ?? ""));

    /// <summary>The other filament of the same glass: the same code, another filament, and the same return, or without
    /// runs the same circuit.</summary>
    private static FittedLamp? Other(Bike bike, FittedLamp lamp) =>
        Glass(lamp) is not { } glass
            ? null
            : bike.Lamps.FirstOrDefault(o =>
                Glass(o) == glass
                && !Name.Equal(o.Specification.Code!, lamp.Specification.Code!)
                && (bike.HasNetwork ? Name.Equal(o.Return!, lamp.Return!) : Name.Equal(o.Circuit, lamp.Circuit))
            );

    private static string? Glass(FittedLamp lamp) =>
        lamp.Specification.Code?.Split(' ') is [var glass, _]
        && lamp.Specification.Type is LampType.Filament or LampType.Halogen
            ? lamp.Specification.Code.Split(' ')[0]
            : null;
}
