using System.Collections.Immutable;

namespace Lighting.Calc;

/// <summary>Every single fault of every part of a bike.</summary>
internal static class FaultCatalog
{
    /// <summary>The faults; "nothing" comes first.</summary>
    public static ImmutableArray<FaultFamily> Of(FaultCircuit circuit)
    {
        Bike bike = circuit.Bike;
        bool isBattery = circuit.Supply.Coil is null;
        var families = new List<FaultFamily>
        {
            new NoFault(circuit, circuit.Options.Weight("nothing")),
            new NotListed(circuit),
        };
        for (int i = 0; i < bike.Runs.Length; i++)
            families.Add(new HighResistanceRun(circuit, i));
        for (int i = 0; i < bike.Switches.Length; i++)
            families.AddRange(new HighResistanceContact(circuit, i), new ContactNeverOpens(circuit, i));
        for (int i = 0; i < bike.Fuses.Length; i++)
            families.AddRange(
                new HighResistanceFuseHolder(circuit, i, isBypassed: false),
                new HighResistanceFuseHolder(circuit, i, isBypassed: true),
                new FuseBlown(circuit, i)
            );
        families.AddRange(
            Enumerable
                .Range(0, circuit.Points.Length)
                .Where(p => ShortToFrame.CanBe(circuit, p))
                .Select(p => new ShortToFrame(circuit, p))
        );
        ImmutableArray<int> sections = circuit.Sides.Sections;
        families.AddRange(sections.Select(p => new LeakToFrame(circuit, p)));
        families.AddRange(
            from a in sections
            from b in sections
            where a < b && circuit.Sides.MayTouch(a, b)
            select new ShortBetweenCircuits(circuit, a, b)
        );
        families.AddRange(circuit.Crossings.Select((_, i) => new CrossedWires(circuit, i)));
        if (FlasherDead.RunOf(circuit) is { } flasher)
            families.Add(new FlasherDead(circuit, flasher));
        for (int i = 0; i < circuit.Holders.Length; i++)
            families.Add(new HighResistanceLampHolder(circuit, i));
        families.AddRange(
            FilamentsExchanged.Pairs(bike).Select(p => new FilamentsExchanged(circuit, p.First, p.Second))
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

        if (circuit.HasCharging)
            families.AddRange(ChargingFaults(circuit));
        return isBattery
            ? [.. families, new BatteryFlat(circuit), new BatteryHighResistance(circuit)]
            : [.. families, new LowCoilOutput(circuit), new CoilWindingFault(circuit)];
    }

    private static IEnumerable<FaultFamily> ChargingFaults(FaultCircuit circuit)
    {
        yield return new ChargingLeadFault(circuit);
        yield return new PhaseOpen(circuit);
        yield return new WindingEarthed(circuit);
        yield return new DiodeOpen(circuit);
        yield return new NoGeneratorOutput(circuit);
        yield return new WeakMagnets(circuit);
        if (circuit.Bike.Regulator == RegulatorKind.None)
            yield break;
        yield return new RegulatorVoltage(circuit, isHigh: true);
        yield return new RegulatorVoltage(circuit, isHigh: false);
    }
}
