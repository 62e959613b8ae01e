using System.Collections.Immutable;
using UnitsNet;

namespace Lighting.Calc;

/// <summary>What a swap gives rise to, in plain words with its numbers.</summary>
internal sealed class SwapFindings(Bike before, Bike after, SwapReport report, ImmutableArray<PointPair> pairs, SwapOptions options)
{
    // Less light than this share of the old lamp's is worth a word: common practice, no source.
    private const double LessLight = 0.8;

    public IEnumerable<Finding> All() =>
    [
        .. Flasher(), .. Sneaks(), .. DarkAfter(), .. TwoFunctions.Findings(before, report.Replacements), .. LedVolts.Findings(NewLeds, after, report.After.DirectLighting), .. DirectVolts(),
        .. Overcharge(), .. Polarity(), .. Light(), .. Approval(), .. FuseAdvice(),
    ];

    private ImmutableArray<FittedLamp> NewLeds =>
    [
        .. after.Lamps.Where((l, i) => report.Lamps[i].IsReplaced && l.Specification.Type is LampType.Led or LampType.LedResistor),
    ];

    private IEnumerable<Finding> Flasher()
    {
        // Both sides of a bike are mostly alike: told once.
        foreach (IGrouping<(double, double, double), FlasherChange> alike in report.Flashers.GroupBy(f => ((double)f.NominalAfter.Watts, (double)f.FlasherLoad.Watts, Math.Round(f.HeatShare.DecimalFractions, 2))))
        {
            FlasherChange flasher = alike.First();
            double share = flasher.Share.DecimalFractions;
            if (share >= SwapConstants.FlasherIsSure || before.Flasher == FlasherKind.None)
                continue;
            string load = Said($"{Watts(flasher.NominalAfter)} on the flasher ({string.Join(", ", alike.Select(f => f.Setting))}) instead of {Watts(flasher.FlasherLoad)}, {100 * share:0} % of its load");
            if (before.Flasher == FlasherKind.Electronic)
            {
                yield return new Finding(Severity.Note, "flasher", $"{load}: an electronic flasher keeps its rate where its own smallest load is not above that.");
                continue;
            }

            bool stops = share < SwapConstants.FlasherStops;
            string rate = Said($"{load}; a thermal flasher {(stops ? "stops, or lights without flashing," : "may leave its rate")} below {100 * (stops ? SwapConstants.FlasherStops : SwapConstants.FlasherIsSure):0} % (common practice), its strip getting {100 * flasher.HeatShare.DecimalFractions:0} % of the heat; {SwapConstants.LowestFlashRate:0} to {SwapConstants.HighestFlashRate:0} flashes a minute are required, {SwapConstants.LowestFixedLoadFlashRate:0} to {SwapConstants.HighestFlashRate:0} of a flasher for a fixed load (SAE J945 in FMVSS 108)");
            string unless = before.Flasher == FlasherKind.NotStated ? ". Whether it is thermal is not stated: give 'flasher' in bike.csv" : "";
            yield return new Finding(stops && before.Flasher == FlasherKind.Thermal ? Severity.Fault : Severity.Caution, "flasher", $"{rate}{unless}. Cure: an electronic flasher, or a load resistor beside each lamp.");
        }

        foreach (IGrouping<double, LampResistor> alike in report.Resistors.GroupBy(r => Math.Round(r.Resistor.Resistance.Ohms, 6)))
            yield return new Finding(Severity.Note, "load resistors", OfResistor(alike.First(), Listing(alike.Select(r => r.Lamp)), alike.Sum(r => r.Lamp.Quantity)));
    }

