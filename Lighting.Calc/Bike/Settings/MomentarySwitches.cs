using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Which switches of a bike spring back or are held: as its contacts state, else by their names.</summary>
internal sealed class MomentarySwitches(Bike bike, ImmutableArray<string> words)
{
    /// <summary>What such switches are called.</summary>
    public static ImmutableArray<string> UsualWords { get; } =
    ["brake", "stop", "horn", "horns", "indicators", "indicator", "turn", "turn signals", "flasher", "flash", "pass"];

    /// <summary>Whether a switch is momentary.</summary>
    public bool Contains(string switchName) =>
        bike.Switches.Where(c => Name.Equal(c.Switch, switchName))
            .Select(c => c.Momentary)
            .FirstOrDefault(m => m is not null)
        ?? IsNamed(switchName);

    /// <summary>Whether a name, or a word of it, is that of a momentary switch or load.</summary>
    public bool IsNamed(string name) =>
        words.Contains(name, Name.Comparer)
        || name.Split([' ', '-', '/', ','], StringSplitOptions.RemoveEmptyEntries)
            .Any(w => words.Contains(w, Name.Comparer));

    /// <summary>Whether no momentary switch is worked in a setting; those that conditions alone name count
    /// too.</summary>
    public bool AreAtRest(Setting setting) =>
        setting.Positions.All(p => Name.Equal(p.Position, SwitchDefinition.Off) || !Contains(p.Switch));

    /// <summary>Counts the momentary switches of a setting that are not at rest.</summary>
    /// <param name="switches">The switches of the bike by number.</param>
    public Func<Setting, int> WorkedOf(Switches switches)
    {
        int[] momentary =
        [
            .. switches.Definitions.Index().Where(d => Contains(d.Item.Name)).Select(d => d.Index),
        ];
        return setting =>
        {
            ReadOnlySpan<int> at = setting.Over(switches);
            int worked = 0;
            foreach (int s in momentary)
                worked += at[s] > 0 ? 1 : 0;
            return worked;
        };
    }
}
