using System.Collections.Immutable;
using System.Globalization;

namespace Lighting.Calc;

/// <summary>Chooses a generic LED for every lamp, by its socket class.</summary>
internal static class AllLed
{
    public static AllLedProposal Of(Bike bike)
    {
        var replacements = ImmutableArray.CreateBuilder<LampReplacement>();
        var unclassed = ImmutableArray.CreateBuilder<UnclassedLamp>();
        foreach (
            FittedLamp lamp in bike.Lamps.Where(l => l.Specification.Type is not (LampType.Fixed or LampType.Resistor))
        )
        {
            if (Replacement(bike, lamp, out string reason) is { } led)
                replacements.Add(new LampReplacement(lamp.Lamp, led));
            else
                unclassed.Add(new UnclassedLamp(lamp, reason));
        }

        return new AllLedProposal(replacements.ToImmutable(), unclassed.ToImmutable());
    }

    private static LampSpecification? Replacement(Bike bike, FittedLamp lamp, out string reason)
    {
        reason = "it is an LED already";
        if (lamp.Specification.Type is LampType.Led or LampType.LedResistor)
            return null;
        reason = "it has no code of the lamp table, so that its socket is not known";
        if (
            lamp.Specification.Code is not { } code
            || !LampTable.TryFind(code, bike.SystemVoltage, out PublishedLamp? published)
        )
            return null;
        reason = string.Create(
            CultureInfo.InvariantCulture,
            $"there is no generic LED for the socket class '{published!.SocketClass}' on "
                + $"{bike.SystemVoltage.Volts:0.##} V"
        );
        if (LedClassTable.ForSocket(published.SocketClass, bike.SystemVoltage) is not { } led)
            return null;
        reason = $"it has two filaments, and the generic '{led.Code}' has one function";
        if (published.Filament.Length == 0)
            return led.Specification;
        return TwoFunctions.IsMinor(published) ? led.Minor
            : led.Minor is null ? null
            : led.Specification;
    }
}
