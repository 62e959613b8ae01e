using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The jumper tests of a bike with a battery: past the feed and the return of every lamp, and across every
/// contact and wire that carries current. A fuse is never bridged.</summary>
internal static class JumperTests
{
    public static ImmutableArray<ExpectedJumper> Of(FaultModel model, CancellationToken cancellationToken)
    {
        FaultCircuit circuit = model.Circuit;
        HarnessGraph graph = circuit.Graph;
        if (circuit.Supply.Coil is not null)
            return [];
        var tests = ImmutableArray.CreateBuilder<ExpectedJumper>();
        var solver = new FaultSolver(circuit, model.Draws);
        int[] lamps = [.. Enumerable.Range(0, circuit.Lamps.Length).Where(model.GivesLight)];
        foreach (int lamp in lamps)
            if (graph.Lamps[lamp].A != graph.Live)
                Add(JumperUse.Feed, circuit.Bike.Lamps[lamp].Lamp, model.AllOff, graph.Live, graph.Lamps[lamp].A, lamp);
        foreach (int lamp in lamps)
            if (graph.Lamps[lamp].B != graph.Earth && model.Lighting(lamp) is { } lit)
                Add(JumperUse.Return, circuit.Bike.Lamps[lamp].Lamp, lit, graph.Lamps[lamp].B, graph.Earth, lamp);
        foreach (MeasuredPart part in model.Parts.Where(p => p.From != p.To && !IsFuse(p)))
            if (
                part is { Lamp: < 0, Holder: < 0 }
                && TestCatalog.Carrying(model, part) is { } setting
                && model.CarriedIn(setting).Of(part).Where(model.GivesLight).Cast<int?>().FirstOrDefault()
                    is { } watched
            )
                Add(JumperUse.Across, part.Name, setting, part.From, part.To, watched);
        return tests.ToImmutable();

        bool IsFuse(MeasuredPart part) => circuit.Fuses.Contains(part.Conductor);

        void Add(JumperUse use, string part, Setting setting, int from, int to, int lamp)
        {
            var look = new TestPlace(setting, Instrument.Visual, lamp);
            cancellationToken.ThrowIfCancellationRequested();
            float[] lights = model.In(setting).Looks(solver, look with { JumperFrom = from, JumperTo = to });
            double with = lights[lamp],
                without = model.Healthy(look, cancellationToken).Value;
            bool isAlone = LookScale.Of(without) == Brightness.Dark;
            // On the earth side the fuse is that of the lamp.
            int fuse = Math.Max(circuit.FuseBefore[to], circuit.FuseBefore[from]);
            if (fuse < 0)
                fuse = circuit.FuseBefore[graph.Lamps[lamp].A];
            tests.Add(
                new ExpectedJumper(
                    use,
                    part,
                    setting,
                    new JumperLead(circuit.Points[from], circuit.Points[to]),
                    fuse >= 0 ? circuit.Bike.Fuses[fuse].Rating : null,
                    [
                        .. lamps
                            .Where(l => LookScale.Of(lights[l]) != Brightness.Dark)
                            .Select(l => circuit.Bike.Lamps[l].Lamp),
                    ],
                    Ratio.FromDecimalFractions(isAlone ? 0 : Math.Exp(with - without) - 1)
                )
                {
                    Lamp = circuit.Bike.Lamps[lamp].Lamp,
                }
            );
        }
    }
}
