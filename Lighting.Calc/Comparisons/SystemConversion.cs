using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>A bike converted to another system voltage, such as from 6 V to 12 V: what it would be with the same
/// generator winding, more of the same battery cells, and the counterparts of its lamps.</summary>
/// <remarks>
/// Voltages of battery, charging and regulator are in proportion to the system voltage; the battery has more of the
/// same cells, of the same ampere-hours and each of its resistance. The charging list stays as it was taken, at its own
/// voltage: at a higher one a winding gives the same current at a higher speed. A lamp
/// becomes its counterpart of the lamp table or of the LED classes, of the same cap, use and about the same watts;
/// without one, and for every other load, one of the same watts is taken. Wires, joints, switches and fuses stay.
/// </remarks>
public sealed class SystemConversion
{
    private SystemConversion(Bike before, Bike bike, ImmutableArray<ConvertedLoad> loads) =>
        (Before, Bike, Loads) = (before, bike, loads);

    /// <summary>The bike as it is.</summary>
    public Bike Before { get; }

    /// <summary>The converted bike.</summary>
    public Bike Bike { get; }

    /// <summary>Its lamps and other loads, in the order of the list.</summary>
    internal ImmutableArray<ConvertedLoad> Loads { get; }

    /// <summary>By how much faster the generator turns for the same current; null without a charging list.</summary>
    public Ratio? SpeedFactor =>
        Bike.Charging.IsEmpty
            ? null
            : Ratio.FromDecimalFractions(
                (Bike.ChargingVoltage.Volts + ChargingConstants.BridgeDropVolts)
                    / (Before.ChargingVoltage.Volts + ChargingConstants.BridgeDropVolts)
            );

    /// <summary>What the conversion takes for granted.</summary>
    public ImmutableArray<Finding> Findings => [.. Found()];

    /// <summary>Converts a bike.</summary>
    /// <param name="bike">The bike.</param>
    /// <param name="systemVoltage">The other nominal voltage, above zero.</param>
    /// <exception cref="ArgumentException">The bike has that voltage already, or its lamps are on a lighting coil
    /// without a battery.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The voltage is not above zero.</exception>
    public static SystemConversion Of(Bike bike, ElectricPotential systemVoltage)
    {
        ArgumentNullException.ThrowIfNull(bike);
        if (!(systemVoltage.Volts > 0))
            throw new ArgumentOutOfRangeException(
                nameof(systemVoltage),
                systemVoltage,
                "System voltage must be greater than zero."
            );
        double ratio = systemVoltage.Volts / bike.SystemVoltage.Volts;
        if (Math.Abs(ratio - 1) < 1e-9)
            throw new ArgumentException(
                $"System voltage must be another than the bike's, which is {FindingWords.Text(bike.SystemVoltage)}.",
                nameof(systemVoltage)
            );
        if (bike.Lighting == LightingSupply.Direct)
            throw new ArgumentException(
                "A bike must have a battery to be converted; a lighting coil gives what its lamps make of it.",
                nameof(bike)
            );
        ImmutableArray<ConvertedLoad> loads = [.. bike.Lamps.Select(l => Load(l, bike.SystemVoltage, systemVoltage))];
        return new SystemConversion(
            bike,
            bike with
            {
                SystemVoltage = systemVoltage,
                BatteryVoltage = bike.BatteryVoltage * ratio,
                ChargingVoltage = bike.ChargingVoltage * ratio,
                BatteryResistance = bike.BatteryResistance * ratio,
                ZenerVoltage = bike.ZenerVoltage * ratio,
                Charging =
                [
                    .. bike.Charging.Select(c => c with { Voltage = c.Voltage ?? bike.ChargingVoltage }),
                ],
                Lamps = [.. loads.Select(l => l.After)],
            },
            loads
        );
    }

    private static ConvertedLoad Load(FittedLamp lamp, ElectricPotential from, ElectricPotential to)
    {
        double ratio = to.Volts / from.Volts;
        LampSpecification was = lamp.Specification;
        LampSpecification? listed = LampCounterparts.Of(was, from, to);
        FittedLamp after = lamp with
        {
            Specification =
                listed
                ?? LampSpecification.FromPower(
                    was.Type,
                    was.ReferenceVoltage * ratio,
                    was.ReferencePower,
                    was.MinimumVoltage * ratio
                ),
            Coil = lamp.Coil is { } coil
                ? new RelayCoil(
                    coil.Resistance * (ratio * ratio),
                    coil.PullInVoltage * ratio,
                    coil.DropOutVoltage * ratio
                )
                : null,
        };
        return new ConvertedLoad(lamp, after, listed is not null);
    }

    private IEnumerable<Finding> Found()
    {
        if (SpeedFactor is { } faster)
            yield return new Finding(FindingKind.GeneratorConverted, Severity.Caution, "generator")
            {
                Value = faster,
                Figures = [Before.SystemVoltage, Bike.SystemVoltage],
            };
        yield return new Finding(FindingKind.BatteryConverted, Severity.Caution, "battery")
        {
            Value = Bike.SystemVoltage,
            Figures = Bike.BatteryCapacity is { } capacity ? [capacity] : [],
        };
        ConvertedLoad[] taken = [.. Loads.Where(l => !l.IsListed)];
        string[] lamps = Names(l => l.GivesLight),
            others = Names(l => l.RelativeLightAt(l.ReferenceVoltage) is null);
        if (lamps.Length > 0)
            yield return new Finding(FindingKind.NoCounterpartListed, Severity.Caution, "lamps")
            {
                Value = Bike.SystemVoltage,
                Parts = [.. lamps],
            };
        if (others.Length > 0)
            yield return new Finding(FindingKind.LoadsConverted, Severity.Caution, "loads")
            {
                Value = Bike.SystemVoltage,
                Parts = [.. others],
            };

        string[] Names(Func<LampSpecification, bool> isOne) =>
            [.. taken.Where(l => isOne(l.Before.Specification)).Select(l => l.Before.Lamp)];
    }
}
