namespace Lighting.Calc;

/// <summary>A lamp that should be dark but is fed through another lamp after the swap.</summary>
/// <param name="Setting">The setting in which it glows most.</param>
/// <param name="Glowing">The lamp that glows.</param>
/// <param name="Through">The lamp the feed comes through, such as an indicator lamp shared by both sides; null where
/// none was found.</param>
/// <param name="DiodesCure">Whether two diodes in the feed of <see cref="Through"/> leave the glowing lamp dark, as
/// solved; null where there is none to try.</param>
internal sealed record SneakFeed(Setting Setting, LampState Glowing, LampState? Through, bool? DiodesCure);
