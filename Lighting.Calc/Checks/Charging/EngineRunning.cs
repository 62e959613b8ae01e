namespace Lighting.Calc;

/// <summary>In which settings the engine can run: with battery ignition, those in which the ignition is fed.</summary>
internal static class EngineRunning
{
    private const string Ignition = "ignition";

    /// <summary>A test of settings. Where the kind of ignition is not stated, a listed ignition load says that it is
    /// the battery's.</summary>
    public static Func<Setting, bool> Of(Bike bike)
    {
        FittedLamp[] coils =
        [
            .. bike.Lamps.Where(l =>
                l.Specification.Type is LampType.Fixed or LampType.Resistor && (Names(l.Circuit) || Names(l.Lamp))
            ),
        ];
        if (bike.Ignition == IgnitionKind.Magneto || bike.Ignition == IgnitionKind.NotStated && coils.Length == 0)
            return _ => true;
        // Without a listed load the key decides, where a switch has its name.
        if (coils.Length == 0)
            return setting =>
                setting.PositionOf(Ignition) is not { } position || !Name.Equal(position, SwitchDefinition.Off);
        if (!bike.HasNetwork || coils.Any(c => !c.LitWhen.Terms.IsEmpty))
            return setting =>
                coils.Any(c => (!bike.HasNetwork || !c.LitWhen.Terms.IsEmpty) && c.LitWhen.Holds(setting));
        var graph = new HarnessGraph(bike);
        HarnessPart[] fed = [.. graph.Lamps.Where(l => Array.Exists(coils, c => Name.Equal(c.Lamp, l.Name)))];
        return setting =>
            graph.From(graph.Live, graph.Switches.ClosedIn(setting)) is var live
            && Array.Exists(fed, l => live.Reaches(l.A));
    }

    private static bool Names(string name) => name.Contains(Ignition, StringComparison.OrdinalIgnoreCase);
}
