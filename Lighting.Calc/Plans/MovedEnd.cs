namespace Lighting.Calc;

/// <summary>One end of a part that moves to the fuse box.</summary>
public sealed record MovedEnd
{
    internal MovedEnd(string part, string from, string to) => (Part, From, To) = (part, from, to);

    /// <summary>Name of the run, contact or load.</summary>
    public string Part { get; }

    /// <summary>The point it was connected to.</summary>
    public string From { get; }

    /// <summary>The point it is connected to with the plan.</summary>
    public string To { get; }
}
