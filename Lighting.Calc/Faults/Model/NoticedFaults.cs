using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>How likely a fault is noticed: by what it does to the lamps and other loads.</summary>
/// <remarks>
/// A fault that nobody notices brings no bike to the workshop: of two parallel earths one may be open for years. A
/// tenth of a lamp's light is noticed half of the time (common practice, no source); a load that gives no light counts
/// by its voltage.
/// </remarks>
internal static class NoticedFaults
{
    private const double HalfNoticed = 0.1;

    // What counts as dark: fainter makes no difference to an eye.
    private const double Faintest = -4;

    public static ImmutableArray<double> Of(FaultModel model, CancellationToken cancellationToken)
    {
        double[] change = new double[model.Members.Length];
        FaultCircuit circuit = model.Circuit;
        double full = circuit.Supply.FullVolts;
        foreach (Setting setting in model.Cover)
        {
            (Column[] meter, Column[] eye) = model.In(setting).Idle(cancellationToken);
            for (int l = 0; l < circuit.Lamps.Length; l++)
            {
                bool isLight = model.GivesLight(l);
                int feed = circuit.NodeOf(circuit.Bike.Lamps[l].Feed!),
                    ret = circuit.NodeOf(circuit.Bike.Lamps[l].Return!);
                double healthy = Level(0);
                for (int m = 0; m < change.Length; m++)
                    change[m] = Math.Max(change[m], Math.Abs(Level(m) - healthy));

                double Level(int m) =>
                    Math.Max(
                        Faintest,
                        isLight
                            ? eye[l].Value[m]
                            : FilamentLaw.LightExponent
                                * Math.Log(Math.Max(1e-3, Math.Abs(meter[feed].Value[m] - meter[ret].Value[m]) / full))
                    );
            }
        }

        return
        [
            .. change.Select(
                (c, m) => Math.Max(model.Members[m].Family.LeastNoticed, c * c / (c * c + HalfNoticed * HalfNoticed))
            ),
        ];
    }
}
