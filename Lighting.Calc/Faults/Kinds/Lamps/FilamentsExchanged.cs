namespace Lighting.Calc;

/// <summary>The two filaments of a lamp exchanged: fitted the wrong way round, or a lamp wired the other way.</summary>
/// <remarks>Of two powers the light at each pair of points is that of the other filament; of two beams it is the other
/// beam that is lit.</remarks>
internal sealed class FilamentsExchanged(FaultCircuit circuit, int first, int second)
    : FaultFamily(
        circuit,
        FaultKind.FilamentsExchanged,
        first,
        circuit.Options.Weight("filaments exchanged"),
        OneSeverity
    )
{
    private const double TwoPowers = 2;

    public override string PartName => $"{Bike.Lamps[Part].Lamp} and {Bike.Lamps[second].Lamp}";

    public override string Subject => $"the filaments of the {PartName}";

    public override string? Repair => "Fit the lamp the right way round, or exchange its two wires.";

    /// <summary>The pairs of filaments that are in one bulb.</summary>
    public static IEnumerable<(int First, int Second)> Pairs(Bike bike)
    {
        for (int a = 0; a < bike.Lamps.Length; a++)
            for (int b = a + 1; b < bike.Lamps.Length; b++)
                if (InOneBulb(bike.Lamps[a], bike.Lamps[b]))
                    yield return (a, b);
    }

    /// <summary>Whether two lamps are filaments of one bulb.</summary>
    public static bool AreInOneBulb(Bike bike, int first, int second) =>
        first != second && InOneBulb(bike.Lamps[first], bike.Lamps[second]);

    public override void PutIn(FaultyHarness harness, FaultCase severity)
    {
        LampSpecification a = Bike.Lamps[Part].Specification,
            b = Bike.Lamps[second].Specification;
        double ratio = (double)(a.ReferencePower.Watts / b.ReferencePower.Watts);
        if (ratio is > TwoPowers or < 1 / TwoPowers)
            (harness.Lamps[Part].Other, harness.Lamps[second].Other) = (b, a);
        else
            (harness.Lamps[Part].ExchangedWith, harness.Lamps[second].ExchangedWith) = (second + 1, Part + 1);
    }

    protected override string State(Fault fault) => "exchanged";

    private static bool InOneBulb(FittedLamp a, FittedLamp b) =>
        a.Quantity == 1
        && b.Quantity == 1
        && Name.Equal(a.Circuit, b.Circuit)
        && Name.Equal(a.Return!, b.Return!)
        && !Name.Equal(a.Feed!, b.Feed!)
        && BulbOf(a) is { } bulb
        && bulb == BulbOf(b);

    // Codes of two-filament lamps end in the word of the filament.
    private static string? BulbOf(FittedLamp lamp) =>
        lamp.Specification.Code is { } code && code.LastIndexOf(' ') is > 0 and var end ? code[..end] : null;
}