    private static string OfResistor(LampResistor resistor, string lamps, int count)
    {
        string where = count > 1 ? $"beside each of the {count} ({lamps})" : $"beside {lamps}";
        double lit = (double)resistor.HighestHeat.Watts;
        string rating = resistor.Rating is { } rated ? Said($"take a {(double)rated.Watts:0} W one on metal, away from plastic") : "no usual resistor is rated for that";
        return Said($"{where} {resistor.Resistor.Resistance.Ohms:0.00} Ω makes up for {Watts(resistor.Resistor.Heat)} at {resistor.Resistor.Voltage.Volts:0.0#} V (next standard value {resistor.Resistor.PreferredResistance.Ohms:0.0#} Ω); it burns {lit:0.0} W lit at {resistor.HighestVoltage.Volts:0.0#} V, {SwapConstants.LongestOnShare * lit:0.0} W flashing at most: {rating}. It takes back the amps that the LED saves.");
    }

    private IEnumerable<Finding> Sneaks()
    {
        foreach (SneakFeed sneak in report.SneakFeeds)
        {
            double light = sneak.Glowing.RelativeLight!.Value.Percent;
            string through = sneak.Through is { } lamp
                ? $" through '{lamp.Lamp.Lamp}', which hangs between '{lamp.Lamp.Feed}' and '{lamp.Lamp.Return}'"
                : "";
            string cure = sneak.DiodesCure switch
            {
                true => $" Two diodes, one from each of those to the lamp, and its return on the frame cure it (solved: it stays dark then).",
                false => " Two diodes at that lamp would not cure it: see what else feeds it.",
                null => "",
            };
            yield return new Finding(Severity.Fault, sneak.Glowing.Lamp.Lamp, Said($"it should be dark in the setting '{sneak.Setting}' but gets {Math.Abs(sneak.Glowing.Voltage.Volts):0.00} V and {1000 * Math.Abs(sneak.Glowing.Current.Amperes):0} mA{through}: it gives {light:0.#} % of its light.{cure}"));
        }
    }

    private IEnumerable<Finding> DarkAfter()
    {
        for (int i = 0; i < after.Lamps.Length; i++)
        {
            PointPair? dark = pairs.FirstOrDefault(p => p.IsLitBefore(i) && SneakFeeds.Glows(p.Before.Lamps[i]) && !SneakFeeds.Glows(p.After.Lamps[i]));
            if (dark is null)
                continue;
            double volts = dark.After.Lamps[i].Voltage.Volts;
            yield return new Finding(Severity.Fault, after.Lamps[i].Lamp, volts < 0
                ? Said($"it was lit in the setting '{dark.After.Setting}' and is dark now: its volts are the wrong way round there ({volts:0.00} V), which a filament does not mind and an LED does. Two diodes to its feed, and its return on the frame, cure it.")
                : Said($"it was lit in the setting '{dark.After.Setting}' and is dark now, at {volts:0.00} V."));
        }
    }

    private IEnumerable<Finding> Overcharge()
    {
        if (report.Excess is not { } surplus)
            yield break;
        double now = (surplus.After.OverchargeCurrent ?? surplus.After.Net!.Value).Amperes, was = Math.Max(0, (surplus.Before.OverchargeCurrent ?? surplus.Before.Net!.Value).Amperes);
        if (now <= was + 1e-9)
            yield break;
        double? perAmpereHour = before.BatteryCapacity is { AmpereHours: > 0 } capacity ? now / capacity.AmpereHours : null;
        bool much = perAmpereHour is null or > ChargingConstants.FullBatteryAmperesPerAmpereHour;
        string rate = perAmpereHour is { } known
            ? Said($" ({known:0.00} A for each Ah; a full battery takes about {ChargingConstants.FullBatteryAmperesPerAmpereHour:0.00} without gassing, common practice)")
            : "";
        string where = Said($"at {surplus.After.Speed.RevolutionsPerMinute:0} rpm ({surplus.Setting}) {now:0.0} A are over instead of {was:0.0} A");
        switch (options.Check.Charging.Regulator)
        {
            case RegulatorKind.None:
                yield return new Finding(much ? Severity.Fault : Severity.Caution, "battery", $"{where} and go into it when it is full, for there is no regulator{rate}: fit a regulator, or leave a load.");
                break;
            case RegulatorKind.NotStated:
                yield return new Finding(much ? Severity.Caution : Severity.Note, "battery", $"{where}: without a regulator they go into it when it is full{rate}; whether there is one is not stated.");
                break;
            case RegulatorKind.Shunt:
                yield return new Finding(much ? Severity.Fault : Severity.Note, "regulator", $"{where} beyond the shunt regulator's limit{rate}.");
                break;
        }
    }

