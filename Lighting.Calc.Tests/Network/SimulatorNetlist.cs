// Writes a test network in the input language of the ngspice circuit simulator.
using System.Globalization;
using System.Text;

namespace Lighting.Calc.Tests.Network;

internal static class SimulatorNetlist
{
    /// <summary>Loads become behavioural current sources; the operating point's node volts are printed as v(n1) =
    /// …</summary>
    public static string Write(TestNetwork network)
    {
        var text = new StringBuilder("operating point of a lighting harness\n");
        text.AppendLine(CultureInfo.InvariantCulture, $"Vemf emf 0 {Number(network.Emf)}");
        text.AppendLine(
            network.SourceOhms == 0
                ? $"Vjoin emf {Name(network.Plus)} 0"
                : $"Rsource emf {Name(network.Plus)} {Number(network.SourceOhms)}"
        );
        for (int i = 0; i < network.Conductors.Count; i++)
        {
            TestConductor c = network.Conductors[i];
            if (c.A != c.B)
                text.AppendLine(CultureInfo.InvariantCulture, $"Rc{i} {Name(c.A)} {Name(c.B)} {Number(c.Ohms)}");
        }

        for (int i = 0; i < network.Loads.Count; i++)
        {
            TestLoad l = network.Loads[i];
            text.AppendLine(
                CultureInfo.InvariantCulture,
                $"Bl{i} {Name(l.Feed)} {Name(l.Return)} I={Law(l.Law, $"v({Name(l.Feed)},{Name(l.Return)})")}"
            );
            text.AppendLine(CultureInfo.InvariantCulture, $".nodeset v({Name(l.Feed)})={Number(network.Emf)}");
        }

        text.AppendLine(".options reltol=1e-12 abstol=1e-14 vntol=1e-12 gmin=1e-20 itl1=1000");
        text.AppendLine(".control\nset numdgt=15\nop");
        for (int v = 0; v < network.Nodes; v++)
        {
            if (v != network.Minus)
                text.AppendLine(CultureInfo.InvariantCulture, $"print v({Name(v)})");
        }

        return text.AppendLine("quit\n.endc\n.end").ToString();

        string Name(int node) => node == network.Minus ? "0" : "n" + node.ToString(CultureInfo.InvariantCulture);
    }

    private static string Law(Load load, string v)
    {
        if (load.Reversed)
            throw new NotSupportedException("Networks for the comparison have no reversed loads.");
        string size = Number(load.Volts);
        string k = Number(FilamentLaw.CurrentExponent);
        string leak = Number(LedDriverLaw.LeakSiemens);
        string strength = Number(load.Strength);
        string one = load.Kind switch
        {
            LampType.Filament or LampType.Halogen =>
                $"(abs({v}) < {Number(FilamentLaw.LowVoltsRatio * load.Volts)} ? "
                    + $"sgn({v})*{strength}*pwl(abs({v})/{size}, {s_lowFilament.Value})"
                    + $" : sgn({v})*{strength}*pow(abs({v})/{size}, {k}))",
            LampType.Led =>
                $"({v} >= {size} ? {strength}/{v} : ({v} > 0 ? {strength}/({size}*{size})*{v} : {leak}*{v}))",
            LampType.LedResistor => $"({v} > {size} ? ({v}-{size})/{strength}+{leak}*{v} : {leak}*{v})",
            LampType.Fixed => $"({v} >= {size} ? {strength} : ({v} > 0 ? {strength}*{v}/{size} : {leak}*{v}))",
            _ => $"{v}/{strength}",
        };
        return $"{Number(load.Quantity)}*{one}";
    }

    // Straight between so many points that it is within 1e-6 of the law.
    private static readonly Lazy<string> s_lowFilament = new(() =>
        string.Join(
            ", ",
            Enumerable
                .Range(0, 1000)
                .Select(i => i * 1e-4)
                .Concat(Enumerable.Range(0, 1201).Select(i => 0.1 + i * 5e-4))
                .Select(x => Math.Min(x, FilamentLaw.LowVoltsRatio))
                .Select(x => $"{Number(x)}, {Number(FilamentHeat.At(x).Current)}")
        )
    );

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
