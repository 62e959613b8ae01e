
namespace Lighting.Calc;

/// <summary>The settings of a bike sorted by what carries current in them: settings that differ by a dead switch alone are one state, those that draw nothing none.</summary>
internal sealed class ElectricalStates
{
    private readonly HarnessNetwork _network;
    private readonly double[] _ohms;
    private readonly Dictionary<string, int> _known = [];
    private readonly Dictionary<Setting, int> _ofSetting = [];
    private readonly List<ReducedCircuit> _circuits = [];
    private readonly List<Setting> _first = [];

    public ElectricalStates(HarnessNetwork network)
    {
        _network = network;
        Bike bike = network.Bike;
        _ohms = new double[network.Circuit.ConductorCount];
        for (int i = 0; i < network.RunConductors.Length; i++)
            _ohms[network.RunConductors[i]] = bike.Runs[i].WireResistance(bike.WireTemperature).Ohms + bike.Runs[i].TotalJointResistance.Ohms;
        for (int i = 0; i < network.ContactConductors.Length; i++)
            _ohms[network.ContactConductors[i]] = bike.Switches[i].Resistance.Ohms;
        for (int i = 0; i < network.FuseConductors.Length; i++)
            _ohms[network.FuseConductors[i]] = bike.HasNetwork ? FuseTable.ResistanceOf(bike.Fuses[i]).Ohms : 0;
    }

    public IReadOnlyList<ReducedCircuit> Circuits => _circuits;

    /// <summary>One setting of each state, to name it by.</summary>
    public IReadOnlyList<Setting> Settings => _first;

    /// <summary>The state of a setting; −1 when nothing carries current in it.</summary>
    public int Of(Setting setting)
    {
        if (_ofSetting.TryGetValue(setting, out int known))
            return known;
        var key = new TopologyKey(_network.Circuit.ConductorCount, _network.Circuit.LoadCount);
        for (int c = 0; c < _ohms.Length; c++)
            key.SetConductor(c, double.IsPositiveInfinity(_ohms[c]) ? Link.Open : _ohms[c] > 0 ? Link.Finite : Link.Merged);
        Bike bike = _network.Bike;
        for (int i = 0; i < _network.ContactConductors.Length; i++)
            if (!bike.Switches[i].IsClosed(setting))
                key.SetConductor(_network.ContactConductors[i], Link.Open);
        for (int i = 0; i < _network.Loads.Length; i++)
            key.SetLoad(_network.Loads[i], bike.HasNetwork || bike.Lamps[i].LitWhen.Holds(setting));
        EliminationPlan plan = _network.Circuit.PlanFor(key);
        return _ofSetting[setting] = plan.LiveLoads.Length == 0 && plan.LiveConductors.Length == 0 ? -1 : Of(key, plan, setting);
    }

    private int Of(TopologyKey key, EliminationPlan plan, Setting setting)
    {
        // Two settings are one state when the same elements carry current between the same merged points.
        Circuit circuit = _network.Circuit;
        string name = string.Join(
            ';',
            [
                .. plan.LiveConductors.Select(c => $"{c},{plan.Numbering.Slot[circuit.ConductorA[c]]},{plan.Numbering.Slot[circuit.ConductorB[c]]}"),
                .. plan.LiveLoads.Select(l => $"L{l},{plan.Numbering.Slot[circuit.LoadFeed[l]]},{plan.Numbering.Slot[circuit.LoadReturn[l]]}"),
            ]);
        if (_known.TryGetValue(name, out int state))
            return state;
        _circuits.Add(ReducedCircuit.Of(circuit, key, plan));
        _first.Add(setting);
        return _known[name] = _circuits.Count - 1;
    }
}
