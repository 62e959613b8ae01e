using UnitsNet;

namespace Lighting.Calc;

/// <summary>The remedy for an indicator lamp that stands between the two sides: a diode from each side to its feed, its
/// return on the frame.</summary>
/// <remarks>A diode is taken as 0.7 V and 0.1 Ω above them (silicon; from memory), which is the law of an LED behind a
/// ballast.</remarks>
internal static class DiodePair
{
    private static readonly LampSpecification s_diode = LampSpecification.FromCurrent(
        LampType.LedResistor,
        ElectricPotential.FromVolts(0.8),
        ElectricCurrent.FromAmperes(1),
        ElectricPotential.FromVolts(0.7)
    );

    /// <summary>The bike with the pair in the feed of a lamp; the diodes stand last in its lamps.</summary>
    public static Bike Fit(Bike bike, FittedLamp lamp)
    {
        string joint = $"{lamp.Lamp} diodes";
        FittedLamp Diode(string side, string name) =>
            new()
            {
                Circuit = lamp.Circuit,
                Lamp = $"{joint} {name}",
                Specification = s_diode,
                Feed = side,
                Return = joint,
            };
        FittedLamp moved = lamp with { Feed = joint, Return = bike.EarthPoint };
        return bike with
        {
            Lamps =
            [
                .. bike.Lamps.Select(l => Name.Equal(l.Lamp, lamp.Lamp) ? moved : l),
                Diode(lamp.Feed!, "one"),
                Diode(lamp.Return!, "two"),
            ],
        };
    }

    /// <summary>Whether the pair leaves the glowing lamp dark and the indicator lamp lit.</summary>
    public static bool Remedies(Bike bike, FittedLamp shared, int glowing, OperatingPoint point)
    {
        HarnessSolver solver = new HarnessNetwork(Fit(bike, shared)).CreateSolver();
        solver.SetSupply(point.SupplyVoltage);
        solver.SetBatteryResistance(ElectricResistance.FromOhms(point.Solved.SourceOhms));
        OperatingPoint cured;
        try
        {
            cured = solver.Solve(point.Setting);
        }
        catch (NetworkNotSolvedException)
        {
            return false;
        }

        int lamp = Enumerable.Range(0, bike.Lamps.Length).First(i => Name.Equal(bike.Lamps[i].Lamp, shared.Lamp));
        return !SneakFeeds.Glows(cured.Lamps[glowing]) && SneakFeeds.Glows(cured.Lamps[lamp]);
    }
}
