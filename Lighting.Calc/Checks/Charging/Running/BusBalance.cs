using MathNet.Numerics.RootFinding;

namespace Lighting.Calc;

/// <summary>The voltage of the bus at which generator, battery, regulator and harness balance (Kirchhoff's current
/// law).</summary>
/// <remarks>A piece of battery and regulator and the tangent of the generator's output together are a source behind a
/// resistance: two or three solutions of the harness mostly settle it. Where they do not, it is searched for in
/// brackets, from the highest voltage down: the lit operating point.</remarks>
internal static class BusBalance
{
    private const int MostRounds = 24;
    private const int ScanSteps = 200;

    // Of the held voltage.
    private const double Accuracy = 1e-11;

    // Voltage and amperes within which a bracketed search has found a balance and no jump.
    private const double Settled = 1e-7;

    /// <summary>Finds the voltage; the harness is solved there last.</summary>
    /// <param name="bus">Battery and regulator.</param>
    /// <param name="generator">What can be given.</param>
    /// <param name="fieldAmperes">Field current.</param>
    /// <param name="heldAmperes">What the harness takes at the held voltage, at which the regulator does not
    /// hold.</param>
    /// <param name="behind">Solves the harness behind a source: its voltage and resistance give voltage and current at
    /// the battery's terminals.</param>
    /// <param name="volts">The voltage, or that at which loads drop out and come on again.</param>
    /// <returns>Whether the voltage is steady.</returns>
    public static bool Settle(
        BatteryAndRegulator bus,
        GeneratorOutput generator,
        double fieldAmperes,
        double heldAmperes,
        Func<double, double, (double Volts, double Amperes)> behind,
        out double volts
    )
    {
        volts = bus.HoldVolts;
        int piece = bus.PieceAt(generator.AmperesAt(volts) - fieldAmperes - heldAmperes);
        if (piece < 2)
        {
            // Loads draw about in proportion to the voltage at most: enough to see whether the battery discharges.
            volts = bus.OpenVolts;
            piece = generator.AmperesAt(volts) - fieldAmperes < heldAmperes * volts / bus.HoldVolts ? 0 : 1;
        }

        for (int round = 0; round < MostRounds; round++)
        {
            (double from, double voltsThere, double ohms) = bus.Piece(piece);
            if (double.IsInfinity(ohms))
                break;
            double slope = generator.SlopeAt(volts),
                divisor = 1 - ohms * slope;
            double emf =
                (voltsThere + ohms * (generator.AmperesAt(volts) - slope * volts - fieldAmperes - from)) / divisor;
            (volts, double load) = behind(emf, ohms / divisor);
            double surplus = generator.AmperesAt(volts) - fieldAmperes - load;
            if (Math.Abs(volts - bus.VoltsAt(surplus)) <= Accuracy * bus.HoldVolts)
                return true;
            piece = bus.PieceAt(surplus);
        }

        return Search(bus, generator, fieldAmperes, behind, out volts);
    }

    // Bracketed, from the highest voltage down.
    private static bool Search(
        BatteryAndRegulator bus,
        GeneratorOutput generator,
        double fieldAmperes,
        Func<double, double, (double Volts, double Amperes)> behind,
        out double volts
    )
    {
        double top = Math.Max(bus.HoldVolts, bus.VoltsAt(Math.Max(0, generator.AmperesAt(bus.HoldVolts)))) + 1,
            above = top;
        for (int step = 1; step <= ScanSteps; step++)
        {
            double below = top * (ScanSteps - step) / ScanSteps;
            if (Excess(below) <= 0)
            {
                volts = Brent.FindRoot(Excess, below, above, Accuracy, 300);
                double surplus = SurplusAt(volts);
                // Where the battery takes no charge its voltage is any between open-circuit and held.
                return Math.Abs(volts - bus.VoltsAt(surplus)) <= Settled
                    || bus.AcceptedAmperes == 0
                        && Math.Abs(surplus) <= Settled
                        && volts >= bus.OpenVolts - Settled
                        && volts <= bus.HoldVolts + Settled;
            }

            above = below;
        }

        volts = 0;
        return false;

        double Excess(double at) => at - bus.VoltsAt(SurplusAt(at));

        double SurplusAt(double at) => generator.AmperesAt(at) - fieldAmperes - behind(at, 0).Amperes;
    }
}
