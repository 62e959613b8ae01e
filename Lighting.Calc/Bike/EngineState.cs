namespace Lighting.Calc;

/// <summary>Whether the engine runs, and so what supplies the harness.</summary>
public enum EngineState
{
    /// <summary>The engine runs: the charging system holds the voltage at the battery's terminals as far as its output
    /// reaches, and the battery makes up the rest.</summary>
    Running,

    /// <summary>The engine is off: the battery alone, through its resistance.</summary>
    Off,
}
