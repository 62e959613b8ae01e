using System.Collections.Immutable;
using System.CommandLine;
using Lighting.Calc.Cli.Rendering;
using UnitsNet;

namespace Lighting.Calc.Cli.Commands;

/// <summary><c>compare</c>: two bikes, or a bike and a change of it, side by side.</summary>
internal static class CompareCommand
{
    private const string Changes = "--lamp, --wire, --fuse, --system or --charging";

    public static Command Create(CommandConsole console)
    {
        var command = new Command(
            "compare",
            "Two bikes, or a bike before and after a change given here, side by side: fuses, lamps, charging, findings."
        );
        var options = new BikeOptions(command, comparesTwo: true);
        Option<string[]> lamps = new("--lamp")
        {
            Description = "Another lamp: NAME=WATTS, NAME=AMPS or NAME=CODE, such as \"headlamp high=60 W\".",
            HelpName = "NAME=LAMP",
        };
        Option<string[]> wires = new("--wire")
        {
            Description = "Another wire of a run, such as \"main feed=4 mm2\".",
            HelpName = "RUN=SIZE",
        };
        Option<string[]> fuses = new("--fuse")
        {
            Description = "Rating of the one fuse, or NAME=RATING of one of several, such as 10A.",
            HelpName = "RATING",
        };
        command.Add(lamps);
        command.Add(wires);
        Option<string?> system = new("--system")
        {
            Description =
                "Another system voltage, such as 12V: the same generator winding, lamps replaced by their "
                + "counterparts.",
            HelpName = "VOLTS",
        };
        Option<string?> charging = new("--charging")
        {
            Description = "Another generator: a list as charging.csv.",
            HelpName = "FILE",
        };
        charging.Validators.Add(OptionText.RefuseEmptyPath);
        command.Add(fuses);
        command.Add(system);
        command.Add(charging);
        command.SetAction(
            (parsed, cancel) =>
            {
                (BikeInput before, BikeInput? other, string[] paths) = options.ReadTwo(parsed, console);
                string[] changes =
                [
                    .. parsed.GetValue(lamps) ?? [],
                    .. parsed.GetValue(wires) ?? [],
                    .. parsed.GetValue(fuses) ?? [],
                    .. parsed.GetValue(system) is { } to ? [to] : Array.Empty<string>(),
                    .. parsed.GetValue(charging) is { } file ? [Path.GetFileName(file)] : Array.Empty<string>(),
                ];
                if (other is null == (changes.Length == 0))
                    throw new InputException(
                        other is null
                            ? $"give a second bike, or a change with {Changes}."
                            : $"give a second bike, or a change with {Changes}, not both."
                    );
                var wrong = new List<string>();
                Bike after = other?.Bike ?? before.Bike;
                SystemConversion? conversion = parsed.GetValue(system) is { } volts
                    ? Convert(after, volts, wrong)
                    : null;
                after = conversion?.Bike ?? after;
                if (parsed.GetValue(charging) is { } list)
                    after = WithCharging(before.Lists with { Bike = after }, list, console);
                foreach (string text in parsed.GetValue(lamps) ?? [])
                    after = WithLamp(after, text, wrong);
                foreach (string text in parsed.GetValue(wires) ?? [])
                    after = WithWire(after, text, wrong);
                foreach (string text in parsed.GetValue(fuses) ?? [])
                    after = BikeOptions.WithFuse(after, text, wrong);
                if (wrong.Count > 0)
                    throw new InputException(wrong);
                CheckOptions check = before.Check;
                BikeComparison comparison = BikeComparison.Evaluate(before.Bike, after, check, cancel);
                options.Output.Write(
                    parsed,
                    console,
                    CompareDocument.Of(
                        comparison,
                        conversion,
                        NameOf(before.Bike, paths[0]),
                        other is null ? string.Join(", ", changes) : NameOf(after, paths[1])
                    )
                );
                return Task.FromResult(
                    comparison.After.Verdict == BikeVerdict.Suits ? ExitCode.Suits : ExitCode.DoesNotSuit
                );
            }
        );
        return command.WithExample(
            "lighting-calc compare shared/bikes/valley-twin shared/bikes/chapel-single",
            "lighting-calc compare shared/bikes/valley-twin --lamp \"headlamp high=60 W\" --wire \"main feed=2.5 mm2\"",
            "lighting-calc compare shared/bikes/chapel-single --system 12V",
            "lighting-calc compare shared/bikes/valley-twin --charging shared/larger-alternator.csv"
        );
    }

