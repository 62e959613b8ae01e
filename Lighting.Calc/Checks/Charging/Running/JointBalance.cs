using MathNet.Numerics.RootFinding;

namespace Lighting.Calc;

/// <summary>The balance of a bus that is apart from the battery: the voltage where the generator joins the harness, the
/// battery being one of the parts of the harness.</summary>
/// <remarks>
/// The regulator is at the bus or at the battery's terminals: there a shunt takes its current through the wires, and a
/// series regulator lets the bus rise by what is lost on the way to the battery. The battery is a source behind a
/// resistance on each of the parts of its characteristic, of which the voltage at its terminals chooses one. Of several
/// voltages that LED drivers allow it is the highest.
/// </remarks>
internal static class JointBalance
{
    private const int ScanSteps = 200;
    private const int MostPieces = 8;

    // Of the held voltage; the battery's small resistance makes currents of the rounding of voltages.
    private const double Accuracy = 1e-15;

    // Amperes within which a search has found a balance and no jump.
    private const double Settled = 1e-6;

    /// <summary>Finds the voltage; the harness is solved there last.</summary>
    /// <param name="bus">Battery and regulator.</param>
    /// <param name="generator">What can be given.</param>
    /// <param name="fieldAmperes">Field current.</param>
    /// <param name="mayFall">Whether a load's current may fall as the voltage rises, as that of an LED driver.</param>
    /// <param name="at">Solves the harness with a voltage at the bus and a battery: current into both, and the voltage
    /// at the battery's terminals.</param>
    /// <param name="volts">The voltage, or that at which loads drop out and come on again.</param>
    /// <returns>Whether the voltage is steady.</returns>
    public static bool Settle(
        BatteryAndRegulator bus,
        GeneratorOutput generator,
        double fieldAmperes,
        bool mayFall,
        Func<double, Load, (double Amperes, double BatteryVolts)> at,
        out double volts
    )
    {
        int piece = 1;
        volts = bus is { IsAtBattery: true, IsSeries: true } ? HeldAtBattery() : bus.HoldVolts;
        if (double.IsNaN(volts))
            return false;
        double surplus = Surplus(volts);
        if (surplus >= 0 && bus.Keeps(surplus))
            return true;
        (double low, double high) = surplus >= 0 ? (volts, Above(volts)) : (Below(volts), volts);
        if (double.IsNaN(low) || double.IsNaN(high))
            return false;
        if (surplus < 0 && mayFall)
            (low, high) = Highest(low, high);
        volts = Brent.FindRoot(Excess, low, high, Accuracy * bus.HoldVolts, 300);
        return Math.Abs(Excess(volts)) <= Settled;

        // The battery takes what it accepts at the voltage that is held at its terminals.
        double HeldAtBattery()
        {
            double high = bus.HoldVolts;
            if (Over(high) >= 0)
                return high;
            for (double step = 0.1; high < 10 * bus.HoldVolts; step *= 2)
                if (Over(high += step) >= 0)
                    return Brent.FindRoot(Over, high - step, high, Accuracy * bus.HoldVolts, 300);
            return double.NaN;
        }

        double Over(double v) => at(v, bus.BatteryOn(2)).BatteryVolts - bus.HoldVolts;

        double Excess(double v) => Surplus(v) - bus.RegulatorAmperesAt(v);

        double Surplus(double v) => generator.AmperesAt(v) - fieldAmperes - Taken(v);

        // The characteristic rises, so that each part points the way to the one that the voltage lies on; by one at a
        // time, since a flat part between two steep ones may be passed over.
        double Taken(double v)
        {
            for (int round = 0; ; round++)
            {
                (double amperes, double battery) = at(v, bus.BatteryOn(piece));
                int next = bus.BatteryPieceAt(battery);
                if (next == piece || round == MostPieces)
                    return amperes;
                piece += Math.Sign(next - piece);
            }
        }

        double Above(double v)
        {
            for (double top = v + 1; top < 10 * v; top += top - v)
                if (Excess(top) < 0)
                    return top;
            return double.NaN;
        }

        // A battery discharges into a bus of no voltage.
        double Below(double v)
        {
            for (double bottom = v - 1; bottom > 0; bottom -= v - bottom)
                if (Excess(bottom) > 0)
                    return bottom;
            return Excess(0) > 0 ? 0 : double.NaN;
        }

        (double Low, double High) Highest(double low, double high)
        {
            double step = (high - low) / ScanSteps,
                above = high;
            for (int i = 1; i < ScanSteps; i++)
            {
                double below = high - i * step;
                if (Excess(below) >= 0)
                    return (below, above);
                above = below;
            }

            return (low, above);
        }
    }
}
