using System.Collections.Immutable;

namespace Lighting.Calc.Harness;

/// <summary>One position for every switch of a bike, in the order of the bike's switches.</summary>
/// <remarks>Two settings are equal when they hold the same positions; names compare without case.</remarks>
public sealed class Setting : IEquatable<Setting>
{
    private readonly ImmutableArray<SwitchPosition> _positions;
    private int _hash;

    /// <summary>Makes a setting.</summary>
    /// <param name="positions">One entry for each switch.</param>
    /// <exception cref="ArgumentException">A switch stands in two positions.</exception>
    public Setting(IEnumerable<SwitchPosition> positions)
    {
        _positions = [.. positions];
        for (int i = 0; i < _positions.Length; i++)
            for (int j = 0; j < i; j++)
                if (Name.Equal(_positions[i].Switch, _positions[j].Switch))
                    throw new ArgumentException($"The switch '{_positions[i].Switch}' stands in two positions.", nameof(positions));
    }

    private Setting(ImmutableArray<SwitchPosition> positions, int hash) => (_positions, _hash) = (positions, hash);

    /// <summary>The setting of a bike without switches.</summary>
    public static Setting Empty { get; } = new([]);

    /// <summary>The positions, one for each switch.</summary>
    public ImmutableArray<SwitchPosition> Positions => _positions;

    /// <summary>The position a switch stands in, or null where the bike has no such switch.</summary>
    /// <param name="switchName">Name of the switch; case does not matter.</param>
    public string? PositionOf(string switchName)
    {
        foreach (SwitchPosition position in _positions)
            if (Name.Equal(position.Switch, switchName))
                return position.Position;
        return null;
    }

    /// <summary>A setting whose switches are known to differ.</summary>
    /// <param name="positions">One entry for each switch.</param>
    /// <param name="hash">Their <see cref="HashOf(SwitchPosition)"/>, joined by exclusive or.</param>
    internal static Setting OfDifferentSwitches(ImmutableArray<SwitchPosition> positions, int hash) => new(positions, hash);

    /// <summary>What one position adds to the hash of a setting.</summary>
    internal static int HashOf(SwitchPosition position) => HashCode.Combine(Name.Comparer.GetHashCode(position.Switch), Name.Comparer.GetHashCode(position.Position));

    /// <summary>The condition that holds the switches so: names those that are not off, none when everything is off.</summary>
    /// <exception cref="FormatException">A switch or position is empty or has a character that conditions are made with (<c>;</c>, <c>=</c>), which lists refuse.</exception>
    internal Condition AsCondition() => Condition.Parse(string.Join("; ", _positions.Where(p => !Name.Equal(p.Position, SwitchDefinition.Off))));

    /// <inheritdoc/>
    public bool Equals(Setting? other)
    {
        if (ReferenceEquals(this, other))
            return true;
        if (other is null || other._positions.Length != _positions.Length)
            return false;
        foreach (SwitchPosition position in _positions)
            if (other.PositionOf(position.Switch) is not { } theirs || !Name.Equal(theirs, position.Position))
                return false;
        return true;
    }

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Setting);

    /// <inheritdoc/>
    public override int GetHashCode() => _hash != 0 ? _hash : _hash = HashOf(_positions);

    private static int HashOf(ImmutableArray<SwitchPosition> positions)
    {
        int hash = 0;
        foreach (SwitchPosition position in positions)
            hash ^= HashOf(position);
        return hash;
    }

    /// <summary>The switches that are not off: <c>lights=low; brake=on</c>, or <c>everything off</c>.</summary>
    public override string ToString()
    {
        string on = string.Join("; ", _positions.Where(p => !Name.Equal(p.Position, SwitchDefinition.Off)));
        return on.Length == 0 ? "everything off" : on;
    }
}
