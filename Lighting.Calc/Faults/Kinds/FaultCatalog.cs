using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Every single fault of every part of a bike.</summary>
internal static class FaultCatalog
{
    /// <summary>The faults; "nothing" comes first.</summary>
    public static ImmutableArray<FaultFamily> Of(FaultCircuit circuit, HealthyCurrents currents)
    {
        Bike bike = circuit.Bike;
        bool isBattery = circuit.Supply.Coil is null;
        var families = new List<FaultFamily> { new NoFault(circuit, circuit.Options.Weight("nothing")) };
        for (int i = 0; i < bike.Runs.Length; i++)
            families.Add(new HighResistanceRun(circuit, i, currents.Conductors[circuit.Runs[i]]));
        for (int i = 0; i < bike.Switches.Length; i++)
            families.AddRange(
                new HighResistanceContact(circuit, i, currents.Conductors[circuit.Contacts[i]]),
                new ContactNeverOpens(circuit, i)
            );
        for (int i = 0; i < bike.Fuses.Length; i++)
            families.AddRange(
                new HighResistanceFuseHolder(circuit, i, currents.Conductors[circuit.Fuses[i]]),
                new FuseBlown(circuit, i)
            );
        families.AddRange(
            Enumerable
                .Range(0, circuit.Points.Length)
                .Where(p => ShortToFrame.CanBe(circuit, p))
                .Select(p => new ShortToFrame(circuit, p))
        );
        for (int i = 0; i < bike.Lamps.Length; i++)
        {
            LampSpecification right = bike.Lamps[i].Specification;
            families.Add(new LampDead(circuit, i));
            if (WrongLamp.Others(right, bike) is { IsEmpty: false } others)
                families.Add(new WrongLamp(circuit, i, others));
            if (right.Type is LampType.Led or LampType.LedResistor && isBattery)
                families.Add(new LedReversed(circuit, i));
        }

        return isBattery
            ? [.. families, new BatteryFlat(circuit), new BatteryHighResistance(circuit)]
            : [.. families, new LowCoilOutput(circuit), new CoilWindingFault(circuit, currents.Source)];
    }
}
