using UnitsNet;

namespace Lighting.Calc;

/// <summary>What holds a lighting coil's volts down when its lamps draw less after a swap: a regulator, or a resistor across the coil.</summary>
/// <remarks>
/// The resistor found is the largest that leaves the coil no operating point above its volts before the swap, at any listed
/// speed. Beside LED drivers, which draw less as the volts rise, there may be none that leaves the lamps enough: as it falls, the
/// volts jump from too many down to where the drivers drop out. That is then said.
/// </remarks>
internal static class CoilOvervoltageRemedy
{
    private const int Halvings = 30;

    // Less than this of the volts aimed at is no cure.
    private const double LeastShare = 0.9;

    public static Finding Of(Bike after, DirectLightingReport was, DirectLightingReport now)
    {
        ShuntRegulatorLoad regulator = now.Regulator;
        string rpm = Said($"{now.Points[^1].Speed.RevolutionsPerMinute:0} rpm");
        ElectricPotential most = ElectricPotential.FromVolts(Math.Max(was.Points.Max(p => p.TerminalVoltage.Volts), regulator.Limit.Volts));
        LoadResistor largest = Resistor(after, now, most);
        double ohms = largest.PreferredResistance.Ohms;
        double[] volts = VoltsWith(after, now, ohms);
        string instead = volts.Max() < LeastShare * most.Volts
            ? Said($"No resistor across it does the same: of {largest.Resistance.Ohms:0.0} Ω or less it takes the lamps' volts ({volts.Max():0.0} V at {rpm}), of more it leaves over {most.Volts:0.0} V.")
            : Said($"Or a resistor of {ohms:0.0#} Ω across it, {Rating(Across(most, ohms), most)}: {volts.Max() * volts.Max() / ohms:0} W at most and {volts.Max():0.0} V up to {rpm} (solved), but {volts[0]:0.0} V instead of {was.Points[0].TerminalVoltage.Volts:0.0} V at {now.Points[0].Speed.RevolutionsPerMinute:0} rpm.");
        return new Finding(
            Severity.Note,
            "lighting coil",
            Said($"cure: a regulator across the coil, made for alternating current, that holds {regulator.Limit.Volts:0.0#} V: at {rpm} it takes {regulator.Current.Amperes:0.0} A, {(double)regulator.Power.Watts:0} W if it burns them. {instead} A first estimate: LEDs draw alternating current in pulses."));
    }

    private static LoadResistor Across(ElectricPotential most, double ohms) => LoadResistor.Between(most, Power.FromWatts(most.Volts * most.Volts / ohms), Power.Zero);

    private static string Rating(LoadResistor resistor, ElectricPotential most) =>
        resistor.RatingFor(most) is { } rated ? Said($"a {(double)rated.Watts:0} W one on metal") : "for which no usual resistor is rated";

    // By halving: the coil's volts fall as the resistor does.
    private static LoadResistor Resistor(Bike after, DirectLightingReport now, ElectricPotential most)
    {
        double enough = now.Points[^1].Current.Amperes / most.Volts, tooLittle = 0;
        while (VoltsWith(after, now, 1 / enough).Max() > most.Volts)
            (tooLittle, enough) = (enough, 2 * enough);
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (tooLittle + enough) / 2;
            (tooLittle, enough) = VoltsWith(after, now, 1 / middle).Max() > most.Volts ? (middle, enough) : (tooLittle, middle);
        }

        return Across(most, 1 / enough);
    }

    private static double[] VoltsWith(Bike after, DirectLightingReport now, double ohms)
    {
        var resistor = new FittedLamp
        {
            Circuit = "lighting coil",
            Lamp = "resistor across the lighting coil",
            Specification = LampSpecification.FromCurrent(LampType.Resistor, after.SystemVoltage, ElectricCurrent.FromAmperes(after.SystemVoltage.Volts / ohms)),
            Feed = after.HasNetwork ? after.LivePoint : null,
            Return = after.HasNetwork ? after.EarthPoint : null,
        };
        DirectLighting lighting = DirectLighting.Of(after with { Lamps = after.Lamps.Add(resistor) }, DirectLighting.Of(after, coilResistance: null).Source);
        return [.. lighting.Over(now.Points.Select(p => p.Speed), now.Setting).Select(p => p.TerminalVoltage.Volts)];
    }

    private static string Said(FormattableString text) => FormattableString.Invariant(text);
}