    private static SystemConversion? Convert(Bike bike, string text, List<string> wrong)
    {
        if (
            OptionText.Quantity(QuantityText.Voltage, "--system", text, v => v.Volts is >= 4 and <= 60, wrong)
            is not { } volts
        )
            return null;
        try
        {
            return SystemConversion.Of(bike, volts);
        }
        catch (ArgumentException problem)
        {
            wrong.Add($"--system '{text}': {PlainMessage.Of(problem)}");
            return null;
        }
    }

    private static Bike WithCharging(BikeLists lists, string path, CommandConsole console)
    {
        ListResult<BikeLists> read = lists.WithCharging(path);
        foreach (ListFault caution in read.Cautions)
            console.Errors.WriteLine($"lighting-calc: caution: {caution.Message}");
        return read.TryGetValue(out BikeLists? with) ? with.Bike : throw new InputException(read.Faults);
    }

    private static string NameOf(Bike bike, string path) =>
        bike.Name.Length > 0 ? bike.Name : Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(path)));

    private static Bike WithLamp(Bike bike, string text, List<string> wrong)
    {
        (int index, string value) = Part(text, "--lamp", "lamp", bike.Lamps, l => l.Lamp, wrong);
        if (index < 0)
            return bike;
        FittedLamp lamp = bike.Lamps[index];
        if (Specification(bike, lamp.Specification, value) is { } specification)
            return bike with { Lamps = bike.Lamps.SetItem(index, lamp with { Specification = specification }) };
        ImmutableArray<string> nearest = SpellingSuggestions.Of(value, LampTable.All.Select(l => l.Code));
        wrong.Add(
            $"--lamp '{text}': '{value}' is neither watts such as 60 W, nor amps such as 4.5 A, nor the code of a lamp"
                + (nearest.IsEmpty ? "." : $"; did you mean {string.Join(" or ", nearest)}?")
        );
        return bike;
    }

    // Watts and amps are at the voltage of the lamp that was there.
    private static LampSpecification? Specification(Bike bike, LampSpecification fitted, string value)
    {
        if (LampTable.TryFind(value, bike.SystemVoltage, out PublishedLamp? lamp))
            return lamp.Specification;
        if (LedClassTable.TryFind(value, out LampSpecification? led))
            return led;
        if (QuantityText.Power.TryParse(value, out Power watts, out _) && (double)watts.Watts is >= 0.001 and <= 2000)
            return LampSpecification.FromPower(fitted.Type, fitted.ReferenceVoltage, watts, fitted.MinimumVoltage);
        return
            QuantityText.Current.TryParse(value, out ElectricCurrent amps, out _)
            && amps.Amperes is >= 0.0001 and <= 200
            ? LampSpecification.FromCurrent(fitted.Type, fitted.ReferenceVoltage, amps, fitted.MinimumVoltage)
            : null;
    }

    private static Bike WithWire(Bike bike, string text, List<string> wrong)
    {
        (int index, string value) = Part(text, "--wire", "run", bike.Runs, r => r.Name, wrong);
        if (index < 0)
            return bike;
        return OptionText.Wire($"--wire '{text}'", value, wrong) is { } wire
            ? bike with
            {
                Runs = bike.Runs.SetItem(index, bike.Runs[index] with { Wire = wire }),
            }
            : bike;
    }

    // A name may hold an equals sign; a value never does.
    private static (int Index, string Value) Part<T>(
        string text,
        string option,
        string noun,
        ImmutableArray<T> parts,
        Func<T, string> name,
        List<string> wrong
    )
    {
        int equals = text.LastIndexOf('=');
        string own = text[..Math.Max(equals, 0)].Trim();
        int index = Enumerable
            .Range(0, parts.Length)
            .FirstOrDefault(i => string.Equals(name(parts[i]), own, StringComparison.OrdinalIgnoreCase), -1);
        if (equals < 0)
            wrong.Add($"{option} '{text}': expected NAME=VALUE.");
        else if (index < 0)
            wrong.Add(
                $"{option} '{text}': the bike has no {noun} '{own}'; "
                    + $"{(parts.IsEmpty ? $"it lists no {noun}" : $"it has {string.Join(", ", parts.Select(name))}")}."
            );
        return (index, text[(equals + 1)..].Trim());
    }
}
