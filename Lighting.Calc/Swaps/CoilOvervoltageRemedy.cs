using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Remedy for a lighting coil's overvoltage when its lamps draw less after a swap: a regulator, or a resistor
/// across the coil.</summary>
/// <remarks>
/// The resistor found is the largest that leaves the coil no operating point above its voltage before the swap, at any
/// listed speed. Beside LED drivers, which draw less as the voltage rises, there may be none that leaves the lamps
/// enough: as it falls, the voltage jumps from too much down to where the drivers drop out. That is then said.
/// </remarks>
internal static class CoilOvervoltageRemedy
{
    private const int Halvings = 30;

    // Less than this share of the voltage aimed at is no remedy.
    private const double LeastShare = 0.9;

    public static Finding Of(Bike after, DirectLightingReport was, DirectLightingReport now)
    {
        ShuntRegulatorLoad regulator = now.Regulator;
        ElectricPotential most = ElectricPotential.FromVolts(
            Math.Max(was.Points.Max(p => p.TerminalVoltage.Volts), regulator.Limit.Volts)
        );
        LoadResistor largest = Resistor(after, now, most);
        ElectricResistance resistance = largest.PreferredResistance;
        double[] volts = VoltsWith(after, now, resistance.Ohms);
        var highest = ElectricPotential.FromVolts(volts.Max());
        ImmutableArray<IQuantity> figures = [now.Points[^1].Speed, regulator.Power];
        bool remedies = highest.Volts >= LeastShare * most.Volts;
        figures = remedies
            ?
            [
                .. figures,
                resistance,
                Power.FromWatts(highest.Volts * highest.Volts / resistance.Ohms),
                highest,
                ElectricPotential.FromVolts(volts[0]),
                was.Points[0].TerminalVoltage,
                now.Points[0].Speed,
                .. Rating(Across(most, resistance.Ohms), most),
            ]
            : [.. figures, largest.Resistance, highest, most];
        return new Finding(
            remedies ? FindingKind.CoilOvervoltageRemedy : FindingKind.CoilNeedsRegulator,
            Severity.Note,
            "lighting coil"
        )
        {
            Value = regulator.Current,
            Limit = regulator.Limit,
            Figures = figures,
        };
    }

    private static LoadResistor Across(ElectricPotential most, double ohms) =>
        LoadResistor.Between(most, Power.FromWatts(most.Volts * most.Volts / ohms), Power.Zero);

    private static IEnumerable<IQuantity> Rating(LoadResistor resistor, ElectricPotential most) =>
        resistor.RatingFor(most) is { } rated ? [rated] : [];

    // By halving: the coil's voltage falls as the resistor does.
    private static LoadResistor Resistor(Bike after, DirectLightingReport now, ElectricPotential most)
    {
        double enough = now.Points[^1].Current.Amperes / most.Volts,
            tooLittle = 0;
        while (VoltsWith(after, now, 1 / enough).Max() > most.Volts)
            (tooLittle, enough) = (enough, 2 * enough);
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (tooLittle + enough) / 2;
            (tooLittle, enough) =
                VoltsWith(after, now, 1 / middle).Max() > most.Volts ? (middle, enough) : (tooLittle, middle);
        }

        return Across(most, 1 / enough);
    }

    private static double[] VoltsWith(Bike after, DirectLightingReport now, double ohms)
    {
        var resistor = new FittedLamp
        {
            Circuit = "lighting coil",
            Lamp = "resistor across the lighting coil",
            Specification = LampSpecification.FromCurrent(
                LampType.Resistor,
                after.SystemVoltage,
                ElectricCurrent.FromAmperes(after.SystemVoltage.Volts / ohms)
            ),
            Feed = after.HasNetwork ? after.LivePoint : null,
            Return = after.HasNetwork ? after.EarthPoint : null,
        };
        DirectLighting lighting = DirectLighting.Of(
            after with
            {
                Lamps = after.Lamps.Add(resistor),
            },
            DirectLighting.Of(after, coilResistance: null).Source
        );
        return [.. lighting.Over(now.Points.Select(p => p.Speed), now.Setting).Select(p => p.TerminalVoltage.Volts)];
    }
}
