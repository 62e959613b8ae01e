using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>One position for every switch of a bike, in the order of the bike's switches.</summary>
/// <remarks>Two settings are equal when they hold the same positions; names compare without case.</remarks>
public sealed class Setting : IEquatable<Setting>
{
    private readonly Switches _switches;
    private readonly int[] _at;
    private ImmutableArray<SwitchPosition> _positions;
    private int _hash;

    /// <summary>Creates a setting.</summary>
    /// <param name="positions">One entry for each switch.</param>
    /// <exception cref="ArgumentException">A switch is in two positions.</exception>
    public Setting(IEnumerable<SwitchPosition> positions)
    {
        SwitchPosition[][] each = [.. positions.Select(p => new[] { p })];
        (_switches, _at) = (new Switches(each), new int[each.Length]);
        for (int s = 0; s < each.Length; s++)
            if (_switches.NumberOf(each[s][0].Switch) != s)
                throw new ArgumentException(
                    $"The switch '{each[s][0].Switch}' must be in one position, not two.",
                    nameof(positions)
                );
    }

    /// <param name="switches">All its switches.</param>
    /// <param name="at">For each the number of its position.</param>
    internal Setting(Switches switches, int[] at) => (_switches, _at) = (switches, at);

    /// <summary>The setting of a bike without switches.</summary>
    public static Setting Empty { get; } = new([]);

    /// <summary>The positions, one for each switch.</summary>
    public ImmutableArray<SwitchPosition> Positions =>
        _positions.IsDefault ? _positions = [.. _at.Select((position, s) => _switches.At(s, position))] : _positions;

    /// <summary>Position of a switch; null if the bike has no such switch.</summary>
    /// <param name="switchName">Name of the switch; case does not matter.</param>
    public string? PositionOf(string switchName) =>
        _switches.NumberOf(switchName) is >= 0 and int s ? _switches.At(s, _at[s]).Position : null;

    /// <summary>For each of some switches the number of its position; see <see cref="Switches.NumbersOf"/>.</summary>
    internal ReadOnlySpan<int> Over(Switches switches) =>
        ReferenceEquals(switches, _switches) ? _at : switches.NumbersOf(this);

    /// <summary>The condition that holds this setting: it names the switches that are not off.</summary>
    /// <exception cref="FormatException">A switch or position is empty or contains a character used by conditions
    /// (<c>;</c>, <c>=</c>), which lists refuse.</exception>
    internal Condition AsCondition() =>
        Condition.Parse(string.Join("; ", Positions.Where(p => !Name.Equal(p.Position, SwitchDefinition.Off))));

    /// <inheritdoc/>
    public bool Equals(Setting? other)
    {
        if (other is null || other._at.Length != _at.Length || other.GetHashCode() != GetHashCode())
            return false;
        return ReferenceEquals(other._switches, _switches)
            ? _at.AsSpan().SequenceEqual(other._at)
            : Positions.All(p => other.PositionOf(p.Switch) is { } theirs && Name.Equal(theirs, p.Position));
    }

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Setting);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        if (_hash != 0)
            return _hash;
        int hash = 0;
        for (int s = 0; s < _at.Length; s++)
            hash ^= _switches.HashAt(s, _at[s]);
        return _hash = hash;
    }

    /// <summary>The switches that are not off: <c>lights=low; brake=on</c>, or <c>everything off</c>; <c>no
    /// switches</c> of a bike without any.</summary>
    public override string ToString()
    {
        string on = string.Join("; ", Positions.Where(p => !Name.Equal(p.Position, SwitchDefinition.Off)));
        return on.Length > 0 ? on
            : _at.Length > 0 ? "everything off"
            : "no switches";
    }
}
