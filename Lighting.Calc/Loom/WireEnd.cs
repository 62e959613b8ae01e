namespace Lighting.Calc;

/// <summary>The terminal at one end of a wire.</summary>
public sealed record WireEnd
{
    internal const string Ring = "ring",
        Blade = "blade",
        Bullet = "bullet",
        Splice = "splice";

    internal WireEnd(string point, string terminal, bool isAssumed) =>
        (Point, Terminal, IsAssumed) = (point, terminal, isAssumed);

    /// <summary>The point it is connected to.</summary>
    public string Point { get; }

    /// <summary>The terminal, as listed, or <c>ring</c>, <c>blade</c>, <c>bullet</c> or <c>splice</c>.</summary>
    public string Terminal { get; }

    /// <summary>Whether it is not listed and was taken by what is at the point: a ring at the battery or the frame, a
    /// blade at a switch or fuse, a bullet at a lamp, a splice where only wires meet (common practice, no
    /// source).</summary>
    public bool IsAssumed { get; }
}
