namespace Lighting.Calc;

/// <summary>One thing before and after.</summary>
/// <typeparam name="T">What it is; null on the side that lacks it.</typeparam>
public sealed record Change<T>
{
    internal Change(T before, T after) => (Before, After) = (before, after);

    /// <summary>Before.</summary>
    public T Before { get; }

    /// <summary>After.</summary>
    public T After { get; }
}
