
namespace Lighting.Calc;

/// <summary>A conductor that passes current in a state: a run, a fuse or a closed contact.</summary>
/// <param name="A">Node on one side.</param>
/// <param name="B">Node on the other.</param>
/// <param name="Run">Index of the run; −1 for any other.</param>
/// <param name="Contact">Index of the contact; −1 for any other.</param>
/// <param name="FixedOhms">Its resistance without its wire: joints, contact or fuse.</param>
internal readonly record struct HarnessEdge(int A, int B, int Run, int Contact, double FixedOhms)
{
    public int Other(int node) => node == A ? B : A;

    public static IEnumerable<HarnessEdge> Of(HarnessNetwork network, Setting setting)
    {
        Bike bike = network.Bike;
        for (int i = 0; i < bike.Runs.Length; i++)
            yield return Make(network.RunConductors[i], i, -1, bike.Runs[i].TotalJointResistance.Ohms);
        for (int i = 0; i < bike.Switches.Length; i++)
            if (bike.Switches[i].IsClosed(setting))
                yield return Make(network.ContactConductors[i], -1, i, bike.Switches[i].Resistance.Ohms);
        for (int i = 0; i < bike.Fuses.Length; i++)
            yield return Make(network.FuseConductors[i], -1, -1, FuseTable.ResistanceOf(bike.Fuses[i]).Ohms);

        HarnessEdge Make(int conductor, int run, int contact, double ohms) =>
            new(network.Circuit.ConductorA[conductor], network.Circuit.ConductorB[conductor], run, contact, ohms);
    }
}
