using UnitsNet;

namespace Lighting.Calc;

/// <summary>Averages over the time lamps are lit.</summary>
internal static class AverageLoads
{
    private const int MostKnown = 1024;

    /// <summary>The average load of a harness. It keeps a solver of its own: for one thread at a time.</summary>
    /// <param name="network">The bike's harness.</param>
    /// <returns>What solves the harness for each setting it is asked for.</returns>
    public static AverageLoad Of(HarnessNetwork network)
    {
        HarnessSolver running = network.CreateSolver(),
            off = network.IsApart ? network.AtBattery.CreateSolver() : running;
        // Standing times to several ends ask for the same loads again.
        var known = new Dictionary<(Setting, double), ElectricCurrent>();
        double[] duties = AverageDuty.Of(network.Bike, network.Graph);
        return (setting, supplyVoltage) =>
        {
            (Setting, double) key = (setting, supplyVoltage.Volts);
            if (known.TryGetValue(key, out ElectricCurrent load))
                return load;
            // Any voltage but the charging voltage is that of the battery with the engine off.
            bool isRunning = supplyVoltage.Volts == network.Bike.ChargingVoltage.Volts;
            HarnessSolver solver = isRunning ? running : off;
            solver.SetSupply(supplyVoltage);
            solver.SetBatteryResistance(isRunning ? ElectricResistance.Zero : network.Bike.BatteryResistance);

            load = Of(solver.Solve(setting).Solved, duties);
            if (known.Count == MostKnown)
                known.Clear();
            known.Add(key, load);
            return load;
        };
    }

    /// <summary>The average load of a bike some of whose settings are solved already; the others are solved as they are
    /// asked for.</summary>
    /// <param name="network">The bike's harness.</param>
    /// <param name="solved">What is solved so far.</param>
    /// <param name="places">Where each setting stands among them.</param>
    internal static AverageLoad Of(
        HarnessNetwork network,
        IReadOnlyList<SolvedCircuit> solved,
        IReadOnlyDictionary<Setting, int> places
    )
    {
        AverageLoad? others = null;
        double[] duties = AverageDuty.Of(network.Bike, network.Graph);
        return (setting, supplyVoltage) =>
            places.TryGetValue(setting, out int place)
            && solved[place].SupplyVolts == supplyVoltage.Volts
            && solved[place].SourceOhms == 0
                ? Of(solved[place], duties)
                : (others ??= Of(network))(setting, supplyVoltage);
    }

    /// <summary>Source current with every lamp counted for its duty (<see cref="AverageDuty"/>).</summary>
    /// <remarks>
    /// Kirchhoff's current law: I = Itotal − Σ (1 − duty)·Ilamp, exact for lamps in parallel at unchanged voltage.
    /// Where lamps lie in series (a feed through another lamp) one current would be counted twice; then the source
    /// current is shared by power, I = Itotal·Σ duty·P / Σ P.
    /// </remarks>
    /// <param name="point">The setting with every lamp lit.</param>
    public static ElectricCurrent Of(OperatingPoint point) =>
        Of(point.Solved, AverageDuty.Of(point.Solved.Bike, point.Solved.Graph));

    private static ElectricCurrent Of(SolvedCircuit solved, double[] duties)
    {
        double total = solved.SourceAmperes,
            lamps = 0,
            off = 0,
            power = 0,
            dutyPower = 0;
        for (int i = 0; i < duties.Length; i++)
        {
            double amperes = Math.Abs(solved.LampAmperes(i)),
                watts = amperes * Math.Abs(solved.LampVolts(i)),
                duty = duties[i];
            lamps += amperes;
            off += (1 - duty) * amperes;
            power += watts;
            dutyPower += duty * watts;
        }

        bool series = lamps > total * (1 + 1e-6) + 1e-6;
        return ElectricCurrent.FromAmperes(series && power > 0 ? total * dutyPower / power : total - off);
    }
}
