using MathNet.Numerics.Distributions;

namespace Lighting.Calc;

/// <summary>A few healthy bikes of the same lists: lamps, joints and contacts drawn from their tolerances. The spread
/// of what they read is the model's tolerance.</summary>
/// <remarks>The draws are the same for every fault and every run of the program. Lamps are normal, resistances
/// log-normal about the list's value.</remarks>
internal sealed class ToleranceDraws
{
    /// <summary>Pairs of draws that mirror each other.</summary>
    public const int Pairs = 3;

    /// <summary>Draws, in pairs that mirror each other, so that their mean is the list's.</summary>
    public const int Count = 2 * Pairs;

    private readonly double[][] _ohms;
    private readonly double[][] _lampFactors;
    private readonly Load[][] _lamps;
    private readonly FaultCircuit _circuit;

    public ToleranceDraws(FaultCircuit circuit)
    {
        _circuit = circuit;
        Bike bike = circuit.Bike;
        double connection = circuit.Options.ConnectionTolerance.DecimalFractions,
            lamp = circuit.Options.LampTolerance.DecimalFractions;
        var random = new Random(1907);
        double[][] draws = new double[Count + 1][];
        int parts = circuit.Parts.Length,
            total = parts + bike.Lamps.Length;
        draws[0] = new double[total];
        for (int d = 1; d <= Count; d += 2)
        {
            draws[d] = [.. Enumerable.Range(0, total).Select(_ => Normal.Sample(random, 0, 1))];
            draws[d + 1] = [.. draws[d].Select(x => -x)];
        }

        _ohms =
        [
            .. draws.Select(z =>
                circuit
                    .ListedOhms.Select((r, conductor) => r * Math.Exp(connection * z[circuit.Parts.IndexOf(conductor)]))
                    .ToArray()
            ),
        ];
        _lampFactors =
        [
            .. draws.Select(z => bike.Lamps.Select((_, i) => Math.Max(0.5, 1 + lamp * z[parts + i])).ToArray()),
        ];
        _lamps = [.. _lampFactors.Select(f => bike.Lamps.Select((l, i) => Make(i, f[i], l.Quantity)).ToArray())];
    }

    /// <summary>Resistance of a run, contact or fuse by its conductor; draw −1 has the list's.</summary>
    public double Ohms(int draw, int conductor) => _ohms[draw + 1][conductor];

    public Load Lamp(int draw, int lamp) => _lamps[draw + 1][lamp];

    public Load Lamp(int draw, int lamp, int quantity) => Make(lamp, _lampFactors[draw + 1][lamp], quantity);

    private Load Make(int lamp, double factor, int quantity)
    {
        LampSpecification right = _circuit.Bike.Lamps[lamp].Specification;
        return CircuitLoad.Of(
            LampSpecification.FromCurrent(
                right.Type,
                right.ReferenceVoltage,
                right.ReferenceCurrent * factor,
                right.MinimumVoltage
            ),
            quantity,
            _circuit.Bike.Earth
        );
    }
}
