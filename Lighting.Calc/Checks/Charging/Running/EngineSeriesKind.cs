namespace Lighting.Calc;

/// <summary>Which setting is followed over engine speed.</summary>
public enum EngineSeriesKind
{
    /// <summary>By day: no headlamp lit.</summary>
    Day,

    /// <summary>By night: headlamp lit.</summary>
    Night,

    /// <summary>By night with the brake held: headlamp and stop lamp lit.</summary>
    NightBraking,
}
