using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Lighting.Calc;

/// <summary>Result of reading lists: either a value or all faults found. Immutable.</summary>
/// <typeparam name="T">What the lists describe.</typeparam>
public sealed class ListResult<T>
    where T : class
{
    private readonly T? _value;

    internal ListResult(T? value, ImmutableArray<ListFault> faults, ImmutableArray<ListFault> cautions)
    {
        if (value is null == faults.IsEmpty)
            throw new ArgumentException("A result must have either a value or faults.", nameof(value));
        _value = value;
        Faults = faults;
        Cautions = cautions;
    }

    /// <summary>Whether there is a value.</summary>
    public bool Succeeded => _value is not null;

    /// <summary>The value.</summary>
    /// <exception cref="ListException">There are faults; the message holds all of them.</exception>
    public T Value => _value ?? throw new ListException(Faults);

    /// <summary>Every fault, in file and line order; empty if there is a value.</summary>
    public ImmutableArray<ListFault> Faults { get; }

    /// <summary>Cautions that do not prevent calculation, in file and line order, such as 6 V lamps on a 12 V
    /// bike.</summary>
    public ImmutableArray<ListFault> Cautions { get; }

    /// <summary>Gives the value where there is one.</summary>
    /// <param name="value">The value, or null if there are faults.</param>
    /// <returns>Whether there is a value.</returns>
    public bool TryGetValue([NotNullWhen(true)] out T? value)
    {
        value = _value;
        return value is not null;
    }
}
