using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>The load of the flasher before and after, and the resistors that would give it back.</summary>
internal static class FlasherLoads
{
    public static ImmutableArray<FlasherChange> Of(
        Bike before,
        Bike after,
        IEnumerable<PointPair> pairs,
        CheckOptions options
    )
    {
        int[] flashing =
        [
            .. Enumerable
                .Range(0, before.Lamps.Length)
                .Where(i => options.Fuses.IsFlashing(before.Lamps[i])),
        ];
        var changes = new Dictionary<string, FlasherChange>();
        foreach (PointPair pair in pairs)
        {
            int[] lit = [.. flashing.Where(pair.IsLitBefore)];
            double nominal = Nominal(before, lit);
            string key = string.Join(',', lit);
            if (lit.Length == 0 || changes.ContainsKey(key))
                continue;
            changes.Add(
                key,
                new FlasherChange(
                    Setting: pair.Before.Setting,
                    Lamps: [.. lit.Select(i => before.Lamps[i].Lamp)],
                    NominalBefore: Power.FromWatts(nominal),
                    NominalAfter: Power.FromWatts(Nominal(after, lit)),
                    FlasherLoad: before.FlasherLoad ?? Power.FromWatts(nominal),
                    CurrentBefore: ElectricCurrent.FromAmperes(
                        lit.Sum(i => Math.Abs(pair.Before.Lamps[i].Current.Amperes))
                    ),
                    CurrentAfter: ElectricCurrent.FromAmperes(
                        lit.Sum(i => Math.Abs(pair.After.Lamps[i].Current.Amperes))
                    )
                )
            );
        }

        return [.. changes.Values];
    }

    public static ImmutableArray<LampResistor> Resistors(
        Bike before,
        Bike after,
        ImmutableArray<FlasherChange> flashers
    )
    {
        if (before.Flasher is FlasherKind.None or FlasherKind.Electronic)
            return [];
        string[] starved =
        [
            .. flashers.Where(f => f.Share.DecimalFractions < SwapConstants.FlasherIsSure).SelectMany(f => f.Lamps),
        ];
        var highest = LedVolts.Worst(before);
        var resistors = ImmutableArray.CreateBuilder<LampResistor>();
        for (int i = 0; i < before.Lamps.Length; i++)
        {
            LampSpecification old = before.Lamps[i].Specification,
                led = after.Lamps[i].Specification;
            Power power = led.PowerAt(old.ReferenceVoltage);
            if (
                starved.Contains(before.Lamps[i].Lamp, Name.Comparer)
                && (double)power.Watts < (double)old.ReferencePower.Watts * (1 - 1e-9)
            )
                resistors.Add(
                    new LampResistor(
                        after.Lamps[i],
                        LoadResistor.Between(old.ReferenceVoltage, old.ReferencePower, power),
                        highest
                    )
                );
        }

        return resistors.ToImmutable();
    }

    /// <summary>Nominal watts: those on the cap where they are published, else those of the reference point.</summary>
    private static double Nominal(Bike bike, IEnumerable<int> lamps) =>
        lamps.Select(i => bike.Lamps[i]).Sum(l => l.Quantity * NominalWatts(l.Specification, bike));

    private static double NominalWatts(LampSpecification lamp, Bike bike) =>
        lamp.Code is { } code
        && LampTable.TryFind(code, bike.SystemVoltage, out PublishedLamp? published)
        && published!.RatedPower is { } rated
            ? (double)rated.Watts
            : (double)lamp.ReferencePower.Watts;
}
