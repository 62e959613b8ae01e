using Lighting.Calc.Harness;
using Lighting.Calc.Network;
using UnitsNet;

namespace Lighting.Calc.Charging;

/// <summary>Average current a bike's loads draw in a setting, at a supply voltage.</summary>
/// <param name="setting">The setting.</param>
/// <param name="supplyVoltage">Volts of the source before the battery's resistance.</param>
/// <exception cref="NetworkNotSolvedException">The setting has no operating point.</exception>
public delegate ElectricCurrent AverageLoad(Setting setting, ElectricPotential supplyVoltage);

/// <summary>Averages over the time lamps are lit.</summary>
public static class AverageLoads
{
    /// <summary>Source current with every lamp counted for its <see cref="FittedLamp.Duty"/>.</summary>
    /// <remarks>
    /// I = Itotal − Σ (1 − duty)·Ilamp, exact for lamps in parallel at unchanged volts. Where lamps lie in series (a feed
    /// through another lamp) one current would be counted twice; then the source current is shared by power, I = Itotal·Σ duty·P / Σ P.
    /// </remarks>
    /// <param name="point">The setting with every lamp lit.</param>
    public static ElectricCurrent Of(OperatingPoint point)
    {
        double total = point.TotalCurrent.Amperes, lamps = 0, off = 0, power = 0, dutyPower = 0;
        foreach (LampState state in point.Lamps)
        {
            double amperes = Math.Abs(state.Current.Amperes), watts = Math.Abs((double)state.Power.Watts), duty = state.Lamp.Duty.DecimalFractions;
            lamps += amperes;
            off += (1 - duty) * amperes;
            power += watts;
            dutyPower += duty * watts;
        }

        bool series = lamps > total * (1 + 1e-6) + 1e-6;
        return ElectricCurrent.FromAmperes(series && power > 0 ? total * dutyPower / power : total - off);
    }
}
