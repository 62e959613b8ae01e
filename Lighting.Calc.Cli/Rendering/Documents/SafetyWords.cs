namespace Lighting.Calc.Cli.Rendering;

/// <summary>The caution under every result that people read.</summary>
internal static class SafetyWords
{
    public const string Text =
        "Disconnect the battery before touching wiring. A fuse protects the wire: never fit a larger one than the wire carries. "
        + "Lamps and ballast resistors burn. Batteries give off explosive gas. Road approval of lamps is set by local law. "
        + "Where in doubt, ask a qualified person.";
}