    private IEnumerable<Finding> DirectVolts()
    {
        if (report.Before.DirectLighting?.Points is not [.., var was] || report.After.DirectLighting?.Points is not [.., var now])
            yield break;
        bool rises = now.TerminalVoltage.Volts > 1.05 * was.TerminalVoltage.Volts;
        yield return new Finding(rises ? Severity.Caution : Severity.Note, "lighting coil", Said($"at {now.Speed.RevolutionsPerMinute:0} rpm it has {now.TerminalVoltage.Volts:0.0} V instead of {was.TerminalVoltage.Volts:0.0} V with its heaviest load: every lamp that stays gets that."));
        if (rises)
            yield return CoilOvervoltageRemedy.Of(after, report.Before.DirectLighting, report.After.DirectLighting);
    }

    private IEnumerable<Finding> Polarity()
    {
        if (after.Earth == Earth.Positive && NewLeds is { IsEmpty: false } leds)
            yield return new Finding(Severity.Caution, "polarity", $"the bike has positive earth: {Listing(leds)} must be made for it, or for either polarity; the usual LED, its shell negative, stays dark. All are taken as fitted the right way round.");
    }

    private IEnumerable<Finding> Light()
    {
        var unknown = new List<FittedLamp>();
        foreach (LampChange change in report.Lamps.Where(l => l.IsReplaced && l.After?.RelativeLight is not null))
        {
            if (change.LightBefore is not { } was || change.LightAfter is not { } now)
                unknown.Add(change.Lamp);
            else if (now.Lumens < LessLight * was.Lumens)
                yield return new Finding(Severity.Caution, change.Lamp.Lamp, Said($"it gives {now.Lumens:0} lm instead of {was.Lumens:0} lm, {100 * now.Lumens / was.Lumens:0} % of the light ({change.Setting})."));
        }

        if (unknown.Count > 0)
            yield return new Finding(Severity.Note, "light", $"whether it gets brighter or dimmer is not known of {Listing(unknown)}: the lumens of the old lamp or the new are not published.");
    }

    private IEnumerable<Finding> Approval()
    {
        FittedLamp[] concerned = [.. before.Lamps.Where((l, i) => NewLeds.Any(n => Name.Equal(n.Lamp, l.Lamp)) && report.Lamps[i].IsReplaced && RoadApproval.Concerns(l, before.SystemVoltage))];
        if (concerned.Length > 0)
            yield return new Finding(Severity.Caution, "road approval", $"{Listing(concerned)}: such lamps are approved together with their light source, and an LED in their place may end the approval; local law decides.");
    }

    private IEnumerable<Finding> FuseAdvice()
    {
        foreach (FuseChange fuse in report.Fuses)
            if (fuse.After.Verdict == FuseVerdict.Suits && fuse.After.Advice.Smallest is { } smallest && smallest.Amperes < fuse.After.Fuse.Rating.Amperes - 1e-9)
                yield return new Finding(Severity.Note, fuse.After.Fuse.Name, Said($"it carries {fuse.After.Steady.WorstCurrent.Amperes:0.00} A at most instead of {fuse.Before.Steady.WorstCurrent.Amperes:0.00} A: {smallest.Amperes:0.##} A would do and would guard the wires more closely."));
    }

    private static string Listing(IEnumerable<FittedLamp> lamps) => string.Join(", ", lamps.Select(l => l.Lamp));

    private static string Watts(Power power) => Said($"{(double)power.Watts:0.#} W");

    private static string Said(FormattableString text) => FormattableString.Invariant(text);
}
