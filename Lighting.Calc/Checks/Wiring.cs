using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>What follows from how a bike is wired, whatever its wires, lamps, contacts and fuses are: the same for all
/// bikes of one <see cref="WiringKey"/>.</summary>
/// <remarks>Immutable, but that places and review are made when they are first asked for, by two threads at once twice
/// and alike.</remarks>
internal sealed class Wiring
{
    private readonly HarnessNetwork _network;
    private Dictionary<Setting, int>? _places;
    private ImmutableArray<Finding> _review;

    /// <param name="bike">A bike that is wired so.</param>
    /// <param name="when">The settings that are looked at.</param>
    /// <exception cref="ArgumentException">The condition names what the bike does not have, or leaves too many
    /// settings; or the harness is no circuit.</exception>
    public Wiring(Bike bike, Condition when)
    {
        _network = new HarnessNetwork(bike);
        Settings = SettingEnumeration.Of(_network.Graph.Switches, when);
        Groups = new SettingGroups(_network.Graph, Settings);
    }

    /// <summary>The bike's switches.</summary>
    public ImmutableArray<SwitchDefinition> Switches => _network.Graph.Switches.Definitions;

    /// <summary>Where each setting stands among <see cref="Settings"/>.</summary>
    public Dictionary<Setting, int> Places => _places ??= PlacesOf(Settings);

    /// <summary>The settings that are looked at.</summary>
    public ImmutableArray<Setting> Settings { get; }

    /// <summary>Those settings in groups.</summary>
    public SettingGroups Groups { get; }

    /// <summary>What the lists say against each other in those settings.</summary>
    public ImmutableArray<Finding> Review =>
        _review.IsDefault ? _review = WiringReview.Evaluate(_network.Bike, Groups) : _review;

    /// <summary>Where each of some settings stands among them.</summary>
    public static Dictionary<Setting, int> PlacesOf(IEnumerable<Setting> settings) =>
        settings.Select((setting, place) => (setting, place)).ToDictionary(s => s.setting, s => s.place);

    /// <summary>The harness of a bike that is wired so.</summary>
    public HarnessNetwork NetworkOf(Bike bike) =>
        ReferenceEquals(bike, _network.Bike) ? _network : new HarnessNetwork(bike, _network);
}
