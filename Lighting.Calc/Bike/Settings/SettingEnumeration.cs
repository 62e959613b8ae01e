using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Switches of a bike and all settings (one position for every switch).</summary>
public static class SettingEnumeration
{
    /// <summary>Maximum number of settings enumerated; a bike with more needs a condition that holds some
    /// switches.</summary>
    public const int MostSettings = 65_536;

    /// <summary>The switches of a bike: those of its contacts, then those that only conditions name.</summary>
    /// <remarks>A switch has the position <c>off</c>, unless a contact says that it has none, then the positions that
    /// contacts and conditions name, in order.</remarks>
    internal static ImmutableArray<SwitchDefinition> SwitchesOf(Bike bike)
    {
        var order = new List<string>();
        var positions = new Dictionary<string, List<string>>(Name.Comparer);
        HashSet<string> withoutOff = bike
            .Switches.Where(c => !c.HasOff && !c.IsRelay)
            .Select(c => c.Switch)
            .ToHashSet(Name.Comparer);
        foreach (SwitchContact contact in bike.Switches.Where(c => !c.IsRelay))
            Add(contact.Switch, contact.ClosedIn);
        foreach (
            Condition condition in bike
                .Lamps.Select(l => l.LitWhen)
                .Concat(bike.Charging.Select(c => c.When))
                .Concat(bike.Ride.Select(r => r.When))
        )
            foreach (ConditionTerm term in condition.Terms)
                Add(term.Switch, term.Positions);
        return [.. order.Select(name => new SwitchDefinition(name, [.. positions[name]]))];

        void Add(string name, ImmutableArray<string> named)
        {
            if (!positions.TryGetValue(name, out List<string>? known))
            {
                order.Add(name);
                positions.Add(name, known = withoutOff.Contains(name) ? [] : [SwitchDefinition.Off]);
            }

            foreach (string position in named)
                if (
                    !known.Contains(position, Name.Comparer)
                    && !(Name.Equal(position, SwitchDefinition.Off) && withoutOff.Contains(name))
                )
                    known.Add(position);
        }
    }

    /// <summary>Number of settings that a condition leaves, alternatives ignored; <see cref="long.MaxValue"/> for that
    /// many and more.</summary>
    internal static long Count(Bike bike, Condition only) => Count(SwitchesOf(bike), only);

    /// <summary>Every setting in which a condition holds; the one with every switch at rest first.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="only">The condition; <see cref="Condition.Always"/> for all settings.</param>
    /// <exception cref="ArgumentException">The condition names a switch or position that the bike does not have, or
    /// leaves more than <see cref="MostSettings"/>.</exception>
    public static ImmutableArray<Setting> Of(Bike bike, Condition only) => Of(new Switches(bike), only);

    /// <summary>The same of switches that are known already.</summary>
    internal static ImmutableArray<Setting> Of(Switches numbers, Condition only)
    {
        ImmutableArray<SwitchDefinition> switches = numbers.Definitions;
        foreach (ConditionTerm term in only.Terms)
        {
            SwitchDefinition? definition =
                switches.FirstOrDefault(s => Name.Equal(s.Name, term.Switch))
                ?? throw new ArgumentException(
                    $"'{only}' names the switch '{term.Switch}'; the bike has {Listing(switches.Select(s => s.Name))}.",
                    nameof(only)
                );
            foreach (string position in term.Positions)
                if (!definition.Positions.Contains(position, Name.Comparer))
                    throw new ArgumentException(
                        $"'{only}' names the position '{position}' of '{term.Switch}'; it has "
                            + $"{Listing(definition.Positions)}.",
                        nameof(only)
                    );
        }

        long count = Count(switches, only);
        if (count > MostSettings)
            throw new ArgumentException(
                $"The switches have {(count < long.MaxValue ? count : "more than 9e18")} settings, more than "
                    + $"{MostSettings}; hold some switches with a condition.",
                nameof(only)
            );
        int[][] allowed = [.. switches.Select(d => Allowed(d, only).Select(p => d.Positions.IndexOf(p)).ToArray())];
        var settings = ImmutableArray.CreateBuilder<Setting>((int)count);
        for (int number = 0; number < count; number++)
        {
            // The last switch changes fastest.
            var at = new int[allowed.Length];
            for (int i = at.Length - 1, rest = number; i >= 0; rest /= allowed[i].Length, i--)
                at[i] = allowed[i][rest % allowed[i].Length];
            settings.Add(new Setting(numbers, at));
        }

        return only.Parts.Any(p => p.Length > 1) ? [.. settings.Where(only.Holds)] : settings.MoveToImmutable();
    }

    /// <summary>The setting with the switches of a condition in their first named position and all others off, or in
    /// their first position if they have no off.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="held">The condition; it names each switch that is not off.</param>
    internal static Setting Held(Bike bike, Condition held) => Held(SwitchesOf(bike), held);

    /// <summary>The same of switches that are known already.</summary>
    internal static Setting Held(ImmutableArray<SwitchDefinition> switches, Condition held) =>
        new(
            switches.Select(s => new SwitchPosition(
                s.Name,
                held.Parts.Select(p => p[0]).FirstOrDefault(t => Name.Equal(t.Switch, s.Name))?.Positions[0] ?? s.Rest
            ))
        );

    // Of very many switches the product would leave the numbers.
    private static long Count(ImmutableArray<SwitchDefinition> switches, Condition only) =>
        (long)
            switches.Aggregate(
                UInt128.One,
                (product, s) => UInt128.Min(product * (UInt128)Allowed(s, only).Count(), long.MaxValue)
            );

    private static IEnumerable<string> Allowed(SwitchDefinition definition, Condition only)
    {
        ConditionTerm? term = only
            .Parts.Where(p => p.Length == 1)
            .Select(p => p[0])
            .FirstOrDefault(t => Name.Equal(t.Switch, definition.Name));
        return term is null
            ? definition.Positions
            : definition.Positions.Where(p => term.Positions.Contains(p, Name.Comparer));
    }

    private static string Listing(IEnumerable<string> names)
    {
        string all = string.Join(", ", names);
        return all.Length == 0 ? "none" : all;
    }
}
