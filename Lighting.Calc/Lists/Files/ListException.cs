using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Exception for the value of a <see cref="ListResult{T}"/> that has faults.</summary>
public sealed class ListException : FormatException
{
    internal ListException(ImmutableArray<ListFault> faults)
        : base(string.Join('\n', faults.Select(f => f.Message))) => Faults = faults;

    /// <summary>Every fault, one or more, in file and line order; the message holds each on a line.</summary>
    public ImmutableArray<ListFault> Faults { get; }
}
