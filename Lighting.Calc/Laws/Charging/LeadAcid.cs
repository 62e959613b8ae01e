using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>Open-circuit voltage of a rested flooded lead-acid battery against its state of charge.</summary>
/// <remarks>
/// Straight lines between the points of <c>tables/lead-acid.csv</c> (12 V, 80 °F), scaled by the number of cells: 6 V
/// is half. Valid from 0 to 100 %; no state of charge for a voltage outside the table. A sealed glass-mat battery
/// is about 0.2 V higher on 12 V.
/// </remarks>
internal static class LeadAcid
{
    private const double TableVolts = 12;

    private static readonly ImmutableArray<(double Share, double Volts)> s_points =
    [
        .. PublishedTable
            .Load("lead-acid")
            .Read()
            .Select(r => (Share: r.Number("state_of_charge_percent") / 100, Volts: r.Number("open_circuit_12v_v")))
            .OrderBy(p => p.Share),
    ];

    internal static IEnumerable<double> TableShares => s_points.Select(p => p.Share);

    /// <summary>Voltage of the rested battery.</summary>
    public static ElectricPotential OpenCircuitVoltage(Ratio stateOfCharge, ElectricPotential systemVoltage)
    {
        double share = stateOfCharge.DecimalFractions;
        if (!(share >= s_points[0].Share && share <= s_points[^1].Share))
            throw new ArgumentOutOfRangeException(
                nameof(stateOfCharge),
                stateOfCharge,
                "State of charge must be between 0 and 100 %."
            );
        int i = 1;
        while (share > s_points[i].Share)
            i++;
        (double Share, double Volts) low = s_points[i - 1],
            high = s_points[i];
        return ElectricPotential.FromVolts(
            Scale(systemVoltage)
                * (low.Volts + (share - low.Share) / (high.Share - low.Share) * (high.Volts - low.Volts))
        );
    }

    /// <summary>State of charge of the rested battery; null for a voltage outside the table.</summary>
    /// <param name="openCircuitVoltage">Open-circuit voltage after some hours without load or charge.</param>
    /// <param name="systemVoltage">Nominal voltage, above zero: 6 V or 12 V.</param>
    public static Ratio? StateOfCharge(ElectricPotential openCircuitVoltage, ElectricPotential systemVoltage)
    {
        double volts = openCircuitVoltage.Volts / Scale(systemVoltage);
        // A small tolerance, so that the limits of the table scaled to 6 V are inside it.
        if (!(volts >= s_points[0].Volts - 1e-9 && volts <= s_points[^1].Volts + 1e-9))
            return null;
        int i = 1;
        while (i < s_points.Length - 1 && volts > s_points[i].Volts)
            i++;
        (double Share, double Volts) low = s_points[i - 1],
            high = s_points[i];
        return Ratio.FromDecimalFractions(
            Math.Clamp(low.Share + (volts - low.Volts) / (high.Volts - low.Volts) * (high.Share - low.Share), 0, 1)
        );
    }

    private static double Scale(ElectricPotential systemVoltage) =>
        systemVoltage.Volts > 0
            ? systemVoltage.Volts / TableVolts
            : throw new ArgumentOutOfRangeException(
                nameof(systemVoltage),
                systemVoltage,
                "System voltage must be greater than zero."
            );
}
