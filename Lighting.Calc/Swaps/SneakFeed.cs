namespace Lighting.Calc;

/// <summary>A lamp that should be dark but is fed through another lamp after the swap.</summary>
internal sealed record SneakFeed
{
    internal SneakFeed(Setting setting, LampState glowing, LampState? through, bool? diodesCure) =>
        (Setting, Glowing, Through, DiodesCure) = (setting, glowing, through, diodesCure);

    /// <summary>The setting in which it glows most.</summary>
    public Setting Setting { get; }

    /// <summary>The lamp that glows.</summary>
    public LampState Glowing { get; }

    /// <summary>The lamp the feed comes through, such as an indicator lamp shared by both sides; null where none was
    /// found.</summary>
    public LampState? Through { get; }

    /// <summary>Whether two diodes in the feed of <see cref="Through"/> leave the glowing lamp dark, as solved; null
    /// where there is none to try.</summary>
    public bool? DiodesCure { get; }
}
